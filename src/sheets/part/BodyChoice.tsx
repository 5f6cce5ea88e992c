import type { BodyFacts } from '../../core/mesh/types';
import { formatNumber } from '../../core/units/formatNumber';
import { partTable } from '../../steps/inputs/part';
import { ChoiceField } from '../../ui/ChoiceField';

/** Bodies listed by name; smaller ones are crumbs that nobody picks from a list. */
const mostListed = 30;

export interface BodyChoiceProps {
  readonly bodies: readonly BodyFacts[];
  /** 0 = all, else 1-based. */
  readonly body: number;
  readonly disabled: boolean;
  readonly onChange: (body: number) => void;
}

/** Which body of the file is the part; nothing to ask when there is only one. */
export function BodyChoice({ bodies, body, disabled, onChange }: BodyChoiceProps) {
  if (bodies.length < 2 && body === 0) return null;
  const listed = bodies.slice(0, Math.max(mostListed, body));
  const choices = [
    { value: '0', label: `all ${formatNumber(bodies.length, 0)} together` },
    ...listed.map((facts, index) => ({
      value: String(index + 1),
      label: `${index + 1}: ${formatNumber(facts.facetCount, 0)} facets${facts.closed ? '' : ', open'}`,
    })),
  ];
  if (body > bodies.length) choices.push({ value: String(body), label: `${body}: not in this file` });
  return (
    <ChoiceField
      label={partTable.body.label}
      meaning={partTable.body.meaning}
      choices={choices}
      value={String(body)}
      disabled={disabled}
      onChange={(value) => onChange(Number(value))}
    />
  );
}
