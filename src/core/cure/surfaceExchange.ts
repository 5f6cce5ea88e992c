/**
 * Heat between the oven and every open face. Air film, radiation and evaporation meet at the face itself, which is found
 * by Newton's method; then all of it is straightened into "so much at this voxel temperature, so much less per kelvin" for
 * the implicit step.
 */
import { faceSides, type OpenFaces } from './conductionGrid';
import { kelvin } from './dose';
import { evaporationTable, lookUpEvaporation } from './evaporationTable';
import { radiationWPerM2K, type SurfaceChoices } from './surfaceChoices';
import { evaporationJPerKg } from './waterVapor';

/** Per face: W at the voxel's temperature before the step, and change per kelvin of the voxel, W/K. */
export interface SurfaceExchange {
  readonly faces: OpenFaces;
  readonly choices: SurfaceChoices;
  /** See `evaporationTable`. */
  readonly evaporationAt: Float64Array;
  readonly faceC: Float64Array;
  readonly intoVoxelW: Float64Array;
  readonly intoVoxelPerK: Float64Array;
  readonly evaporationW: Float64Array;
  readonly evaporationPerK: Float64Array;
}

export function surfaceExchange(faces: OpenFaces, choices: SurfaceChoices, startC: number): SurfaceExchange {
  const count = faces.cell.length;
  return {
    faces,
    choices,
    evaporationAt: evaporationTable(choices.filmWPerM2K, choices.airVaporPa),
    faceC: new Float64Array(count).fill(startC),
    intoVoxelW: new Float64Array(count),
    intoVoxelPerK: new Float64Array(count),
    evaporationW: new Float64Array(count),
    evaporationPerK: new Float64Array(count),
  };
}

/** What the exchange needs to know of the mold right now. */
export interface MoldSurface {
  /** Before the step, per voxel. */
  readonly temperatureC: Float64Array;
  /** Rise per second in the step before, per voxel: where the middle of this step will be. */
  readonly risePerS: Float32Array;
  readonly conductivityWPerMK: Float32Array;
  /** Free water per voxel, and what it is measured against. */
  readonly heldKg: Float64Array;
  readonly fullKg: Float32Array;
  /** A face is wet all over from this share of its voxel's full water on; null when nothing can evaporate. */
  readonly wetFromShare: number | null;
}

/** A change by so little leaves less than a thousandth of a kelvin to the next one. */
const closeEnoughK = 0.05;

/** How wet the faces of a voxel are, 0 to 1. */
function wetness({ heldKg, fullKg, wetFromShare }: MoldSurface, voxel: number): number {
  const full = fullKg[voxel]!;
  return wetFromShare === null || full === 0 ? 0 : Math.min(1, heldKg[voxel]! / (wetFromShare * full));
}

/** Straightens all faces for a step of `stepS` in air of `airC`. */
export function straighten(exchange: SurfaceExchange, mold: MoldSurface, airC: number, stepS: number): void {
  const { faces, choices, evaporationAt, faceC } = exchange;
  const { filmWPerM2K, emissivity, trayUnder, trayWPerM2K, sealed } = choices;
  const onTray = faceSides.map((side) => side === trayUnder);
  const tight = faceSides.map((side) => side === trayUnder || sealed.includes(side));
  const airK = airC + kelvin;
  const dried = { wPerM2: 0, perK: 0 };
  for (let face = 0; face < faceC.length; face++) {
    const voxel = faces.cell[face]!;
    const side = faces.side[face]!;
    const tray = onTray[side]!;
    const inside = mold.conductivityWPerMK[voxel]! / faces.depthM[faces.axis[face]!]!;
    const film = tray ? trayWPerM2K : filmWPerM2K;
    const emits = tray ? 0 : emissivity;
    const wet = tight[side]! ? 0 : wetness(mold, voxel);
    const aheadK = 0.5 * stepS * mold.risePerS[voxel]!;
    const voxelC = mold.temperatureC[voxel]! + aheadK;
    // From the middle of the step before to that of this one, about.
    let at = faceC[face]! + 2 * aheadK;
    dried.wPerM2 = 0;
    dried.perK = 0;
    let outsidePerK = film;
    for (let turn = 0; turn < 8; turn++) {
      const atK = at + kelvin;
      if (wet > 0) lookUpEvaporation(evaporationAt, at, dried);
      const gained = (film + radiationWPerM2K(emits, airK, atK)) * (airC - at);
      outsidePerK = film + radiationWPerM2K(emits, atK, atK);
      const change =
        (inside * (voxelC - at) + gained - wet * dried.wPerM2) / (inside + outsidePerK + wet * dried.perK);
      at += change;
      dried.wPerM2 += dried.perK * change;
      if (Math.abs(change) < closeEnoughK) break;
    }
    faceC[face] = at;
    const area = faces.areaM2[face]!;
    const driedPerK = wet * dried.perK;
    const facePerVoxelK = inside / (inside + outsidePerK + driedPerK);
    const perK = inside * (facePerVoxelK - 1);
    exchange.intoVoxelPerK[face] = area * perK;
    exchange.intoVoxelW[face] = area * (inside * (at - voxelC) - perK * aheadK);
    exchange.evaporationPerK[face] = area * driedPerK * facePerVoxelK;
    exchange.evaporationW[face] = area * (wet * dried.wPerM2 - driedPerK * facePerVoxelK * aheadK);
  }
}

export interface SurfaceHeat {
  /** Convection and radiation onto the faces, W, mean over the step. */
  readonly fromOvenW: number;
  /** Of it, what evaporates water, W. */
  readonly evaporationW: number;
  /** Water leaving through the faces of each half, kg/s, by half code. */
  readonly waterKgPerS: readonly [number, number, number];
}

/** What went through the faces in a step whose rise is known. */
export function surfaceHeat(exchange: SurfaceExchange, half: Uint8Array, riseK: Float64Array): SurfaceHeat {
  const { faces, faceC, intoVoxelW, intoVoxelPerK } = exchange;
  let intoMold = 0;
  let evaporationW = 0;
  const waterKgPerS: [number, number, number] = [0, 0, 0];
  for (let face = 0; face < faceC.length; face++) {
    const voxel = faces.cell[face]!;
    const midway = 0.5 * riseK[voxel]!;
    intoMold += intoVoxelW[face]! + intoVoxelPerK[face]! * midway;
    const dried = Math.max(0, exchange.evaporationW[face]! + exchange.evaporationPerK[face]! * midway);
    evaporationW += dried;
    waterKgPerS[half[voxel]!]! += dried / evaporationJPerKg(faceC[face]!);
  }
  return { fromOvenW: intoMold + evaporationW, evaporationW, waterKgPerS };
}
