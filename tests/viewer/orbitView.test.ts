import { describe, expect, it } from 'vitest';
import type { Vec3 } from '../../src/core/mesh/types';
import {
  facing,
  fitted,
  openingView,
  orbitedBy,
  pannedBy,
  pixelsPerMm,
  presetView,
  sightLine,
  viewAxes,
  viewPresets,
  zoomedBy,
  type ViewPreset,
} from '../../src/viewer/orbitView';

const box = { boxMinMm: [-35, -20, 0], boxMaxMm: [35, 20, 12] } as const;
const dot = (a: Vec3, b: Vec3) => a[0] * b[0] + a[1] * b[1] + a[2] * b[2];

describe('orbit view', () => {
  it.each([
    ['plusX', [1, 0, 0]],
    ['minusX', [-1, 0, 0]],
    ['plusY', [0, 1, 0]],
    ['minusY', [0, -1, 0]],
    ['plusZ', [0, 0, 1]],
    ['minusZ', [0, 0, -1]],
  ] as const)('%s looks from that side', (preset, side) => {
    viewAxes(viewPresets[preset]).toEye.forEach((along, axis) => expect(along).toBeCloseTo(side[axis]!, 12));
  });

  it('has right-handed unit axes from everywhere', () => {
    for (const preset of Object.keys(viewPresets) as ViewPreset[]) {
      const { right, up, toEye } = viewAxes(viewPresets[preset]);
      for (const axis of [right, up, toEye]) expect(dot(axis, axis)).toBeCloseTo(1, 12);
      const cross: Vec3 = [
        right[1] * up[2] - right[2] * up[1],
        right[2] * up[0] - right[0] * up[2],
        right[0] * up[1] - right[1] * up[0],
      ];
      expect(dot(cross, toEye)).toBeCloseTo(1, 12);
    }
  });

  it('fits the whole box, seen from the front 70 by 12 mm with a margin', () => {
    const { widthMm, heightMm, targetMm } = presetView('minusY', box);
    expect(widthMm / 70).toBeCloseTo(heightMm / 12, 9);
    expect(widthMm).toBeGreaterThan(70);
    expect(targetMm).toEqual([0, 0, 6]);
    expect(pixelsPerMm(fitted(viewPresets.minusY, box), 700, 700)).toBeCloseTo(700 / widthMm, 9);
  });

  it('opens on the side that the show face looks to', () => {
    for (const pull of [
      [0, 0, 1],
      [0, 0, -1],
      [1, 0, 0],
      [-1, 0, 0],
      [0, 1, 0],
    ] as const) {
      expect(dot(viewAxes(openingView(pull, box)).toEye, pull)).toBeGreaterThan(0.3);
    }
  });

  it('stops at straight up and down, and keeps zoom within reason', () => {
    const view = presetView('iso', box);
    expect(orbitedBy(view, 0, 500).elevationDeg).toBe(90);
    expect(orbitedBy(view, 0, -500).elevationDeg).toBe(-90);
    expect(zoomedBy(view, 1e9, box).heightMm).toBeGreaterThan(0.5);
    expect(zoomedBy(view, 1e-9, box).heightMm).toBeLessThan(5000);
  });

  it('looks through the middle of the picture at the target, and off the middle at the moved one', () => {
    const view = presetView('plusZ', box);
    const { originMm, direction } = sightLine(view, box, [250, 150], [500, 300]);
    expect(direction[2]).toBeCloseTo(-1, 12);
    expect(originMm[0]).toBeCloseTo(0, 9);
    expect(originMm[2]).toBeGreaterThan(12);
    const perMm = pixelsPerMm(view, 500, 300);
    // Seen from +z with -y below: right on the picture is +x.
    const aside = sightLine(view, box, [250 + 10 * perMm, 150], [500, 300]);
    expect(aside.originMm[0]).toBeCloseTo(10, 9);
    // Moving the part by 10 mm to the right brings the point 10 mm to the left under the middle.
    const moved = sightLine(pannedBy(view, 10, 0), box, [250, 150], [500, 300]);
    expect(moved.originMm[0]).toBeCloseTo(-10, 9);
  });

  it('turns a face away from the eye toward it, and leaves one that is seen', () => {
    const view = presetView('plusZ', box);
    expect(facing(view, [0, 0, 1])).toBe(view);
    for (const normal of [
      [0, 0, -1],
      [1, 0, 0],
      [0, -2, 0],
      [1, 1, -1],
    ] as const) {
      const toEye = viewAxes(facing(view, normal)).toEye;
      expect(dot(toEye, normal) / Math.hypot(...normal)).toBeGreaterThan(0.5);
    }
  });
});
