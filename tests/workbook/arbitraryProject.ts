/** Any valid project, for property tests. */
import * as fc from 'fast-check';
import type { PatternRecord } from '../../src/steps/shared/context';
import { defaultProjectInputs, inputSpecs, type ProjectInputs } from '../../src/steps/inputs/project';
import type { InputSpec, InputTable, NumberSpec } from '../../src/steps/kit/inputTable';
import { materialTable } from '../../src/steps/inputs/material';
import { patchTable, plyTable } from '../../src/steps/inputs/ply';
import { bedPointTable, clampTable } from '../../src/steps/inputs/clamp';
import { kineticsTable } from '../../src/steps/inputs/kinetics';
import { stageTable, supplierCureTable } from '../../src/steps/inputs/program';
import { repairTable, wantedTable, weighingTable } from '../../src/steps/inputs/moldBench';
import { coatSheetTable } from '../../src/steps/inputs/coat';
import { contentTable, measuredRimTable, stackTable, transmitterTable } from '../../src/steps/inputs/fit';
import { finishCoatTable } from '../../src/steps/inputs/finish';
import { bagTable, measuredTable } from '../../src/steps/inputs/stone';
import { valueOrigins } from '../../src/steps/shared/origins';
import { longestName, type Project } from '../../src/workbook';
import { setInputAt } from '../../src/workbook/inputEdit';
import type { CardCopy, CardValues, ShelfCard } from '../../src/workbook/shelfCards';
import { cardKinds, kindsOfCards, rowAt, type CardKind } from '../../src/workbook/shelfKinds';

const text = fc.string({ unit: 'binary', maxLength: 40 });
const name = fc.string({ minLength: 1, maxLength: longestName }).filter((s) => s.trim() === s && s !== '');
const hex = (length: number): fc.Arbitrary<string> =>
  fc.string({ unit: fc.constantFrom(...'0123456789abcdef'.split('')), minLength: length, maxLength: length });
const id = fc.stringMatching(/^[A-Za-z0-9_-]{1,64}$/);
const isoTime = fc
  .date({ min: new Date(0), max: new Date(Date.UTC(9999, 0)), noInvalidDate: true })
  .map((date) => date.toISOString());

/** JSON has no negative zero; inputs never need one. */
const plainZero = (value: number): number => (value === 0 ? 0 : value);

function numberOf(spec: NumberSpec): fc.Arbitrary<number> {
  if (spec.whole) return fc.integer({ min: spec.min, max: spec.max });
  return fc.double({ min: spec.min, max: spec.max, noNaN: true }).map(plainZero);
}

function valueOf(spec: InputSpec): fc.Arbitrary<unknown> | null {
  if (spec.kind === 'number') return spec.default === null ? fc.option(numberOf(spec)) : numberOf(spec);
  if (spec.kind === 'choice') return fc.constantFrom(...spec.choices.map(({ value }) => value));
  return null;
}

const pull = fc.tuple(
  ...([0, 1, 2] as const).map(() => fc.double({ min: -1, max: 1, noNaN: true }).map(plainZero)),
);
/** The numbers of a list's entry; those that may be empty are so now and then. */
function numbersOf(table: InputTable): Record<string, fc.Arbitrary<number | null>> {
  const rows = Object.entries(table).flatMap(([key, row]) =>
    row.kind === 'number' ? [[key, row.start === null ? fc.option(numberOf(row)) : numberOf(row)]] : [],
  );
  return Object.fromEntries(rows);
}
export const arbitraryMaterial = fc.record({
  id,
  name: text,
  weave: fc.constantFrom('woven', 'unidirectional', 'non-crimp'),
  freezerDate: fc.string({ unit: 'binary', maxLength: 40 }),
  ...numbersOf(materialTable),
});
const ply = fc.record({
  id,
  materialId: id,
  angleDeg: numberOf(plyTable.angleDeg),
  faceDown: fc.boolean(),
  mirroredPair: fc.boolean(),
});
const patch = fc.record({
  id,
  place: text,
  materialId: id,
  faceDown: fc.boolean(),
  kind: fc.constantFrom('doubler', 'overlap', 'dart'),
  ...numbersOf(patchTable),
  wallMm: fc.option(numberOf(patchTable.wallMm)),
});

