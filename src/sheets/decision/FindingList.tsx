import type { Verdict } from '../../core/figure';
import type { Finding } from '../../steps/shared/decision';
import { steps } from '../../steps/registry';
import { VerdictMark } from '../../ui/VerdictMark';

export interface FindingListProps {
  readonly findings: readonly Finding[];
  /** What a plan says about the verdict; without a plan, the verdict's own fix stands. */
  readonly adviceOf?: (verdict: Verdict) => string;
  /** Address of a step's sheet. */
  readonly hrefOf: (stepId: string) => string;
}

const fixOf = ({ fix }: Verdict) => fix;
const titleOf = (stepId: string) => steps.find(({ id }) => id === stepId)?.title ?? stepId;

/** Findings with what to do about them, each under links to the steps that say so. */
export function FindingList({ findings, adviceOf = fixOf, hrefOf }: FindingListProps) {
  return (
    <ul className="finding-list">
      {findings.map(({ verdict, stepIds }) => (
        <li key={verdict.id}>
          <VerdictMark word={verdict.word} />
          <div>
            <p>
              {stepIds.map((stepId, at) => (
                <span key={stepId}>
                  {at > 0 ? ', ' : ''}
                  <a href={hrefOf(stepId)}>{titleOf(stepId)}</a>
                </span>
              ))}
            </p>
            <p>{verdict.reason}</p>
            {adviceOf(verdict) === '' ? null : <p className="quiet">{adviceOf(verdict)}</p>}
          </div>
        </li>
      ))}
    </ul>
  );
}
