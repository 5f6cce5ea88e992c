import type { PlannedChange } from '../../pipeline/plan';
import { stepTitle } from '../../pipeline/planState';
import type { VerdictWord } from '../../core/figure';
import type { ProjectInputs } from '../../steps/inputs/project';
import { Button } from '../../ui/Button';
import { VerdictMark } from '../../ui/VerdictMark';
import { isMade } from './planning';

export interface PlanTableProps {
  readonly changes: readonly PlannedChange[];
  readonly inputs: ProjectInputs;
  readonly readOnly: boolean;
  readonly onApply: (change: PlannedChange) => void;
}

/** One mark, then another. */
export function TurnedMark({
  from,
  to,
  title,
}: {
  readonly from: VerdictWord;
  readonly to: VerdictWord;
  readonly title: string;
}) {
  return (
    <span className="turned-mark">
      {title} <VerdictMark word={from} sizePx={18} />
      <span aria-hidden>→</span>
      <span className="visually-hidden"> then </span>
      <VerdictMark word={to} sizePx={18} />
    </span>
  );
}

/** The changes of a plan in order: what, why, what then holds and which marks turn. */
export function PlanTable({ changes, inputs, readOnly, onApply }: PlanTableProps) {
  return (
    <ol className="plan-list" aria-label="Changes">
      {changes.map((change, index) => (
        <li key={change.id}>
          <span className="step-number" aria-hidden>
            {index + 1}
          </span>
          <div>
            <h3>{change.what}</h3>
            <p className="quiet">{change.why}</p>
            {change.turns[0]?.says ? <p>Then: {change.turns[0].says}</p> : null}
            <p>
              {change.turns.map(({ id, from, to }) => (
                <TurnedMark key={id} from={from} to={to} title={stepTitle(id)} />
              ))}
            </p>
          </div>
          {isMade(inputs, change) ? (
            <span className="plan-made">Applied</span>
          ) : (
            <Button
              kind="main"
              disabled={readOnly}
              aria-label={`Apply: ${change.what}`}
              onClick={() => onApply(change)}
            >
              Apply
            </Button>
          )}
        </li>
      ))}
    </ol>
  );
}
