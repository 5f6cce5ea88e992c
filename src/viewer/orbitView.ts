/**
 * Where the eye stands: a parallel (orthographic) view from a direction given by azimuth and elevation about the
 * part's z axis. Plain numbers, so that keys, touch, mouse and buttons all move the same thing.
 */
import type { Vec3 } from '../core/mesh/types';

export interface OrbitView {
  /** About z, 0 looks from +x, 90 from +y. */
  readonly azimuthDeg: number;
  /** 90 looks down from +z. */
  readonly elevationDeg: number;
  /** Point in the middle of the picture, mm. */
  readonly targetMm: Vec3;
  /** The picture shows at least this much, mm, whatever its shape. */
  readonly widthMm: number;
  readonly heightMm: number;
}

export interface PartBox {
  readonly boxMinMm: Vec3;
  readonly boxMaxMm: Vec3;
}

/** Unit vectors of the picture. */
export interface ViewAxes {
  readonly right: Vec3;
  readonly up: Vec3;
  /** From the part to the eye. */
  readonly toEye: Vec3;
}

export const viewPresets = {
  iso: { label: 'Iso', words: 'from a corner', azimuthDeg: -55, elevationDeg: 32 },
  plusX: { label: '+x', words: 'from +x', azimuthDeg: 0, elevationDeg: 0 },
  minusX: { label: '\u2212x', words: 'from \u2212x', azimuthDeg: 180, elevationDeg: 0 },
  plusY: { label: '+y', words: 'from +y', azimuthDeg: 90, elevationDeg: 0 },
  minusY: { label: '\u2212y', words: 'from \u2212y', azimuthDeg: -90, elevationDeg: 0 },
  plusZ: { label: '+z', words: 'from +z', azimuthDeg: -90, elevationDeg: 90 },
  minusZ: { label: '\u2212z', words: 'from \u2212z', azimuthDeg: -90, elevationDeg: -90 },
} as const;
export type ViewPreset = keyof typeof viewPresets;

const radians = Math.PI / 180;

export function viewAxes({
  azimuthDeg,
  elevationDeg,
}: Pick<OrbitView, 'azimuthDeg' | 'elevationDeg'>): ViewAxes {
  const ca = Math.cos(azimuthDeg * radians);
  const sa = Math.sin(azimuthDeg * radians);
  const ce = Math.cos(elevationDeg * radians);
  const se = Math.sin(elevationDeg * radians);
  return { right: [-sa, ca, 0], up: [-ca * se, -sa * se, ce], toEye: [ca * ce, sa * ce, se] };
}

const dot = (a: Vec3, b: Vec3) => a[0] * b[0] + a[1] * b[1] + a[2] * b[2];

function corners({ boxMinMm: low, boxMaxMm: high }: PartBox): Vec3[] {
  return Array.from({ length: 8 }, (_, i) => [
    i & 1 ? high[0] : low[0],
    i & 2 ? high[1] : low[1],
    i & 4 ? high[2] : low[2],
  ]);
}

const margin = 1.12;

/** The whole box in the picture, from the direction of `view`. */
export function fitted(view: Pick<OrbitView, 'azimuthDeg' | 'elevationDeg'>, box: PartBox): OrbitView {
  const { right, up } = viewAxes(view);
  const { boxMinMm: low, boxMaxMm: high } = box;
  const extent = (axis: Vec3) => {
    const along = corners(box).map((corner) => dot(corner, axis));
    return Math.max(1e-6, Math.max(...along) - Math.min(...along)) * margin;
  };
  return {
    azimuthDeg: view.azimuthDeg,
    elevationDeg: view.elevationDeg,
    targetMm: [(low[0] + high[0]) / 2, (low[1] + high[1]) / 2, (low[2] + high[2]) / 2],
    widthMm: extent(right),
    heightMm: extent(up),
  };
}

export const presetView = (preset: ViewPreset, box: PartBox): OrbitView => fitted(viewPresets[preset], box);

