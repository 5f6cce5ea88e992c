/** Cards in projects: what a pick fills, the frozen copy, undo, and where the entries come from. */
import { describe, expect, it } from 'vitest';
import { currentFormat } from '../../src/workbook/migrations';
import { decodeProject, encodeProject } from '../../src/workbook/envelope';
import { defaultProjectInputs } from '../../src/steps/inputs/project';
import { copiesInUse, originsOf, placesOf, valuesFrom } from '../../src/workbook/cardPicks';
import { newProject, type Project } from '../../src/workbook/project';
import { readProjectFile } from '../../src/workbook/projectFile';
import { isChangedSince, type ShelfCard } from '../../src/workbook/shelfCards';
import { withChecksum } from '../../src/workbook/checksum';
import { createMachine, done, reasonOf, tabWithProject } from './support';

const at = (field: string) => `plies.materials.N.${field}`;
const roll: ShelfCard = {
  id: 'roll-7',
  kind: 'roll',
  name: 'Roll 7',
  note: '',
  changedAt: '2026-01-05T08:00:00.000Z',
  values: {
    [at('arealWeightGsm')]: { value: 245, origin: 'supplier' },
    [at('caliperTotalMm')]: { value: 0.81, origin: 'measured' },
    [at('hoursOutH')]: { value: 30, origin: 'measured' },
  },
  log: [{ id: 's', at: '2026-01-05T08:00:00.000Z', hoursH: 2, project: 'Lamp, Lid' }],
};
const stone: ShelfCard = {
  ...roll,
  id: 'stone-1',
  kind: 'stone',
  name: 'Stone A',
  values: {
    'mold.stoneType': { value: '3', origin: 'supplier' },
    'mold.bag.demoldMin': { value: 45, origin: 'supplier' },
    'mold.measured.settingExpansionPercent': { value: 0.21, origin: 'measured' },
  },
  log: [],
};
const opened = (workbook: { store: { getState: () => { project: Project | null } } }): Project => {
  const { project } = workbook.store.getState();
  if (project === null) throw new Error('no project is open');
  return project;
};

describe('a picked card', () => {
  it('adds a roll with all it tells and the ready-made rest, as one step of undo', async () => {
    const { workbook } = await tabWithProject();
    done(workbook.pickCard(roll, null));
    const { inputs, cards } = opened(workbook);
    expect(inputs.plies.materials.map(({ name }) => name)).toEqual(['Twill prepreg 200 g/m²', 'Roll 7']);
    expect(inputs.plies.materials[1]).toMatchObject({
      arealWeightGsm: 245,
      caliperTotalMm: 0.81,
      resinMassFraction: 0.42,
      laidThicknessMm: null,
      // 30 h on the card and 2 h of its log.
      hoursOutH: 32,
    });
    expect(cards).toHaveLength(1);
    expect(cards[0]).toMatchObject({
      cardId: 'roll-7',
      name: 'Roll 7',
      entryId: inputs.plies.materials[1]?.id,
    });
    workbook.undo();
    expect(opened(workbook)).toMatchObject({ inputs: defaultProjectInputs, cards: [] });
  });

  it('fills what a project has once; what was of another stone goes back to its ready-made value', async () => {
    const { workbook } = await tabWithProject();
    done(workbook.setInput('mold.bag.workingMin', 3));
    done(workbook.setInput('mold.coverOverShowMm', 14));
    done(workbook.pickCard(stone, null));
    const { mold } = opened(workbook).inputs;
    expect(mold).toMatchObject({ stoneType: '3', coverOverShowMm: 14 });
    expect(mold.bag).toMatchObject({ demoldMin: 45, workingMin: null });
    expect(mold.measured.settingExpansionPercent).toBe(0.21);
  });

  it('lets go of the copy of an entry that is gone, and undo brings both back', async () => {
    const { workbook } = await tabWithProject();
    done(workbook.pickCard(roll, null));
    const before = opened(workbook);
    done(workbook.updateInputs((draft) => void draft.plies.materials.pop()));
    expect(copiesInUse(opened(workbook))).toEqual([]);
    workbook.undo();
    expect(copiesInUse(opened(workbook))).toEqual(before.cards);
    done(workbook.updateInputs((draft) => void draft.plies.materials.pop()));
    done(workbook.pickCard(stone, null));
    expect(opened(workbook).cards.map(({ name }) => name)).toEqual(['Stone A']);
  });

  it('replaces the copy of the same place, and is refused for a place that is gone', async () => {
    const { workbook } = await tabWithProject();
    done(workbook.pickCard(stone, null));
    done(workbook.pickCard({ ...stone, id: 'stone-2', name: 'Stone B' }, null));
    expect(opened(workbook).cards.map(({ name }) => name)).toEqual(['Stone B']);
    expect(reasonOf(workbook.pickCard(roll, 'nowhere'))).toContain('no longer in the project');
  });

  it('is refused while another tab edits the project', async () => {
    const { machine, id } = await tabWithProject();
    const follower = machine.tab().workbook;
    done(await follower.openProject(id));
    expect(reasonOf(follower.pickCard(stone, null))).toContain('another tab');
  });
});

