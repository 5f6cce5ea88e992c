/** Every format that was ever written can still be read. */
import { readdirSync, readFileSync } from 'node:fs';
import { afterAll, describe, expect, it } from 'vitest';
import { decodeProject } from '../../src/workbook/envelope';
import type { JsonObject } from '../../src/workbook/json';
import { currentFormat, migrate, migrations } from '../../src/workbook/migrations';
import {
  filledByFormat3,
  filledByFormat4,
  filledByFormat5,
  filledByFormat7,
} from '../../src/workbook/migrationValues';

const workbook = new URL('../../src/workbook/', import.meta.url);
/** What the documents of formats 1 to 4 became when format 5 was released, list entries and all. */
const migratedTo5 = new URL('./migratedTo5/', import.meta.url);
const fixtures = new URL('./fixtures/', import.meta.url);
const fixtureName = (format: number): string => `format-${format}.json`;
const readFixture = (format: number): string => readFileSync(new URL(fixtureName(format), fixtures), 'utf8');
/** Module specifiers of a file of the workbook. */
const importsOf = (file: string) =>
  [...readFileSync(new URL(file, workbook), 'utf8').matchAll(/\bfrom '([^']+)'/g)].map(([, path]) => path);
const formats = Array.from({ length: currentFormat }, (_, i) => i + 1);

interface StepCase {
  readonly before: JsonObject;
  readonly after: JsonObject;
  /** A document that has not the former shape, and what the step says about it. */
  readonly broken: JsonObject;
  readonly complaint: string;
}

/** What a step fills in, section by section. */
const by3 = filledByFormat3.fields as Readonly<Record<string, JsonObject>>;
const by4 = filledByFormat4.fields as { readonly cure: { readonly kinetics: JsonObject } };
const by5 = filledByFormat5.fields as Readonly<Record<string, JsonObject>>;
const kineticsOfFormat3 = { ...(by3['cure']?.['kinetics'] as JsonObject), k2PerS: 1.5e5 };
const kineticsOfFormat4 = { ...kineticsOfFormat3, ...by4.cure.kinetics };

/** One before and after for each step, by the format it produces. */
const stepCases: Readonly<Record<number, StepCase>> = {
  2: {
    before: { id: 'a', inputs: { part: { scale: 2 }, walls: { toleranceMm: 0.1, measure: 'ray' } } },
    after: { id: 'a', inputs: { part: { scale: 2 }, walls: { overMm: 0.1, underMm: 0.1, measure: 'ray' } } },
    broken: { inputs: { walls: {} } },
    complaint: '"walls.toleranceMm" is missing',
  },
  3: {
    before: { id: 'a', inputs: { part: { scale: 2 }, plies: { bulkFactor: 1.2, stack: [{ id: 'p' }] } } },
    after: {
      id: 'a',
      inputs: {
        ...by3,
        part: { scale: 2 },
        plies: {
          ...by3['plies'],
          bulkFactor: 1.2,
          stack: [{ id: 'p', faceDown: false, mirroredPair: false }],
        },
      },
    },
    broken: { id: 'a' },
    complaint: '"inputs" is missing',
  },
  4: {
    before: { id: 'a', inputs: { ...by3, cure: { ...by3['cure'], kinetics: kineticsOfFormat3 } } },
    after: { id: 'a', inputs: { ...by3, cure: { ...by3['cure'], kinetics: kineticsOfFormat4 } } },
    broken: { id: 'a' },
    complaint: '"inputs" is missing',
  },
  5: {
    before: {
      id: 'a',
      inputs: {
        ...by3,
        walls: { overMm: 0.1, underMm: 0.05, measure: 'ball' },
        plies: { ...by3['plies'], voidPercent: 0, resinLostPercent: 3, patches: [{ id: 'q' }] },
        closing: { ...by3['closing'], wovenLimitFraction: 0.65, cureTemperatureC: 120 },
        cure: { ...by3['cure'], kinetics: kineticsOfFormat4 },
      },
    },
    after: {
      id: 'a',
      inputs: {
        walls: { ...by5['walls'], measure: 'ball' },
        plies: {
          ...by3['plies'],
          ...by5['plies'],
          voidPercent: null,
          resinLostPercent: 3,
          patches: [{ id: 'q', faceDown: false, kind: 'doubler', wallMm: null }],
        },
        closing: { ...by3['closing'], ...by5['closing'] },
        mold: { ...by3['mold'], ...by5['mold'] },
        cure: { ...by3['cure'], ...by5['cure'], kinetics: kineticsOfFormat4 },
      },
    },
    broken: { id: 'a', inputs: {} },
    complaint: '"walls" is missing',
  },
  6: {
    before: {
      id: 'a',
      inputs: {
        part: { scale: 2 },
        plies: { cureTemperatureC: 120, roomTemperatureC: 20, coatSetC: 60, lineWidthMm: 0.4 },
        closing: { flowTemperatureC: 80, timeToGelMin: 45 },
        mold: { gelC: 90, roomC: 23 },
        cure: { startC: 20, overshootK: 3 },
      },
    },
    after: {
      id: 'a',
      inputs: {
        part: { scale: 2 },
        plies: { stressFreeC: null, roomTemperatureC: null, coatSetC: 60, lineWidthMm: 0.4 },
        closing: { gelTimeAtC: 80, timeToGelMin: 45 },
        mold: { roomC: 23 },
        cure: { startC: null, overshootK: 3, gelC: 90 },
      },
    },
    broken: { id: 'a', inputs: { plies: {}, closing: {} } },
    complaint: '"mold" is missing',
  },
  7: {
    before: { id: 'a', inputs: { part: { scale: 2 }, cure: { gelC: 90 } } },
    after: {
      id: 'a',
      cards: [],
      madeOf: null,
      inputs: { ...filledByFormat7.fields, part: { scale: 2, rightWayUp: 'settled' }, cure: { gelC: 90 } },
    },
    broken: { id: 'a' },
    complaint: '"inputs" is missing',
  },
};

