import { expect, it } from 'vitest';
import { dartsTogether } from '../../../src/core/drape/dartsTogether';

const line = (offMm: number, count = 11) =>
  Float32Array.from(Array.from({ length: count }, (_, at) => [at, offMm, 0]).flat());

it('is the share of a line that lies within 3 mm of another, and how near it comes', () => {
  expect(dartsTogether(line(0), line(2))).toEqual({ share: 1, leastMm: 2 });
  expect(dartsTogether(line(0), line(4))).toEqual({ share: 0, leastMm: 4 });
  // Of 21 points, those from 0 to 12 mm are within 3 mm of a line that ends at 10.
  expect(dartsTogether(line(0), line(0, 21)).share).toBeCloseTo(13 / 21, 9);
});

it('is nothing where one of both has no darts', () => {
  expect(dartsTogether(line(0), new Float32Array(0))).toEqual({ share: 0, leastMm: null });
});