/** The first view of a part: from a corner on the side that the show face looks to. */
export function openingView(pull: Vec3, box: PartBox): OrbitView {
  const { azimuthDeg, elevationDeg } = viewPresets.iso;
  const toEye = viewAxes({ azimuthDeg, elevationDeg }).toEye;
  if (dot(toEye, pull) > 0.3) return fitted({ azimuthDeg, elevationDeg }, box);
  const sides = [azimuthDeg, azimuthDeg + 90, azimuthDeg + 180, azimuthDeg + 270].flatMap((azimuth) => [
    { azimuthDeg: azimuth, elevationDeg },
    { azimuthDeg: azimuth, elevationDeg: -elevationDeg },
  ]);
  const best = sides.reduce((one, other) =>
    dot(viewAxes(other).toEye, pull) > dot(viewAxes(one).toEye, pull) + 1e-9 ? other : one,
  );
  return fitted(best, box);
}

/** Turns the eye; elevation stops at straight up and straight down. */
export function orbitedBy(view: OrbitView, azimuthDeg: number, elevationDeg: number): OrbitView {
  return {
    ...view,
    azimuthDeg: (view.azimuthDeg + azimuthDeg) % 360,
    elevationDeg: Math.min(90, Math.max(-90, view.elevationDeg + elevationDeg)),
  };
}

/** Over 1 comes nearer. Kept between a hundredth and fifty times the box. */
export function zoomedBy(view: OrbitView, factor: number, box: PartBox): OrbitView {
  const diagonalMm = Math.max(
    1e-6,
    Math.hypot(...box.boxMaxMm.map((high, axis) => high - box.boxMinMm[axis]!)),
  );
  const limited = (sizeMm: number) => Math.min(50 * diagonalMm, Math.max(diagonalMm / 100, sizeMm));
  const heightMm = limited(view.heightMm / factor);
  return { ...view, heightMm, widthMm: (view.widthMm * heightMm) / view.heightMm };
}

/** Moves the part in the picture, mm to the right and up. */
export function pannedBy(view: OrbitView, rightMm: number, upMm: number): OrbitView {
  const { right, up } = viewAxes(view);
  const [x, y, z] = view.targetMm.map((at, axis) => at - rightMm * right[axis]! - upMm * up[axis]!);
  return { ...view, targetMm: [x!, y!, z!] };
}

/** Turns so that a face with this outward normal is seen, not quite head-on so that its relief shows. */
export function facing(view: OrbitView, normal: Vec3): OrbitView {
  const length = Math.hypot(...normal);
  if (length === 0) return view;
  if (dot(viewAxes(view).toEye, normal) > 0.5 * length) return view;
  const elevationDeg = Math.asin(Math.min(1, Math.max(-1, normal[2] / length))) / radians;
  const flat = Math.hypot(normal[0], normal[1]) < 0.05 * length;
  return {
    ...view,
    azimuthDeg: flat ? view.azimuthDeg : Math.atan2(normal[1], normal[0]) / radians - 25,
    elevationDeg: Math.min(75, Math.max(-75, elevationDeg + (flat ? 0 : 20))),
  };
}

export function pixelsPerMm(view: OrbitView, widthPx: number, heightPx: number): number {
  return Math.min(widthPx / view.widthMm, heightPx / view.heightMm);
}

/** The line of sight through a pixel, starting outside of the part. Pixels count from the top left. */
export function sightLine(
  view: OrbitView,
  box: PartBox,
  atPx: readonly [number, number],
  sizePx: readonly [number, number],
): { readonly originMm: Vec3; readonly direction: Vec3 } {
  const { right, up, toEye } = viewAxes(view);
  const perMm = pixelsPerMm(view, sizePx[0], sizePx[1]);
  const rightMm = (atPx[0] - sizePx[0] / 2) / perMm;
  const upMm = (sizePx[1] / 2 - atPx[1]) / perMm;
  const back = standOffMm(view, box);
  const [x, y, z] = view.targetMm.map(
    (at, axis) => at + rightMm * right[axis]! + upMm * up[axis]! + back * toEye[axis]!,
  );
  return { originMm: [x!, y!, z!], direction: [-toEye[0], -toEye[1], -toEye[2]] };
}

/** Distance of the eye from the target that clears the whole box however the target was moved. */
export function standOffMm(view: OrbitView, box: PartBox): number {
  const reach = corners(box).map((corner) =>
    Math.hypot(...corner.map((at, axis) => at - view.targetMm[axis]!)),
  );
  return 1.1 * Math.max(...reach) + 1e-6;
}
