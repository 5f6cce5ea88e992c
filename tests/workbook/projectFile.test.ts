/** A project as one file: out and in again, and a specific sentence for every file that is none. */
import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { currentFormat, readProjectFile, writeProjectFile } from '../../src/workbook';
import { newProject } from '../../src/workbook/project';
import { arbitraryProject } from './arbitraryProject';
import {
  createMachine,
  done,
  fakePackedMesh,
  patternOf,
  propertySeed,
  reasonOf,
  tabWithProject,
  withoutChecksum,
} from './support';

const packed = fakePackedMesh(7);
const empty = newProject({ id: 'a', enclosure: 'Lamp', name: 'Lid', at: '2026-01-05T08:00:00.000Z' });
const project = { ...empty, pattern: patternOf(packed) };

function messageFor(text: string): string {
  const read = readProjectFile(text);
  return 'message' in read ? read.message : `no message but ${read.outcome}`;
}

describe(`project file text (seed ${propertySeed})`, () => {
  it('brings back project and mesh, for any project', () => {
    fc.assert(
      fc.property(arbitraryProject, fc.nat(255), (any, seed) => {
        const mesh = fakePackedMesh(seed);
        const given = {
          ...any,
          pattern: any.pattern && { ...any.pattern, meshKey: patternOf(mesh).meshKey },
        };
        const packedMesh = given.pattern === null ? null : mesh;
        const outcome = readProjectFile(writeProjectFile(given, packedMesh));
        expect(outcome).toEqual({ outcome: 'ok', project: given, packedMesh, packedImport: null });
      }),
    );
  });

  it('survives being stored as UTF-8 with a mark at its start', () => {
    const bytes = new TextEncoder().encode(`\uFEFF${writeProjectFile(project, packed)}`);
    const text = new TextDecoder('utf-8', { ignoreBOM: true }).decode(bytes);
    expect(readProjectFile(text)).toEqual({ outcome: 'ok', project, packedMesh: packed, packedImport: null });
  });

  it('is told apart from other files', () => {
    const message = 'This is not a project file of this workbook. Project files end in .workbook.json.';
    for (const text of ['', 'solid lamp', '{}', '[1]', 'null', '{"kind":"other"}']) {
      expect(messageFor(text)).toBe(message);
    }
  });

  it('says so when it breaks off', () => {
    expect(messageFor(writeProjectFile(project, packed).slice(0, -20))).toBe(
      'This project file breaks off or was changed. Save it again from the workbook.',
    );
  });

  it('says so when it is newer', () => {
    const text = withoutChecksum(writeProjectFile(project, packed)).replace(
      `"format":${currentFormat}`,
      '"format":99',
    );
    expect(messageFor(text)).toBe(
      'This project file was saved by a newer version of the workbook (format 99). Update the app to open it.',
    );
  });

  it('says which field is wrong', () => {
    const text = withoutChecksum(writeProjectFile(project, packed)).replace('"scale":1', '"scale":0');
    expect(messageFor(text)).toBe('This project file is damaged: not as it should be: inputs.part.scale.');
  });

  it('says so when the mesh is damaged or missing', () => {
    const middle = packed.charAt(packed.length - 5);
    const changed = writeProjectFile(project, packed).replace(middle, middle === 'Ā' ? 'ā' : 'Ā');
    expect(messageFor(changed)).toMatch(/^The mesh in this project file is damaged\. /);
    expect(messageFor(writeProjectFile(project, null))).toMatch(
      /^The mesh in this project file is missing\. /,
    );
  });

  it('migrates a file of a former format', () => {
    const text = withoutChecksum(writeProjectFile(empty, null))
      .replace(`"format":${currentFormat}`, '"format":1')
      .replace('"walls":{"toleranceMm":null', '"walls":{"toleranceMm":0.2');
    expect(readProjectFile(text)).toMatchObject({
      outcome: 'migrated',
      project: { inputs: { walls: { goVoidPercent: 1 } } },
    });
  });
});

describe('project file in the workbook', () => {
  it('goes out of one machine and into another with everything', async () => {
    const { workbook, id } = await tabWithProject();
    done(workbook.setPattern(patternOf(packed), packed));
    done(workbook.setInput('walls.wrongShareAllowedPercent', 0.2));
    done(workbook.setRecord('walls.caliper', { measured: '0.9 mm', done: true }));
    const { file } = done(workbook.exportProjectFile(id));
    expect(file.fileName).toBe('Lamp - Lid.workbook.json');

    const other = createMachine().tab().workbook;
    const added = done(other.importProjectFile(readProjectFile(file.text)));
    expect(added.id).toBe(id);
    done(await other.openProject(id));
    expect(other.store.getState().project).toEqual(workbook.store.getState().project);
    expect(other.packedMeshOf(id)).toBe(packed);
  });

  it('is added beside the project that has the same id', async () => {
    const { workbook, id } = await tabWithProject();
    const { file } = done(workbook.exportProjectFile(id));
    const added = done(workbook.importProjectFile(readProjectFile(file.text)));
    expect(added.id).not.toBe(id);
    expect(workbook.store.getState().projects).toHaveLength(2);
  });

  it('does not take the id of a project whose delete can be undone', async () => {
    const { workbook, id } = await tabWithProject();
    const { file } = done(workbook.exportProjectFile(id));
    done(await workbook.deleteProject(id));
    expect(done(workbook.importProjectFile(readProjectFile(file.text))).id).not.toBe(id);
    done(workbook.undeleteProject(id));
    expect(workbook.store.getState().projects).toHaveLength(2);
  });

  it('changes nothing when it cannot be read', async () => {
    const { machine, workbook } = await tabWithProject();
    const before = new Map(machine.disk);
    expect(reasonOf(workbook.importProjectFile(readProjectFile('{}')))).toContain('not a project file');
    expect(machine.disk).toEqual(before);
  });

  it('has a name that every file system takes', async () => {
    const { workbook, id } = await tabWithProject();
    done(await workbook.renameProject(id, { enclosure: '../Lámp: "a/b"', name: 'No. 1' }));
    expect(done(workbook.exportProjectFile(id)).file.fileName).toBe('Lámp- -a-b- - No. 1.workbook.json');
  });
});
