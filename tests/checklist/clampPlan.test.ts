import { describe, expect, test } from 'vitest';
import { clampPlan, tighteningOrder } from '../../src/checklist/card/clampPlan';
import { moldCut } from '../../src/checklist/card/moldCut';
import { ovenCurve } from '../../src/checklist/card/ovenCurve';

describe('the order of tightening', () => {
  const corners = [
    [50, 30],
    [-50, 30],
    [-50, -30],
    [50, -30],
  ] as const;

  test('goes crosswise: each second clamp is the opposite of the one before', () => {
    const order = tighteningOrder(corners);
    expect(order[1]).toEqual([-(order[0]?.[0] ?? 0), -(order[0]?.[1] ?? 0)]);
    expect(order[3]).toEqual([-(order[2]?.[0] ?? 0), -(order[2]?.[1] ?? 0)]);
  });

  test('takes every clamp once', () => {
    const round = Array.from({ length: 9 }, (_, at) => [40 * Math.cos(at), 25 * Math.sin(at)] as const);
    const order = tighteningOrder(round);
    expect(order.toSorted((a, b) => a[0] - b[0])).toEqual(round.toSorted((a, b) => a[0] - b[0]));
    expect(tighteningOrder([])).toEqual([]);
  });
});

test('a long box lies on its side, with all that stands on it', () => {
  const plan = clampPlan({
    boxMm: [40, 120],
    outlineMm: null,
    halfSizeMm: [10, 50],
    clampsMm: [[10, 50]],
    places: [{ letter: 'A', planMm: [0, -50] }],
    coldestMm: null,
  });
  expect(plan.scale).toBe(2);
  const at = new Map(
    plan.marks.flatMap((mark) => (mark.kind === 'disc' ? [[mark.text, mark.at] as const] : [])),
  );
  // The middle stands at 33, 13; what was up lies to the right.
  expect(at.get('1')).toEqual([33 + 25, 13 + 5]);
  expect(at.get('A')).toEqual([33 - 25, 13]);
});

test('the cut is drawn to its scale: stone, depth and wall over the scale', () => {
  const cut = moldCut({
    boxMm: 150,
    negativeMm: 30,
    positiveMm: 10,
    partMm: 120,
    depthMm: 20,
    gapMm: 4,
    draftDeg: 0,
  });
  expect(cut.scale).toBe(2);
  const faces = cut.marks.flatMap((mark) => (mark.kind === 'face' ? [mark.points] : []));
  const size = (at: number, axis: 0 | 1) => {
    const values = (faces[at] ?? []).map((point) => point[axis]);
    return Math.max(...values) - Math.min(...values);
  };
  expect([size(0, 0), size(0, 1), size(1, 1)]).toEqual([75, 15, 5]);
  expect([size(2, 0), size(2, 1)]).toEqual([60, 10]);
  expect([size(3, 0), size(3, 1)]).toEqual([56, 8]);
  const texts = cut.marks.flatMap((mark) => (mark.kind === 'text' ? [mark.text] : []));
  expect(texts).toEqual(expect.arrayContaining(['10.0', '20.0', '150.0', '30.0', 'gap 4.00']));
});

test('the oven curve says when it is off and when it may be opened', () => {
  const curve = { timesS: [0, 3600, 7200], valuesC: [20, 70, 70] };
  const drawing = ovenCurve({
    air: curve,
    coldest: curve,
    others: [],
    heatedS: 7200,
    openAtS: 10_800,
    demoldC: 50,
    targetsC: [70],
  });
  const texts = drawing.marks.flatMap((mark) => (mark.kind === 'text' ? [mark.text] : []));
  expect(texts).toEqual(['70', '50', '0:00', 'off at 2:00', 'open at 3:00']);
});
