/** What the maker sets on the oven: ramps and dwells from a start temperature, then how it cools. */
import { Problem } from '../problem';
import { curveOf, type Curve } from './curve';

export interface OvenStage {
  readonly targetC: number;
  /** Heating or cooling rate to the target, K/min; null: the dial is turned there at once. */
  readonly rampKPerMin: number | null;
  readonly dwellS: number;
}

export interface OvenProgram {
  readonly startC: number;
  readonly stages: readonly OvenStage[];
  /** After the last dwell: rate down to the room with the door shut, K/min; null: door open or mold taken out. */
  readonly coolKPerMin: number | null;
  readonly roomC: number;
}

/** Heating and cooling of stone with laminate in it, K/min (common practice); the supplier's limit goes before. */
export const gentleKPerMin = 1;

/** 70 °C for 3 h, then 120 °C for 1.5 h (common practice). */
export const usualProgram: OvenProgram = {
  startC: 20,
  stages: [
    { targetC: 70, rampKPerMin: null, dwellS: 10_800 },
    { targetC: 120, rampKPerMin: null, dwellS: 5400 },
  ],
  coolKPerMin: null,
  roomC: 20,
};

/** Span of one dwell on the dial. */
export interface Dwell {
  readonly targetC: number;
  readonly fromS: number;
  readonly untilS: number;
}

export interface ProgramOnDial {
  /** Set temperature from 0 to the end of the last dwell. */
  readonly setPoint: Curve;
  readonly dwells: readonly Dwell[];
  /** End of the last dwell: heating is over. */
  readonly heatedS: number;
}

/** A program longer than this is taken for a slip of the keyboard. */
const longestS = 14 * 86_400;

/**
 * @throws Problem `cure.noStages`, `cure.stage`, `cure.neverHeats`, `cure.tooLong`
 */
export function programOnDial(program: OvenProgram): ProgramOnDial {
  const onDial = stagesOnDial(program);
  const { startC, stages } = program;
  if (!stages.some(({ targetC }) => targetC > startC))
    throw new Problem(
      'cure.neverHeats',
      `The oven program never heats: no stage is hotter than its start of ${startC} °C. Raise a stage or correct the start.`,
    );
  if (!(onDial.heatedS > 0))
    throw new Problem('cure.stage', 'The oven program takes no time: give a stage a dwell or a ramp.');
  if (onDial.heatedS > longestS)
    throw new Problem(
      'cure.tooLong',
      'The oven program runs for more than two weeks: check its dwells and ramps.',
    );
  return onDial;
}

/**
 * The same for drawing: also a program that would not do in an oven, so that it can be mended where it is drawn.
 * @throws Problem `cure.noStages`, `cure.stage`
 */
export function stagesOnDial(program: OvenProgram): ProgramOnDial {
  checkStages(program);
  const points: [number, number][] = [[0, program.startC]];
  const dwells: Dwell[] = [];
  let [timeS, atC] = [0, program.startC];
  for (const { targetC, rampKPerMin, dwellS } of program.stages) {
    if (rampKPerMin !== null) timeS += (60 * Math.abs(targetC - atC)) / rampKPerMin;
    points.push([timeS, targetC], [timeS + dwellS, targetC]);
    dwells.push({ targetC, fromS: timeS, untilS: timeS + dwellS });
    timeS += dwellS;
    atC = targetC;
  }
  return { setPoint: curveOf(points), dwells, heatedS: timeS };
}

function checkStages({ startC, stages, coolKPerMin, roomC }: OvenProgram): void {
  if (stages.length === 0) throw new Problem('cure.noStages', 'The oven program has no stages: add one.');
  stages.forEach(({ targetC, rampKPerMin, dwellS }, i) => {
    const rampFits = rampKPerMin === null || (rampKPerMin > 0 && Number.isFinite(rampKPerMin));
    if (!(targetC > -40 && targetC < 400) || !(dwellS >= 0 && Number.isFinite(dwellS)) || !rampFits)
      throw new Problem(
        'cure.stage',
        `Stage ${i + 1} of the oven program needs a temperature in °C, a dwell of zero or more, and a ramp above zero.`,
      );
  });
  if (!Number.isFinite(startC) || !Number.isFinite(roomC) || (coolKPerMin !== null && !(coolKPerMin > 0)))
    throw new Problem(
      'cure.stage',
      'The start, the room and the cooling rate need numbers; the rate above zero.',
    );
}

export interface ProgramLimit {
  /** What would suffer, e.g. 'the printed pattern'. */
  readonly what: string;
  readonly mostC: number;
}

/** Stages that go over a limit, as sentences; empty when none does. */
export function stagesOverLimits(program: OvenProgram, limits: readonly ProgramLimit[]): string[] {
  return program.stages.flatMap(({ targetC }, i) =>
    limits
      .filter(({ mostC }) => targetC > mostC)
      .map(
        ({ what, mostC }) =>
          `Stage ${i + 1} goes to ${targetC} °C, over the limit of ${mostC} °C for ${what}.`,
      ),
  );
}
