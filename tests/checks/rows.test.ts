/** What stands behind the check rows: how many by status, and that a published row is somebody else's printed answer. */
import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { entriesOf, lastPlaceOf, type CheckRow } from '../support/checkRows';

const folder = new URL('./', import.meta.url);
const files = readdirSync(folder).filter((name) => name.endsWith('.json'));
const rows = files.flatMap((file) =>
  (JSON.parse(readFileSync(new URL(file, folder), 'utf8')) as CheckRow[]).map((row) => ({ ...row, file })),
);
const withStatus = (status: string) => rows.filter((row) => row.status === status);
const published = withStatus('published');

/** Fewest that may be left; add rows, never take a source away. */
const leastPublished = 45;

describe('check rows', () => {
  test('every row names its source and one of four statuses, once in its file', () => {
    for (const { id, file, source, status } of rows) {
      expect(source.length, id).toBeGreaterThan(10);
      expect(['published', 'computed', 'common practice', 'from memory'], id).toContain(status);
      expect(rows.filter((row) => row.id === id && row.file === file).length, id).toBe(1);
    }
  });

  test(`at least ${leastPublished} are published`, () => {
    const counts = ['published', 'computed', 'common practice', 'from memory'].map(
      (status) => `${withStatus(status).length} ${status}`,
    );
    expect(published.length, `${rows.length} rows: ${counts.join(', ')}`).toBeGreaterThanOrEqual(
      leastPublished,
    );
  });

  test('only published rows hold printed numbers, and they hold nothing else', () => {
    for (const { id, status, expected, printed } of rows) {
      expect(printed !== undefined, `${id}: printed digits`).toBe(status === 'published');
      expect(expected !== undefined, `${id}: numbers of our own`).toBe(status !== 'published');
    }
  });

  test.each(published.map((row) => [row.id, row] as const))('%s can be looked up', (_, { address, work }) => {
    expect(address !== undefined || work !== undefined).toBe(true);
    if (address !== undefined) expect(address).toMatch(/^https?:\/\/[^/]+\.[a-z]+\/\S*$/u);
    // A work is told by its year and a place in it.
    if (work !== undefined) expect(work).toMatch(/\b(?:19|20)\d\d\b.*\d/u);
  });

  test.each(published.map((row) => [row.id, row] as const))('%s asks no more than its digits', (_, row) => {
    for (const [key, entries] of entriesOf(row))
      for (const { value, allowed, lastPlace } of entries)
        expect(allowed, `${key} ${value}`).toBeGreaterThanOrEqual(0.5 * lastPlace! * (1 - 1e-9));
  });

  test('the last printed place', () => {
    expect(lastPlaceOf('181.8')).toBeCloseTo(0.1, 12);
    expect(lastPlaceOf('1.739e9')).toBeCloseTo(1e6, 3);
    expect(lastPlaceOf('-5.240e-3')).toBeCloseTo(1e-6, 12);
    expect(lastPlaceOf('60')).toBe(1);
    expect(() => lastPlaceOf('about 3')).toThrow('no printed number');
  });
});