const clamp = fc.record({
  id,
  placed: fc.constantFrom('round the rim', 'at a place'),
  ...numbersOf(clampTable),
});
const bedPoints = fc.record({ materialId: text, ...numbersOf(bedPointTable) });
const weighing = fc.record({
  hours: numberOf(weighingTable.hours),
  negativeG: fc.option(numberOf(weighingTable.negativeG)),
  positiveG: fc.option(numberOf(weighingTable.positiveG)),
});
const coordinate = fc.double({ min: -1e4, max: 1e4, noNaN: true }).map(plainZero);
const repair = fc.record({
  id,
  half: fc.constantFrom('negative', 'positive'),
  kind: fc.constantFrom('filled', 'scraped'),
  atMm: fc.tuple(coordinate, coordinate, coordinate),
  ...numbersOf(repairTable),
  note: text,
});

const stage = fc.record({
  targetC: numberOf(stageTable.targetC),
  rampKPerMin: fc.option(numberOf(stageTable.rampKPerMin)),
  dwellHours: numberOf(stageTable.dwellHours),
});

function mapValues<Key extends string, From, To>(
  from: Readonly<Record<Key, From>>,
  change: (value: From) => To,
): Record<Key, To> {
  return Object.fromEntries(Object.entries<From>(from).map(([key, value]) => [key, change(value)])) as Record<
    Key,
    To
  >;
}

/** Every input by its spec; lists and vectors by hand. */
const byPath: Record<string, fc.Arbitrary<unknown>> = {
  'part.pull': pull,
  'plies.materials': fc.array(arbitraryMaterial, { maxLength: 4 }),
  'plies.stack': fc.array(ply, { maxLength: 6 }),
  'plies.patches': fc.array(patch, { maxLength: 3 }),
  'closing.clamps': fc.array(clamp, { maxLength: 3 }),
  'closing.bedPoints': fc.array(bedPoints, { maxLength: 2 }),
  'mold.bag': fc.record(mapValues(bagTable, (spec) => fc.option(numberOf(spec)))),
  'mold.measured': fc.record(mapValues(measuredTable, (spec) => fc.option(numberOf(spec)))),
  'mold.coatSheet': fc.record(mapValues(coatSheetTable, (spec) => fc.option(numberOf(spec)))),
  'mold.wanted': fc.record(mapValues(wantedTable, (spec) => fc.option(numberOf(spec)))),
  'mold.dryingLog': fc.array(weighing, { maxLength: 4 }),
  'mold.repairs': fc.array(repair, { maxLength: 3 }),
  'cure.stages': fc.array(stage, { maxLength: 4 }),
  'cure.supplierCures': fc.array(fc.record(mapValues(supplierCureTable, numberOf)), { maxLength: 3 }),
  'fit.mate': fc.option(fc.record({ projectId: id, name: text })),
  'fit.contents': fc.array(
    fc.record({
      id,
      name: text,
      what: fc.constantFrom('board', 'cell', 'screen', 'button', 'other'),
      shape: fc.constantFrom('box', 'cylinder'),
      ...numbersOf(contentTable),
    }),
    { maxLength: 2 },
  ),
  'fit.transmitters': fc.array(
    fc.record({ id, name: text, works: fc.constantFrom('coil', 'antenna'), ...numbersOf(transmitterTable) }),
    { maxLength: 2 },
  ),
  'fit.stack': fc.array(fc.record({ id, name: text, ...numbersOf(stackTable) }), { maxLength: 2 }),
  'fit.measuredRims': fc.array(fc.record({ id, place: text, ...numbersOf(measuredRimTable) }), {
    maxLength: 2,
  }),
  'finish.coats': fc.array(
    fc.record({
      id,
      name: text,
      kind: fc.constantFrom('filler', 'primer', 'paint', 'clear', 'two-part spray'),
      ...numbersOf(finishCoatTable),
    }),
    { maxLength: 2 },
  ),
  'finish.startDate': fc.option(fc.constantFrom('2026-05-04', '2024-02-29')),
  'cure.kinetics': fc.record(mapValues(kineticsTable, (spec) => fc.option(numberOf(spec)))),
};

