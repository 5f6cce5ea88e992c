import { Problem } from '../../problem';
import type { FileMesh, MeshFormat, Vec3 } from '../types';
import type { LengthUnit } from '../../units/length';
import { limits } from '../limits';

/** What a reader hands over: corners in file coordinates, as found. */
export interface RawTriangles {
  readonly format: MeshFormat;
  readonly declaredUnit: LengthUnit | null;
  /** 9 numbers per triangle. May be changed. */
  readonly corners: Float32Array | Float64Array;
  readonly notes: readonly string[];
}

/** The origin is moved when the part lies further from it than this many diagonals. */
const farInDiagonals = 20;

/**
 * The checks that all formats share: something must be there, non-finite triangles are left out with a note, the size
 * must be one that can be computed with, and a part far from the origin is moved near it.
 */
export function finishFileMesh(raw: RawTriangles): FileMesh {
  const notes = [...raw.notes];
  if (raw.corners.length === 0) {
    throw new Problem(
      'mesh.noTriangles',
      'The file holds no triangles: there is nothing to import. Export the part again as a mesh.',
    );
  }
  const corners = keepFinite(raw.corners);
  const left = (raw.corners.length - corners.length) / 9;
  if (corners.length === 0) {
    throw new Problem(
      'mesh.notNumbers',
      'No triangle in this file has coordinates that are numbers. Export the part again.',
    );
  }
  if (left > 0) {
    notes.push(
      left === 1
        ? 'One triangle has a coordinate that is not a number and was left out.'
        : `${left} triangles have a coordinate that is not a number and were left out.`,
    );
  }

  const { min, max } = boxOf(corners);
  const diagonal = Math.hypot(max[0] - min[0], max[1] - min[1], max[2] - min[2]);
  if (diagonal > limits.largestDiagonal) {
    throw new Problem(
      'mesh.tooLarge',
      `The part would be ${shortNumber(diagonal)} units across, which no unit makes an enclosure. The file is damaged or was exported with a wrong scale; export it again in millimeters.`,
    );
  }
  if (diagonal > 0 && diagonal < limits.smallestDiagonal) {
    throw new Problem(
      'mesh.tooSmall',
      `The part would be ${shortNumber(diagonal)} units across, which no unit makes an enclosure. The file is damaged or was exported with a wrong scale; export it again in millimeters.`,
    );
  }

  const distance = Math.hypot(...middleOf(min, max));
  if (distance <= farInDiagonals * diagonal) {
    return { format: raw.format, declaredUnit: raw.declaredUnit, corners, origin: [0, 0, 0], notes };
  }
  notes.push(
    `The part lies ${shortNumber(distance)} file units from the origin of its drawing; it was moved near the origin before measuring. Far out, files keep coordinates coarsely, so small details may be rounded: export it nearer to the origin if you can.`,
  );
  return {
    format: raw.format,
    declaredUnit: raw.declaredUnit,
    corners: movedBy(corners, min),
    origin: min,
    notes,
  };
}

function keepFinite<T extends Float32Array | Float64Array>(corners: T): T {
  let kept = 0;
  for (let at = 0; at < corners.length; at += 9) {
    let sum = 0;
    // A number less itself is 0 exactly when it is finite.
    for (let k = at; k < at + 9; k++) {
      const coordinate = corners[k]!;
      sum += coordinate - coordinate;
    }
    if (sum !== 0) continue;
    if (kept !== at) corners.copyWithin(kept, at, at + 9);
    kept += 9;
  }
  return kept === corners.length ? corners : (corners.slice(0, kept) as T);
}

function boxOf(corners: Float32Array | Float64Array): { min: Vec3; max: Vec3 } {
  let [minX, minY, minZ, maxX, maxY, maxZ] = [Infinity, Infinity, Infinity, -Infinity, -Infinity, -Infinity];
  for (let at = 0; at < corners.length; at += 3) {
    const x = corners[at]!;
    const y = corners[at + 1]!;
    const z = corners[at + 2]!;
    if (x < minX) minX = x;
    if (x > maxX) maxX = x;
    if (y < minY) minY = y;
    if (y > maxY) maxY = y;
    if (z < minZ) minZ = z;
    if (z > maxZ) maxZ = z;
  }
  return { min: [minX, minY, minZ], max: [maxX, maxY, maxZ] };
}

const middleOf = (min: Vec3, max: Vec3): Vec3 => [
  (min[0] + max[0]) / 2,
  (min[1] + max[1]) / 2,
  (min[2] + max[2]) / 2,
];

/** Float64, where the difference of two single-precision numbers that lie near each other is exact. */
function movedBy(corners: Float32Array | Float64Array, origin: Vec3): Float64Array {
  const moved = new Float64Array(corners.length);
  for (let at = 0; at < corners.length; at += 3) {
    moved[at] = corners[at]! - origin[0];
    moved[at + 1] = corners[at + 1]! - origin[1];
    moved[at + 2] = corners[at + 2]! - origin[2];
  }
  return moved;
}

/** Two figures, written out as far as a number is written out. */
const shortNumber = (size: number) => String(Number(size.toPrecision(2)));
