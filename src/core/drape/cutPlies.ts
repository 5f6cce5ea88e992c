/**
 * The flat pieces of a whole stack. Each ply lies on its own surface: the show face moved in to the middle of the ply, or the core
 * face moved out where that is nearer, so that moving never goes through more than half of the wall.
 */
import type { IndexedMesh, Measurement, Vec3 } from '../mesh/types';
import { Problem } from '../problem';
import type { PlyPiece } from '../templates/piece';
import { bestStart } from './bestStart';
import { closableFace, closeFace, type StripWidths } from './closeFace';
import { region, twinsOf, type DrapeSurface } from './drapeSurface';
import { drapePly, shearFigures, wantedMm2, type Drape, type ShearFigures } from './drapePly';
import { faceOf, movedIn, vertexWays, type FaceSide } from './faceOf';
import type { KeptSide } from './outline';
import { partDatum, startPlace, warpAngleAt, type PartDatum, type PlanPoint } from './partDatum';
import { piecesOf } from './pieces';
import { dartPoints } from './dartsTogether';
import { drapeView, type DrapeView } from './drapeView';
import { outlineAreaMm2 } from './smoothOutline';
import type { ShearLimits } from './weaveLimits';

export interface PlyToCut {
  /** From 1, counted from the show face. */
  readonly ply: number;
  readonly fabric: string;
  /** From the part's length to the warp, counterclockwise seen against the pull. */
  readonly fiberDeg: number;
  /** Of the second half, for a ply that is cut as two mirrored pieces; null for a ply in one. */
  readonly secondHalfDeg: number | null;
  readonly faceDown: boolean;
  /** The face that it is nearer to, and from there to its middle. */
  readonly face: FaceSide;
  readonly depthMm: number;
  readonly limits: ShearLimits;
}

export interface CuttingChoices {
  readonly pull: Vec3;
  readonly plies: readonly PlyToCut[];
  /** From thread to thread of the net. */
  readonly stepMm: number;
  /** Where the cloth is put down first; null takes the one that shears least. */
  readonly start: PlanPoint | null;
  readonly allowanceMm: number;
  readonly overlapMm: number;
  /** Height over the rim of a seam between the top and the sides; null for none. */
  readonly seamMm: number | null;
}

export interface CutPly extends ShearFigures {
  readonly ply: number;
  readonly face: FaceSide;
  readonly wantedMm2: number;
  /** Cloth of its pieces. */
  readonly clothMm2: number;
  readonly warningDeg: number;
  readonly lockingDeg: number;
  readonly view: DrapeView;
  /** 3 numbers per point on the part, along the edges of its darts. */
  readonly dartsMm: Float32Array;
}

export interface CutPlies {
  readonly pieces: readonly PlyPiece[];
  readonly plies: readonly CutPly[];
  readonly start: PlanPoint;
  readonly proposed: PlanPoint;
  /** The frame that the start is given in. */
  readonly datum: PartDatum;
}

export type CuttingProgress = (doing: string, share: number) => void;

/** So far past the rim the net runs on, in steps: a whole cell at any turn, and one more. */
const beyondSteps = 2.6;

/**
 * @param mesh the measured facets, mm
 * @throws Problem `drape.*`
 */
export function cutPlies(
  mesh: IndexedMesh,
  measurement: Pick<Measurement, 'reach' | 'kind' | 'draftDeg'>,
  choices: CuttingChoices,
  progress: CuttingProgress,
): CutPlies {
  const { plies, stepMm, allowanceMm } = choices;
  const [first] = plies;
  if (first === undefined)
    throw new Problem(
      'drape.noPlies',
      'The stack has no plies, so there is nothing to cut. Add plies at Ply schedule.',
    );
  const datum = partDatum(mesh, choices.pull);
  const surfaceOf = surfacesOf(mesh, measurement, { allowanceMm, beyondMm: beyondSteps * stepMm });
  progress('looking for the best start', 0);
  const show = surfaceOf(first);
  const proposed = bestStart(show, datum, first.fiberDeg, first.limits, stepMm) ?? {
    alongMm: 0,
    acrossMm: 0,
  };
  const start = choices.start ?? proposed;
  const pieces: PlyPiece[] = [];
  const cut: CutPly[] = [];
  plies.forEach((ply, index) => {
    progress(`laying ply ${ply.ply}`, (index + 0.5) / plies.length);
    const surface = index === 0 ? show : surfaceOf(ply);
    const done = cutPly(surface, datum, ply, start, choices, index);
    pieces.push(...done.pieces);
    cut.push(done.ply);
  });
  return { pieces, plies: cut, start, proposed, datum };
}

/** The surface of each ply; what all plies of one face have in common is worked out once. */
function surfacesOf(
  mesh: IndexedMesh,
  measurement: Parameters<typeof faceOf>[2],
  widths: StripWidths,
): (ply: Pick<PlyToCut, 'face' | 'depthMm'>) => DrapeSurface {
  const twin = twinsOf(mesh);
  const prepared = (side: FaceSide) => {
    const face = faceOf(mesh, twin, measurement, side);
    return { face, ways: vertexWays(face), closable: closableFace(face, widths) };
  };
  const sides = new Map<FaceSide, ReturnType<typeof prepared>>();
  return ({ face: side, depthMm }) => {
    const own = sides.get(side) ?? prepared(side);
    sides.set(side, own);
    return closeFace(own.closable, movedIn(own.face, own.ways, side === 'show' ? depthMm : -depthMm));
  };
}

