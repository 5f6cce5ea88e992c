import { enclosedVolume } from '../../mesh/enclosedVolume';
import { integrate } from '../../mesh/integrals';
import type { IndexedMesh, Vec3 } from '../../mesh/types';
import type { MoldGeometry } from '../moldGeometry';
import { castByColumns, type CastColumns } from './castByColumns';
import { castBySolids, type CastHalf, type CastSolids } from './castBySolids';
import { columnMaterial, type ColumnMaterial } from './columnMaterial';
import type { KnifeEdges } from './knifeEdges';
import { columnRegion } from './openColumns';
import { partPattern, planAreaMm2, type Parted } from './parting';
import { checkPourChoices, type PourChoices } from './pourChoices';
import { intoFrame, outOfFrame, pullFrame, turnedBack, type PullFrame } from './pullFrame';
import { soundBodies } from './soundness';
import { rimOutline } from './rimOutline';
import { weakStone } from './thinnestStone';

/** What the pours show beside their volumes; places in the part's own axes. */
export interface PourFindings {
  /** Stone of the positive between two walls of one column: it locks the half to the pattern and to the laminate. */
  readonly lockingMm3: number;
  readonly lockingAtMm: Vec3 | null;
  readonly knifeEdges: { readonly negative: KnifeEdges | null; readonly positive: KnifeEdges | null };
  /** Keys that found room on the land; fewer than wanted when the land is too narrow. */
  readonly keysPlaced: number;
  /** Flakes at walls thinner than the columns of the parting, given back to the half that they lie in. */
  readonly strayPieces: number;
  /** The rim lies in one plane, so a plain board seals it. */
  readonly flatRim: boolean;
}

export interface CastMold {
  readonly geometry: MoldGeometry;
  readonly findings: PourFindings;
  /** Closed meshes in the part's own axes; null when the volumes were integrated along the pull. */
  readonly halves: { readonly negative: IndexedMesh; readonly positive: IndexedMesh } | null;
}

export type OnCastProgress = (doing: string, share: number) => void;

/** Columns of the grid: 513 along each side for the parting of solids, 1025 for integration. */
const solidLevels = 9;
const columnLevels = 10;
/**
 * A body that runs through itself encloses more, counted with its overlaps, than its columns hold, and booleans would
 * count the overlap twice. Above this share of the box that matters; the columns of a thin shell are good to half of it.
 */
const mostTwiceShare = 1e-3;
/** With fewer sound columns than this share their mean tells nothing of the others. */
const leastSoundShare = 0.5;
/** Parts of the box that may get lost before the booleans are not believed. */
const mostLostShare = 1e-3;

/**
 * Box, both stone halves, their volumes, faces and weakest places. By solid booleans on a sound mesh, else by integration
 * along the pull; `geometry.method` and `geometry.why` say which and why. `prepareSolids()` has been awaited before.
 * @param mesh the part in mm
 * @throws Problem `pull.zero`, `pours.*` for choices that make no box
 */
export function castHalves(
  mesh: IndexedMesh,
  choices: PourChoices,
  onProgress: OnCastProgress = () => {},
): CastMold {
  checkPourChoices(choices);
  onProgress('finding the parting', 0);
  const frame = pullFrame(mesh, choices.pull);
  const pattern: IndexedMesh = { positions: intoFrame(frame, mesh.positions), facets: mesh.facets };
  const soundness = soundBodies(pattern);
  if (!soundness.sound) return integrated(pattern, frame, choices, soundness.why, onProgress);

  onProgress('finding the parting', 0.1);
  const parted = partPattern(pattern, choices, solidLevels);
  const material = columnMaterial(pattern, parted.grid, parted.box.partingMm);
  if (soundness.bodies.length === 1) {
    const signedMm3 = integrate(pattern).volume;
    const boxMm3 = parted.box.aboveMm3 + parted.box.belowMm3;
    if (signedMm3 - material.materialMm3 > mostTwiceShare * boxMm3) {
      const twice = `The surface runs through itself: it encloses ${ml(signedMm3)} ml counted with overlaps, and ${ml(material.materialMm3)} ml without.`;
      return integrated(pattern, frame, choices, twice, onProgress);
    }
  }
  const cast = castBySolids(soundness.bodies, parted, choices, (share) =>
    onProgress('cutting the two halves', 0.2 + 0.45 * share),
  );
  const checked = volumeCheck(parted, cast);
  if (Math.abs(checked - 1) > mostLostShare) {
    const lost = `The solids do not add up to the box (${(100 * checked).toFixed(2)} %).`;
    return integrated(pattern, frame, choices, lost, onProgress);
  }
  return bySolids(frame, parted, { bodyCount: soundness.bodies.length, material, cast, checked }, onProgress);
}