const inputs: fc.Arbitrary<ProjectInputs> = fc
  .tuple(
    ...Object.entries(inputSpecs).map(([path, spec]) => {
      const value = byPath[path] ?? valueOf(spec);
      if (value === null) throw new Error(`tests/workbook/arbitraryProject.ts needs a line for "${path}"`);
      return value.map((one) => [path, one] as const);
    }),
  )
  .map((entries) =>
    entries.reduce<ProjectInputs>((former, [path, value]) => {
      const edited = setInputAt(former, path, value);
      if (!edited.done) throw new Error(edited.reason);
      return edited.inputs;
    }, defaultProjectInputs),
  );

const pattern: fc.Arbitrary<PatternRecord> = fc.record({
  fileName: text,
  sha256: hex(64),
  format: fc.constantFrom('stl-binary', 'stl-ascii', 'obj', '3mf'),
  declaredUnit: fc.option(fc.constantFrom('mm', 'cm', 'm', 'in')),
  triangles: fc.nat(),
  degenerateFacets: fc.nat(),
  meshKey: hex(32),
  packErrorFileUnits: fc.double({ min: 0, max: 1, noNaN: true }).map(plainZero),
  notes: fc.array(text, { maxLength: 3 }),
});

const cardValuesOf = (kind: CardKind): fc.Arbitrary<CardValues> =>
  fc.record(
    Object.fromEntries(
      kindsOfCards[kind].fills.flatMap((path) => {
        const row = rowAt(path);
        const value =
          row.kind === 'number'
            ? numberOf(row)
            : row.kind === 'choice'
              ? fc.constantFrom(...row.choices.map((one) => one.value))
              : null;
        return value === null
          ? []
          : [[path, fc.record({ value, origin: fc.constantFrom(...valueOrigins) })] as const];
      }),
    ),
    { requiredKeys: [], noNullPrototype: true },
  );
const ofAnyKind = <Value>(of: (kind: CardKind) => fc.Arbitrary<Value>) => fc.oneof(...cardKinds.map(of));

/** Any card of the shelf. */
export const arbitraryCard: fc.Arbitrary<ShelfCard> = ofAnyKind((kind) =>
  fc.record({
    id,
    kind: fc.constant(kind),
    name,
    note: text,
    changedAt: isoTime,
    values: cardValuesOf(kind),
    log:
      kind === 'roll'
        ? fc.array(
            fc.record({
              id,
              at: isoTime,
              hoursH: fc.double({ min: 0.01, max: 10_000, noNaN: true }),
              project: text,
            }),
            { maxLength: 3 },
          )
        : fc.constant([]),
  }),
);
const cardCopy: fc.Arbitrary<CardCopy> = ofAnyKind((kind) =>
  fc.record({
    cardId: id,
    kind: fc.constant(kind),
    name,
    takenAt: isoTime,
    entryId: kindsOfCards[kind].list === null ? fc.constant(null) : id,
    values: cardValuesOf(kind),
  }),
);

export const arbitraryProject: fc.Arbitrary<Project> = fc.record({
  id,
  enclosure: name,
  name,
  createdAt: isoTime,
  changedAt: isoTime,
  pattern: fc.option(pattern),
  madeOf: fc.constant(null),
  inputs,
  cards: fc.array(cardCopy, { maxLength: 3 }),
  record: fc.dictionary(
    fc.stringMatching(/^[a-z][a-z.-]{0,20}$/),
    fc.record({ done: fc.boolean(), measured: text, initials: text }),
    { maxKeys: 5, noNullPrototype: true },
  ),
});
