import { describe, expect, it } from 'vitest';
import {
  defaultProjectInputs,
  inputTables,
  projectInputsSchema,
  specAt,
} from '../../src/steps/inputs/project';
import { mayBeLeftOut, number, optional, plain, schemaOf, startOf } from '../../src/steps/kit/inputTable';
import type { InputTable } from '../../src/steps/kit/inputTable';
import * as z from 'zod/mini';

/** What a form asks for before a fold is opened; a list or a vector counts as one. */
function firstView(table: InputTable): string[] {
  return Object.entries(table).flatMap(([name, row]) => {
    if (row.fold !== undefined || row.kind === 'plain') return [];
    return row.within?.of === 'fields' ? firstView(row.within.table) : [name];
  });
}

describe('the first view of a step', () => {
  for (const [step, table] of Object.entries<InputTable>(inputTables))
    it(`${step} asks for no more than 12 inputs`, () => {
      const asked = firstView(table);
      expect(asked.length, asked.join(', ')).toBeGreaterThan(0);
      expect(asked.length, asked.join(', ')).toBeLessThanOrEqual(12);
    });
});

describe('a row of the table', () => {
  const table = {
    id: plain(z.string().check(z.minLength(1)), 'one'),
    wallMm: number('Wall', 'mm', 2, [1, 5, 1], { meaning: 'Of the part.' }),
    plies: number('Plies', '', 3, [1, 9, 0], { meaning: 'Counted.', whole: true }),
    massG: optional('Mass', 'g', 40, [0, 100, 0], { meaning: 'On a scale.' }),
    note: mayBeLeftOut(plain(z.string(), 'none')),
  };
  const schema = schemaOf(table);
  const start = startOf(table);
  const accepts = (change: object) => schema.safeParse({ ...start, ...change }).success;

  it('gives what a new entry has; what may stay open is null', () => {
    expect(start).toEqual({ id: 'one', wallMm: 2, plies: 3, massG: null, note: 'none' });
  });

  it('gives the range and the whole numbers of the schema', () => {
    expect([1, 5].map((wallMm) => accepts({ wallMm }))).toEqual([true, true]);
    expect([0.9, 5.1, null, '2', Number.NaN].map((wallMm) => accepts({ wallMm }))).toEqual(
      Array(5).fill(false),
    );
    expect([accepts({ plies: 2 }), accepts({ plies: 2.5 })]).toEqual([true, false]);
    expect([accepts({ massG: null }), accepts({ massG: 100 }), accepts({ massG: 101 })]).toEqual([
      true,
      true,
      false,
    ]);
  });

  it('that may be left out takes its start', () => {
    const { note: _left, ...shorter } = start;
    expect(schema.parse(shorter)).toEqual(start);
  });

  it('infers exact types', () => {
    const inputs: { id: string; wallMm: number; plies: number; massG: number | null; note: string } = start;
    const { laidIn } = defaultProjectInputs.walls;
    const half: 'negative' | 'positive' = laidIn;
    expect([inputs.id, half]).toEqual(['one', 'negative']);
  });
});

it('a new project is one that the schema takes, unchanged', () => {
  expect(projectInputsSchema.parse(defaultProjectInputs)).toEqual(defaultProjectInputs);
});

it('describes an input by its path: plain, in a group, in a list', () => {
  expect(specAt('walls.filmMm')?.label).toBe('Film thickness');
  expect(specAt('mold.bag.demoldMin')?.label).toBe('Demold after, from the bag');
  expect(specAt('closing.clamps.0.forceN')?.label).toBe('Force of one clamp');
  expect(specAt('plies.materials.0.id')).toBeUndefined();
});
