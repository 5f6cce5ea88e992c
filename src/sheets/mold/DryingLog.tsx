import { weighingSpecs } from '../../steps/mold/benchInputs';
import type { MoldInputs } from '../../steps/mold/inputs';
import { Button } from '../../ui/Button';
import { DataTable } from '../../ui/DataTable';
import { NumberCell } from '../../ui/NumberCell';

type Weighing = MoldInputs['dryingLog'][number];

export interface DryingLogProps {
  readonly log: readonly Weighing[];
  readonly disabled: boolean;
  readonly onChange: (log: Weighing[]) => void;
}

/** Between two weighings, until the maker says otherwise. */
const usualStepHours = 4;

/** Weighings of both halves while they dry. */
export function DryingLog({ log, disabled, onChange }: DryingLogProps) {
  const edit = (index: number, change: Partial<Weighing>) =>
    onChange(log.map((line, at) => (at === index ? { ...line, ...change } : line)));
  const add = () => {
    const last = log[log.length - 1];
    const hours = last === undefined ? 0 : Math.min(weighingSpecs.hours.max, last.hours + usualStepHours);
    onChange([...log, { hours, negativeG: null, positiveG: null }]);
  };
  const weight = (half: 'negativeG' | 'positiveG') => (line: Weighing, index: number) => (
    <NumberCell
      label={`${weighingSpecs[half].label}, weighing ${index + 1}`}
      limits={weighingSpecs[half]}
      value={line[half]}
      mayBeEmpty
      disabled={disabled}
      onChange={(grams) => edit(index, { [half]: grams })}
    />
  );
  return (
    <>
      {log.length === 0 ? null : (
        <DataTable
          caption="Weighings, each half alone on the scale"
          columns={[
            {
              id: 'hours',
              header: 'Hours after demolding',
              cell: (line: Weighing, index) => (
                <NumberCell
                  label={`${weighingSpecs.hours.label}, weighing ${index + 1}`}
                  limits={weighingSpecs.hours}
                  value={line.hours}
                  disabled={disabled}
                  onChange={(hours) => {
                    if (hours !== null) edit(index, { hours });
                  }}
                />
              ),
            },
            { id: 'negative', header: 'Negative', cell: weight('negativeG') },
            { id: 'positive', header: 'Positive', cell: weight('positiveG') },
            {
              id: 'remove',
              header: <span className="visually-hidden">Remove</span>,
              cell: (_line, index) => (
                <Button
                  aria-label={`Remove weighing ${index + 1}`}
                  disabled={disabled}
                  onClick={() => onChange(log.filter((_, at) => at !== index))}
                >
                  ×
                </Button>
              ),
            },
          ]}
          rows={log}
          rowKey={(_line, index) => String(index)}
        />
      )}
      <div className="button-row below-table">
        <Button disabled={disabled} onClick={add}>
          Add a weighing
        </Button>
      </div>
    </>
  );
}
