/** Fewer triangles for a made shell, without taking its draft from it. */
import { MeshoptSimplifier } from 'meshoptimizer/simplifier';
import { facetLeans, type Shell } from './facetLeans';

/** How far the surface may move; farther, step by step, while there are more triangles than wanted. */
const shiftsMm = [0.004, 0.008, 0.016] as const;
const wantedTriangles = 60_000;
const mostRounds = 12;
/** Smaller facets are lines: nothing can be measured on them. */
const leastFacetMm2 = 1e-5;
/** Draft said of a facet without area. */
const standing = -91;
/** Share of the area that may stay a little under the draft. */
const mostLeft = 3e-4;
/** A facet may be that much under the draft. */
const letPassDeg = 0.8;
/** So few wrong facets are searched for all that lies in their boxes. */
const fewFacets = 64;

export interface SimplifiedShell extends Shell {
  /** How far the surface may have moved. */
  readonly movedMm: number;
}

/** Loads what `simplifyShell` works with; awaited once before it. */
export const prepareSimplify = (): Promise<void> => MeshoptSimplifier.ready;

/**
 * Collapses edges while the surface stays where it is to within a few micrometers. Joining facets tilts those of steep walls a
 * little, so vertices around facets that fall under the draft, or around an edge that does not join two facets any longer, are held
 * where they are and it is done anew.
 * @param leastDraftDeg of the facets that a collapse makes
 */
export function simplifyShell(shell: Shell, leastDraftDeg: number): SimplifiedShell {
  const { mesh } = shell;
  const points = Float32Array.from(mesh.positions);
  const locked = new Uint8Array(points.length / 3);
  const wholeMm2 = facetLeans(shell).areaMm2.reduce((sum, area) => sum + area, 0);
  // No worse than before anything was joined, or than is let pass.
  const drawn = wrongFacets(shell, mesh.facets, leastDraftDeg);
  const littleMm2 = Math.max(mostLeft * wholeMm2, 1.5 * areaOf(drawn));
  const floorDeg = drawn
    .filter(({ deg }) => deg > standing)
    .reduce((least, { deg }) => Math.min(least, deg), leastDraftDeg - letPassDeg);
  let shift = 0;
  let best = mesh.facets;
  let fewest = Infinity;
  for (let round = 0; round < mostRounds; round++) {
    const facets = collapsed(mesh.facets, points, locked, shiftsMm[shift]!);
    if (round === shift && facets.length > 3 * wantedTriangles && shift + 1 < shiftsMm.length) {
      shift++;
      continue;
    }
    const tilted = wrongFacets(shell, facets, leastDraftDeg);
    const worse = tilted.filter(({ deg }) => deg > standing && deg < floorDeg);
    const wrong = new Uint8Array(locked.length);
    const torn = markTorn(facets, locked.length, wrong);
    if (torn === 0 && worse.length <= fewest) {
      best = facets;
      fewest = worse.length;
    }
    const isLittle = areaOf(tilted) < littleMm2;
    if (torn + worse.length === 0 && isLittle) break;
    // At first all that is tilted is held, then only what is tilted too far, each time from farther around it.
    const rounds = round - shift;
    const held = rounds < 2 || !isLittle ? tilted : worse;
    for (const { f } of held) for (let corner = 0; corner < 3; corner++) wrong[facets[3 * f + corner]!] = 1;
    lockAround(mesh.facets, wrong, locked);
    if (worse.length <= fewFacets)
      for (const { f } of worse)
        lockWithin(mesh.positions, facets, f, 0.05 * 2 ** Math.min(5, rounds), locked);
  }
  // Better too many triangles than one that hangs on the mold.
  if (fewest > 0) best = mesh.facets;
  const shown = compact({ ...shell, mesh: { positions: mesh.positions, facets: best } });
  return { ...shown, movedMm: shiftsMm[shift]! };
}

function collapsed(
  facets: Uint32Array,
  points: Float32Array,
  locked: Uint8Array,
  shiftMm: number,
): Uint32Array {
  const noAttributes = new Float32Array(0);
  return MeshoptSimplifier.simplifyWithAttributes(
    facets,
    points,
    3,
    noAttributes,
    0,
    [],
    locked,
    0,
    shiftMm,
    ['ErrorAbsolute'],
  )[0];
}

interface WrongFacet {
  readonly f: number;
  readonly deg: number;
  readonly areaMm2: number;
}

