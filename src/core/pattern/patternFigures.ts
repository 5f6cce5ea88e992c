/** What a made pattern is like: measured on its triangles, not read from the fields that it was made by. */
import type { IndexedMesh } from '../mesh/types';
import { selectQuantiles } from '../mesh/selectQuantiles';
import { farthestMm } from './changeMap';
import { CloseFacets } from '../mesh/closeFacets';
import { centerOf, facetLeans, onRim, type FacetLeans, type Shell } from './facetLeans';
import { cornersOf } from '../mesh/triangleDistance';

/** Smaller facets have no direction that single precision could tell. */
const leastFacetMm2 = 1e-4;
/** Rim and outline are compared at points this far apart. */
const rimStepMm = 0.5;
/** A place of the show face that stands out by more than this counts as added. */
const noticedMm = 0.1;

export interface ShellFigures {
  readonly triangles: number;
  /** From the centers of the show facets to the core face by exact distance, over their area. */
  readonly wallMm: { readonly p1: number; readonly median: number; readonly p99: number };
  /** Of show and core face, degrees. */
  readonly leastDraftDeg: number;
  /** Share of the area of show and core face with less than the draft that was asked for, 0 to 1. */
  readonly shareUnderDraft: number;
}

export function shellFigures(shell: Shell, wallMm: number, draftDeg: number): ShellFigures {
  const { mesh } = shell;
  const leans = facetLeans(shell);
  const isFace = (f: number) => leans.draftDeg[f] !== onRim && leans.areaMm2[f]! >= leastFacetMm2;
  let least = 90;
  let under = 0;
  let whole = 0;
  for (let f = 0; f < leans.areaMm2.length; f++) {
    if (!isFace(f)) continue;
    whole += leans.areaMm2[f]!;
    if (leans.draftDeg[f]! < draftDeg - 0.1) under += leans.areaMm2[f]!;
    if (leans.draftDeg[f]! < least) least = leans.draftDeg[f]!;
  }
  const core = new CloseFacets(cornersOf(mesh.positions, facetsOf(mesh, leans, 1)), 2 * wallMm);
  const shows = facetsOf(mesh, leans, 0);
  const walls = new Float32Array(shows.length / 3);
  const areas = new Float32Array(walls.length);
  for (let f = 0, at = 0; f < leans.areaMm2.length; f++) {
    if (leans.isCore[f] === 1 || leans.draftDeg[f] === onRim) continue;
    const [x, y, z] = centerOf(mesh, f);
    areas[at] = leans.areaMm2[f]!;
    walls[at++] = core.distanceMm(x, y, z, 8 * wallMm);
  }
  const [p1, median, p99] = selectQuantiles(walls, areas, [0.01, 0.5, 0.99]).at;
  return {
    triangles: mesh.facets.length / 3,
    wallMm: { p1: p1 ?? 0, median: median ?? 0, p99: p99 ?? 0 },
    leastDraftDeg: least,
    shareUnderDraft: whole > 0 ? under / whole : 0,
  };
}

function facetsOf({ facets }: IndexedMesh, { isCore, draftDeg }: FacetLeans, core: 0 | 1): Uint32Array {
  const own: number[] = [];
  for (let f = 0; f < isCore.length; f++)
    if (isCore[f] === core && draftDeg[f] !== onRim)
      own.push(facets[3 * f]!, facets[3 * f + 1]!, facets[3 * f + 2]!);
  return Uint32Array.from(own);
}

export interface ChangeFigures {
  /** Share of the show face that stands out of the import by more than 0.1 mm, 0 to 1. */
  readonly addedShare: number;
  /** Farthest that it stands out; 25 where it is more. */
  readonly addedMaxMm: number;
  /** Between the outline of the rim and the import: half of it, and all but a hundredth of it, shift by no more. */
  readonly rimShiftMm: { readonly median: number; readonly p99: number; readonly max: number };
}

/**
 * @param drawn the import in the frame of the pattern
 * @param changeMm as `changeMap` gives it
 */
export function changeFigures(shell: Shell, drawn: IndexedMesh, changeMm: Float32Array): ChangeFigures {
  const { mesh, coreFrom, rimMm } = shell;
  const { areaMm2 } = facetLeans(shell);
  let added = 0;
  let whole = 0;
  let most = 0;
  for (let f = 0; f < changeMm.length; f++) {
    const out = changeMm[f]!;
    if (Number.isNaN(out)) continue;
    whole += areaMm2[f]!;
    if (out > noticedMm) added += areaMm2[f]!;
    if (out > most) most = out;
  }
  const drawnFacets = new CloseFacets(cornersOf(drawn.positions, drawn.facets), 3);
  return {
    addedShare: whole > 0 ? added / whole : 0,
    addedMaxMm: most,
    rimShiftMm: rimShift(mesh, coreFrom, rimMm, drawnFacets),
  };
}

function rimShift(
  { positions, facets }: IndexedMesh,
  coreFrom: number,
  rimMm: number,
  drawn: CloseFacets,
): ChangeFigures['rimShiftMm'] {
  const shifts: number[] = [];
  const isRim = (vertex: number) => vertex < coreFrom && Math.abs(positions[3 * vertex + 2]! - rimMm) < 1e-5;
  for (let at = 0; at < facets.length; at++) {
    const a = facets[at]!;
    const b = facets[at % 3 === 2 ? at - 2 : at + 1]!;
    const c = facets[at % 3 === 0 ? at + 2 : at - 1]!;
    if (!isRim(a) || !isRim(b) || c >= coreFrom) continue;
    const [ax, ay] = [positions[3 * a]!, positions[3 * a + 1]!];
    const [dx, dy] = [positions[3 * b]! - ax, positions[3 * b + 1]! - ay];
    const count = Math.ceil(Math.hypot(dx, dy) / rimStepMm);
    for (let step = 0; step < count; step++) {
      const along = (step + 0.5) / count;
      shifts.push(drawn.distanceMm(ax + along * dx, ay + along * dy, rimMm, farthestMm));
    }
  }
  shifts.sort((a, b) => a - b);
  const share = (one: number) => Math.min(farthestMm, shifts[Math.floor(one * (shifts.length - 1))] ?? 0);
  return { median: share(0.5), p99: share(0.99), max: share(1) };
}
