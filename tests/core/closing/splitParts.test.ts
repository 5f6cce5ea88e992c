/** Large plain walls are split before they are measured; the balance must see all of their pieces. */
import { expect, test } from 'vitest';
import { measuredPart, questionWith } from '../../pipeline/support';
import { measureSaved } from '../../support/measureSaved';
import { tray } from '../../support/meshes';

const mesh = tray([120, 64, 18], 1, 4);
const sum = (values: ArrayLike<number>) => Array.from(values).reduce((total, one) => total + one, 0);

/** Of a tray open along +z, so the negative leaves downward. */
const choices = {
  unit: 'mm',
  declaredUnit: null,
  body: 0,
  scale: 1,
  pull: [0, 0, -1],
  winding: 'repair',
} as const;

test('a part of a few large facets gives its whole mid-surface to the balance', () => {
  const { summary, measurement, measuring } = measureSaved(mesh, choices);
  expect(measuring.split).not.toBeNull();
  expect(measurement.facetCount).toBeGreaterThan(mesh.facets.length / 3);
  const { show, core } = summary.kindAreaMm2;
  expect(sum(summary.closing.areaMm2) / ((show + core) / 2)).toBeCloseTo(1, 1);
});

test('the measurement tells one sample per drawn facet, of the same area as the bins', async () => {
  const { summary, maps } = (await measuredPart(mesh, questionWith({ part: { pull: [0, 0, -1] } }))).reply;
  expect(maps.closing.areaMm2.length).toBe(maps.kind.length);
  expect(sum(maps.closing.areaMm2) / sum(summary.closing.areaMm2)).toBeCloseTo(1, 6);
});
