import { useState } from 'react';
import { clampTable, type Clamp } from '../../steps/inputs/clamp';
import { clampLetter } from '../../steps/closing/clampLetter';
import { Button } from '../../ui/Button';
import { NumberCell } from '../../ui/NumberCell';
import { NumberField } from '../../ui/NumberField';
import { withClampAdded, withClampChanged } from './clampEdits';

export interface ClampListProps {
  readonly clamps: readonly Clamp[];
  readonly disabled: boolean;
  readonly onChange: (clamps: Clamp[]) => void;
}

/** The clamps by kind: how many, how strong, where; each line has the letter of its marks on the plan. */
export function ClampList({ clamps, disabled, onChange }: ClampListProps) {
  const [openId, setOpenId] = useState<string | null>(null);
  return (
    <div className="clamps">
      <ul>
        {clamps.map((clamp, index) => {
          const letter = clampLetter(index);
          const open = openId === clamp.id;
          const set = (change: Partial<Clamp>) => onChange(withClampChanged(clamps, clamp.id, change));
          return (
            <li key={clamp.id} aria-label={`Clamps ${letter}`}>
              <ClampLine clamp={clamp} letter={letter} disabled={disabled} onChange={set} />
              <span className="clamp-buttons">
                <Button
                  aria-expanded={open}
                  aria-label={`Spring of clamps ${letter}`}
                  onClick={() => setOpenId(open ? null : clamp.id)}
                >
                  {open ? 'Close' : 'Spring'}
                </Button>
                <Button
                  aria-label={`Remove clamps ${letter}`}
                  disabled={disabled}
                  onClick={() => onChange(clamps.filter(({ id }) => id !== clamp.id))}
                >
                  ×
                </Button>
              </span>
              {open ? <ClampSpringFields clamp={clamp} disabled={disabled} onChange={set} /> : null}
            </li>
          );
        })}
      </ul>
      {clamps.length === 0 ? <p>No clamp yet. Add the first line.</p> : null}
      <div className="button-row">
        <Button disabled={disabled} onClick={() => onChange(withClampAdded(clamps))}>
          Add clamps
        </Button>
      </div>
    </div>
  );
}

interface OneClampProps {
  readonly clamp: Clamp;
  readonly disabled: boolean;
  readonly onChange: (change: Partial<Clamp>) => void;
}

function ClampLine({ clamp, letter, disabled, onChange }: OneClampProps & { readonly letter: string }) {
  const cell = (field: 'count' | 'forceN' | 'xMm' | 'yMm', label: string) => (
    <NumberCell
      label={`${label} of clamps ${letter}`}
      limits={clampTable[field]}
      value={clamp[field]}
      disabled={disabled}
      onChange={(value) => {
        if (value !== null) onChange({ [field]: value });
      }}
    />
  );
  return (
    <>
      <span className="clamp-letter">{letter}</span>
      <span className="clamp-force">
        {cell('count', 'Count')} × {cell('forceN', 'Force')}
      </span>
      <select
        className="select"
        aria-label={`Where clamps ${letter} stand`}
        value={clamp.placed}
        disabled={disabled}
        onChange={(event) => onChange({ placed: event.target.value as Clamp['placed'] })}
      >
        <option value="round the rim">round the rim</option>
        <option value="at a place">at a place</option>
      </select>
      {clamp.placed === 'at a place' ? (
        <span className="clamp-place">
          x {cell('xMm', 'Place x')} y {cell('yMm', 'Place y')}
        </span>
      ) : null}
    </>
  );
}

/** How the force changes with the opening: a rate, or a second point measured on the scale. */
function ClampSpringFields({ clamp, disabled, onChange }: OneClampProps) {
  const measuredTwice = clamp.secondForceN > 0;
  return (
    <div className="clamp-spring">
      <NumberField
        spec={clampTable.atOpeningMm}
        value={clamp.atOpeningMm}
        disabled={disabled}
        onChange={(atOpeningMm) => {
          if (atOpeningMm !== null) onChange({ atOpeningMm });
        }}
      />
      <NumberField
        spec={clampTable.secondForceN}
        value={measuredTwice ? clamp.secondForceN : null}
        emptyWord="none"
        disabled={disabled}
        onChange={(secondForceN) => onChange({ secondForceN: secondForceN ?? 0 })}
      />
      {measuredTwice ? (
        <NumberField
          spec={clampTable.secondOpeningMm}
          value={clamp.secondOpeningMm}
          disabled={disabled}
          onChange={(secondOpeningMm) => {
            if (secondOpeningMm !== null) onChange({ secondOpeningMm });
          }}
        />
      ) : (
        <NumberField
          spec={clampTable.springRateNPerMm}
          value={clamp.springRateNPerMm}
          disabled={disabled}
          onChange={(springRateNPerMm) => {
            if (springRateNPerMm !== null) onChange({ springRateNPerMm });
          }}
        />
      )}
    </div>
  );
}
