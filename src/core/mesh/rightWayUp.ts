import { facetGeometry, type FacetGeometry } from './facetGeometry';
import { heldWater } from './heldWater';
import { integrate } from './integrals';
import { dominantDirections } from './pullCandidates';
import { lookAlong, prepareSmallLooks, type LookSetup } from './pullDepth';
import type { IndexedMesh, Vec3 } from './types';

/** Which way up a part is meant: where its show face looks. */
export interface RightWayUp {
  /** The way in which the negative leaves the show face; the likeliest where it is not plain. */
  readonly pull: Vec3;
  /** What tells: the hollow can be seen into from one side, a solid stands on its one large flat side; null: nothing tells. */
  readonly toldBy: 'hollow' | 'flat side' | null;
}

/** A hollow takes up at least this share of the space that the part spans along the look into it (our own judgement). */
const leastHollowShare = 0.08;
/** From the other side it holds less than this share of that: else it is hollow on both (our own judgement). */
const mostOtherShare = 0.2;
/** Hollows this close in volume are seen into from the same side, a little askew: a notch in the rim lets out so much. */
const sameHollowShare = 0.2;
/** A solid fills at least this share of what its outline sweeps. */
const leastFilledShare = 0.7;
/** The flat side that a solid stands on is larger than any other by this factor. */
const clearlyLarger = 1.2;
/** A flat side: facets this near to its plane, as a share of the part's height, and looking its way. */
const flatShare = 0.01;
const flatCosine = Math.cos((1 * Math.PI) / 180);

interface Side {
  /** Out of the part, unit vector. */
  readonly out: Vec3;
  readonly hollowMm3: number;
  /** Of the space that the outline sweeps. */
  readonly hollowShare: number;
  readonly sweptMm3: number;
  /** In the end plane on this side. */
  readonly flatMm2: number;
  /** Anywhere, looking this way or the opposite one. */
  readonly levelMm2: number;
}

/**
 * The pull by the shape alone, the same however the file lies. The cavity of a shell can be seen into from one side, and
 * held with that side up it would hold the most water; the show face looks the other way, along the normal of the rim. A
 * solid stands on its largest flat side. Only directions that facets look along are tried, so the pull never leans off the rim.
 */
export function rightWayUp(mesh: IndexedMesh): RightWayUp {
  const geometry = facetGeometry(mesh);
  const setup = prepareSmallLooks(mesh, geometry);
  const directions = dominantDirections(geometry);
  const sides = directions.flatMap((direction) => bothSides(setup, geometry, direction));
  const most = Math.max(...sides.map(({ hollowMm3 }) => hollowMm3));
  // Of the looks into the same hollow, the one that rim and floor look along: a rim with notches alone may be little.
  const hollow = sides
    .filter(({ hollowMm3 }) => hollowMm3 >= (1 - sameHollowShare) * most)
    .reduce((best, side) => (side.levelMm2 > best.levelMm2 ? side : best));
  const other = sides.find(({ out }) => out.every((one, axis) => one === 0 - hollow.out[axis]!));
  const pull = opposite(hollow.out);
  if (hollow.hollowShare >= leastHollowShare)
    return {
      pull,
      toldBy: (other?.hollowMm3 ?? 0) < mostOtherShare * hollow.hollowMm3 ? 'hollow' : null,
    };
  const [largest, second] = sides.toSorted((a, b) => b.flatMm2 - a.flatMm2);
  const filledShare = Math.abs(integrate(mesh).volume) / (largest?.sweptMm3 || Infinity);
  if (largest === undefined || filledShare < leastFilledShare) return { pull, toldBy: null };
  const isPlain = largest.flatMm2 > clearlyLarger * (second?.flatMm2 ?? 0);
  return { pull: opposite(largest.out), toldBy: isPlain ? 'flat side' : null };
}

/** Whether the cavity is seen into along the pull, and hardly from the other side. */
export function isHollowAlong(mesh: IndexedMesh, pull: Vec3): boolean {
  if (mesh.facets.length === 0) return false;
  const geometry = facetGeometry(mesh);
  const [along, against] = bothSides(prepareSmallLooks(mesh, geometry), geometry, pull);
  if (along === undefined || against === undefined) return false;
  return along.hollowShare >= leastHollowShare && against.hollowMm3 < mostOtherShare * along.hollowMm3;
}

/** Without a -0. */
const opposite = ([x, y, z]: Vec3): Vec3 => [0 - x, 0 - y, 0 - z];

function bothSides(setup: LookSetup, geometry: FacetGeometry, direction: Vec3): readonly Side[] {
  const { top, bottom, pixelMm } = lookAlong(setup, direction);
  const volume = (heights: number) => heights * pixelMm ** 2;
  let [low, high, covered] = [Infinity, -Infinity, 0];
  for (let pixel = 0; pixel < top.length; pixel++) {
    if (top[pixel] === -Infinity) continue;
    covered++;
    low = Math.min(low, bottom[pixel]!);
    high = Math.max(high, top[pixel]!);
  }
  const spannedMm3 = volume(covered * (high - low));
  const levelMm2 = levelArea(geometry, direction);
  const side = (out: Vec3, heights: Float32Array, levelMm: number): Side => {
    const hollowMm3 = volume(heldWater(heights, setup.side));
    return {
      out,
      hollowMm3,
      hollowShare: spannedMm3 > 0 ? hollowMm3 / spannedMm3 : 0,
      sweptMm3: spannedMm3,
      flatMm2: flatArea(geometry, out, levelMm, flatShare * (high - low)),
      levelMm2,
    };
  };
  return [
    side(direction, top, high),
    side(
      opposite(direction),
      bottom.map((depth) => -depth),
      -low,
    ),
  ];
}

function levelArea({ areaMm2, normal }: FacetGeometry, [x, y, z]: Vec3): number {
  let sum = 0;
  for (let facet = 0; facet < areaMm2.length; facet++) {
    const at = 3 * facet;
    const cosine = normal[at]! * x + normal[at + 1]! * y + normal[at + 2]! * z;
    if (Math.abs(cosine) >= flatCosine) sum += areaMm2[facet]!;
  }
  return sum;
}

/** Area that lies in the part's end plane on this side. */
function flatArea(
  { areaMm2, normal, centerMm }: FacetGeometry,
  out: Vec3,
  levelMm: number,
  withinMm: number,
) {
  const [x, y, z] = out;
  let sum = 0;
  for (let facet = 0; facet < areaMm2.length; facet++) {
    const at = 3 * facet;
    const cosine = normal[at]! * x + normal[at + 1]! * y + normal[at + 2]! * z;
    if (cosine < flatCosine) continue;
    const height = centerMm[at]! * x + centerMm[at + 1]! * y + centerMm[at + 2]! * z;
    if (height >= levelMm - withinMm) sum += areaMm2[facet]!;
  }
  return sum;
}