const areaOf = (some: readonly WrongFacet[]): number => some.reduce((sum, { areaMm2 }) => sum + areaMm2, 0);

/** Facets under the draft, and those without area as if they stood on their head. */
function wrongFacets(shell: Shell, facets: Uint32Array, leastDraftDeg: number): readonly WrongFacet[] {
  const { draftDeg, areaMm2 } = facetLeans({ ...shell, mesh: { positions: shell.mesh.positions, facets } });
  const wrong: WrongFacet[] = [];
  for (let f = 0; f < draftDeg.length; f++) {
    if (areaMm2[f]! < leastFacetMm2) wrong.push({ f, deg: standing, areaMm2: 0 });
    else if (draftDeg[f]! < leastDraftDeg) wrong.push({ f, deg: draftDeg[f]!, areaMm2: areaMm2[f]! });
  }
  return wrong;
}

/** Locks all vertices in and around the box of a facet: what was there before it was joined. */
function lockWithin(
  positions: Float64Array,
  facets: Uint32Array,
  facet: number,
  aroundMm: number,
  locked: Uint8Array,
): void {
  const [low, high] = [
    [0, 0, 0],
    [0, 0, 0],
  ];
  for (let axis = 0; axis < 3; axis++) {
    const values = [0, 1, 2].map((corner) => positions[3 * facets[3 * facet + corner]! + axis]!);
    low[axis] = Math.min(...values) - aroundMm;
    high[axis] = Math.max(...values) + aroundMm;
  }
  for (let vertex = 0, at = 0; vertex < locked.length; vertex++, at += 3) {
    if (positions[at]! < low[0]! || positions[at]! > high[0]!) continue;
    if (positions[at + 1]! < low[1]! || positions[at + 1]! > high[1]!) continue;
    if (positions[at + 2]! >= low[2]! && positions[at + 2]! <= high[2]!) locked[vertex] = 1;
  }
}

/** Marks the ends of edges that do not have one facet on either side. */
function markTorn(facets: Uint32Array, vertexCount: number, wrong: Uint8Array): number {
  const edges = new Float64Array(facets.length);
  for (let at = 0; at < facets.length; at++) {
    const a = facets[at]!;
    const b = facets[at % 3 === 2 ? at - 2 : at + 1]!;
    edges[at] = a < b ? 2 * (a * vertexCount + b) : 2 * (b * vertexCount + a) + 1;
  }
  edges.sort();
  let torn = 0;
  for (let at = 0; at < edges.length; at++) {
    const own = edges[at]!;
    const isPair =
      own % 2 === 0 && edges[at + 1] === own + 1 && edges[at + 2] !== own + 1 && edges[at - 1] !== own;
    if (isPair) {
      at++;
      continue;
    }
    torn++;
    const edge = Math.floor(own / 2);
    wrong[edge % vertexCount] = 1;
    wrong[Math.floor(edge / vertexCount)] = 1;
  }
  return torn;
}

/** Locks the marked vertices and those next to them, and marks those too. */
function lockAround(facets: Uint32Array, wrong: Uint8Array, locked: Uint8Array): void {
  const before = wrong.slice();
  for (let at = 0; at < facets.length; at += 3) {
    const [a, b, c] = [facets[at]!, facets[at + 1]!, facets[at + 2]!];
    if (before[a] !== 1 && before[b] !== 1 && before[c] !== 1) continue;
    for (const vertex of [a, b, c]) {
      locked[vertex] = 1;
      wrong[vertex] = 1;
    }
  }
}

/** Without the vertices that no facet uses; the others keep their order, so that the core face still follows the show face. */
function compact({ mesh: { positions, facets }, coreFrom, rimMm }: Shell): Shell {
  const number = new Int32Array(positions.length / 3).fill(-1);
  const kept: number[] = [];
  for (const vertex of facets) number[vertex] = 0;
  let shown = 0;
  for (let vertex = 0; vertex < number.length; vertex++) {
    if (number[vertex]! < 0) continue;
    if (vertex < coreFrom) shown++;
    number[vertex] = kept.length / 3;
    kept.push(positions[3 * vertex]!, positions[3 * vertex + 1]!, positions[3 * vertex + 2]!);
  }
  return {
    mesh: { positions: Float64Array.from(kept), facets: facets.map((vertex) => number[vertex]!) },
    coreFrom: shown,
    rimMm,
  };
}
