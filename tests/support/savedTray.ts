/** Trays whose areas are known in closed form, taken the whole way: file, saved grid, part in mm, measurement. */
import { measureSaved, type MeasuredMesh } from './measureSaved';
import { preparePattern } from '../../src/core/part/preparePattern';
import type { Vec3 } from '../../src/core/mesh/types';
import type { LengthUnit } from '../../src/core/units/length';
import { writeStlBinary } from '../../src/core/mesh/writeStl';
import { mmPerUnit } from '../../src/core/units/length';
import { mapVertices, tray } from './meshes';
import { quartered } from './quartered';

/** A tray as `tray` of meshes.ts draws it: lengths in mm, the wall measured level. */
export interface TrayShape {
  readonly size: Vec3;
  readonly wallMm: number;
  readonly draftDeg: number;
}

const plane = (u: number, v: number, angle: number): readonly [number, number] => [
  u * Math.cos(angle) - v * Math.sin(angle),
  u * Math.sin(angle) + v * Math.cos(angle),
];

/** A turn by three angles in radians, about x, then y, then z. */
export function turned([aboutX, aboutY, aboutZ]: Vec3): (vertex: Vec3) => Vec3 {
  return ([x, y, z]) => {
    const [y1, z1] = plane(y, z, aboutX);
    const [z2, x1] = plane(z1, x, aboutY);
    const [x2, y2] = plane(x1, y1, aboutZ);
    return [x2, y2, z2];
  };
}

export interface TrayFile {
  /** About x, y and z, radians. */
  readonly turn?: Vec3;
  readonly unit?: LengthUnit;
  /** How often its edges are halved before it is written. */
  readonly halvings?: number;
}

/** The tray from such a file; the pull leaves its floor. `preparePack()` must have resolved before. */
export function savedTray(
  { size, wallMm, draftDeg }: TrayShape,
  { turn = [0, 0, 0], unit = 'mm', halvings = 0 }: TrayFile = {},
): MeasuredMesh {
  const move = turned(turn);
  let plain = tray(size, wallMm, draftDeg);
  for (let halving = 0; halving < halvings; halving++) plain = quartered(plain);
  const drawn = mapVertices(mapVertices(plain, move), ([x, y, z]) => [
    x / mmPerUnit[unit],
    y / mmPerUnit[unit],
    z / mmPerUnit[unit],
  ]);
  const { canonical } = preparePattern(writeStlBinary(drawn), 'tray.stl');
  return measureSaved(canonical.mesh, {
    unit,
    declaredUnit: null,
    body: 0,
    scale: 1,
    pull: move([0, 0, -1]),
    winding: 'repair',
  });
}

/** Floor and four leaning sides of a tray, `insetMm` level inside its outside and as far above its underside, mm². */
function skinMm2({ size, draftDeg }: TrayShape, insetMm: number): number {
  const [lengthMm, widthMm, heightMm] = size;
  const leanRad = (draftDeg * Math.PI) / 180;
  const sideAt = (outsideMm: number, zMm: number) => outsideMm + 2 * zMm * Math.tan(leanRad) - 2 * insetMm;
  const slantMm = (heightMm - insetMm) / Math.cos(leanRad);
  const around = (zMm: number) => 2 * (sideAt(lengthMm, zMm) + sideAt(widthMm, zMm));
  return (
    sideAt(lengthMm, insetMm) * sideAt(widthMm, insetMm) +
    (slantMm * (around(insetMm) + around(heightMm))) / 2
  );
}

export const showMm2 = (shape: TrayShape) => skinMm2(shape, 0);
export const midSurfaceMm2 = (shape: TrayShape) => skinMm2(shape, shape.wallMm / 2);
export const coreMm2 = (shape: TrayShape) => skinMm2(shape, shape.wallMm);
