import { formatNumber } from '../../core/units/formatNumber';
import { repairTable } from '../../steps/inputs/moldBench';
import type { MoldInputs } from '../../steps/inputs/mold';
import { Button } from '../../ui/Button';
import { ChoiceField } from '../../ui/ChoiceField';
import { NumberField } from '../../ui/NumberField';
import { TextField } from '../../ui/TextField';

type Repair = MoldInputs['repairs'][number];

export interface RepairsEditorProps {
  readonly repairs: readonly Repair[];
  readonly disabled: boolean;
  /** The next click on the view is the place of a repair. */
  readonly picking: boolean;
  readonly onPick: () => void;
  readonly onChange: (repairs: Repair[]) => void;
}

const longestNote = 200;

const halfChoices = [
  { value: 'negative', label: 'negative' },
  { value: 'positive', label: 'positive' },
] as const;
const kindChoices = [
  { value: 'filled', label: 'bubble filled' },
  { value: 'scraped', label: 'scraped' },
] as const;

/** Places where the stone was filled or scraped; closing takes them into its walls. */
export function RepairsEditor({ repairs, disabled, picking, onPick, onChange }: RepairsEditorProps) {
  return (
    <>
      <ul className="patch-list">
        {repairs.map((repair, index) => {
          const edit = (change: Partial<Repair>) =>
            onChange(repairs.map((one) => (one.id === repair.id ? { ...one, ...change } : one)));
          return (
            <li key={repair.id} aria-label={`Repair ${index + 1}`}>
              <p className="quiet">
                Repair {index + 1} at {repair.atMm.map((mm) => formatNumber(mm, 1)).join(', ')} mm
              </p>
              <ChoiceField<Repair['kind']>
                label="What was done"
                meaning="A bubble that was filled, or stone that was scraped away."
                choices={kindChoices}
                value={repair.kind}
                disabled={disabled}
                onChange={(kind) => edit({ kind })}
              />
              <ChoiceField<Repair['half']>
                label="On the half"
                meaning="The negative shapes the show face, the positive the core face."
                choices={halfChoices}
                value={repair.half}
                disabled={disabled}
                onChange={(half) => edit({ half })}
              />
              {(['depthMm', 'radiusMm'] as const).map((field) => (
                <NumberField
                  key={field}
                  spec={repairTable[field]}
                  value={repair[field]}
                  disabled={disabled}
                  onChange={(value) => {
                    if (value !== null) edit({ [field]: value });
                  }}
                />
              ))}
              <TextField
                label="Note"
                value={repair.note}
                disabled={disabled}
                check={(text) => (text.length > longestNote ? `At most ${longestNote} characters.` : null)}
                onChange={(note) => edit({ note })}
              />
              <div className="button-row">
                <Button
                  disabled={disabled}
                  onClick={() => onChange(repairs.filter((one) => one.id !== repair.id))}
                >
                  Remove repair {index + 1}
                </Button>
              </div>
            </li>
          );
        })}
      </ul>
      <div className="button-row below-table">
        <Button aria-pressed={picking} disabled={disabled} onClick={onPick}>
          Add a repair by its place on the view
        </Button>
        {picking ? (
          <p className="quiet" role="status">
            Click the place on the part that the stone was repaired at.
          </p>
        ) : null}
      </div>
    </>
  );
}
