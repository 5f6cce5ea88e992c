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

interface ApplyButtonProps {
  readonly what: string;
  readonly made: boolean;
  readonly disabled: boolean;
  readonly onApply: () => void;
}

/** One button before and after, so that the focus stays where it was. */
function ApplyButton({ what, made, disabled, onApply }: ApplyButtonProps) {
  const word = made ? 'Applied' : 'Apply';
  return (
    <Button
      kind={made ? 'plain' : 'main'}
      className={made ? 'plan-made' : ''}
      disabled={disabled}
      aria-disabled={made}
      aria-label={`${word}: ${what}`}
      onClick={made ? undefined : onApply}
    >
      {word}
    </Button>
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
          <ApplyButton
            what={change.what}
            made={isMade(inputs, change)}
            disabled={readOnly}
            onApply={() => onApply(change)}
          />
        </li>
      ))}
    </ol>
  );
}
