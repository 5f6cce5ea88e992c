/** Any valid project, for property tests. */
import * as fc from 'fast-check';
import type { PatternRecord } from '../../src/steps/context';
import { defaultProjectInputs, inputSpecs, type ProjectInputs } from '../../src/steps/inputs';
import type { InputSpec, NumberSpec } from '../../src/steps/inputSpec';
import { materialSpecs, patchSpecs, plySpecs } from '../../src/steps/plies/inputs';
import { bedPointSpecs, clampSpecs } from '../../src/steps/closing/inputs';
import { kineticsSpecs } from '../../src/steps/cure/kineticsInputs';
import { stageSpecs, supplierCureSpecs } from '../../src/steps/cure/programInputs';
import { repairSpecs, wantedSpecs, weighingSpecs } from '../../src/steps/mold/benchInputs';
import { coatSheetSpecs } from '../../src/steps/mold/coatInputs';
import { bagSpecs, measuredSpecs } from '../../src/steps/mold/stoneInputs';
import { longestName, type Project } from '../../src/workbook';
import { setInputAt } from '../../src/workbook/inputEdit';

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
/** Fields that a card may leave empty. */
const emptyFields = [
  'laidThicknessMm',
  'caliperTotalMm',
  'offcutMassG',
  'offcutAreaCm2',
  'e1GPa',
  'e2GPa',
  'g12GPa',
  'nu12',
  'expansion1PpmPerK',
  'expansion2PpmPerK',
  'expansion3PpmPerK',
  'tension1Mpa',
  'compression1Mpa',
  'tension2Mpa',
  'compression2Mpa',
  'shear12Mpa',
  'allowedOutTimeH',
] as const;
export const arbitraryMaterial = fc.record({
  id,
  name: text,
  weave: fc.constantFrom('woven', 'unidirectional', 'non-crimp'),
  freezerDate: fc.string({ unit: 'binary', maxLength: 40 }),
  ...mapValues(materialSpecs, numberOf),
  ...mapValues(pick(materialSpecs, emptyFields), (spec) => fc.option(numberOf(spec))),
});
const ply = fc.record({
  id,
  materialId: id,
  angleDeg: numberOf(plySpecs.angleDeg),
  faceDown: fc.boolean(),
  mirroredPair: fc.boolean(),
});
const patch = fc.record({
  id,
  place: text,
  materialId: id,
  faceDown: fc.boolean(),
  kind: fc.constantFrom('doubler', 'overlap', 'dart'),
  ...mapValues(patchSpecs, numberOf),
  wallMm: fc.option(numberOf(patchSpecs.wallMm)),
});

const clamp = fc.record({
  id,
  placed: fc.constantFrom('round the rim', 'at a place'),
  ...mapValues(clampSpecs, numberOf),
});
const bedPoints = fc.record({ materialId: text, ...mapValues(bedPointSpecs, numberOf) });
const weighing = fc.record({
  hours: numberOf(weighingSpecs.hours),
  negativeG: fc.option(numberOf(weighingSpecs.negativeG)),
  positiveG: fc.option(numberOf(weighingSpecs.positiveG)),
});
const coordinate = fc.double({ min: -1e4, max: 1e4, noNaN: true }).map(plainZero);
const repair = fc.record({
  id,
  half: fc.constantFrom('negative', 'positive'),
  kind: fc.constantFrom('filled', 'scraped'),
  atMm: fc.tuple(coordinate, coordinate, coordinate),
  ...mapValues(repairSpecs, numberOf),
  note: text,
});

const stage = fc.record({
  targetC: numberOf(stageSpecs.targetC),
  rampKPerMin: fc.option(numberOf(stageSpecs.rampKPerMin)),
  dwellHours: numberOf(stageSpecs.dwellHours),
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

function pick<Whole extends object, Key extends keyof Whole>(
  whole: Whole,
  keys: readonly Key[],
): Pick<Whole, Key> {
  return Object.fromEntries(keys.map((key) => [key, whole[key]])) as Pick<Whole, Key>;
}

/** Every input by its spec; lists and vectors by hand. */
const byPath: Record<string, fc.Arbitrary<unknown>> = {
  'part.pull': pull,
  'plies.materials': fc.array(arbitraryMaterial, { maxLength: 4 }),
  'plies.stack': fc.array(ply, { maxLength: 6 }),
  'plies.patches': fc.array(patch, { maxLength: 3 }),
  'closing.clamps': fc.array(clamp, { maxLength: 3 }),
  'closing.bedPoints': fc.array(bedPoints, { maxLength: 2 }),
  'mold.bag': fc.record(mapValues(bagSpecs, (spec) => fc.option(numberOf(spec)))),
  'mold.measured': fc.record(mapValues(measuredSpecs, (spec) => fc.option(numberOf(spec)))),
  'mold.coatSheet': fc.record(mapValues(coatSheetSpecs, (spec) => fc.option(numberOf(spec)))),
  'mold.wanted': fc.record(mapValues(wantedSpecs, (spec) => fc.option(numberOf(spec)))),
  'mold.dryingLog': fc.array(weighing, { maxLength: 4 }),
  'mold.repairs': fc.array(repair, { maxLength: 3 }),
  'cure.stages': fc.array(stage, { maxLength: 4 }),
  'cure.supplierCures': fc.array(fc.record(mapValues(supplierCureSpecs, numberOf)), { maxLength: 3 }),
  'cure.kinetics': fc.record(mapValues(kineticsSpecs, (spec) => fc.option(numberOf(spec)))),
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

export const arbitraryProject: fc.Arbitrary<Project> = fc.record({
  id,
  enclosure: name,
  name,
  createdAt: isoTime,
  changedAt: isoTime,
  pattern: fc.option(pattern),
  inputs,
  record: fc.dictionary(
    fc.stringMatching(/^[a-z][a-z.-]{0,20}$/),
    fc.record({ done: fc.boolean(), measured: text, initials: text }),
    { maxKeys: 5, noNullPrototype: true },
  ),
});
