/**
 * What the air in the oven does when the dial is set: it follows as a first-order lag, no faster than the oven can heat,
 * and runs over each time it arrives. Exact for straight pieces of the set curve, sampled closely enough to be drawn.
 */
import { keepWithin } from '../counts';
import { Problem } from '../problem';
import { curveOf, valueAt, type Curve } from './curve';
import { programOnDial, type OvenProgram } from './ovenProgram';

export interface OvenBehavior {
  /** Time constant with which the air follows the dial, s; 0: at once. */
  readonly lagS: number;
  /** Fastest heating of the air, K/min. */
  readonly fastestKPerMin: number;
  /** By how much the air runs over after a heating, K; it comes and goes within a few `overshootS`. */
  readonly overshootK: number;
  readonly overshootS: number;
  /** Time constant with which the air falls to the room once the oven is off and open, s. */
  readonly openDoorS: number;
}

/** A small oven of no particular make (common practice, no source): log yours with a thermocouple. */
export const usualOven: OvenBehavior = {
  lagS: 180,
  fastestKPerMin: 8,
  overshootK: 3,
  overshootS: 240,
  openDoorS: 300,
};

/** The dial itself, for checks and for an oven that is known to hold it. */
export const idealOven: OvenBehavior = {
  lagS: 0,
  fastestKPerMin: Infinity,
  overshootK: 0,
  overshootS: 1,
  openDoorS: 0,
};

/** Spacing of the samples where the air bends, s. */
const sampleS = 20;

/**
 * Air temperature from 0 to `untilS`, the cooling after the program included.
 * @throws Problem `cure.oven`, `cure.tooLong`, and those of `programOnDial`
 */
export function ovenAirCurve(program: OvenProgram, oven: OvenBehavior, untilS: number): Curve {
  if (!(oven.lagS >= 0 && oven.fastestKPerMin > 0 && oven.overshootS > 0 && oven.openDoorS >= 0))
    throw new Problem(
      'cure.oven',
      "The oven's lag and overshoot cannot be less than zero, its fastest heating must be more.",
    );
  const { setPoint, dwells, heatedS } = programOnDial(program);
  const wanted = withCooling(setPoint, program, oven, untilS);
  if (isIdeal(oven)) return wanted;
  const followed = follow(wanted, oven);
  if (oven.overshootK === 0) return followed;
  const heatings = dwells.filter(({ targetC }, i) => targetC > (dwells[i - 1]?.targetC ?? program.startC));
  const arrivals = heatings.map(({ targetC, fromS }) => arrival(followed, targetC, fromS));
  return curveOf(
    followed.timesS.map((timeS, i) => [
      timeS,
      followed.valuesC[i]! + (timeS > heatedS ? 0 : overshootAt(timeS, arrivals, oven)),
    ]),
  );
}

const isIdeal = ({ lagS, fastestKPerMin, overshootK }: OvenBehavior) =>
  lagS === 0 && fastestKPerMin === Infinity && overshootK === 0;

function withCooling(setPoint: Curve, program: OvenProgram, oven: OvenBehavior, untilS: number): Curve {
  const { timesS, valuesC } = setPoint;
  const points = timesS.map((timeS, i): [number, number] => [timeS, valuesC[i]!]);
  const [lastS, lastC] = points[points.length - 1]!;
  if (program.coolKPerMin !== null)
    points.push([lastS + (60 * Math.abs(lastC - program.roomC)) / program.coolKPerMin, program.roomC]);
  else if (oven.openDoorS === 0) points.push([lastS, program.roomC]);
  else
    for (let part = 1; part <= 30; part++)
      points.push([
        lastS + (part / 5) * oven.openDoorS,
        program.roomC + (lastC - program.roomC) * Math.exp(-part / 5),
      ]);
  points.push([Math.max(untilS, points[points.length - 1]![0]), program.roomC]);
  return curveOf(points);
}

/** First-order lag with a cap on heating, advanced exactly over short straight pieces of the wanted curve. */
function follow(wanted: Curve, { lagS, fastestKPerMin }: OvenBehavior): Curve {
  const { timesS, valuesC } = wanted;
  keepWithin(
    'airSamples',
    timesS.at(-1)! / sampleS,
    'cure.tooLong',
    'The oven program and its cooling run for more than three weeks: check its dwells, ramps and cooling rate.',
  );
  const points: [number, number][] = [[timesS[0]!, valuesC[0]!]];
  let air = valuesC[0]!;
  for (let i = 1; i < timesS.length; i++) {
    const span = timesS[i]! - timesS[i - 1]!;
    if (span === 0) continue;
    // Close samples while the air still moves, then none until the dial does.
    const parts = Math.ceil(span / sampleS);
    const slope = (valuesC[i]! - valuesC[i - 1]!) / span;
    for (let part = 0; part < parts; part++) {
      const size = span / parts;
      const goal = valuesC[i - 1]! + slope * size * part;
      const settled = lagS === 0 ? 0 : Math.exp(-size / lagS);
      const next = goal + slope * size - slope * lagS * (1 - settled) + (air - goal) * settled;
      air = Math.min(next, air + (fastestKPerMin / 60) * size);
      points.push([timesS[i - 1]! + size * (part + 1), air]);
    }
  }
  return curveOf(points);
}

/** When the air comes within half a kelvin of a dwell. */
function arrival(air: Curve, targetC: number, fromS: number): number {
  const at = air.timesS.findIndex((timeS) => timeS >= fromS && valueAt(air, timeS) >= targetC - 0.5);
  return at === -1 ? Infinity : air.timesS[at]!;
}

/** A bump that is `overshootK` high `overshootS` after each arrival and then dies away. */
function overshootAt(
  timeS: number,
  arrivals: readonly number[],
  { overshootK, overshootS }: OvenBehavior,
): number {
  const latest = arrivals.filter((at) => at <= timeS).at(-1);
  if (latest === undefined) return 0;
  const since = (timeS - latest) / overshootS;
  return overshootK * since * Math.exp(1 - since);
}