interface SolidCast {
  readonly bodyCount: number;
  readonly material: ColumnMaterial;
  readonly cast: CastSolids;
  /** Volume of all parts over that of the box. */
  readonly checked: number;
}

/** Volumes, faces and weakest places of halves that solid booleans gave. */
function bySolids(
  frame: PullFrame,
  parted: Parted,
  { bodyCount, material, cast, checked }: SolidCast,
  onProgress: OnCastProgress,
): CastMold {
  const weakNegative = weakStone(cast.negative, parted.grid.pitchMm, (share) =>
    onProgress('finding the thinnest stone', 0.65 + 0.15 * share),
  );
  const weakPositive = weakStone(cast.positive, parted.grid.pitchMm, (share) =>
    onProgress('finding the thinnest stone', 0.8 + 0.15 * share),
  );
  const cavityMm3 = cavityOf(
    parted,
    cast.negative.volumeMm3 + cast.keysMm3 + cast.prySlotsMm3 / 2,
    cast.patternMm3 - material.belowPartingMm3 + cast.voidMm3,
  );
  const inPart = (half: CastHalf): IndexedMesh => ({
    positions: outOfFrame(frame, half.mesh.positions),
    facets: half.mesh.facets,
  });
  const geometry: MoldGeometry = {
    method: 'solid booleans',
    why:
      bodyCount === 1
        ? 'The mesh is one closed body, and its volume agrees with its columns along the pull.'
        : `The mesh is ${bodyCount} closed bodies, joined into one solid.`,
    box: parted.box.box,
    boxTurnDeg: frame.turnDeg,
    negativeMm3: cast.negative.volumeMm3,
    positiveMm3: cast.positive.volumeMm3,
    envelopeMm3: cast.patternMm3 + cast.voidMm3 + cavityMm3,
    cavityMm3,
    patternMm3: cast.patternMm3,
    errorMm3: { pattern: 0, others: 0 },
    gapFillMm3: cast.voidMm3 + cast.prySlotsMm3,
    negativeFaceMm2: cast.negative.faceMm2,
    positiveFaceMm2: cast.positive.faceMm2,
    planAreaMm2: planAreaMm2(parted),
    rimOutlineMm: outlineInPart(frame, parted),
    thinnest:
      weakNegative.thinnest === null || weakPositive.thinnest === null
        ? null
        : {
            negative: { ...weakNegative.thinnest, atMm: pointOut(frame, weakNegative.thinnest.atMm) },
            positive: { ...weakPositive.thinnest, atMm: pointOut(frame, weakPositive.thinnest.atMm) },
          },
    volumeCheck: checked,
  };
  onProgress('finding the thinnest stone', 1);
  return {
    geometry,
    findings: {
      lockingMm3: Math.max(0, material.gapMm3 - cast.voidMm3),
      lockingAtMm: material.gapAtMm === null ? null : pointOut(frame, material.gapAtMm),
      knifeEdges: {
        negative: knifeOut(frame, weakNegative.knifeEdges),
        positive: knifeOut(frame, weakPositive.knifeEdges),
      },
      keysPlaced: cast.keys.length,
      strayPieces: cast.strayPieces,
      flatRim: parted.heights.flatLandMm !== null,
    },
    halves: { negative: inPart(cast.negative), positive: inPart(cast.positive) },
  };
}

