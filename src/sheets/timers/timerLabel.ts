import type { PlannedTime } from '../../steps/mold/plannedTimes';
import type { BenchTimer } from '../../workbook';

/** What a timer is set to, in words. */
export function timerLabel(timer: BenchTimer, planned: readonly PlannedTime[]): string {
  return planned.find(({ id }) => id === timer.what)?.label ?? 'Own time';
}
