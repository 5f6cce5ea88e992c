import { type Adjacency, runsUp } from './adjacency';
import { pointsInside, unevenPointOn } from './containment';
import { facetsOfGroup, groupFacets } from './groupFacets';
import { boxCorner, groupFigures } from './groupFigures';
import { type Sheets, followWinding } from './orientation';
import type { IndexedMesh, MeshHealth, Vec3 } from './types';

/** A sheet that closes on itself, with its majority winding. */
interface ClosedSheet {
  readonly sheet: number;
  readonly volume: number;
  readonly boxMin: Vec3;
  readonly boxMax: Vec3;
  /** A point on the sheet. */
  readonly point: Vec3;
}

/** A volume smaller than this share of area^1.5 is rounding: a doubled sheet, not a body. */
const leastVolumeShare = 1e-9;

/**
 * Flags the facets to turn around: those wound against the rest of their sheet, and all of a closed sheet that is
 * inside out. A closed sheet inside another is a void and rightly faces inward; one that faces outward there (a boss
 * pushed into a wall) is left alone too, unless the sheet around it is itself inside out.
 */
export function flagFlippedFacets(mesh: IndexedMesh, adjacency: Adjacency): Uint8Array {
  const sheets = followWinding(adjacency);
  const flipped = sheets.minority.slice();
  const insideOut = insideOutSheets(mesh, adjacency, sheets);
  if (insideOut.size === 0) return flipped;
  for (let facet = 0; facet < flipped.length; facet++) {
    if (insideOut.has(sheets.sheetOfFacet[facet]!)) flipped[facet]! ^= 1;
  }
  return flipped;
}

/** The mesh with the facets flagged 1 turned around. */
function turnFacets(mesh: IndexedMesh, turn: Uint8Array): IndexedMesh {
  if (!turn.includes(1)) return mesh;
  const facets = mesh.facets.slice();
  for (let facet = 0; facet < turn.length; facet++) {
    if (turn[facet] === 0) continue;
    facets[3 * facet + 1] = mesh.facets[3 * facet + 2]!;
    facets[3 * facet + 2] = mesh.facets[3 * facet + 1]!;
  }
  return { positions: mesh.positions, facets };
}

/** Sheets without open edges whose facets at every crowded edge run as often one way as the other. */
function closedSheetFlags(mesh: IndexedMesh, adjacency: Adjacency, sheets: Sheets): Uint8Array {
  const { neighbor, crowdedHalfEdges, crowdedStarts } = adjacency;
  const closed = new Uint8Array(sheets.sheetCount).fill(1);
  for (let h = 0; h < neighbor.length; h++) {
    if (neighbor[h] === -1) closed[sheets.sheetOfFacet[(h / 3) | 0]!] = 0;
  }
  for (let group = 0; group + 1 < crowdedStarts.length; group++) {
    const balance = new Map<number, number>();
    const members = crowdedHalfEdges.subarray(crowdedStarts[group], crowdedStarts[group + 1]);
    for (const h of members) {
      const facet = (h / 3) | 0;
      const sheet = sheets.sheetOfFacet[facet]!;
      const up = runsUp(mesh, h) === (sheets.minority[facet] === 0);
      balance.set(sheet, (balance.get(sheet) ?? 0) + (up ? 1 : -1));
    }
    for (const [sheet, sum] of balance) if (sum !== 0) closed[sheet] = 0;
  }
  return closed;
}

/** Closed sheets that are inside out when each is wound as its majority is. */
function insideOutSheets(mesh: IndexedMesh, adjacency: Adjacency, sheets: Sheets): Set<number> {
  const closedFlags = closedSheetFlags(mesh, adjacency, sheets);
  const { sheetCount, sheetOfFacet, minority } = sheets;
  const figures = groupFigures(mesh, sheetOfFacet, sheetCount, minority);
  const closed: ClosedSheet[] = [];
  for (let sheet = 0; sheet < sheetCount; sheet++) {
    const volume = figures.volume[sheet]!;
    if (closedFlags[sheet] === 0 || Math.abs(volume) < leastVolumeShare * figures.area[sheet]! ** 1.5)
      continue;
    closed.push({
      sheet,
      volume,
      boxMin: boxCorner(figures.boxMin, sheet),
      boxMax: boxCorner(figures.boxMax, sheet),
      point: unevenPointOn(mesh, figures.firstFacet[sheet]!),
    });
  }
  if (closed.every(({ volume }) => volume > 0)) return new Set();

  const groups = groupFacets(sheetOfFacet, sheetCount);
  // Sheets around come before sheets inside, since their boxes are larger.
  const boxSize = ({ boxMin, boxMax }: ClosedSheet) =>
    (boxMax[0] - boxMin[0]) * (boxMax[1] - boxMin[1]) * (boxMax[2] - boxMin[2]);
  closed.sort((a, b) => boxSize(b) - boxSize(a));
  const depth = new Uint32Array(closed.length);
  const innermostAround = new Int32Array(closed.length).fill(-1);
  for (let around = 0; around < closed.length; around++) {
    const outer = closed[around]!;
    const candidates: number[] = [];
    for (let i = around + 1; i < closed.length; i++) if (boxHolds(outer, closed[i]!)) candidates.push(i);
    if (candidates.length === 0) continue;
    const inside = pointsInside(
      mesh,
      facetsOfGroup(groups, outer.sheet),
      candidates.map((i) => closed[i]!.point),
    );
    candidates.forEach((i, at) => {
      if (inside[at] !== true) return;
      depth[i] = depth[i]! + 1;
      innermostAround[i] = around;
    });
  }

  const insideOut = new Uint8Array(closed.length);
  closed.forEach(({ volume }, i) => {
    const around = innermostAround[i]!;
    const isVoidPlace = depth[i]! % 2 === 1;
    if (volume < 0) insideOut[i] = isVoidPlace ? 0 : 1;
    else insideOut[i] = isVoidPlace && around !== -1 && insideOut[around] === 1 ? 1 : 0;
  });
  return new Set(closed.filter((_, i) => insideOut[i] === 1).map(({ sheet }) => sheet));
}

/** True when the box of `outer` holds that of `inner`. */
function boxHolds(outer: ClosedSheet, inner: ClosedSheet): boolean {
  return [0, 1, 2].every(
    (axis) => outer.boxMin[axis]! <= inner.boxMin[axis]! && inner.boxMax[axis]! <= outer.boxMax[axis]!,
  );
}

/** The mesh with its flipped facets turned around (second and third corner exchanged); facet numbers stay. */
export function turnedRight(mesh: IndexedMesh, health: MeshHealth): IndexedMesh {
  const turn = new Uint8Array(mesh.facets.length / 3);
  for (const facet of health.show.flippedFacets) turn[facet] = 1;
  return turnFacets(mesh, turn);
}
