/** What the job saves as text: its calendar, and the table of all figures. */
import { csvText } from '../../core/finish/csvText';
import { icsText } from '../../core/finish/icsText';
import type { StepReport } from '../../core/figure';
import type { ProjectInputs } from '../inputs/project';
import type { ReportBefore } from '../shared/context';
import { plannedJob } from './job';

/**
 * RFC 5545; null while no start is entered, or the job cannot be planned: the step says why.
 * @param title of the job; it tells its entries from those of other jobs
 */
export function calendarText(
  inputs: ProjectInputs,
  before: readonly ReportBefore[],
  title: string,
): string | null {
  const job = plannedJob(inputs, before);
  return job === null || !job.isDated
    ? null
    : icsText(job.scheduled, { title, jobId: title, startDay: job.startDay });
}

/** RFC 4180, one line per figure; what is not known is empty, and a row of numbers stands apart by blanks. */
export const figuresCsv = (reports: readonly StepReport[]): string =>
  csvText([
    ['id', 'label', 'value', 'unit', 'status'],
    ...reports
      .flatMap(({ figures }) => figures)
      .map(({ id, label, value, unit, status }) => [
        id,
        label,
        value === null ? '' : typeof value === 'object' ? value.join(' ') : String(value),
        unit,
        status,
      ]),
  ]);
