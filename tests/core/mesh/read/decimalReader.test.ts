import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { DecimalReader } from '../../../../src/core/mesh/read/decimalReader';
import { bytesOf } from '../../../support/meshText';
import { propertySeed } from '../../../support/propertySeed';

const read = (text: string) => {
  const bytes = bytesOf(text);
  return new DecimalReader().read(bytes, 0, bytes.length);
};

describe(`decimal numbers from bytes (seed ${propertySeed})`, () => {
  it('agree with the platform to the last bit', () => {
    fc.assert(
      fc.property(fc.double({ noNaN: true, noDefaultInfinity: true }), (value) => {
        expect(read(String(value)) + 0).toBe(value + 0);
        expect(read(value.toExponential(6)) + 0).toBe(Number(value.toExponential(6)) + 0);
      }),
      { numRuns: 2000 },
    );
  });

  it.each([
    ['+30.000', 30],
    ['-0.', 0],
    ['.5', 0.5],
    ['-3,25', -3.25],
    ['1E3', 1000],
    ['1e-320', 1e-320],
    ['1e999999999', Infinity],
    ['1e-999999999', 0],
    [`-30.${'0'.repeat(100_000)}`, -30],
    [`${'0'.repeat(100_000)}7`, 7],
  ])('reads %s', (text, value) => {
    expect(read(text) + 0).toBe(value);
  });

  it.each(['', '-', '.', 'nan', 'inf', '-1.#INF', '1e', '1e+', '1.2.3', '1,2,3', '0x10', '3O.0', '1e5x'])(
    'refuses "%s"',
    (text) => {
      expect(read(text)).toBeNaN();
    },
  );
});