describe('migration steps', () => {
  const ran = new Set<number>();
  // Fails when a step is added without a case that runs it.
  afterAll(() => expect([...ran]).toEqual(migrations.map(({ toFormat }) => toFormat)));

  it('are numbered without gaps up to the format that is written', () => {
    expect(migrations.map(({ toFormat }) => toFormat)).toEqual(formats.slice(1));
  });

  it.each(Object.entries(stepCases))(
    'to format %s turns before into after and leaves the input alone',
    (to, one) => {
      const step = migrations.find(({ toFormat }) => toFormat === Number(to));
      const before = structuredClone(one.before);
      expect(step?.migrate(before)).toEqual(one.after);
      expect(before).toEqual(one.before);
      expect(() => step?.migrate(one.broken)).toThrow(one.complaint);
      ran.add(Number(to));
    },
  );

  it('do nothing to a document of the current format', () => {
    const document = { any: 'shape' };
    expect(migrate(document, currentFormat)).toBe(document);
  });
});

describe('frozen documents', () => {
  it('exist for every format, and for no other', () => {
    expect(readdirSync(fixtures).sort()).toEqual(formats.map(fixtureName).sort());
  });

  it.each(formats)('of format %i can be opened', (format) => {
    const loaded = decodeProject(readFixture(format));
    expect(loaded).toMatchObject({
      outcome: format === currentFormat ? 'ok' : 'migrated',
      project: {
        id: `frozen-${format}`,
        enclosure: 'Bench lamp',
        record: { 'walls.measured': { done: true, measured: '0.92 mm' } },
      },
    });
  });

  it.each([1, 2, 3, 4])('of format %i becomes what it became when format 5 was released', (format) => {
    const saved = JSON.parse(readFixture(format)) as { readonly project: JsonObject };
    const atFormat5 = migrations
      .filter(({ toFormat }) => toFormat > format && toFormat <= 5)
      .reduce((document, step) => step.migrate(document), saved.project);
    expect(atFormat5).toEqual(JSON.parse(readFileSync(new URL(fixtureName(format), migratedTo5), 'utf8')));
  });

  it('are read by steps that know no default of today', () => {
    expect(importsOf('migrations.ts')).toEqual(['./json', './migrationValues']);
    expect(importsOf('migrationValues.ts')).toEqual(['./json']);
    expect(importsOf('json.ts')).toEqual([]);
  });

  it('of format 1 gives up its tolerance about laid and cured', () => {
    expect(decodeProject(readFixture(1))).toMatchObject({
      fromFormat: 1,
      project: { inputs: { walls: { toleranceMm: null, goVoidPercent: 1 } } },
    });
  });

  it('of format 2 gets what its cards and plies did not have', () => {
    expect(decodeProject(readFixture(2))).toMatchObject({
      fromFormat: 2,
      project: {
        inputs: {
          plies: {
            materials: [{ laidThicknessMm: 0.3, caliperTotalMm: null, caliperPlies: 3, hoursOutH: 0 }],
            stack: [{ angleDeg: 0, faceDown: false, mirroredPair: false }, {}, {}],
            patches: [],
          },
        },
      },
    });
  });

  it('of format 5 follows the oven program where nothing else was entered, and keeps what was', () => {
    expect(decodeProject(readFixture(5))).toMatchObject({
      fromFormat: 5,
      project: {
        inputs: {
          plies: { stressFreeC: null, roomTemperatureC: null, coatSetC: null },
          closing: { timeToGelMin: 60, gelTimeAtC: 70 },
          cure: { gelC: null, startC: null },
        },
      },
    });
    const own = readFixture(5)
      .replace('"cureTemperatureC": 120', '"cureTemperatureC": 135')
      .replace('"gelC": 70', '"gelC": 95')
      .replace('"flowTemperatureC": 70', '"flowTemperatureC": 85')
      .replace('"startC": 20', '"startC": 17')
      // Changed by hand, so it cannot agree; texts without one open all the same.
      .replace(/,\s*"checksum": "[^"]*"/u, '');
    expect(decodeProject(own)).toMatchObject({
      project: {
        inputs: {
          plies: { stressFreeC: 135 },
          closing: { gelTimeAtC: 85 },
          cure: { gelC: 95, startC: 17 },
        },
      },
    });
  });

  it('of a former format is damaged when a step cannot read it', () => {
    expect(decodeProject(readFixture(1).replace('"toleranceMm"', '"tolerance"'))).toEqual({
      outcome: 'damaged',
      reason: `it could not be brought from format 1 to ${currentFormat}: "walls.toleranceMm" is missing`,
    });
  });
});
