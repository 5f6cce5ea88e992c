import { chainCut, type CutLine } from './sectionLines';
import { facetKind, type IndexedMesh, type Measurement, type Section, type SectionPlane } from './types';

/** So many walls are told along a cut. */
const wallsTold = 8;
/** Where a facet lies nearly in the plane of the cut, its direction in that plane means little. */
const mostNormalAlongAxis = 0.8;

interface CutSegment {
  readonly facet: number;
  readonly fromX: number;
  readonly fromY: number;
  readonly toX: number;
  readonly toY: number;
  readonly lengthMm: number;
}

/**
 * Cuts the part by a plane across x, y or z and measures walls in the plane.
 *
 * Lines run with the material on their left, in (y, z), (z, x) or (x, y) for a cut across x, y or z. A corner that
 * lies in the plane counts as above it, so every facet is cut in one segment or not at all and lines close.
 *
 * `walls` are up to 8 places spread evenly along the cut show face (along all lines when no show face is cut). Each
 * is the distance, within the plane, from the outside at right angles to the line to the next line. It is the wall
 * as a caliper held in the plane of the cut would read it, and more than the true wall where the face leans against
 * the plane. Places where the face lies almost in the plane are left out.
 */
export function cutSection(mesh: IndexedMesh, measurement: Measurement, plane: SectionPlane): Section {
  const lines = chainCut(mesh, measurement.neighbor, plane);
  return {
    plane,
    lines: lines.map(({ pointsMm, closed }) => ({ pointsMm, closed })),
    walls: wallsAlong(lines, measurement, plane),
  };
}

function segmentsOf(lines: readonly CutLine[]): CutSegment[] {
  return lines.flatMap(({ pointsMm, facets }) =>
    facets.flatMap((facet, at) => {
      const fromX = pointsMm[2 * at]!;
      const fromY = pointsMm[2 * at + 1]!;
      const to = (2 * at + 2) % pointsMm.length;
      const toX = pointsMm[to]!;
      const toY = pointsMm[to + 1]!;
      const lengthMm = Math.hypot(toX - fromX, toY - fromY);
      return lengthMm > 0 ? [{ facet, fromX, fromY, toX, toY, lengthMm }] : [];
    }),
  );
}

function wallsAlong(
  lines: readonly CutLine[],
  measurement: Measurement,
  plane: SectionPlane,
): Section['walls'] {
  const segments = segmentsOf(lines);
  const axis = { x: 0, y: 1, z: 2 }[plane.axis];
  const stands = segments.filter(
    ({ facet }) => Math.abs(measurement.normal[3 * facet + axis]!) <= mostNormalAlongAxis,
  );
  const shown = stands.filter(
    ({ facet }) => measurement.kind[facet] === facetKind.show && measurement.cornerOf[facet]! < 0,
  );
  const asked = shown.length > 0 ? shown : stands;
  const whole = asked.reduce((sum, { lengthMm }) => sum + lengthMm, 0);
  const walls: Section['walls'][number][] = [];
  let before = 0;
  for (const segment of asked) {
    // Places at 1/16, 3/16, 5/16 ... of the whole length; of several on one segment each is told.
    const first = Math.ceil((before / whole) * wallsTold - 0.5);
    const last = Math.ceil(((before + segment.lengthMm) / whole) * wallsTold - 0.5);
    for (let place = first; place < last; place++) {
      const share = (((place + 0.5) / wallsTold) * whole - before) / segment.lengthMm;
      const wall = wallAt(segment, share, segments);
      if (wall) walls.push(wall);
    }
    before += segment.lengthMm;
  }
  return walls;
}

/** Casts from a place on a segment to its left, into the material, to the nearest other segment. */
function wallAt(
  segment: CutSegment,
  share: number,
  segments: readonly CutSegment[],
): Section['walls'][number] | null {
  const alongX = (segment.toX - segment.fromX) / segment.lengthMm;
  const alongY = (segment.toY - segment.fromY) / segment.lengthMm;
  const x = segment.fromX + share * segment.lengthMm * alongX;
  const y = segment.fromY + share * segment.lengthMm * alongY;
  const inX = -alongY;
  const inY = alongX;
  let nearest = Infinity;
  for (const other of segments) {
    if (other === segment) continue;
    const ex = other.toX - other.fromX;
    const ey = other.toY - other.fromY;
    const cross = inX * ey - inY * ex;
    if (cross === 0) continue;
    const rx = other.fromX - x;
    const ry = other.fromY - y;
    const distance = (rx * ey - ry * ex) / cross;
    const along = (rx * inY - ry * inX) / cross;
    if (distance > 1e-6 && distance < nearest && along >= 0 && along <= 1) nearest = distance;
  }
  if (nearest === Infinity) return null;
  return { fromMm: [x, y], toMm: [x + nearest * inX, y + nearest * inY], wallMm: nearest };
}
