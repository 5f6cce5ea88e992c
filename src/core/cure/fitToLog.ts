/**
 * What a log tells of the mold: air film and dampness that make the prediction follow it, by least squares, once for each
 * treatment of the dehydration. The treatment that follows best is chosen only when it does so clearly. Where the oven's air
 * was logged too, the mold is heated by that, and how much its sensor reads too high is found along with the rest.
 */
import { boundedLeastSquares } from '../numeric/boundedLeastSquares';
import { Problem } from '../problem';
import { endOf, valueAt, type Curve } from './curve';
import { dehydrationTreatments, type DehydrationTreatment } from './dehydration';
import { usualHeatOptions, type HeatCase } from './heatCase';
import { runHeat } from './heatRun';
import { findPlace, mostPlaceOffMm, type LaminatePlace } from './laminatePlace';
import { curveAtPlace } from './laminateRecord';
import { loggedAir } from './loggedAir';

export interface TreatmentFit {
  readonly treatment: DehydrationTreatment;
  readonly filmWPerM2K: number;
  /** Share of the mix's free water that the stone must have held. */
  readonly heldShare: number;
  /** By how much the logged air must have read too high, K; null where no air was logged. */
  readonly airOffsetK: number | null;
  readonly misfitK: number;
  readonly predicted: Curve;
}

export interface LogFit {
  /** In the order of `dehydrationTreatments`. */
  readonly fits: readonly TreatmentFit[];
  readonly best: TreatmentFit;
  /** Whether the log tells the treatments apart. */
  readonly chosen: boolean;
  /** From a given point to the brick that stands for it, mm. */
  readonly placeOffMm: number;
  readonly readings: number;
}

const filmBoundsWPerM2K = [2, 80] as const;
/** The best treatment must misfit by less than this share of the next best, and by this much less, K. */
const clearShare = 0.7;
const clearK = 0.3;
/** Readings compared: more tell nothing new. */
const mostReadings = 120;
const leastReadings = 8;
const airOffsetBoundsK = [-12, 12] as const;
/** A thermocouple in the air is off by about so much; the offset is held to it as by one reading of 1 K. */
const usualAirOffsetK = 2;

export interface LogToFit {
  /** At the laminate; seconds from the start of the oven. */
  readonly laminate: Curve;
  /** Air beside the mold on the same clock, where it was logged; else the case's own air. */
  readonly air: Curve | null;
  /** Where the thermocouple sits; a point in the pull frame. */
  readonly place: LaminatePlace;
}

/**
 * @param one its voxels should be coarse (about 4 mm): some thirty runs
 * @throws Problem `log.fitTooShort` when the log covers too little, `log.placeFar` for a point that is not at the laminate
 */
export function fitToLog(one: HeatCase, log: LogToFit, onProgress?: (share: number) => void): LogFit {
  const readings = thinned(log.laminate);
  const spanS = readings.timesS.at(-1)! - readings.timesS[0]!;
  if (readings.timesS.length < leastReadings || spanS < 1200)
    throw new Problem(
      'log.fitTooShort',
      'The log is too short to fit: it needs at least eight readings over twenty minutes.',
    );
  let placeOffMm = 0;
  const fits = dehydrationTreatments.map((treatment, i) => {
    const { offMm, ...fit } = fitTreatment(one, log, readings, treatment);
    placeOffMm = offMm;
    onProgress?.((i + 1) / dehydrationTreatments.length);
    return fit;
  });
  const [best, next] = fits.toSorted((a, b) => a.misfitK - b.misfitK);
  const chosen = best!.misfitK < clearShare * next!.misfitK && next!.misfitK - best!.misfitK > clearK;
  return { fits, best: best!, chosen, placeOffMm, readings: readings.timesS.length };
}

function fitTreatment(
  one: HeatCase,
  log: LogToFit,
  readings: Curve,
  treatment: DehydrationTreatment,
): TreatmentFit & { readonly offMm: number } {
  const predict = ([lnFilm, heldShare, airOffsetK]: readonly number[]) => {
    const run = runHeat(
      {
        ...one,
        air: log.air === null ? one.air : loggedAir(log.air, one.air, airOffsetK!),
        surface: { ...one.surface, filmWPerM2K: Math.exp(lnFilm!) },
        water: { ...one.water, heldShare: heldShare! },
        dehydration: { ...one.dehydration, treatment },
      },
      { ...usualHeatOptions, untilS: endOf(readings), longestStepS: 180, toleranceK: 1 },
    );
    const { place, offMm } = findPlace(one.voxels, run.laminate, log.place);
    if (offMm > mostPlaceOffMm)
      throw new Problem(
        'log.placeFar',
        `The place given for the thermocouple is ${offMm.toFixed(0)} mm away from the laminate. Give a place on the part, in its own axes.`,
      );
    return { curve: curveAtPlace(run.laminate, place), offMm };
  };
  const offBy = (predicted: Curve) =>
    readings.timesS.map((timeS, i) => valueAt(predicted, timeS) - readings.valuesC[i]!);
  const residuals = (values: readonly number[]) => {
    const off = offBy(predict(values).curve);
    return log.air === null ? off : [...off, values[2]! / usualAirOffsetK];
  };
  const { values } = boundedLeastSquares(residuals, [
    {
      start: Math.log(one.surface.filmWPerM2K),
      low: Math.log(filmBoundsWPerM2K[0]),
      high: Math.log(filmBoundsWPerM2K[1]),
      probe: 0.05,
    },
    { start: Math.max(0.1, one.water.heldShare), low: 0, high: 1, probe: 0.05 },
    ...(log.air === null
      ? []
      : [{ start: 0, low: airOffsetBoundsK[0], high: airOffsetBoundsK[1], probe: 0.5 }]),
  ]);
  const { curve, offMm } = predict(values);
  return {
    treatment,
    filmWPerM2K: Math.exp(values[0]!),
    heldShare: values[1]!,
    airOffsetK: values[2] ?? null,
    misfitK: Math.sqrt(offBy(curve).reduce((sum, off) => sum + off * off, 0) / readings.timesS.length),
    predicted: curve,
    offMm,
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
