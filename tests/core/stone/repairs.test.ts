import { describe, expect, test } from 'vitest';
import { repairStepMm, wallCorrections, type Repair } from '../../../src/core/stone/repairs';

const repair: Repair = {
  id: 'one',
  half: 'negative',
  kind: 'scraped',
  atMm: [0, 0, 1],
  radiusMm: 5,
  depthMm: 0.2,
};

/** A flat shell of 1 mm: show facets at z = 1 looking up, core facets at z = 0 looking down, every 2 mm along x. */
function flatShell() {
  const xs = [-8, -6, -4, -2, 0, 2, 4, 6, 8];
  const centerMm = Float32Array.from([...xs.flatMap((x) => [x, 0, 1]), ...xs.flatMap((x) => [x, 0, 0])]);
  const normal = Float32Array.from([...xs.flatMap(() => [0, 0, 1]), ...xs.flatMap(() => [0, 0, -1])]);
  const facetCount = 2 * xs.length;
  return { facetCount, centerMm, normal, wallMm: new Float32Array(facetCount).fill(1) };
}
const round = (values: Float32Array) => Array.from(values, (value) => Math.round(value * 1000) / 1000);
const disk = (step: number) => [0, 0, step, step, step, step, step, 0, 0];

describe('repairs', () => {
  test('scraped stone makes the wall thicker within the radius, on both skins', () => {
    expect(round(wallCorrections(flatShell(), [repair]))).toEqual([...disk(0.2), ...disk(0.2)]);
  });

  test('proud filler makes it thinner, flush filler changes nothing', () => {
    expect(repairStepMm({ ...repair, kind: 'filled' })).toBe(-0.2);
    const filled = { ...repair, kind: 'filled' as const };
    expect(round(wallCorrections(flatShell(), [filled])).slice(0, 9)).toEqual(disk(-0.2));
    expect(round(wallCorrections(flatShell(), [{ ...filled, depthMm: 0 }]))).toEqual(Array(18).fill(0));
  });

  test('a repair of the positive reaches the wall seen from the show face', () => {
    const below: Repair = { ...repair, half: 'positive', atMm: [0, 0, 0] };
    expect(round(wallCorrections(flatShell(), [below])).slice(0, 9)).toEqual(disk(0.2));
  });

  test('repairs at one place add up; the far side of the part and missing walls are left alone', () => {
    const shell = flatShell();
    shell.wallMm[4] = Number.NaN;
    const twice = round(wallCorrections(shell, [repair, { ...repair, depthMm: 0.1 }]));
    expect(twice.slice(0, 9)).toEqual([0, 0, 0.3, 0.3, 0, 0.3, 0.3, 0, 0]);
    const far: Repair = { ...repair, atMm: [0, 0, 40] };
    expect(round(wallCorrections(flatShell(), [far]))).toEqual(Array(18).fill(0));
  });
});
