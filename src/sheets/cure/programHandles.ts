/** What moving the end of a dwell on the chart makes of the stages of the oven program. */
import { stagesOnDial, type OvenProgram } from '../../core/cure/ovenProgram';
import { formatNumber } from '../../core/units/formatNumber';
import { stageTable, type OvenStageInput } from '../../steps/inputs/program';
import { hoursMinutes } from '../../steps/cure/say';
import type { PlotPx } from '../../ui/charts/Plot';
import type { ChartSpan } from './HeatCurves';

/** Snap of a drag and of one press of a key. */
const stepC = 1;
const stepMin = 5;

export interface MovedStages {
  readonly stages: OvenStageInput[];
  /** Why it did not go as far as asked; null when it did. */
  readonly stoppedBy: string | null;
}

/** "Dwell 2: 120 °C for 1 h 30 min". */
export function dwellWords(index: number, { targetC, dwellHours }: OvenStageInput): string {
  return `Dwell ${index + 1}: ${targetC} °C for ${hoursMinutes(3600 * dwellHours)}`;
}

/** Whether nothing came of a move; it is no step of undo then. */
export const isSameStage = (one: OvenStageInput, other: OvenStageInput): boolean =>
  one.targetC === other.targetC && one.dwellHours === other.dwellHours;

/**
 * A share of the hours and some kelvins more than the curves need: room to drag into. Each drag ends at the edge of the
 * chart, and the next one finds room again.
 */
export const withRoom = ({ lastS, lowC, highC }: ChartSpan): ChartSpan => ({
  lastS: lastS * 1.25,
  lowC,
  highC: highC + 10,
});

/** The place between the axes that is nearest to where a finger is, px. */
export function nearestOnPlot(
  [xPx, yPx]: readonly [number, number],
  { left, right, top, bottom }: PlotPx,
): { readonly atPx: readonly [number, number]; readonly isOutside: boolean } {
  const atPx = [Math.min(right, Math.max(left, xPx)), Math.min(bottom, Math.max(top, yPx))] as const;
  return { atPx, isOutside: atPx[0] !== xPx || atPx[1] !== yPx };
}

/** To the next whole degrees and steps of minutes in the direction asked. */
export function movedBy(
  stages: readonly OvenStageInput[],
  index: number,
  move: { readonly kelvins?: number; readonly minutes?: number },
): MovedStages {
  const { targetC, dwellHours } = stages[index]!;
  return movedTo(stages, index, {
    targetC: move.kelvins === undefined ? null : targetC + move.kelvins,
    dwellMin: move.minutes === undefined ? null : 60 * dwellHours + move.minutes,
  });
}

/** Where the end of a dwell was dragged to, on the chart of the program. */
export function draggedTo(
  program: OvenProgram,
  stages: readonly OvenStageInput[],
  index: number,
  to: { readonly temperatureC: number | null; readonly timeS: number | null },
): MovedStages {
  const warmed = movedTo(stages, index, { targetC: to.temperatureC, dwellMin: null });
  if (to.timeS === null) return warmed;
  // A ramp to another temperature takes another time, and the dwell begins after it.
  const { targetC } = warmed.stages[index]!;
  const ramped = program.stages.map((stage, at) => (at === index ? { ...stage, targetC } : stage));
  const { fromS } = stagesOnDial({ ...program, stages: ramped }).dwells[index]!;
  const held = movedTo(warmed.stages, index, { targetC: null, dwellMin: (to.timeS - fromS) / 60 });
  return { stages: held.stages, stoppedBy: warmed.stoppedBy ?? held.stoppedBy };
}

/** null leaves that one as it is; what goes past a limit of the inputs stops there and says so. */
function movedTo(
  stages: readonly OvenStageInput[],
  index: number,
  to: { readonly targetC: number | null; readonly dwellMin: number | null },
): MovedStages {
  const before = stages[index]!;
  const target = to.targetC === null ? null : within(toStep(to.targetC, stepC), stageTable.targetC);
  const dwell = to.dwellMin === null ? null : within(hoursOf(to.dwellMin), stageTable.dwellHours);
  const moved = {
    ...before,
    targetC: target?.value ?? before.targetC,
    dwellHours: dwell?.value ?? before.dwellHours,
  };
  return {
    stages: stages.map((stage, at) => (at === index ? moved : stage)),
    stoppedBy: target?.stoppedBy ?? dwell?.stoppedBy ?? null,
  };
}

const toStep = (value: number, step: number) => step * Math.round(value / step);

/** In hundredths of an hour, as the table has it: what stands there is what is saved. */
const hoursOf = (minutes: number) => Math.round((100 * toStep(minutes, stepMin)) / 60) / 100;

function within(
  value: number,
  { min, max, unit }: { readonly min: number; readonly max: number; readonly unit: string },
): { readonly value: number; readonly stoppedBy: string | null } {
  if (value < min) return { value: min, stoppedBy: `it goes no lower than ${formatNumber(min, 0)} ${unit}` };
  if (value > max) return { value: max, stoppedBy: `it goes no higher than ${formatNumber(max, 0)} ${unit}` };
  return { value, stoppedBy: null };
}
