/** The demo: there on the very first start, an ordinary project after that. */
import { describe, expect, it, vi } from 'vitest';
import { preparePack, unpackMesh } from '../../src/core/mesh/pack';
import { defaultProjectInputs } from '../../src/steps/inputs/project';
import type { ProjectSeed } from '../../src/workbook';
import { demoParts } from '../../src/workbook/demo/demoParts';
import { demoSeeds } from '../../src/workbook/demoSeeds';
import { patternSchema } from '../../src/workbook/patternSchema';
import { createMachine, done, fakePackedMesh, patternOf, quotaError, reasonOf, settle } from './support';

function seeds(): ProjectSeed[] {
  return ['Upper half', 'Lower half'].map((name, number) => {
    const packedMesh = fakePackedMesh(number);
    return {
      enclosure: 'Demo',
      name,
      inputs: defaultProjectInputs,
      pattern: patternOf(packedMesh),
      packedMesh,
    };
  });
}

const withDemo = { demoSeeds: () => Promise.resolve(seeds()) };
const namesIn = ({ workbook }: ReturnType<ReturnType<typeof createMachine>['tab']>): string[] =>
  workbook.store.getState().projects.map(({ name }) => name);

describe('first start', () => {
  it('puts the demo in as ordinary projects', async () => {
    const tab = createMachine().tab(withDemo);
    await tab.workbook.start();
    expect(namesIn(tab)).toEqual(['Lower half', 'Upper half']);
    const [lower] = tab.workbook.store.getState().projects;
    done(await tab.workbook.openProject(lower?.id ?? ''));
    done(tab.workbook.setInput('walls.wrongShareAllowedPercent', 0.3));
    expect(tab.workbook.packedMeshOf(lower?.id ?? '')).toBe(fakePackedMesh(1));
  });

  it('is only once: a deleted demo does not come back by itself, but on request', async () => {
    const machine = createMachine();
    const first = machine.tab(withDemo);
    await first.workbook.start();
    for (const { id } of first.workbook.store.getState().projects)
      done(await first.workbook.deleteProject(id));
    first.workbook.dispose();
    const later = machine.tab(withDemo);
    await later.workbook.start();
    expect(namesIn(later)).toEqual([]);
    expect(done(await later.workbook.restoreDemo()).ids).toHaveLength(2);
    expect(namesIn(later)).toEqual(['Lower half', 'Upper half']);
    await later.workbook.restoreDemo();
    expect(namesIn(later)).toHaveLength(4);
  });

  it('in two tabs at once puts it in once', async () => {
    const machine = createMachine();
    const tabs = [machine.tab(withDemo), machine.tab(withDemo)];
    await Promise.all(tabs.map(({ workbook }) => workbook.start()));
    await settle();
    expect(tabs.map(namesIn)).toEqual([
      ['Lower half', 'Upper half'],
      ['Lower half', 'Upper half'],
    ]);
  });

  it('leaves a machine alone that has projects already', async () => {
    const tab = createMachine().tab(withDemo);
    done(tab.workbook.createProject({ enclosure: 'Lamp', name: 'Lid' }));
    await tab.workbook.start();
    expect(namesIn(tab)).toEqual(['Lid']);
  });

  it('says why when the demo cannot be made, and tries again next time', async () => {
    const machine = createMachine();
    const broken = machine.tab({ demoSeeds: () => Promise.reject(new Error('no codec')) });
    await broken.workbook.start();
    expect(broken.workbook.store.getState().notes).toEqual(['The demo could not be made: no codec']);
    expect(reasonOf(await broken.workbook.restoreDemo())).toBe('The demo could not be made: no codec');
    const later = machine.tab(withDemo);
    await later.workbook.start();
    expect(namesIn(later)).toHaveLength(2);
  });

  it('shows the demo even when nothing can be saved', async () => {
    const machine = createMachine();
    machine.beforeWrite = () => {
      throw quotaError();
    };
    const tab = machine.tab(withDemo);
    await tab.workbook.start();
    expect(namesIn(tab)).toHaveLength(2);
    expect(tab.workbook.store.getState().saveState).toBe('full');
    const denied = machine.tab({ ...withDemo, storage: 'denied' });
    await denied.workbook.start();
    expect(namesIn(denied)).toHaveLength(2);
  });
});

describe('the demo itself', () => {
  it('is made like an imported file, fits in storage, and unpacks to the drawn parts', async () => {
    vi.useRealTimers();
    const [made, parts] = [await demoSeeds(), demoParts()];
    await preparePack();
    expect(made.map(({ name }) => name)).toEqual(parts.map(({ name }) => name));
    for (const [i, { pattern, packedMesh, inputs }] of made.entries()) {
      expect(patternSchema.safeParse(pattern).success).toBe(true);
      expect(pattern?.triangles).toBe((parts[i]?.mesh.facets.length ?? 0) / 3);
      expect(unpackMesh(packedMesh ?? '').facets.length / 3).toBe(pattern?.triangles);
      expect(inputs.part).toMatchObject(parts[i]?.inputs.part ?? {});
    }
    const tab = createMachine().tab({ demoSeeds: () => Promise.resolve(made) });
    await tab.workbook.start();
    expect(tab.workbook.store.getState().saveState).toBe('saved');
    expect(tab.workbook.usage().totalUnits).toBeLessThan(1_000_000);
  });
});
