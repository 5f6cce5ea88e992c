import { describe, expect, test } from 'vitest';
import { tighteningOrder } from '../../src/checklist/card/clampPlan';
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
