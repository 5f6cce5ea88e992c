/** Clearance of contents to the core face, exact, and what runs into it. */
import type { Vec3 } from '../mesh/types';
import type { Vector3 } from '../numeric/matrix3';
import { dot, lengthOf, minus, plus, times } from '../numeric/vectors';
import { Problem } from '../problem';
import { coveredShare } from './coveredShare';
import { farthest, placed, surfacePoints, type Body, type PlacedBody } from './bodies';
import type { RimFrame } from './ringEdges';
import {
  firstAlong,
  nearestTo,
  nearestToBody,
  normalOfSlot,
  triangleAt,
  type TriangleTree,
} from './triangleTree';

export interface BodyClearance {
  readonly name: string;
  /** Least distance to the core face; below zero by how deep it stands in the wall, as far as its corners and edges tell. */
  readonly clearanceMm: number;
  /** Where on the core face. */
  readonly atMm: Vec3;
  /** It reaches over the rim plane by so much, into the other half; 0 or less where it does not. */
  readonly overRimMm: number;
}

/** Points of a body that are asked how deep they stand in the wall. */
const pointStepMm = 4;

/** @throws Problem `fit.outside` for a body that is not inside of the half */
export function clearances(
  core: TriangleTree,
  bodies: readonly Body[],
  { pull, rim, hasMate }: { readonly pull: Vec3; readonly rim: RimFrame; readonly hasMate: boolean },
): readonly BodyClearance[] {
  return bodies.map((body) => {
    const lying = placed(body);
    const overRimMm = dot(minus(farthest(lying, rim.normal), rim.originMm), rim.normal);
    const nearRimMm = dot(minus(farthest(lying, times(rim.normal, -1)), rim.originMm), rim.normal);
    if (!isInside(core, lying.placeMm, pull) || (nearRimMm > 0 && !hasMate))
      throw new Problem(
        'fit.outside',
        `${body.name} is outside of ${hasMate ? 'the enclosure' : 'this half'}: its middle is entered at ${lying.placeMm.map((at) => at.toFixed(1)).join(', ')} mm, in the axes of the model. Enter a place between the rim and the core face${hasMate ? '' : ', or give the other half too'}.`,
      );
    return { name: body.name, ...clearanceOf(core, lying), overRimMm };
  });
}

/** Before a window as large as its side an inside place is still covered by so much. */
const leastCovered = 0.2;

/** The way along the pull ends at a face that looks back; under a window, where it does not, the face is all round. */
const isInside = (core: TriangleTree, from: Vector3, pull: Vec3): boolean =>
  isUnderRoof(core, from, pull) || coveredShare(core, from) > leastCovered;

function isUnderRoof(core: TriangleTree, from: Vector3, pull: Vec3): boolean {
  const along = times(pull, 1 / lengthOf(pull));
  const met = firstAlong(core, from, along);
  return met !== null && dot(normalOfSlot(core, met.slot), along) < 0;
}

function clearanceOf(core: TriangleTree, body: PlacedBody): Pick<BodyClearance, 'clearanceMm' | 'atMm'> {
  const nearest = nearestToBody(core, body)!;
  const [a] = triangleAt(core, nearest.slot);
  if (nearest.way !== null)
    return { clearanceMm: nearest.distanceMm, atMm: placeOnWay(core, body, nearest.way) ?? a };
  const points = surfacePoints(body, pointStepMm);
  let [depthMm, atMm]: readonly [number, Vec3] = [0, a];
  for (const point of points) {
    const near = nearestTo(core, point)!;
    if (!near.isOutside && near.distanceMm > depthMm) [depthMm, atMm] = [near.distanceMm, near.pointMm];
  }
  return { clearanceMm: depthMm > 0 ? -depthMm : 0, atMm };
}

/** Where on the core face the shortest way ends: the nearest place to the end of the body that looks there. */
function placeOnWay(core: TriangleTree, body: PlacedBody, way: Vector3): Vec3 | null {
  const end = farthest(body, times(way, -1));
  return nearestTo(core, end, 2 * lengthOf(way) + 1e-6)?.pointMm ?? plus(end, times(way, -1));
}
