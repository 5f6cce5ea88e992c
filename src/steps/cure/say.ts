/** How the cure step writes hours, temperatures and the three ways of dehydration. */
import type { PredictedRun } from '../../core/cure/predictCure';
import type { DehydrationTreatment } from '../../core/cure/dehydration';
import { formatNumber } from '../../core/units/formatNumber';

/** "2 h 05 min"; "40 min" under an hour. */
export function hoursMinutes(seconds: number): string {
  const minutes = Math.round(seconds / 60);
  const [hours, rest] = [Math.floor(minutes / 60), minutes % 60];
  return hours === 0 ? `${rest} min` : `${hours} h ${String(rest).padStart(2, '0')} min`;
}

/** "2:05", for columns. */
export function clockHours(seconds: number): string {
  const minutes = Math.round(seconds / 60);
  return `${Math.floor(minutes / 60)}:${String(minutes % 60).padStart(2, '0')}`;
}

export const celsius = (value: number) => `${formatNumber(value, 0)} °C`;

/** Names of the three runs, hottest laminate first. */
export const treatmentNames: Readonly<Record<DehydrationTreatment, string>> = {
  none: 'the stone keeps its water',
  'vapor-held': 'its own vapor holds it back',
  'open air': 'the stone lets it go',
};

/** One line of a figure's working per run. */
export const perRun = (runs: readonly PredictedRun[], words: (run: PredictedRun) => string): string[] =>
  runs.map((run) => `If ${treatmentNames[run.treatment]}: ${words(run)}.`);
