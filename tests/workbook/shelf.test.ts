/** The shop's shelf: saved apart from the projects, read strictly, never overwritten when damaged, one writer at a time. */
import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { withChecksum } from '../../src/workbook/checksum';
import { shelfKey } from '../../src/workbook/keys';
import { hoursOutOf, outTimeLeftH, type ShelfCard } from '../../src/workbook/shelfCards';
import { cardKinds, kindsOfCards, rowAt } from '../../src/workbook/shelfKinds';
import { decodeShelf, encodeShelf, shelfFormat } from '../../src/workbook/shelfText';
import { arbitraryCard } from './arbitraryProject';
import { createMachine, done, propertySeed, quotaError, reasonOf } from './support';

const weight = 'plies.materials.N.arealWeightGsm';
const allowed = 'plies.materials.N.allowedOutTimeH';
const hours = 'plies.materials.N.hoursOutH';
const card: ShelfCard = {
  id: 'roll-1',
  kind: 'roll',
  name: 'Roll 7',
  note: '',
  changedAt: '2026-01-05T08:00:00.000Z',
  values: { [weight]: { value: 245, origin: 'supplier' } },
  log: [],
};
const withIt = (change: object) =>
  JSON.stringify(
    withChecksum({ kind: 'mold-layup-shelf', format: shelfFormat, cards: [{ ...card, ...change }] }),
  );
const namesIn = (workbook: { store: { getState: () => { shelf: readonly ShelfCard[] } } }) =>
  workbook.store.getState().shelf.map(({ name }) => name);

describe('the kinds of cards', () => {
  it.each(cardKinds)('%s names inputs that there are, each once', (kind) => {
    const { fills, measured, list } = kindsOfCards[kind];
    expect(fills.length).toBeGreaterThan(0);
    expect(new Set(fills).size).toBe(fills.length);
    for (const path of fills) expect(rowAt(path)).toBeDefined();
    for (const path of measured) expect(fills).toContain(path);
    expect(fills.every((path) => path.includes('.N.') === (list !== null))).toBe(true);
  });

  it('fill no input twice, so that two picked cards never argue', () => {
    const all = cardKinds.flatMap((kind) => kindsOfCards[kind].fills);
    expect(all.filter((path, at) => all.indexOf(path) !== at)).toEqual([]);
  });
});

describe(`the saved text (seed ${propertySeed})`, () => {
  it('gives every card back as it was', () => {
    fc.assert(
      fc.property(fc.uniqueArray(arbitraryCard, { maxLength: 4, selector: ({ id }) => id }), (cards) => {
        expect(decodeShelf(encodeShelf(cards))).toEqual({ outcome: 'ok', cards });
      }),
    );
  });

  it.each([
    ['half a text', '{"kind":"mold-lay', 'breaks off'],
    ['another text', '{"kind":"mold-layup-project"}', 'not a shelf'],
    ['null', 'null', 'not a shelf'],
    ['a flipped bit', withIt({}).replace('245', '247'), 'checksum'],
    ['no format', JSON.stringify({ kind: 'mold-layup-shelf', cards: [] }), 'format number'],
    ['no list', JSON.stringify({ kind: 'mold-layup-shelf', format: 1 }), 'the whole list'],
    ['an unknown kind', withIt({ kind: 'engine' }), '0.kind'],
    ['no name', withIt({ name: ' ' }), '0.name'],
    ['an id with a slash', withIt({ id: '../x' }), '0.id'],
    ['a value out of range', withIt({ values: { [weight]: { value: -1, origin: 'typical' } } }), weight],
    [
      'a value of the wrong type',
      withIt({ values: { [weight]: { value: '245', origin: 'typical' } } }),
      weight,
    ],
    ['an empty value', withIt({ values: { [weight]: { value: null, origin: 'typical' } } }), weight],
    ['an unknown origin', withIt({ values: { [weight]: { value: 245, origin: 'a friend' } } }), 'origin'],
    [
      'an input that it cannot fill',
      withIt({ values: { 'part.scale': { value: 2, origin: 'typical' } } }),
      '0.values',
    ],
    [
      'a name of the language',
      withIt({})
        .replace(weight, '__proto__')
        .replace(/,"checksum":"[^"]*"/u, ''),
      '0.values',
    ],
    [
      'a log of a stone',
      withIt({ kind: 'stone', values: {}, log: [{ id: 'a', at: card.changedAt, hoursH: 1, project: '' }] }),
      '0.log',
    ],
    [
      'hours of nothing',
      withIt({ log: [{ id: 'a', at: card.changedAt, hoursH: 0, project: '' }] }),
      'hoursH',
    ],
    [
      'two of one id',
      JSON.stringify(withChecksum({ kind: 'mold-layup-shelf', format: 1, cards: [card, card] })),
      'one id',
    ],
  ])('is damaged: %s', (_what, text, reason) => {
    const loaded = decodeShelf(text);
    expect(loaded.outcome === 'damaged' ? loaded.reason : loaded.outcome).toContain(reason);
  });

  it('of a newer app is told apart', () => {
    expect(decodeShelf(JSON.stringify({ kind: 'mold-layup-shelf', format: 9 }))).toEqual({
      outcome: 'newer',
      format: 9,
    });
  });
});

