import { useState } from 'react';
import { worstWord, type StepReport } from '../core/figure';
import { benchPages } from '../sheets/bench/benchPages';
import { decisionPage } from '../sheets/decision/decisionPage';
import type { DecisionWord } from '../steps/shared/decision';
import { steps } from '../steps/registry';
import { Button } from '../ui/Button';
import { VerdictMark } from '../ui/VerdictMark';
import { projectHref, projectsHref, shelfHref } from './route';

export interface ContentsProps {
  readonly projectId: string;
  readonly stepId: string;
  readonly decision: DecisionWord;
  /** In the order of the steps. */
  readonly reports: readonly StepReport[];
}

/** The decision, then the steps in the order of the work, each with the mark of its worst verdict. */
export function Contents({ projectId, stepId, decision, reports }: ContentsProps) {
  const [open, setOpen] = useState(false);
  const current = steps.findIndex((step) => step.id === stepId);
  return (
    <nav className={`contents ${open ? 'contents-open' : ''}`} aria-label="Steps">
      <Button className="contents-toggle" aria-expanded={open} onClick={() => setOpen(!open)}>
        <span>
          {current < 0
            ? ([...benchPages].find(({ id }) => id === stepId)?.title ?? decisionPage.title)
            : `Step ${current + 1} of ${steps.length}: ${steps[current]?.title}`}
        </span>
        <span aria-hidden>{open ? '▴' : '▾'}</span>
      </Button>
      <ol>
        <li>
          <a
            href={projectHref(projectId, decisionPage.id)}
            aria-current={stepId === decisionPage.id ? 'page' : undefined}
            onClick={() => setOpen(false)}
          >
            <span className="step-number" />
            <span>{decisionPage.title}</span>
            <VerdictMark word={decision} />
          </a>
        </li>
        {steps.map((step, index) => (
          <li key={step.id}>
            <a
              href={projectHref(projectId, step.id)}
              aria-current={step.id === stepId ? 'page' : undefined}
              onClick={() => setOpen(false)}
            >
              <span className="step-number">{index + 1}</span>
              <span>{step.title}</span>
              <VerdictMark word={worstWord(reports[index]?.verdicts ?? [])} />
            </a>
          </li>
        ))}
        {benchPages.map(({ id, title }) => (
          <li key={id}>
            <a
              href={projectHref(projectId, id)}
              aria-current={stepId === id ? 'page' : undefined}
              onClick={() => setOpen(false)}
            >
              <span className="step-number" />
              <span>{title}</span>
            </a>
          </li>
        ))}
      </ol>
      <p className="contents-foot">
        <a href={projectsHref}>All projects</a> · <a href={shelfHref}>My shelf</a>
      </p>
    </nav>
  );
}
