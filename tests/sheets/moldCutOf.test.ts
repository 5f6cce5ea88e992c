/** The cut through the closed mold, by hand: a part of 60 x 40 x 12 mm with 15 mm of cover round it. */
import { describe, expect, it } from 'vitest';
import type { MoldBox } from '../../src/core/stone/moldGeometry';
import { cutPlane, moldCutOf } from '../../src/sheets/decision/moldCutOf';
import { defaultProjectInputs } from '../../src/steps/inputs/project';

const low = [0, 0, 0] as const;
const high = [60, 40, 12] as const;
const mold = {
  ...defaultProjectInputs.mold,
  coverXLowMm: 15,
  coverXHighMm: 15,
  coverYLowMm: 10,
  coverYHighMm: 20,
};
const box: MoldBox = {
  shape: 'rectangle',
  innerMm: [90, 70, 47],
  negativeHeightMm: 27,
  positiveHeightMm: 20,
  cornerRadiusMm: 0,
  wallDraftDeg: 0,
};
const square = Float64Array.of(0, 0, 40, 0, 40, 12, 0, 12);
const section = {
  plane: { axis: 'x', atMm: 30 },
  lines: [{ pointsMm: square, closed: true }],
  walls: [],
} as const;

describe('the cut through the closed mold', () => {
  it('lies so that the pull is up: across x for a pull along z, across y for x, across z for y', () => {
    expect(cutPlane([0, 0, 1], low, high)).toEqual({ axis: 'x', atMm: 0.503 * 60 });
    expect(cutPlane([-2, 0, 0], low, high)?.axis).toBe('y');
    expect(cutPlane([0, 1, 0], low, high)?.axis).toBe('z');
    expect(cutPlane([0, 0.3, 1], low, high)).toBeNull();
  });

  it('has the box with its covers, and the halves meet at the rim', () => {
    const cut = moldCutOf(section, [0, 0, 1], low, high, box, mold);
    expect(cut?.box).toEqual({ left: -10, right: 60, low: -20, high: 27 });
    expect(cut?.partingMm).toBe(0);
    expect(cut?.outlines[0]?.[2]).toEqual([40, 12]);
  });

  it('turns a part over whose show face looks down', () => {
    const cut = moldCutOf(section, [0, 0, -1], low, high, box, mold);
    expect(cut?.partingMm).toBe(-12);
    expect(cut?.box).toMatchObject({ low: -32, high: 15 });
    expect(cut?.outlines[0]?.[2]).toEqual([40, -12]);
  });

  it('is not drawn where the box stands turned to it', () => {
    expect(moldCutOf(section, [0, 0, 1], low, high, { ...box, innerMm: [97, 83, 47] }, mold)).toBeNull();
  });
});