describe('the shelf', () => {
  it('is empty at first, and keeps cards by kind and name over a new start', async () => {
    const machine = createMachine();
    const { workbook } = machine.tab();
    expect(workbook.store.getState().shelf).toEqual([]);
    done(await workbook.shelf.addCard({ kind: 'stone', name: 'Stone B' }));
    done(await workbook.shelf.addCard({ kind: 'stone', name: 'Stone A' }));
    done(await workbook.shelf.addCard({ kind: 'oven', name: 'Small oven' }));
    expect(namesIn(machine.tab().workbook)).toEqual(['Small oven', 'Stone A', 'Stone B']);
  });

  it('refuses a value that its input would refuse, in the words of the input', async () => {
    const { workbook } = createMachine().tab();
    const made = done(await workbook.shelf.addCard({ kind: 'roll', name: 'Roll 7' })).card;
    const set = (value: number) =>
      workbook.shelf.changeCard(made.id, (former) => ({
        ...former,
        values: { [weight]: { value, origin: 'supplier' } },
      }));
    expect(reasonOf(await set(5))).toBe('Fiber areal weight must be a number from 10 to 3000 g/m².');
    done(await set(245));
    expect(reasonOf(await workbook.shelf.changeCard(made.id, (one) => ({ ...one, name: ' ' })))).toContain(
      'name',
    );
    expect(reasonOf(await workbook.shelf.addCard({ kind: 'roll', name: 'x'.repeat(121) }))).toContain('name');
    expect(workbook.store.getState().shelf[0]?.values[weight]).toEqual({ value: 245, origin: 'supplier' });
  });

  it('puts a deleted card back as it was, log and all', async () => {
    const { workbook } = createMachine().tab();
    const { id } = done(await workbook.shelf.addCard({ kind: 'roll', name: 'Roll 7' })).card;
    done(await workbook.shelf.logHours(id, 2, 'Lamp, Lid'));
    const before = workbook.store.getState().shelf;
    done(await workbook.shelf.deleteCard(id));
    expect(workbook.store.getState().shelf).toEqual([]);
    expect(reasonOf(await workbook.shelf.deleteCard(id))).toContain('no longer on the shelf');
    done(await workbook.shelf.undeleteCard(id));
    expect(workbook.store.getState().shelf).toEqual(before);
    expect(workbook.store.getState().deletedCards).toEqual([]);
    expect(reasonOf(await workbook.shelf.undeleteCard(id))).toContain('no delete to undo');
  });

  it('counts the hours of a roll over all projects, and what is left of its out-life', async () => {
    const machine = createMachine();
    const { workbook } = machine.tab();
    const values = {
      [hours]: { value: 30, origin: 'measured' },
      [allowed]: { value: 40, origin: 'supplier' },
    } as const;
    const { id } = done(await workbook.shelf.addCard({ kind: 'roll', name: 'Roll 7', values })).card;
    done(await workbook.shelf.logHours(id, 4, 'Lamp, Lid'));
    done(await machine.tab().workbook.shelf.logHours(id, 2.5, 'Meter, Upper half'));
    expect(reasonOf(await workbook.shelf.logHours(id, 0, ''))).toContain('0.01 to 10000');
    const [roll] = workbook.store.getState().shelf as [ShelfCard];
    expect(roll.log.map(({ project }) => project)).toEqual(['Lamp, Lid', 'Meter, Upper half']);
    // 30 h before the log, 4 h and 2.5 h in it; 40 h are allowed.
    expect(hoursOutOf(roll)).toBe(36.5);
    expect(outTimeLeftH(roll)).toBe(3.5);
    done(await workbook.shelf.removeSession(id, roll.log[0]?.id ?? ''));
    expect(hoursOutOf(workbook.store.getState().shelf[0] as ShelfCard)).toBe(32.5);
    expect(outTimeLeftH({ ...roll, values: {} })).toBeNull();
  });

  it('is shared by tabs: each follows, and neither loses what the other saved', async () => {
    const machine = createMachine();
    const [one, other] = [machine.tab().workbook, machine.tab().workbook];
    const { id } = done(await one.shelf.addCard({ kind: 'stone', name: 'A' })).card;
    expect(namesIn(other)).toEqual(['A']);
    done(await other.shelf.changeCard(id, (former) => ({ ...former, note: 'by the other' })));
    done(await one.shelf.changeCard(id, (former) => ({ ...former, name: 'A, renamed' })));
    expect(other.store.getState().shelf[0]).toMatchObject({ name: 'A, renamed', note: 'by the other' });
    // At the very same moment only one of them may write; the other says so, and nothing is lost.
    const both = await Promise.all([
      one.shelf.addCard({ kind: 'stone', name: 'B' }),
      other.shelf.addCard({ kind: 'stone', name: 'C' }),
    ]);
    expect(both.map((outcome) => outcome.done)).toEqual([true, false]);
    expect(reasonOf(both[1] as never)).toContain('Another tab');
    done(await other.shelf.addCard({ kind: 'stone', name: 'C' }));
    expect(namesIn(one)).toEqual(['A, renamed', 'B', 'C']);
  });

  it('keeps damaged bytes aside and starts anew', async () => {
    const machine = createMachine();
    machine.disk.set(shelfKey, '{"kind":');
    const { workbook } = machine.tab();
    expect(workbook.store.getState().notes.join(' ')).toContain('shelf cannot be read');
    done(await workbook.shelf.addCard({ kind: 'oven', name: 'A' }));
    const aside = [...machine.disk].filter(([key]) => key.includes('kept-aside'));
    expect(aside.map(([, text]) => text)).toEqual(['{"kind":']);
  });

  it('of a newer app is left alone', async () => {
    const machine = createMachine();
    const newer = JSON.stringify({ kind: 'mold-layup-shelf', format: 9 });
    machine.disk.set(shelfKey, newer);
    const { workbook } = machine.tab();
    expect(workbook.store.getState().notes.join(' ')).toContain('newer version');
    expect(reasonOf(await workbook.shelf.addCard({ kind: 'oven', name: 'A' }))).toContain(
      'cannot be changed',
    );
    expect(reasonOf(workbook.shelf.exportShelf())).toContain('cannot be read');
    expect(machine.disk.get(shelfKey)).toBe(newer);
  });

  it('says so when there is no room, and keeps what was saved', async () => {
    const machine = createMachine();
    const { workbook } = machine.tab();
    done(await workbook.shelf.addCard({ kind: 'oven', name: 'A' }));
    const before = machine.disk.get(shelfKey);
    machine.beforeWrite = () => {
      throw quotaError();
    };
    expect(reasonOf(await workbook.shelf.addCard({ kind: 'oven', name: 'B' }))).toContain('no room');
    expect(namesIn(workbook)).toEqual(['A']);
    expect(machine.disk.get(shelfKey)).toBe(before);
  });

  it('works in memory when the browser gives no storage, and without locks', async () => {
    for (const options of [{ storage: 'denied' }, { locks: 'absent' }] as const) {
      const { workbook } = createMachine().tab(options);
      done(await workbook.shelf.addCard({ kind: 'oven', name: 'A' }));
      expect(namesIn(workbook)).toEqual(['A']);
    }
  });

  it('goes to another machine as a file, and never over what stands there', async () => {
    const here = createMachine().tab().workbook;
    const { id } = done(await here.shelf.addCard({ kind: 'oven', name: 'Small oven' })).card;
    const { file } = done(here.shelf.exportShelf());
    const there = createMachine().tab().workbook;
    expect(done(await there.shelf.importShelf(file.text)).added).toBe(1);
    expect(done(await there.shelf.importShelf(`\uFEFF${file.text}`)).added).toBe(0);
    done(await there.shelf.changeCard(id, (former) => ({ ...former, name: 'My oven' })));
    expect(done(await there.shelf.importShelf(file.text)).added).toBe(1);
    expect(namesIn(there)).toEqual(['My oven', 'Small oven']);
    expect(reasonOf(await there.shelf.importShelf('{"kind"'))).toContain('Nothing was changed');
    expect(namesIn(there)).toEqual(['My oven', 'Small oven']);
  });
});
