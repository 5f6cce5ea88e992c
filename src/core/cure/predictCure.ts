/**
 * One prediction of the oven run for the page and the headless report: the band of dehydration through the closed mold,
 * reduced to what is shown. Plain data in and out, so that it can be worked out on any thread.
 */
import type { Vec3 } from '../mesh/types';
import type { PourChoices } from '../stone/pours/pourChoices';
import { demoldAfterS } from './coolDown';
import type { Curve } from './curve';
import { dehydrationTreatments, type DehydrationTreatment } from './dehydration';
import { supplierCure, type SupplierPoint } from './dose';
import type { FreeWaterChoices } from './freeWater';
import { glassTransitionC, type GlassConstants } from './glassTransition';
import { usualHeatOptions, type HeatCase } from './heatCase';
import type { HeatFrame } from './heatFrames';
import { runHeat, type HeatRun, type WaterAt } from './heatRun';
import type { CureKinetics } from './kinetics';
import { laminateAnswers, type PlaceAnswer } from './laminateAnswers';
import { findPlace, mostPlaceOffMm, voxelMiddleMm, type LaminatePlace } from './laminatePlace';
import { curveAtPlace } from './laminateRecord';
import type { LaminateHeat, StoneHeat } from './moldMaterials';
import type { MoldVoxels } from './moldVoxels';
import { neededDwell } from './neededDwell';
import { ovenAirCurve, type OvenBehavior } from './ovenAir';
import { programOnDial, type Dwell, type OvenProgram } from './ovenProgram';
import type { SurfaceChoices } from './surfaceChoices';

export interface CureChoices {
  readonly pour: PourChoices;
  /** Edge of the voxels of the answer, mm. */
  readonly voxelMm: number;
  readonly stone: StoneHeat;
  readonly laminate: LaminateHeat;
  readonly surface: SurfaceChoices;
  readonly water: FreeWaterChoices;
  /** Factor on the rate of dehydration; 1 is as published. */
  readonly dehydrationRateFactor: number;
  readonly program: OvenProgram;
  readonly oven: OvenBehavior;
  /** Empty: no dose is counted. */
  readonly supplier: readonly SupplierPoint[];
  readonly kinetics: CureKinetics | null;
  readonly glass: GlassConstants | null;
  readonly demoldC: number;
  /** Where a thermocouple sits whose curve is wanted too, a point in the pull frame; null: nowhere. */
  readonly thermocouple: LaminatePlace | null;
}

/** Temperatures in the plane through the coldest place of the laminate, x across and z along the pull. */
export interface HeatSlice {
  readonly nx: number;
  readonly nz: number;
  readonly sizeMm: readonly [number, number];
  /** Share of laminate per cell, i + nx k. */
  readonly laminateShare: Float32Array;
  /** Not 0 where the cell lies in the mold. */
  readonly inside: Uint8Array;
  readonly timesS: readonly number[];
  /** Per time, in the same order as the shares. */
  readonly temperatureC: readonly Float32Array[];
}

export interface PredictedRun {
  readonly treatment: DehydrationTreatment;
  readonly coldest: PlaceAnswer;
  readonly hottest: PlaceAnswer;
  /** Middle of the coldest place's voxel, pull frame. */
  readonly coldestAtMm: Vec3;
  /** At the thermocouple; null where none was asked for, and for a point that is not at the laminate. */
  readonly thermocouple: Curve | null;
  readonly spreadK: number;
  readonly spreadAtS: number;
  readonly stonePeakC: number;
  readonly stoneTurnedMm: number;
  readonly crystalWaterLostPercent: number;
  readonly freeWaterLeftG: number;
  readonly water: readonly WaterAt[];
  readonly tgC: number | null;
  /** Last dwell that meets the supplier's minimum at the coldest place; null without one, or when none does. */
  readonly neededDwellS: number | null;
  /** From the end of the heating; null when it does not get there within the time looked at. */
  readonly demoldAfterS: number | null;
  readonly slice: HeatSlice;
}

export interface CurePrediction {
  /** A coarse one shows temperatures and dose at once; dwells come with the refined one. */
  readonly stage: 'coarse' | 'refined';
  readonly voxelMm: number;
  readonly counts: Vec3;
  readonly air: Curve;
  readonly dwells: readonly Dwell[];
  /** End of the last dwell. */
  readonly heatedS: number;
  /** In the order of the band: none, vapor-held, open air. */
  readonly runs: readonly PredictedRun[];
}

/** Voxels of the coarse answer, and of the search for the dwell. */
export const coarseVoxelMm = 4;
/** A mold of stone is under its demold temperature within this, s. */
const longestCoolingS = 16 * 3600;
/** Straight lines between fields this far apart miss the laminate by about half a kelvin, a corner of the stone by three. */
const frameAfterK = 3;
/** Fields of one run: room for them, B, and how many are kept in any room. */
const frameBytes = 96_000_000;
const [leastFrames, mostFrames] = [16, 120];

export type OnCureProgress = (doing: string, share: number) => void;
/** Takes the whole fields of each run, which the prediction itself does not carry. */
export type OnHeatFrames = (
  treatment: DehydrationTreatment,
  voxels: MoldVoxels,
  frames: readonly HeatFrame[],
) => void;

