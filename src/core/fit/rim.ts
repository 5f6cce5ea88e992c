/** The rim of a part: where its other half meets it. */
import { buildAdjacency } from '../mesh/adjacency';
import type { IndexedMesh, Vec3 } from '../mesh/types';
import { cross, dot, lengthOf, minus, times } from '../numeric/vectors';
import { Problem } from '../problem';
import {
  cornerAt,
  facetPlanes,
  normalAt,
  planePatches,
  type FacetPlanes,
  type PlanePatch,
} from './planePatches';
import { areaOf, edgesOf, loopsOf, outwardEdges, type Edge, type RimFrame } from './ringEdges';

export interface Rim {
  readonly frame: RimFrame;
  /** Outer outline in the frame; `from` of one is `to` of the one before it where the rim is whole. */
  readonly outline: readonly Edge[];
  readonly lengthMm: number;
  readonly areaMm2: number;
  /** Mean width of the land: area over length. */
  readonly landMm: number;
  /** Openings cut through it: the outline was put together from pieces. */
  readonly isInterrupted: boolean;
  readonly facets: readonly number[];
  /** Facets of the rim plane's patches beside each half-edge of the outer and of the inner border. */
  readonly besideOuter: readonly number[];
  readonly besideInner: readonly number[];
}

/** What the rim was found with, for whoever goes on from there. */
export interface RimSearch {
  readonly rim: Rim;
  readonly planes: FacetPlanes;
  readonly neighbor: Int32Array;
}

/** A ring is more hole than this. */
const leastHoleShare = 0.5;
/** An interrupted rim goes round its middle for this share of the turn, at least. */
const leastTurnShare = 0.6;
/** Patches of one plane: their planes stand no farther apart. */
const samePlaneMm = 0.05;
const samePlaneCosine = Math.cos((2 * Math.PI) / 180);
/** A rim looks against the pull: at least so much. */
const leastAgainstPull = 0.5;

/**
 * The largest ring-shaped plane patch. Where openings cut through the rim, the patches of one plane that go round together.
 * @param pull towards the show face; null looks at every direction
 * @throws Problem `fit.noRing`
 */
export function findRim(mesh: IndexedMesh, pull: Vec3 | null): RimSearch {
  const planes = facetPlanes(mesh);
  const { neighbor } = buildAdjacency(mesh);
  const length = pull === null ? 1 : lengthOf(pull);
  const isWanted = (facet: number) =>
    pull === null || dot(normalAt(planes.normals, facet), pull) < -leastAgainstPull * length;
  const patches = planePatches(mesh, planes, neighbor, isWanted);
  const large = patches.toSorted((a, b) => b.areaMm2 - a.areaMm2).slice(0, 200);
  const whole = large.find((patch) => isRing(mesh, patch, neighbor));
  const rim =
    whole === undefined ? interrupted(mesh, large, neighbor) : rimOf(mesh, [whole], neighbor, false);
  if (rim === null)
    throw new Problem(
      'fit.noRing',
      'No rim is found: a rim is a flat ring round the open side, where the other half meets it. A closed solid, or a part whose rim is not flat, has none. Split the solid first, or choose the pull so that the open side looks against it.',
    );
  return { rim, planes, neighbor };
}

function frameOf(mesh: IndexedMesh, { normal, facets }: PlanePatch): RimFrame {
  const least = Math.min(...normal.map(Math.abs));
  const axis = normal.findIndex((share) => Math.abs(share) === least);
  const start: Vec3 = [axis === 0 ? 1 : 0, axis === 1 ? 1 : 0, axis === 2 ? 1 : 0];
  const across = minus(start, times(normal, dot(start, normal)));
  const first = times(across, 1 / lengthOf(across));
  return { originMm: cornerAt(mesh, 3 * facets[0]!), first, second: cross(normal, first), normal };
}

function isRing(mesh: IndexedMesh, patch: PlanePatch, neighbor: Int32Array): boolean {
  const areas = loopsOf(edgesOf(mesh, frameOf(mesh, patch), patch.facets, neighbor)).map(areaOf);
  const [outer, hole] = [Math.max(...areas), Math.min(...areas)];
  return outer > 0 && -hole >= leastHoleShare * outer;
}

const beside = (some: readonly Edge[]) => some.flatMap(({ beyond }) => (beyond < 0 ? [] : [beyond]));

function rimOf(
  mesh: IndexedMesh,
  patches: readonly PlanePatch[],
  neighbor: Int32Array,
  isInterrupted: boolean,
): Rim {
  const frame = frameOf(mesh, patches[0]!);
  const facets = patches.flatMap((patch) => patch.facets);
  const edges = edgesOf(mesh, frame, facets, neighbor);
  const outline = isInterrupted
    ? outwardEdges(edges)
    : loopsOf(edges).reduce((best, loop) => (areaOf(loop) > areaOf(best) ? loop : best));
  const outer = new Set(outline);
  const lengthMm = outline.reduce((sum, edge) => sum + edge.lengthMm, 0);
  const areaMm2 = patches.reduce((sum, patch) => sum + patch.areaMm2, 0);
  return {
    frame,
    outline,
    lengthMm,
    areaMm2,
    landMm: areaMm2 / lengthMm,
    isInterrupted,
    facets,
    besideOuter: beside(outline),
    besideInner: beside(edges.filter((edge) => !outer.has(edge))),
  };
}

/** Patches of one plane, the largest first, that go round their middle together. */
function interrupted(mesh: IndexedMesh, patches: readonly PlanePatch[], neighbor: Int32Array): Rim | null {
  const planeOf = ({ facets }: PlanePatch) => cornerAt(mesh, 3 * facets[0]!);
  for (const lead of patches.slice(0, 20)) {
    const group = patches.filter(
      (patch) =>
        dot(patch.normal, lead.normal) > samePlaneCosine &&
        Math.abs(dot(minus(planeOf(patch), planeOf(lead)), lead.normal)) < samePlaneMm,
    );
    const rim = rimOf(mesh, [lead, ...group.filter((patch) => patch !== lead)], neighbor, true);
    if (goesRound(rim)) return rim;
  }
  return null;
}

const middle = (values: readonly number[]) => (Math.min(...values) + Math.max(...values)) / 2;

function goesRound({ outline, lengthMm, areaMm2 }: Rim): boolean {
  const xs = outline.map(({ from }) => from[0]);
  const ys = outline.map(({ from }) => from[1]);
  const [cx, cy] = [middle(xs), middle(ys)];
  const [halfX, halfY] = [Math.max(...xs) - cx, Math.max(...ys) - cy];
  // A land is narrow beside what it goes round.
  if (!(areaMm2 < 0.5 * 4 * halfX * halfY) || areaMm2 / lengthMm > 0.25 * Math.min(halfX, halfY))
    return false;
  const turns = 72;
  const seen = new Set<number>();
  for (const { from, to } of outline)
    for (let share = 0; share <= 1; share += 0.02) {
      const [x, y] = [from[0] + share * (to[0] - from[0]) - cx, from[1] + share * (to[1] - from[1]) - cy];
      seen.add(Math.floor(((Math.atan2(y, x) + Math.PI) / (2 * Math.PI)) * turns) % turns);
    }
  return seen.size >= leastTurnShare * turns;
}