function integrated(
  pattern: IndexedMesh,
  frame: PullFrame,
  choices: PourChoices,
  why: string,
  onProgress: OnCastProgress,
): CastMold {
  onProgress('integrating along the pull', 0.2);
  const parted = partPattern(pattern, choices, columnLevels);
  onProgress('integrating along the pull', 0.5);
  const cast = castByColumns(parted, choices);
  onProgress('integrating along the pull', 1);
  const { material } = cast;
  const cavityMm3 = cavityOf(
    parted,
    cast.negativeMm3 + cast.keysMm3 + cast.prySlotsMm3 / 2,
    material.materialMm3 - material.belowPartingMm3,
  );
  const boxMm3 = parted.box.aboveMm3 + parted.box.belowMm3;
  const { patternMm3, errorMm3 } = patternByColumns(pattern, cast, boxMm3);
  const broken = `${(100 * material.brokenShare).toFixed(1)} % of the columns along the pull run into holes or turned facets.`;
  return {
    geometry: {
      method: 'integration along the pull',
      why: material.brokenShare < 0.0005 ? why : `${why} ${broken}`,
      box: parted.box.box,
      boxTurnDeg: frame.turnDeg,
      negativeMm3: cast.negativeMm3,
      positiveMm3: cast.positiveMm3,
      envelopeMm3: patternMm3 + cavityMm3,
      cavityMm3,
      patternMm3,
      errorMm3,
      gapFillMm3: cast.prySlotsMm3,
      negativeFaceMm2: cast.negativeFaceMm2,
      positiveFaceMm2: cast.positiveFaceMm2,
      planAreaMm2: planAreaMm2(parted),
      rimOutlineMm: outlineInPart(frame, parted),
      thinnest: null,
      volumeCheck: (cast.negativeMm3 + cast.positiveMm3 + patternMm3 + cast.prySlotsMm3) / boxMm3,
    },
    findings: {
      lockingMm3: material.gapMm3,
      lockingAtMm: material.gapAtMm === null ? null : pointOut(frame, material.gapAtMm),
      knifeEdges: { negative: null, positive: null },
      keysPlaced: cast.keys.length,
      strayPieces: 0,
      flatRim: parted.heights.flatLandMm !== null,
    },
    halves: null,
  };
}

/**
 * The pattern's volume where the halves are integrated: what its surface encloses, as everywhere in the workbook, unless
 * that counts overlaps twice or holes leave it open; then the columns' own. The columns are as far off as their two grids and
 * the surface disagree, and each of them that runs into a hole by as much as the others hold in the mean.
 */
function patternByColumns(
  pattern: IndexedMesh,
  { patternMm3: asideMm3, material }: CastColumns,
  boxMm3: number,
): Pick<MoldGeometry, 'patternMm3' | 'errorMm3'> {
  const enclosed = enclosedVolume(pattern);
  const { materialMm3, brokenShare } = material;
  const inHolesMm3 = (brokenShare * materialMm3) / Math.max(1 - brokenShare, leastSoundShare);
  const disagreeMm3 = Math.abs(asideMm3 - materialMm3) + inHolesMm3;
  if (enclosed === null || enclosed.volume - asideMm3 > enclosed.openBy + mostTwiceShare * boxMm3) {
    return { patternMm3: asideMm3, errorMm3: { pattern: disagreeMm3, others: disagreeMm3 } };
  }
  const others = Math.max(disagreeMm3, Math.abs(materialMm3 - enclosed.volume));
  return { patternMm3: enclosed.volume, errorMm3: { pattern: enclosed.openBy, others } };
}

/**
 * Inside the pattern's inner skin, up to the level of the rim (its median where it rises and falls): what stands above that
 * level and is neither the negative, with its dimples and slots filled, nor the pattern. With a rim that is not flat the
 * land beside the pattern rises and falls too, so only the columns of the plan are summed.
 */
function cavityOf(parted: Parted, filledNegativeMm3: number, patternAboveMm3: number): number {
  const { box, heights, grid, open, columns } = parted;
  if (heights.flatLandMm !== null) return Math.max(0, box.aboveMm3 - filledNegativeMm3 - patternAboveMm3);
  let underShowMm = 0;
  for (let column = 0; column < open.region.length; column++) {
    if (open.region[column] === columnRegion.outside) continue;
    const top = columns.topMm[column]!;
    underShowMm += (top > -Infinity ? top : heights.heightMm[column]!) - box.partingMm;
  }
  return Math.max(0, underShowMm * grid.pitchMm ** 2 - patternAboveMm3);
}

function volumeCheck({ box }: Parted, cast: CastSolids): number {
  const parts =
    cast.negative.volumeMm3 + cast.positive.volumeMm3 + cast.patternMm3 + cast.voidMm3 + cast.prySlotsMm3;
  return parts / (box.aboveMm3 + box.belowMm3);
}

/** Two halves of one enclosure are held rim to rim in their own axes, however each box is turned. */
function outlineInPart(frame: PullFrame, parted: Parted): MoldGeometry['rimOutlineMm'] {
  const outline = rimOutline(parted);
  return outline && turnedBack(frame, outline);
}

const ml = (mm3: number) => (mm3 / 1000).toFixed(2);

function pointOut(frame: PullFrame, point: readonly [number, number, number]): Vec3 {
  const [x, y, z] = outOfFrame(frame, Float64Array.from(point));
  return [x!, y!, z!];
}

function knifeOut(frame: PullFrame, knife: KnifeEdges | null): KnifeEdges | null {
  return knife === null ? null : { ...knife, atMm: pointOut(frame, knife.atMm) };
}
