/** The other half as it is kept: by its id, through everything that happens to projects. */
import { beforeEach, describe, expect, it, vi } from 'vitest';
import { mateChoices, mateOf } from '../../src/app/project/mateOf';
import { readProjectFile, type Workbook } from '../../src/workbook';
import { createMachine, done, fakePackedMesh, patternOf } from '../workbook/support';

beforeEach(() => void vi.useFakeTimers());

async function withModel(workbook: Workbook, name: string, seed: number): Promise<string> {
  const { id } = done(workbook.createProject({ enclosure: 'Lamp', name }));
  done(await workbook.openProject(id));
  const packed = fakePackedMesh(seed);
  done(workbook.setPattern(patternOf(packed), packed));
  workbook.flush();
  return id;
}

/** Lower half and upper half of one enclosure, the upper one open and keeping the lower one as its mate. */
async function pair() {
  const { workbook } = createMachine().tab();
  const lower = await withModel(workbook, 'Lower', 1);
  const upper = await withModel(workbook, 'Upper', 2);
  done(workbook.setInput('fit.mate', { projectId: lower, name: 'Lower' }));
  workbook.flush();
  const found = () => {
    const { project, projects } = workbook.store.getState();
    return mateOf(project!.inputs.fit.mate, project!, projects);
  };
  const offer = () => {
    const { project, projects } = workbook.store.getState();
    return mateChoices(project!.inputs.fit.mate, project!, projects);
  };
  return { workbook, lower, upper, found, offer };
}

describe('the other half', () => {
  it('stays through a new name, and the new name is shown', async () => {
    const { workbook, lower, found, offer } = await pair();
    done(await workbook.renameProject(lower, { enclosure: 'Lamp', name: 'Foot' }));
    expect(found()).toMatchObject({ listed: { id: lower, name: 'Foot' }, why: null });
    expect(offer()).toEqual({ choices: [{ value: lower, label: 'Foot' }], chosen: lower });
    done(await workbook.renameProject(lower, { enclosure: 'Torch', name: 'Foot' }));
    expect(found().why).toBeNull();
    expect(offer().choices).toEqual([{ value: lower, label: 'Torch, Foot' }]);
  });

  it('deleted is told in a sentence and stays chosen; put back it is there again', async () => {
    const { workbook, lower, found, offer } = await pair();
    done(await workbook.deleteProject(lower));
    expect(found()).toEqual({
      listed: null,
      why: 'Lower, the other half, is not in this browser: it was deleted, or its file was not opened here.',
    });
    expect(offer()).toEqual({ choices: [{ value: lower, label: 'Lower, not here' }], chosen: lower });
    done(workbook.undeleteProject(lower));
    expect(found()).toMatchObject({ listed: { id: lower }, why: null });
  });

  it('opened from a file in another browser is known by its id; under another id, by its name', async () => {
    const { workbook, lower, upper } = await pair();
    const files = [lower, upper].map((id) => done(workbook.exportProjectFile(id)).file.text);
    const { workbook: elsewhere } = createMachine().tab();
    const [lowerThere, upperThere] = files.map(
      (text) => done(elsewhere.importProjectFile(readProjectFile(text))).id,
    );
    done(await elsewhere.openProject(upperThere!));
    const { project, projects } = elsewhere.store.getState();
    expect(mateOf(project!.inputs.fit.mate, project!, projects).listed?.id).toBe(lowerThere);
    const renumbered = projects.map((one) => (one.id === lowerThere ? { ...one, id: 'new' } : one));
    expect(mateOf(project!.inputs.fit.mate, project!, renumbered)).toMatchObject({
      listed: { id: 'new' },
      why: null,
    });
  });

  it('of two halves that were added together is the other one, both ways', async () => {
    const { workbook, lower, upper } = await pair();
    const seedOf = (id: string, name: string) => ({
      ...workbook.readProject(id)!,
      name,
      packedMesh: workbook.packedMeshOf(id),
    });
    const [one, other] = workbook.addMates([seedOf(lower, 'Left'), seedOf(upper, 'Right')]);
    expect(workbook.readProject(one)?.inputs.fit.mate).toEqual({ projectId: other, name: 'Right' });
    expect(workbook.readProject(other)?.inputs.fit.mate).toEqual({ projectId: one, name: 'Left' });
    expect(workbook.packedMeshOf(one)).not.toBeNull();
  });

  it('without a model, or unreadable, is told', async () => {
    const { workbook, lower, found } = await pair();
    const { project, projects } = workbook.store.getState();
    const changed = (change: object) =>
      mateOf(
        project!.inputs.fit.mate,
        project!,
        projects.map((one) => (one.id === lower ? { ...one, ...change } : one)),
      ).why;
    expect(changed({ meshKey: null })).toBe('Lower, the other half, has no model yet.');
    expect(changed({ condition: 'damaged' })).toBe('Lower, the other half, cannot be read.');
    expect(found().why).toBeNull();
  });
});