interface Part {
  readonly kept: KeptSide | null;
  readonly fiberDeg: number;
  readonly mirrored: boolean;
}

function cutPly(
  surface: DrapeSurface,
  datum: PartDatum,
  ply: PlyToCut,
  start: PlanPoint,
  { stepMm, overlapMm, seamMm }: CuttingChoices,
  index: number,
): { readonly pieces: readonly PlyPiece[]; readonly ply: CutPly } {
  const place = startPlace(surface, datum, start);
  const cutRad = (ply.limits.lockingDeg * Math.PI) / 180;
  const pieces: PlyPiece[] = [];
  const shears: ShearFigures[] = [];
  const darts: number[] = [];
  let shown: Drape | null = null;
  for (const { kept, fiberDeg, mirrored } of partsOf(surface, datum, ply, seamMm, overlapMm)) {
    const warpRad = warpAngleAt(surface, datum, place, fiberDeg);
    // Turned from ply to ply, so that no dart lies on the one below.
    const first = index % 2 === 0 ? 'warp' : 'weft';
    const drape = drapePly(surface, { stepMm, start: place, warpRad, cutRad, first }, kept);
    const { fabric, faceDown } = ply;
    const own = { ply: ply.ply, fabric, fiberDeg, faceDown, mirrored, overlapMm, firstLetter: pieces.length };
    pieces.push(...piecesOf(drape, datum, own));
    shears.push(shearFigures(drape, ply.limits.warningDeg));
    darts.push(...dartPoints(drape));
    shown ??= drape;
  }
  const { warningDeg, lockingDeg } = ply.limits;
  return {
    pieces,
    ply: {
      ...summed(shears),
      ply: ply.ply,
      face: ply.face,
      wantedMm2: wantedMm2(surface),
      clothMm2: pieces.reduce((sum, { outlineMm }) => sum + outlineAreaMm2(outlineMm), 0),
      warningDeg,
      lockingDeg,
      view: drapeView(shown!, ply.limits),
      dartsMm: Float32Array.from(darts),
    },
  };
}

/** Halves at the center line for a mirrored pair; top and sides at a seam. */
function partsOf(
  { positions, rim, region: regions, facets }: DrapeSurface,
  { middleMm, across, pull }: PartDatum,
  { fiberDeg, secondHalfDeg }: PlyToCut,
  seamMm: number | null,
  overlapMm: number,
): readonly Part[] {
  const halves: readonly Part[] =
    secondHalfDeg === null
      ? [{ kept: null, fiberDeg, mirrored: false }]
      : ([1, -1] as const).map((side) => ({
          kept: (point: Float64Array, at: number) => side * along(across, point, at, middleMm) + 1e-9,
          fiberDeg: side === 1 ? fiberDeg : secondHalfDeg,
          mirrored: side === -1,
        }));
  if (seamMm === null) return halves;
  const origin: Vec3 = [0, 0, 0];
  const rimAt = Math.min(...Array.from(rim, (vertex) => along(pull, positions, 3 * vertex, origin)));
  const seamAt = rimAt + seamMm;
  let top = -Infinity;
  for (let facet = 0; facet < regions.length; facet++)
    if (regions[facet] === region.face)
      top = Math.max(top, along(pull, positions, 3 * facets[3 * facet]!, origin));
  if (seamAt >= top)
    throw new Problem(
      'drape.seam',
      `A seam ${seamMm.toFixed(1)} mm over the rim lies over the part, which stands ${(top - rimAt).toFixed(1)} mm. Enter less, or leave it empty.`,
    );
  return halves.flatMap((half) =>
    ([1, -1] as const).map((side) => ({
      ...half,
      kept: (point: Float64Array, at: number) =>
        Math.min(
          half.kept === null ? Infinity : half.kept(point, at),
          side * (along(pull, point, at, origin) - seamAt) + (side === -1 ? overlapMm : 1e-9),
        ),
    })),
  );
}

const along = (way: Vec3, points: Float64Array, at: number, from: Vec3): number =>
  way[0] * (points[at]! - from[0]) +
  way[1] * (points[at + 1]! - from[1]) +
  way[2] * (points[at + 2]! - from[2]);

function summed(shears: readonly ShearFigures[]): ShearFigures {
  const coveredMm2 = shears.reduce((sum, one) => sum + one.coveredMm2, 0);
  const mean = (of: (one: ShearFigures) => number) =>
    coveredMm2 > 0 ? shears.reduce((sum, one) => sum + of(one) * one.coveredMm2, 0) / coveredMm2 : 0;
  return {
    coveredMm2,
    largestShearDeg: Math.max(...shears.map(({ largestShearDeg }) => largestShearDeg)),
    shareOverWarning: mean(({ shareOverWarning }) => shareOverWarning),
    meanThickness: mean(({ meanThickness }) => meanThickness),
    largestThickness: Math.max(...shears.map(({ largestThickness }) => largestThickness)),
  };
}
