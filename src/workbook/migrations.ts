/**
 * Numbered steps from each format of a saved project to the next. A step is never changed once released: a new
 * shape is a new number, a new step at the end, its before/after test, and a frozen document in the fixtures.
 * What a step fills in stands in `migrationValues.ts`; nothing here looks at the defaults of today.
 */
import { isJsonObject, type JsonObject } from './json';
import {
  filledByFormat3,
  filledByFormat4,
  filledByFormat5,
  filledByFormat7,
  type FilledIn,
} from './migrationValues';

export interface MigrationStep {
  /** The format that the step produces; it reads the one before. */
  readonly toFormat: number;
  /** What changed in the shape. */
  readonly change: string;
  /** Plain JSON in, plain JSON out; the input is not changed. Throws when the input has not the former shape. */
  readonly migrate: (project: JsonObject) => JsonObject;
}

function objectIn(parent: JsonObject, key: string): JsonObject {
  const value = parent[key];
  if (!isJsonObject(value)) throw new Error(`"${key}" is missing`);
  return value;
}

export const migrations: readonly MigrationStep[] = [
  {
    toFormat: 2,
    change: 'one wall tolerance became two: over the stack as laid, and under the cured stack',
    migrate: (project) => {
      const inputs = objectIn(project, 'inputs');
      const { toleranceMm, ...walls } = objectIn(inputs, 'walls');
      if (typeof toleranceMm !== 'number') throw new Error('"walls.toleranceMm" is missing');
      return {
        ...project,
        inputs: { ...inputs, walls: { ...walls, overMm: toleranceMm, underMm: toleranceMm } },
      };
    },
  },
  {
    toFormat: 3,
    change:
      'inputs of the ply schedule in depth and of the steps after it; what is missing starts at its default',
    migrate: (project) => ({
      ...project,
      inputs: filled(objectIn(project, 'inputs'), filledByFormat3),
    }),
  },
  {
    toFormat: 4,
    change: 'exponents of the first term of two-term kinetics; not given so far',
    migrate: (project) => ({
      ...project,
      inputs: filled(objectIn(project, 'inputs'), filledByFormat3, filledByFormat4),
    }),
  },
  {
    toFormat: 5,
    change:
      'walls are held against what the plies fill: tolerances about laid and cured went, voids and resin lost are measured or left open; what else is missing starts at its default',
    migrate: (project) => {
      const inputs = objectIn(project, 'inputs');
      const { overMm: _over, underMm: _under, ...walls } = objectIn(inputs, 'walls');
      const plies = objectIn(inputs, 'plies');
      const { wovenLimitFraction: _limit, cureTemperatureC: _cure, ...closing } = objectIn(inputs, 'closing');
      // 0 stood for "none entered".
      const measured = (field: string) => (plies[field] === 0 ? null : plies[field]);
      return {
        ...project,
        inputs: filled(
          {
            ...inputs,
            walls,
            closing,
            plies: {
              ...plies,
              resinLostPercent: measured('resinLostPercent'),
              voidPercent: measured('voidPercent'),
            },
          },
          filledByFormat3,
          filledByFormat4,
          filledByFormat5,
        ),
      };
    },
  },
  {
    toFormat: 6,
    change:
      'what follows from the oven program and the room is no longer entered: a value that was not the ready-made one stays as the maker’s own, and the temperature of the flow becomes that of the gel time',
    migrate: (project) => {
      const inputs = objectIn(project, 'inputs');
      const { cureTemperatureC, ...plies } = objectIn(inputs, 'plies');
      const { flowTemperatureC, ...closing } = objectIn(inputs, 'closing');
      const { gelC, ...mold } = objectIn(inputs, 'mold');
      const cure = objectIn(inputs, 'cure');
      return {
        ...project,
        inputs: {
          ...inputs,
          plies: {
            ...plies,
            stressFreeC: enteredOrNull(cureTemperatureC, 120),
            roomTemperatureC: enteredOrNull(plies['roomTemperatureC'], 20),
            coatSetC: enteredOrNull(plies['coatSetC'], 20),
          },
          closing: { ...closing, gelTimeAtC: flowTemperatureC ?? 70 },
          mold,
          cure: { ...cure, gelC: enteredOrNull(gelC, 70), startC: enteredOrNull(cure['startC'], 20) },
        },
      };
    },
  },
  {
    toFormat: 7,
    change:
      'inputs of the pattern to make, of ply cutting, of the bench, of fit and finish; what is missing starts at its default; copies of cards of the shelf and what a made pattern was made of, none so far',
    migrate: (project) => ({
      cards: [],
      madeOf: null,
      ...project,
      inputs: filled(objectIn(project, 'inputs'), filledByFormat7),
    }),
  },
];

/** What the maker entered; null where it was the ready-made value, or nothing. */
const enteredOrNull = (value: unknown, readyMade: number): unknown =>
  value === readyMade ? null : (value ?? null);

/**
 * The inputs with what they lack. A step gives the values of the formats before it too: a document may have been
 * saved while its own format was still growing.
 */
function filled(inputs: JsonObject, ...values: readonly FilledIn[]): JsonObject {
  return values.reduce(
    (given, { fields, entries }) => withEntriesFilled(withMissingFilled(given, fields), entries),
    inputs,
  );
}

/** Fields of `values` that `given` has not, at every depth but not inside lists. */
function withMissingFilled(given: JsonObject, values: JsonObject): JsonObject {
  const whole: Record<string, unknown> = { ...given };
  for (const [key, value] of Object.entries(values)) {
    const own = whole[key];
    if (own === undefined) whole[key] = value;
    else if (isJsonObject(own) && isJsonObject(value)) whole[key] = withMissingFilled(own, value);
  }
  return whole;
}

/** The same inside lists: what `values` has at the place of a list goes into each entry that lacks it. */
function withEntriesFilled(given: JsonObject, values: JsonObject): JsonObject {
  const whole: Record<string, unknown> = { ...given };
  for (const [key, value] of Object.entries(values)) {
    const own = whole[key];
    if (!isJsonObject(value)) continue;
    if (isJsonObject(own)) whole[key] = withEntriesFilled(own, value);
    else if (Array.isArray(own)) {
      whole[key] = own.map((entry: unknown) =>
        isJsonObject(entry) ? withMissingFilled(entry, value) : entry,
      );
    }
  }
  return whole;
}

/** The format that this app writes. */
export const currentFormat = 7;

/** Runs every step after `fromFormat`, in order. Throws what a step throws. */
export function migrate(project: JsonObject, fromFormat: number): JsonObject {
  return migrations
    .filter(({ toFormat }) => toFormat > fromFormat)
    .reduce((document, step) => step.migrate(document), project);
}
