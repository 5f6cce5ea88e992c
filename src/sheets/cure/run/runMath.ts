/** What an oven run is at and what is due next; the clock is always handed in. */
import type { CurePrediction } from '../../../core/cure/predictCure';
import { gentleKPerMin, programOnDial, type OvenProgram } from '../../../core/cure/ovenProgram';
import { Problem } from '../../../core/problem';
import { celsius } from '../../../steps/cure/say';
import type { OvenRun } from '../../../workbook';

export type RunPhase = 'ready' | 'running' | 'held' | 'ended';

export function runPhase({ startedAtMs, heldSinceMs, endedAtMs }: OvenRun): RunPhase {
  if (startedAtMs === null) return 'ready';
  if (endedAtMs !== null) return 'ended';
  return heldSinceMs === null ? 'running' : 'held';
}

/** Seconds of wall clock since the start; 0 before it. */
export function elapsedS({ startedAtMs, endedAtMs }: OvenRun, nowMs: number): number {
  return startedAtMs === null ? 0 : Math.max(0, ((endedAtMs ?? nowMs) - startedAtMs) / 1000);
}

/** Seconds of the program: time for which it was held does not count. */
export function programS(run: OvenRun, nowMs: number): number {
  const until = run.endedAtMs ?? nowMs;
  const holdingMs = run.heldSinceMs === null ? 0 : Math.max(0, until - run.heldSinceMs);
  return Math.max(0, elapsedS(run, nowMs) - (run.heldMs + holdingMs) / 1000);
}

export const started = (run: OvenRun, nowMs: number): OvenRun => ({
  ...run,
  startedAtMs: nowMs,
  heldMs: 0,
  heldSinceMs: null,
  endedAtMs: null,
});

/** The maker was late, or early, at the button. */
export function shifted(run: OvenRun, byS: number, nowMs: number): OvenRun {
  if (run.startedAtMs === null) return run;
  return { ...run, startedAtMs: Math.min(nowMs, run.startedAtMs + 1000 * byS) };
}

export function holding(run: OvenRun, nowMs: number): OvenRun {
  return run.heldSinceMs === null ? { ...run, heldSinceMs: nowMs } : goingOn(run, nowMs);
}

function goingOn(run: OvenRun, nowMs: number): OvenRun {
  if (run.heldSinceMs === null) return run;
  return { ...run, heldMs: run.heldMs + Math.max(0, nowMs - run.heldSinceMs), heldSinceMs: null };
}

export const ended = (run: OvenRun, nowMs: number): OvenRun => ({ ...goingOn(run, nowMs), endedAtMs: nowMs });

/** Something to do or to expect, seconds of the program. */
export interface RunEvent {
  readonly id: string;
  readonly atS: number;
  readonly text: string;
}

/** Clamps are looked at this long into the first dwell. */
const reclampS = 1800;

/** In order of time. The laminate's times are those of the middle run. */
export function runEvents(program: OvenProgram, prediction: CurePrediction | null): readonly RunEvent[] {
  const dial = dialOf(program);
  if (dial === null) return [];
  const events: RunEvent[] = dial.dwells.flatMap(({ targetC, fromS }, index) => {
    const ramp = program.stages[index]?.rampKPerMin ?? null;
    const turnAtS = index === 0 ? 0 : (dial.dwells[index - 1]?.untilS ?? 0);
    const turn = {
      id: `turn-${index}`,
      atS: turnAtS,
      text:
        ramp === null
          ? `Turn the dial to ${celsius(targetC)}`
          : `Start the ramp to ${celsius(targetC)}, ${ramp} K/min`,
    };
    return ramp === null
      ? [turn]
      : [turn, { id: `there-${index}`, atS: fromS, text: `Dial at ${celsius(targetC)}` }];
  });
  events.push({
    id: 'reclamp',
    atS: Math.min(reclampS, dial.heatedS),
    text: 'Look at the clamps; tighten with gloves',
  });
  events.push({
    id: 'off',
    atS: dial.heatedS,
    text: `If the laminate has its dose: down by ${gentleKPerMin} K/min, door shut`,
  });
  const middle = prediction?.runs.find(({ treatment }) => treatment === 'vapor-held');
  middle?.coldest.dwells.forEach(({ targetC, atS }, index) => {
    if (atS !== null)
      events.push({
        id: `laminate-${index}`,
        atS,
        text: `Laminate should be within 5 K of ${celsius(targetC)}: read it`,
      });
  });
  if (middle?.coldest.dose?.metAtS != null)
    events.push({
      id: 'dose',
      atS: middle.coldest.dose.metAtS,
      text: 'Dose should be met at the coldest place',
    });
  if (prediction !== null && middle?.demoldAfterS != null)
    events.push({
      id: 'demold',
      atS: prediction.heatedS + middle.demoldAfterS,
      text: 'Laminate should be cool enough to open: read it first',
    });
  return events.toSorted((a, b) => a.atS - b.atS);
}

function dialOf(program: OvenProgram) {
  try {
    return programOnDial(program);
  } catch (error) {
    if (error instanceof Problem) return null;
    throw error;
  }
}
