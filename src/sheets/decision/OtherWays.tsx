import type { PlanFound, TriedFix } from '../../pipeline/plan';
import type { ProjectInputs } from '../../steps/inputs/project';
import { Button } from '../../ui/Button';
import { SectionHead } from '../../ui/SectionHead';
import { isMade } from './planning';

export interface OtherWaysProps {
  readonly plan: PlanFound;
  readonly inputs: ProjectInputs;
  readonly readOnly: boolean;
  readonly onApply: (way: TriedFix) => void;
}

const mostShown = 3;

/** Single changes that mend a verdict of the plan as well, each tried alone, but are not in the plan. */
export function otherWays({ changes, fixes }: PlanFound): readonly TriedFix[] {
  const planned = new Set(changes.map(({ what }) => what));
  const ways = new Map<string, TriedFix>();
  for (const { turns } of changes)
    for (const { id } of turns)
      for (const fix of fixes.get(id) ?? [])
        if (!planned.has(fix.what) && !ways.has(fix.what)) ways.set(fix.what, fix);
  return [...ways.values()].slice(0, mostShown);
}

/** The next best changes side by side, for a maker who would rather do another thing. */
export function OtherWays({ plan, inputs, readOnly, onApply }: OtherWaysProps) {
  const ways = otherWays(plan);
  if (ways.length === 0) return null;
  return (
    <section aria-label="Other ways">
      <SectionHead title="Other ways" remark="each tried by itself, in place of a change above" />
      <ul className="other-ways">
        {ways.map((way) => (
          <li key={way.what}>
            <h3>{way.what}</h3>
            <p className="quiet">Then {way.says}</p>
            <Button
              disabled={readOnly || isMade(inputs, way)}
              aria-label={`Do this instead: ${way.what}`}
              onClick={() => onApply(way)}
            >
              Do this instead
            </Button>
          </li>
        ))}
      </ul>
    </section>
  );
}