/** The case of a prediction with one treatment of dehydration. */
export function heatCaseOf(
  choices: CureChoices,
  voxels: MoldVoxels,
  treatment: DehydrationTreatment,
  untilS: number,
): HeatCase {
  return {
    voxels,
    stone: choices.stone,
    laminate: choices.laminate,
    surface: choices.surface,
    water: choices.water,
    dehydration: { treatment, rateFactor: choices.dehydrationRateFactor },
    startC: choices.program.startC,
    air: ovenAirCurve(choices.program, choices.oven, untilS),
    supplier: choices.supplier.length === 0 ? null : supplierCure(choices.supplier),
    kinetics: choices.kinetics,
  };
}

/**
 * @param voxelsAt the closed mold at a voxel size
 * @throws Problem with a code `cure.*` for choices that cannot be run
 */
export function predictCure(
  choices: CureChoices,
  voxelsAt: (voxelMm: number) => MoldVoxels,
  stage: CurePrediction['stage'],
  onProgress: OnCureProgress = () => {},
  onFrames: OnHeatFrames = () => {},
): CurePrediction {
  const { dwells, heatedS } = programOnDial(choices.program);
  const voxelMm = stage === 'coarse' ? Math.max(coarseVoxelMm, choices.voxelMm) : choices.voxelMm;
  onProgress('filling the mold', 0);
  const voxels = voxelsAt(voxelMm);
  const searched = stage === 'refined' && choices.supplier.length > 0;
  const coarse = searched ? voxelsAt(Math.max(coarseVoxelMm, choices.voxelMm)) : null;
  const untilS = heatedS + longestCoolingS;
  let plane: number | null = null;
  const runs = dehydrationTreatments.map((treatment, i): PredictedRun => {
    const one = heatCaseOf(choices, voxels, treatment, untilS);
    const run = runHeat(one, {
      ...usualHeatOptions,
      untilS,
      frameEveryS: Math.max(300, heatedS / 60),
      frameAfterK,
      mostFrames: Math.min(
        mostFrames,
        Math.max(leastFrames, Math.floor(frameBytes / (4 * voxels.half.length))),
      ),
      stopWhen: ({ timeS, hottestLaminateC }) => timeS > heatedS && hottestLaminateC < choices.demoldC,
      onProgress: (share) => onProgress('heating the mold', (i + share) / dehydrationTreatments.length),
    });
    onFrames(treatment, voxels, run.frames);
    const answers = laminateAnswers(one, run, dwells);
    const voxel = run.laminate.voxels[answers.coldest.place]!;
    plane ??= Math.floor(voxel / voxels.nx) % voxels.ny;
    const degree = answers.coldest.degreeOfCure;
    return {
      treatment,
      coldest: answers.coldest,
      hottest: answers.hottest,
      coldestAtMm: voxelMiddleMm(voxels, voxel),
      thermocouple: thermocoupleCurve(choices, voxels, run),
      spreadK: answers.spreadK,
      spreadAtS: answers.spreadAtS,
      stonePeakC: answers.stonePeakC,
      stoneTurnedMm: answers.stoneTurnedMm,
      crystalWaterLostPercent: answers.crystalWaterLostPercent,
      freeWaterLeftG: answers.freeWaterLeftG,
      water: run.water,
      tgC: degree === null || choices.glass === null ? null : glassTransitionC(degree, choices.glass),
      neededDwellS: coarse === null ? null : dwellFor(choices, coarse, treatment),
      demoldAfterS: demoldAfterS(run.laminate, heatedS, choices.demoldC, choices.program.roomC),
      slice: sliceOf(voxels, run, plane),
    };
  });
  onProgress('heating the mold', 1);
  return {
    stage,
    voxelMm,
    counts: [voxels.nx, voxels.ny, voxels.nz],
    air: ovenAirCurve(choices.program, choices.oven, untilS),
    dwells,
    heatedS,
    runs,
  };
}

function dwellFor(choices: CureChoices, voxels: MoldVoxels, treatment: DehydrationTreatment): number | null {
  const one = heatCaseOf(choices, voxels, treatment, programOnDial(choices.program).heatedS);
  return neededDwell(one, choices.program, choices.oven, {
    ...usualHeatOptions,
    longestStepS: 300,
    toleranceK: 1,
    recordEveryS: 600,
  }).dwellS;
}

function thermocoupleCurve(
  { thermocouple }: CureChoices,
  voxels: MoldVoxels,
  { laminate }: HeatRun,
): Curve | null {
  if (thermocouple === null) return null;
  const { place, offMm } = findPlace(voxels, laminate, thermocouple);
  return offMm > mostPlaceOffMm ? null : curveAtPlace(laminate, place);
}

function sliceOf(
  { nx, ny, nz, sizeMm, half, laminateShare }: MoldVoxels,
  run: HeatRun,
  plane: number,
): HeatSlice {
  const cut = <Into extends Float32Array | Uint8Array>(from: ArrayLike<number>, into: Into): Into => {
    for (let k = 0; k < nz; k++)
      for (let i = 0; i < nx; i++) into[i + nx * k] = from[i + nx * (plane + ny * k)]!;
    return into;
  };
  return {
    nx,
    nz,
    sizeMm: [sizeMm[0], sizeMm[2]],
    laminateShare: cut(laminateShare, new Float32Array(nx * nz)),
    inside: cut(half, new Uint8Array(nx * nz)),
    timesS: run.frames.map(({ timeS }) => timeS),
    temperatureC: run.frames.map(({ temperatureC }) => cut(temperatureC, new Float32Array(nx * nz))),
  };
}
