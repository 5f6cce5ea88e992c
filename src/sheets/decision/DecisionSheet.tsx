import type { ReactNode } from 'react';
import type { StepReport, Verdict } from '../../core/figure';
import type { ProjectInputs } from '../../steps/inputs/project';
import { headline, stamps, type Decision } from '../../steps/shared/decision';
import { isOfThePattern } from '../../steps/walls/patternAnew';
import { Disclosure } from '../../ui/Disclosure';
import { SectionHead } from '../../ui/SectionHead';
import { verdictClass, VerdictMark } from '../../ui/VerdictMark';
import './decision.css';
import { decisionPage } from './decisionPage';
import { FindingList } from './FindingList';
import { JobNumbers } from './JobNumbers';
import { stillFits, type Planning } from './planning';
import { PlanSection } from './PlanSection';
import { plannedAdvice } from './say';

export interface DecisionSheetProps {
  readonly decision: Decision;
  readonly reports: ReadonlyMap<string, StepReport>;
  readonly inputs: ProjectInputs;
  readonly planning: Planning;
  readonly readOnly: boolean;
  /** What must be answered before anything else is known. */
  readonly question?: ReactNode;
  /** The closed mold, once it is known. */
  readonly drawing?: ReactNode;
  /** Address of a step's sheet. */
  readonly hrefOf: (stepId: string) => string;
}

/** May the stone be poured? What holds it up, what would clear it, and the five numbers of the job. */
export function DecisionSheet(props: DecisionSheetProps) {
  const { decision, reports, inputs, planning, readOnly, question = null, drawing = null, hrefOf } = props;
  const { word, stops, unknown, later, lookAgain } = decision;
  // A wall that is right as printed is no reason to print another, whatever clamps and plies do in it.
  const isPrintWrong = stops.some(({ verdict: { id } }) => /^walls\.|^mold\.locking$/u.test(id));
  const ofThePattern = isPrintWrong ? stops.filter(({ verdict }) => isOfThePattern(verdict.id)).length : 0;
  const missing = unknown.filter(({ verdict }) => !verdict.isAwaited);
  const { found } = planning;
  const plan = found !== null && stillFits(found, inputs) ? found.plan : null;
  const adviceOf = (verdict: Verdict) => (plan === null ? verdict.fix : plannedAdvice(plan, verdict));
  return (
    <article className="sheet">
      <header>
        <h1 tabIndex={-1}>{decisionPage.title}</h1>
        <p className="quiet">{decisionPage.question}</p>
      </header>
      <section aria-label="Verdict" className={`verdict verdict-${verdictClass[word]}`}>
        <VerdictMark word={word} sizePx={30} decorative />
        <div>
          <h2 className="decision-stamp">{stamps[word]}</h2>
          <p>{headline(decision)}</p>
        </div>
      </section>
      {question}
      {plan === null && ofThePattern > 0 ? (
        <p>
          {ofThePattern} of the stops {ofThePattern === 1 ? 'is' : 'are'} about the pattern’s own wall and
          shape. <a href={hrefOf('pattern')}>Pattern</a> makes a shell of this model with the wall that the
          stack wants, with draft and without undercuts.
        </p>
      ) : null}
      <PlanSection planning={planning} inputs={inputs} readOnly={readOnly} hrefOf={hrefOf} />
      {stops.length > 0 ? (
        <section aria-label="What stops it">
          <SectionHead title="What stops it" />
          <FindingList findings={stops} adviceOf={adviceOf} hrefOf={hrefOf} />
        </section>
      ) : null}
      <section aria-label="The job">
        <SectionHead title="The job" remark="with the inputs as they are now" />
        <JobNumbers reports={reports} inputs={inputs} />
      </section>
      {drawing}
      {missing.length > 0 ? (
        <section aria-label="Not known yet">
          <SectionHead title="Not known yet" remark="with the cheap test that tells" />
          <FindingList findings={missing} hrefOf={hrefOf} />
        </section>
      ) : null}
      {lookAgain.length > 0 ? (
        <Disclosure title="To look at again" remark={`${lookAgain.length}; the pour need not wait`}>
          <FindingList findings={lookAgain} adviceOf={adviceOf} hrefOf={hrefOf} />
        </Disclosure>
      ) : null}
      {later.length > 0 ? (
        <Disclosure title="Known only after the pour" remark={`${later.length}`}>
          <FindingList findings={later} hrefOf={hrefOf} />
        </Disclosure>
      ) : null}
    </article>
  );
}