describe('the frozen copy', () => {
  it('stays when the card changes, says so, and takes the change over when asked', async () => {
    const { workbook } = await tabWithProject();
    done(workbook.pickCard(roll, null));
    const before = opened(workbook);
    const changed: ShelfCard = {
      ...roll,
      values: { ...roll.values, [at('arealWeightGsm')]: { value: 250, origin: 'measured' } },
    };
    const copy = before.cards[0]!;
    expect(isChangedSince(copy, roll)).toBe(false);
    expect(isChangedSince(copy, changed)).toBe(true);
    expect(isChangedSince(copy, { ...roll, note: 'a word' })).toBe(false);
    expect(isChangedSince(copy, { ...roll, log: [] })).toBe(true);
    expect(opened(workbook)).toBe(before);
    done(workbook.pickCard(changed, copy.entryId));
    expect(opened(workbook).inputs.plies.materials[1]?.arealWeightGsm).toBe(250);
    expect(opened(workbook).inputs.plies.materials[1]?.id).toBe(copy.entryId);
  });

  it('goes with the project file, with a duplicate, and onto another shelf', async () => {
    const { workbook, id } = await tabWithProject();
    done(workbook.pickCard(roll, null));
    const twin = done(workbook.duplicateProject(id));
    expect(workbook.readProject(twin.id)?.cards).toEqual(opened(workbook).cards);
    const { file } = done(workbook.exportProjectFile(id));
    const there = createMachine().tab().workbook;
    const imported = done(there.importProjectFile(readProjectFile(file.text)));
    const [copy] = there.readProject(imported.id)?.cards ?? [];
    expect(copy).toEqual(opened(workbook).cards[0]);
    done(await there.shelf.putCopyOnShelf(copy!));
    expect(reasonOf(await there.shelf.putCopyOnShelf(copy!))).toContain('already');
    expect(there.store.getState().shelf).toMatchObject([
      { id: 'roll-7', name: 'Roll 7', values: copy?.values },
    ]);
    expect(isChangedSince(copy!, there.store.getState().shelf[0]!)).toBe(false);
  });

  it('is read strictly, and a document without one has none', () => {
    const project = newProject({ id: 'a', enclosure: 'Lamp', name: 'Lid', at: '2026-01-05T08:00:00.000Z' });
    const saved = (cards: unknown) =>
      JSON.stringify(
        withChecksum({ kind: 'mold-layup-project', format: currentFormat, project: { ...project, cards } }),
      );
    const copy = {
      cardId: 'a',
      kind: 'stone',
      name: 'A',
      takenAt: project.createdAt,
      entryId: null,
      values: {},
    };
    expect(decodeProject(saved([copy]))).toMatchObject({ outcome: 'ok', project: { cards: [copy] } });
    expect(decodeProject(saved(undefined))).toMatchObject({ outcome: 'ok', project: { cards: [] } });
    for (const wrong of [
      { ...copy, kind: 'engine' },
      { ...copy, kind: 'roll' },
      { ...copy, values: { 'part.scale': { value: 2, origin: 'typical' } } },
      { ...copy, values: { 'mold.bag.demoldMin': { value: 1e9, origin: 'typical' } } },
    ])
      expect(decodeProject(saved([wrong])).outcome).toBe('damaged');
    expect(decodeProject(encodeProject(project))).toEqual({ outcome: 'ok', project });
  });
});

describe('where entries come from', () => {
  it('follows the card until the entry is changed or its place is gone', async () => {
    const { workbook } = await tabWithProject();
    done(workbook.pickCard(roll, null));
    done(workbook.pickCard(stone, null));
    expect(Object.fromEntries(originsOf(opened(workbook)))).toEqual({
      'plies.materials.1.arealWeightGsm': 'supplier',
      'plies.materials.1.caliperTotalMm': 'measured',
      'plies.materials.1.hoursOutH': 'measured',
      'mold.stoneType': 'supplier',
      'mold.bag.demoldMin': 'supplier',
      'mold.measured.settingExpansionPercent': 'measured',
    });
    done(workbook.setInput('mold.bag.demoldMin', 50));
    done(workbook.updateInputs((draft) => void draft.plies.materials.splice(0, 1)));
    const origins = originsOf(opened(workbook));
    expect(origins.get('mold.bag.demoldMin')).toBeUndefined();
    expect(origins.get('plies.materials.0.arealWeightGsm')).toBe('supplier');
    done(workbook.updateInputs((draft) => void draft.plies.materials.splice(0, 1)));
    expect([...originsOf(opened(workbook)).keys()].some((path) => path.startsWith('plies'))).toBe(false);
  });

  it('is proposed for a card made from a project: ready-made typical, the maker’s own measured, the rest supplier', async () => {
    const { workbook } = await tabWithProject();
    done(workbook.setInput('mold.bag.demoldMin', 45));
    done(workbook.setInput('mold.measured.slurryGMl', 1.8));
    const project = opened(workbook);
    const [place] = placesOf(project, 'stone');
    const values = valuesFrom(project, 'stone', place!);
    expect(values['mold.stoneType']).toEqual({ value: '4', origin: 'typical' });
    expect(values['mold.bag.demoldMin']).toEqual({ value: 45, origin: 'supplier' });
    expect(values['mold.measured.slurryGMl']).toEqual({ value: 1.8, origin: 'measured' });
    expect(values['mold.bag.workingMin']).toBeUndefined();
    expect(valuesFrom(project, 'sealer', placesOf(project, 'sealer')[0]!)['mold.sealer']).toBeUndefined();
    // Picked back it changes nothing.
    const { card } = done(await workbook.shelf.addCard({ kind: 'stone', name: 'Mine', values }));
    done(workbook.pickCard(card, null));
    expect(opened(workbook).inputs).toEqual(project.inputs);
  });
});
