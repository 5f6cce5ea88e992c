/** Cards shared by all projects: saved apart from them, read strictly, never overwritten when damaged. */
import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { defaultMaterial, type Material } from '../../src/steps/inputs/material';
import { materialLibraryKey } from '../../src/workbook/keys';
import { decodeLibrary, encodeLibrary, libraryFormat } from '../../src/workbook/materialLibrary';
import { arbitraryMaterial } from './arbitraryProject';
import { createMachine, done, propertySeed, quotaError, reasonOf } from './support';

const roll = (name: string, hoursOutH = 0): Material => ({ ...defaultMaterial, name, hoursOutH });
const envelope = (part: object) =>
  JSON.stringify({ kind: 'mold-layup-materials', format: libraryFormat, cards: [], ...part });

describe(`the saved text (seed ${propertySeed})`, () => {
  it('gives every card back as it was', () => {
    fc.assert(
      fc.property(fc.array(arbitraryMaterial, { maxLength: 4 }), (cards) => {
        expect(decodeLibrary(encodeLibrary(cards as Material[]))).toEqual({ outcome: 'ok', cards });
      }),
    );
  });

  it('fills what a card of an older app has not', () => {
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
  ])('is damaged: %s', (_what, text, reason) => {
    const loaded = decodeLibrary(text);
    expect(loaded.outcome === 'damaged' ? loaded.reason : loaded.outcome).toContain(reason);
  });

  it('of a newer app is told apart', () => {
    expect(decodeLibrary(envelope({ format: 9 }))).toEqual({ outcome: 'newer', format: 9 });
  });
});

describe('the library', () => {
  it('is empty at first, and keeps several rolls by name over a new start', () => {
    const machine = createMachine();
    const { workbook } = machine.tab();
    expect(workbook.store.getState().materialLibrary).toEqual([]);
    done(workbook.saveMaterial(roll('Twill, roll B')));
    done(workbook.saveMaterial(roll('Tape, roll A')));
    expect(
      machine
        .tab()
        .workbook.store.getState()
        .materialLibrary.map(({ name }) => name),
    ).toEqual(['Tape, roll A', 'Twill, roll B']);
  });

  it('replaces the card of the same name and forgets by name', () => {
    const { workbook } = createMachine().tab();
    done(workbook.saveMaterial(roll('Twill', 2)));
    done(workbook.saveMaterial(roll('Twill', 9)));
    expect(workbook.store.getState().materialLibrary).toEqual([roll('Twill', 9)]);
    done(workbook.forgetMaterial('Twill'));
    expect(workbook.store.getState().materialLibrary).toEqual([]);
    expect(reasonOf(workbook.saveMaterial(roll('  ')))).toContain('needs a name');
  });

  it('is shared by tabs: neither loses what the other saved', () => {
    const machine = createMachine();
    const [one, other] = [machine.tab().workbook, machine.tab().workbook];
    done(one.saveMaterial(roll('A')));
    expect(other.store.getState().materialLibrary).toHaveLength(1);
    done(other.saveMaterial(roll('B')));
    expect(one.store.getState().materialLibrary.map(({ name }) => name)).toEqual(['A', 'B']);
  });

  it('keeps damaged bytes aside and starts anew', () => {
    const machine = createMachine();
    machine.disk.set(materialLibraryKey, '{"kind":');
    const { workbook } = machine.tab();
    expect(workbook.store.getState().notes.join(' ')).toContain('material library cannot be read');
    done(workbook.saveMaterial(roll('A')));
    const aside = [...machine.disk].filter(([key]) => key.includes('kept-aside'));
    expect(aside.map(([, text]) => text)).toEqual(['{"kind":']);
  });

  it('of a newer app is left alone', () => {
    const machine = createMachine();
    const newer = envelope({ format: 9 });
    machine.disk.set(materialLibraryKey, newer);
    const { workbook } = machine.tab();
    expect(workbook.store.getState().notes.join(' ')).toContain('newer version');
    expect(reasonOf(workbook.saveMaterial(roll('A')))).toContain('cannot be changed');
    expect(machine.disk.get(materialLibraryKey)).toBe(newer);
  });

  it('says so when there is no room, and keeps what was saved', () => {
    const machine = createMachine();
    const { workbook } = machine.tab();
    done(workbook.saveMaterial(roll('A')));
    machine.beforeWrite = () => {
      throw quotaError();
    };
    expect(reasonOf(workbook.saveMaterial(roll('B')))).toContain('no room');
    expect(workbook.store.getState().materialLibrary).toEqual([roll('A')]);
  });

  it('works in memory when the browser gives no storage', () => {
    const { workbook } = createMachine().tab({ storage: 'denied' });
    done(workbook.saveMaterial(roll('A')));
    expect(workbook.store.getState().materialLibrary).toHaveLength(1);
  });
});
