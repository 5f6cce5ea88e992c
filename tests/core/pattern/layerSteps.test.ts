import { describe, expect, it } from 'vitest';
import { layerSteps } from '../../../src/core/pattern/layerSteps';
import type { IndexedMesh } from '../../../src/core/mesh/types';

/** A roof 40 mm long over x, its two faces leaning by `leanDeg` from the bed, without a core face. */
function roof(leanDeg: number): IndexedMesh {
  const height = 10 * Math.tan((leanDeg * Math.PI) / 180);
  const ends = [0, 40].flatMap((x) => [x, -10, 1, x, 0, 1 + height, x, 10, 1]);
  return {
    positions: Float64Array.from(ends),
    facets: Uint32Array.from([0, 3, 4, 0, 4, 1, 1, 4, 5, 1, 5, 2]),
  };
}
const stepsOf = (mesh: IndexedMesh) => layerSteps({ mesh, coreFrom: mesh.positions.length / 3, rimMm: 0 });

describe('the layer step of a roof', () => {
  it.each([10, 30, 60])('that leans by %f° is the cosine of its angle to the layers', (leanDeg) => {
    const lean = (leanDeg * Math.PI) / 180;
    const { onRim, onLongSide, onShortSide } = stepsOf(roof(leanDeg));
    expect(onRim).toBeCloseTo(Math.cos(lean), 9);
    // Standing on a long side the print grows across the roof, on a short one along its ridge.
    expect(onLongSide).toBeCloseTo(Math.sin(lean), 9);
    expect(onShortSide).toBeCloseTo(0, 9);
  });

  it('is none where the face is level', () => {
    expect(stepsOf(roof(0))).toEqual({ onRim: 0, onLongSide: 0, onShortSide: 0 });
  });
});
