/**
 * Numbered steps from each format of a saved project to the next. A step is never changed once released: a new
 * shape is a new number, a new step at the end, its before/after test, and a frozen document in the fixtures.
 */
export interface MigrationStep {
  /** The format that the step produces; it reads the one before. */
  readonly toFormat: number;
  /** What changed in the shape. */
  readonly change: string;
  /** Plain JSON in, plain JSON out; the input is not changed. Throws when the input has not the former shape. */
  readonly migrate: (project: JsonObject) => JsonObject;
}

export type JsonObject = { readonly [key: string]: unknown };

export function isJsonObject(value: unknown): value is JsonObject {
  return typeof value === 'object' && value !== null && !Array.isArray(value);
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
];

/** The format that this app writes. */
export const currentFormat = 2;

/** Runs every step after `fromFormat`, in order. Throws what a step throws. */
export function migrate(project: JsonObject, fromFormat: number): JsonObject {
  return migrations
    .filter(({ toFormat }) => toFormat > fromFormat)
    .reduce((document, step) => step.migrate(document), project);
}
