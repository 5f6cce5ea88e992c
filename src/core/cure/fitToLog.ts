/**
 * What a log tells of the mold: air film and dampness that make the prediction follow it, by least squares, once for each
 * treatment of the dehydration. The treatment that follows best is chosen only when it does so clearly.
 */
import { boundedLeastSquares } from '../numeric/boundedLeastSquares';
import { Problem } from '../problem';
import { endOf, valueAt, type Curve } from './curve';
import { dehydrationTreatments, type DehydrationTreatment } from './dehydration';
import { usualHeatOptions, type HeatCase } from './heatCase';
import { runHeat } from './heatRun';
import { curveAtPlace, extremePlaces } from './laminateRecord';

export interface TreatmentFit {
  readonly treatment: DehydrationTreatment;
  readonly filmWPerM2K: number;
  /** Share of the mix's free water that the stone must have held. */
  readonly heldShare: number;
  readonly misfitK: number;
  readonly predicted: Curve;
}

export interface LogFit {
  /** In the order of `dehydrationTreatments`. */
  readonly fits: readonly TreatmentFit[];
  readonly best: TreatmentFit;
  /** Whether the log tells the treatments apart. */
  readonly chosen: boolean;
}

const filmBoundsWPerM2K = [2, 80] as const;
/** The best treatment must misfit by less than this share of the next best, and by this much less, K. */
const clearShare = 0.7;
const clearK = 0.3;
/** Readings compared: more tell nothing new. */
const mostReadings = 120;
const leastReadings = 8;

export interface LogToFit {
  /** At the laminate; seconds from the start of the oven. */
  readonly laminate: Curve;
  /** Air beside the mold, where it was logged; else the case's own air. */
  readonly air: Curve | null;
  /** Place in the laminate record that the thermocouple sits at; null: the coldest. */
  readonly place: number | null;
}

/**
 * @param one its voxels should be coarse (about 4 mm): some thirty runs
 * @throws Problem `log.fitTooShort` when the log covers too little
 */
export function fitToLog(one: HeatCase, log: LogToFit, onProgress?: (share: number) => void): LogFit {
  const readings = thinned(log.laminate);
  const spanS = readings.timesS.at(-1)! - readings.timesS[0]!;
  if (readings.timesS.length < leastReadings || spanS < 1200)
    throw new Problem(
      'log.fitTooShort',
      'The log is too short to fit: it needs at least eight readings over twenty minutes.',
    );
  const fits = dehydrationTreatments.map((treatment, i) => {
    const fit = fitTreatment(one, log, readings, treatment);
    onProgress?.((i + 1) / dehydrationTreatments.length);
    return fit;
  });
  const [best, next] = fits.toSorted((a, b) => a.misfitK - b.misfitK);
  const chosen = best!.misfitK < clearShare * next!.misfitK && next!.misfitK - best!.misfitK > clearK;
  return { fits, best: best!, chosen };
}

function fitTreatment(
  one: HeatCase,
  log: LogToFit,
  readings: Curve,
  treatment: DehydrationTreatment,
): TreatmentFit {
  const predict = (values: readonly number[]) => {
    const run = runHeat(
      {
        ...one,
        air: log.air ?? one.air,
        surface: { ...one.surface, filmWPerM2K: Math.exp(values[0]!) },
        water: { ...one.water, heldShare: values[1]! },
        dehydration: { ...one.dehydration, treatment },
      },
      { ...usualHeatOptions, untilS: endOf(readings), longestStepS: 180, toleranceK: 1 },
    );
    return curveAtPlace(run.laminate, log.place ?? extremePlaces(run.laminate).coldest);
  };
  const residuals = (values: readonly number[]) => {
    const predicted = predict(values);
    return readings.timesS.map((timeS, i) => valueAt(predicted, timeS) - readings.valuesC[i]!);
  };
  const { values, rms } = boundedLeastSquares(residuals, [
    {
      start: Math.log(one.surface.filmWPerM2K),
      low: Math.log(filmBoundsWPerM2K[0]),
      high: Math.log(filmBoundsWPerM2K[1]),
      probe: 0.05,
    },
    { start: Math.max(0.1, one.water.heldShare), low: 0, high: 1, probe: 0.05 },
  ]);
  return {
    treatment,
    filmWPerM2K: Math.exp(values[0]!),
    heldShare: values[1]!,
    misfitK: rms,
    predicted: predict(values),
  };
}

/** Evenly chosen readings of the log from the oven's start on. */
function thinned({ timesS, valuesC }: Curve): Curve {
  const from = timesS.findIndex((timeS) => timeS >= 0);
  const usable = from === -1 ? 0 : timesS.length - from;
  const count = Math.min(usable, mostReadings);
  const picks = Array.from(
    { length: count },
    (_, i) => Math.max(0, from) + Math.floor((i * usable) / Math.max(1, count)),
  );
  return { timesS: picks.map((at) => timesS[at]!), valuesC: picks.map((at) => valuesC[at]!) };
}
