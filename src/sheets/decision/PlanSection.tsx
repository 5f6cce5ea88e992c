import type { ProjectInputs } from '../../steps/inputs/project';
import { counted } from '../../steps/shared/decision';
import { steps } from '../../steps/registry';
import { Button } from '../../ui/Button';
import { SectionHead } from '../../ui/SectionHead';
import { isMade, stillFits, type FoundPlan, type Planning } from './planning';
import { OtherWays } from './OtherWays';
import { PlanTable, TurnedMark } from './PlanTable';
import { outcomeSentence } from './say';

export interface PlanSectionProps {
  readonly planning: Planning;
  readonly inputs: ProjectInputs;
  readonly readOnly: boolean;
  /** Address of a step's sheet. */
  readonly hrefOf: (stepId: string) => string;
}

/** Asks for a plan, and shows what was found as long as it fits the inputs. */
export function PlanSection({ planning, inputs, readOnly, hrefOf }: PlanSectionProps) {
  const { found, isLooking, look } = planning;
  const fits = found !== null && stillFits(found, inputs);
  return (
    <section aria-label="Plan" className="plan">
      <SectionHead title="What would clear it" />
      {found === null ? (
        <p className="quiet">Tries settings, plies, clamps, box and oven, and keeps what helps.</p>
      ) : fits ? (
        <PlanFoundNow {...{ planning, found, inputs, readOnly, hrefOf }} />
      ) : (
        <p>Other inputs have been changed since the plan was looked for.</p>
      )}
      <div className="button-row">
        <Button
          kind={fits ? 'plain' : 'main'}
          disabled={look === null}
          aria-disabled={isLooking}
          onClick={() => (isLooking ? undefined : look?.())}
        >
          {isLooking ? 'Looking for a plan…' : found === null ? 'Look for a plan' : 'Look for a plan again'}
        </Button>
      </div>
    </section>
  );
}

function PlanFoundNow({
  planning,
  found: { plan },
  inputs,
  readOnly,
  hrefOf,
}: PlanSectionProps & { readonly found: FoundPlan }) {
  const { changes, now, after, anew } = plan;
  const open = changes.filter((change) => !isMade(inputs, change));
  const turned = steps.flatMap(({ id, title }) => {
    const [from, to] = [now[id], after[id]];
    return from === undefined || to === undefined || from === to ? [] : [{ id, title, from, to }];
  });
  return (
    <>
      <p role="status">
        <strong>{outcomeSentence(plan)}</strong>{' '}
        {changes.length > 0 ? 'Each was worked through the whole job.' : ''}
      </p>
      <PlanTable
        changes={changes}
        inputs={inputs}
        readOnly={readOnly}
        onApply={(change) => planning.apply([change])}
      />
      {changes.length > 1 && open.length > 0 ? (
        <div className="button-row">
          <Button kind="main" disabled={readOnly} onClick={() => planning.apply(open)}>
            Apply all
          </Button>
        </div>
      ) : null}
      <OtherWays plan={plan} inputs={inputs} readOnly={readOnly} onApply={(way) => planning.apply([way])} />
      {anew === null ? null : (
        <p>
          <strong>{anew.what}</strong> {counted(anew.mends.length, 'stop is', 'stops are')} about what is
          printed. <a href={hrefOf('pattern')}>Open Pattern</a>
        </p>
      )}
      {turned.length > 0 ? (
        <p>
          With all of it:{' '}
          {turned.map(({ id, ...marks }) => (
            <TurnedMark key={id} {...marks} />
          ))}
        </p>
      ) : null}
    </>
  );
}
