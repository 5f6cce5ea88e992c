import { formatNumber } from '../core/units/formatNumber';
import type { NumberSpec } from '../steps/kit/inputTable';
import type { Followed } from '../steps/shared/process';
import { NumberField } from '../ui/NumberField';

export interface FollowedFieldProps {
  readonly spec: NumberSpec;
  readonly followed: Followed;
  readonly disabled: boolean;
  /** null: it follows. */
  readonly onChange: (ownC: number | null) => void;
}

/** A temperature that follows from the oven program or the room: shown where nothing is entered, and where an entry differs. */
export function FollowedField({ spec, followed, disabled, onChange }: FollowedFieldProps) {
  const { valueC, followsC, isOwn, how } = followed;
  const shown = formatNumber(followsC, 0);
  return (
    <NumberField
      spec={spec}
      value={isOwn ? valueC : null}
      emptyWord={shown}
      note={isOwn ? how : `empty: ${shown} °C, ${how}`}
      disabled={disabled}
      onChange={onChange}
    />
  );
}
