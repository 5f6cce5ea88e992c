import type { ReactNode } from 'react';
import type { StepReport } from '../core/figure';
import { CautionList } from '../ui/CautionList';
import { VerdictBox } from '../ui/VerdictBox';

export interface SheetFrameProps {
  readonly title: string;
  readonly question: string;
  readonly report: StepReport;
  /** Stands above the verdict, e.g. the progress of a job. */
  readonly before?: ReactNode;
  readonly children: ReactNode;
}

/** The frame of every sheet: title, the question it answers, the verdict first, then the rest, then cautions. */
export function Sheet({ title, question, report, before, children }: SheetFrameProps) {
  return (
    <article className="sheet">
      <header>
        <h1 tabIndex={-1}>{title}</h1>
        <p className="quiet">{question}</p>
      </header>
      {before}
      <VerdictBox verdicts={report.verdicts} />
      {children}
      <CautionList cautions={report.cautions} />
    </article>
  );
}
