/** The library of apps before the shelf: read strictly, turned into rolls, never lost. */
import { describe, expect, it } from 'vitest';
import { defaultMaterial, type Material } from '../../src/steps/inputs/material';
import { withChecksum } from '../../src/workbook/checksum';
import { materialLibraryKey, shelfKey } from '../../src/workbook/keys';
import { decodeLibrary } from '../../src/workbook/materialLibrary';
import { createMachine, done, quotaError } from './support';

const envelope = (part: object) =>
  JSON.stringify({ kind: 'mold-layup-materials', format: 1, cards: [], ...part });
const saved = (...cards: readonly Material[]) =>
  JSON.stringify(withChecksum({ kind: 'mold-layup-materials', format: 1, cards }));
const roll7: Material = {
  ...defaultMaterial,
  name: 'Roll 7',
  arealWeightGsm: 245,
  caliperTotalMm: 0.81,
  hoursOutH: 30,
  allowedOutTimeH: 720,
  freezerDate: 'May 2031',
};

describe('the saved text of the library', () => {
  it('is read as it was saved, and what a card of an older app has not is filled', () => {
    expect(decodeLibrary(saved(roll7))).toEqual({ outcome: 'ok', cards: [roll7] });
    const { id, name, weave, arealWeightGsm, fiberDensityGCm3, resinDensityGCm3 } = defaultMaterial;
    const { resinMassFraction, laidThicknessMm } = defaultMaterial;
    const old = { id, name, weave, arealWeightGsm, fiberDensityGCm3, resinDensityGCm3 };
    const text = envelope({ cards: [{ ...old, resinMassFraction, laidThicknessMm }] });
    expect(decodeLibrary(text)).toEqual({ outcome: 'ok', cards: [defaultMaterial] });
  });

  it.each([
    ['half a text', '{"kind":"mold-layup-ma', 'breaks off'],
    ['another text', '{"kind":"mold-layup-project"}', 'not a material library'],
    ['no format', envelope({ format: '1' }), 'format number'],
    ['a wrong card', envelope({ cards: [{ ...defaultMaterial, arealWeightGsm: -1 }] }), '0.arealWeightGsm'],
    ['no list', envelope({ cards: 'x' }), 'the whole list'],
    ['a flipped bit', saved(roll7).replace('245', '247'), 'checksum'],
  ])('is damaged: %s', (_what, text, reason) => {
    const loaded = decodeLibrary(text);
    expect(loaded.outcome === 'damaged' ? loaded.reason : loaded.outcome).toContain(reason);
  });
});

describe('the library at the first start with a shelf', () => {
  it('becomes rolls: every number of it, measured ones as measured, untouched ones as typical', () => {
    const machine = createMachine();
    machine.disk.set(materialLibraryKey, saved(roll7, { ...defaultMaterial, name: '' }));
    const { shelf } = machine.tab().workbook.store.getState();
    expect(shelf.map(({ kind, name }) => [kind, name])).toEqual([
      ['roll', 'Roll'],
      ['roll', 'Roll 7'],
    ]);
    const values = shelf[1]?.values ?? {};
    const at = (field: string) => values[`plies.materials.N.${field}`];
    expect(at('arealWeightGsm')).toEqual({ value: 245, origin: 'supplier' });
    expect(at('resinMassFraction')).toEqual({ value: 0.42, origin: 'typical' });
    expect(at('caliperTotalMm')).toEqual({ value: 0.81, origin: 'measured' });
    expect(at('freezerDate')).toEqual({ value: 'May 2031', origin: 'supplier' });
    const given = Object.entries(roll7).filter(
      ([field, value]) => value !== null && value !== '' && !['id', 'name'].includes(field),
    );
    expect(Object.keys(values)).toHaveLength(given.length);
    for (const [field, value] of given) expect(at(field)?.value).toBe(value);
    expect(machine.disk.has(materialLibraryKey)).toBe(false);
    expect(machine.tab().workbook.store.getState().shelf).toEqual(shelf);
  });

  it('comes beside what stands on the shelf, and a second time adds nothing', async () => {
    const machine = createMachine();
    const { workbook } = machine.tab();
    done(await workbook.shelf.addCard({ kind: 'stone', name: 'Stone A' }));
    for (const time of ['first', 'second']) {
      machine.disk.set(materialLibraryKey, saved(roll7));
      const names = machine
        .tab()
        .workbook.store.getState()
        .shelf.map(({ name }) => name);
      expect(names, time).toEqual(['Roll 7', 'Stone A']);
    }
  });

  it('stays where it is when there is no room, and when a newer app wrote it; damaged bytes are kept aside', () => {
    const machine = createMachine();
    machine.disk.set(materialLibraryKey, saved(roll7));
    machine.beforeWrite = (key) => {
      if (key === shelfKey) throw quotaError();
    };
    expect(machine.tab().workbook.store.getState().notes.join(' ')).toContain('no room');
    expect(machine.disk.get(materialLibraryKey)).toBe(saved(roll7));
    machine.beforeWrite = () => {};
    const newer = envelope({ format: 9 });
    machine.disk.set(materialLibraryKey, newer);
    expect(machine.tab().workbook.store.getState().notes.join(' ')).toContain('newer version');
    expect(machine.disk.get(materialLibraryKey)).toBe(newer);
    machine.disk.set(materialLibraryKey, '{"kind":');
    expect(machine.tab().workbook.store.getState().notes.join(' ')).toContain('library cannot be read');
    expect([...machine.disk].filter(([key]) => key.includes('kept-aside')).map(([, text]) => text)).toEqual([
      '{"kind":',
    ]);
  });
});
