/** A made pattern in use and the import behind it: both are saved, and the import comes back. */
import { beforeEach, describe, expect, it, vi } from 'vitest';
import { patternChoicesOf } from '../../src/steps/pattern/choicesOf';
import { keptSummary } from '../../src/steps/pattern/keptSummary';
import { defaultProjectInputs } from '../../src/steps/inputs/project';
import { readProjectFile } from '../../src/workbook';
import { meshPrefix, meshStorageKey } from '../../src/workbook/keys';
import { madeSummary } from '../support/madeSummary';
import {
  createMachine,
  done,
  fakePackedMesh,
  patternOf,
  quotaError,
  reasonOf,
  tabWithProject,
  type Machine,
} from './support';

beforeEach(() => void vi.useFakeTimers());

const [lid, shell, thicker] = [1, 2, 3].map((seed) => fakePackedMesh(seed, 900)) as [string, string, string];
const imported = patternOf(lid, 'lid.stl');
const made = { choices: patternChoicesOf(defaultProjectInputs), summary: keptSummary(madeSummary) };
const keyOf = (packed: string): string => patternOf(packed).meshKey;
const storedMeshes = (machine: Machine) =>
  [...machine.disk.keys()].filter((key) => key.startsWith(meshPrefix)).length;

/** The import is in inches and twice its size; the shell that was made of it is in mm. */
async function withUsedPattern() {
  const given = await tabWithProject();
  const { workbook } = given;
  done(
    workbook.setPattern(imported, lid, ({ part }) => {
      Object.assign(part, { unit: 'in', scale: 2 });
    }),
  );
  workbook.flush();
  const take = (packed: string) =>
    done(
      workbook.setPattern(
        patternOf(packed, 'lid pattern.stl'),
        packed,
        ({ part }) => void Object.assign(part, { unit: 'mm', scale: 1 }),
        made,
      ),
    );
  take(shell);
  workbook.flush();
  return { ...given, take };
}

/** The same machine after the tab has gone. */
async function reopened(machine: Machine, id: string) {
  const { workbook } = machine.tab();
  done(await workbook.openProject(id));
  return workbook;
}

describe('a made pattern in use', () => {
  it('keeps the import over a reload, and goes back to it as it was read', async () => {
    const { machine, tab, id } = await withUsedPattern();
    tab.crash();
    const workbook = await reopened(machine, id);
    expect(workbook.readProject(id)?.madeOf).toMatchObject({ import: imported, ...made });
    expect(workbook.packedMeshOf(id)).toBe(shell);
    expect(workbook.packedImportOf(id)).toBe(lid);
    done(workbook.goBackToImport());
    expect(workbook.readProject(id)).toMatchObject({
      pattern: imported,
      madeOf: null,
      inputs: { part: { unit: 'in', scale: 2 } },
    });
    expect(workbook.packedMeshOf(id)).toBe(lid);
    expect(reasonOf(workbook.goBackToImport())).toContain('none to go back to');
    workbook.undo();
    expect(workbook.packedMeshOf(id)).toBe(shell);
    expect(workbook.readProject(id)?.inputs.part).toMatchObject({ unit: 'mm', scale: 1 });
  });

  it('leads back to the import, not to the pattern before it', async () => {
    const { workbook, id, take } = await withUsedPattern();
    take(thicker);
    done(workbook.goBackToImport());
    expect(workbook.readProject(id)?.pattern).toEqual(imported);
  });

  it('lets the import go when another file takes its place', async () => {
    const { machine, tab, workbook, id } = await withUsedPattern();
    done(workbook.setPattern(patternOf(thicker), thicker));
    expect(workbook.readProject(id)?.madeOf).toBeNull();
    workbook.flush();
    done(workbook.setInput('walls.wrongShareAllowedPercent', 0.1));
    workbook.flush();
    tab.crash();
    machine.tab();
    expect(storedMeshes(machine)).toBe(1);
  });

  it('goes with a duplicate, a delete that is undone, and a project file', async () => {
    const { machine, workbook, id } = await withUsedPattern();
    const copy = done(workbook.duplicateProject(id));
    expect(workbook.packedImportOf(copy.id)).toBe(lid);
    const { file } = done(workbook.exportProjectFile(id));
    for (const one of [id, copy.id]) done(await workbook.deleteProject(one));
    done(workbook.undeleteProject(id));
    expect([workbook.packedMeshOf(id), workbook.packedImportOf(id)]).toEqual([shell, lid]);
    workbook.forgetDeleted(copy.id);
    done(await workbook.deleteProject(id));
    workbook.forgetDeleted(id);
    expect(storedMeshes(machine)).toBe(0);

    const other = createMachine().tab().workbook;
    const read = readProjectFile(file.text);
    const added = done(other.importProjectFile(read));
    expect(other.packedImportOf(added.id)).toBe(lid);
    done(await other.openProject(added.id));
    done(other.goBackToImport());
    expect(other.packedMeshOf(added.id)).toBe(lid);
    expect(readProjectFile(file.text.replace(',"importMesh":', ',"other":'))).toMatchObject({
      outcome: 'damaged',
      message: expect.stringContaining('import in this project file is missing') as string,
    });
  });

  it('goes into a project file without an import that is lost, and says so', async () => {
    const { machine, tab, id } = await withUsedPattern();
    tab.crash();
    machine.disk.delete(meshStorageKey(keyOf(lid)));
    const workbook = await reopened(machine, id);
    expect(reasonOf(workbook.goBackToImport())).toContain('lid.stl is no longer in this browser');
    const { file } = done(workbook.exportProjectFile(id));
    expect(readProjectFile(file.text)).toMatchObject({ outcome: 'ok', project: { madeOf: null } });
    expect(workbook.store.getState().notes.join()).toContain(
      'lid.stl, which its pattern was made of, is left out',
    );
  });

  it('is held in the tab where storage has no room for both, and what was saved stays', async () => {
    const { machine, workbook, id } = await tabWithProject();
    done(workbook.setPattern(imported, lid));
    workbook.flush();
    machine.beforeWrite = (key) => {
      if (key === meshStorageKey(keyOf(shell))) throw quotaError();
    };
    done(workbook.setPattern(patternOf(shell, 'lid pattern.stl'), shell, undefined, made));
    expect(workbook.flush()).toBe('full');
    expect([workbook.packedMeshOf(id), workbook.packedImportOf(id)]).toEqual([shell, lid]);
    expect(machine.disk.has(meshStorageKey(keyOf(lid)))).toBe(true);
    machine.beforeWrite = () => {};
    expect(workbook.flush()).toBe('saved');
    expect(storedMeshes(machine)).toBe(2);
  });
});
