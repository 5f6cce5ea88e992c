import { weighingTable } from '../../steps/inputs/moldBench';
import type { MoldInputs } from '../../steps/inputs/mold';
import { Button } from '../../ui/Button';
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
  const add = () => {
    const last = log[log.length - 1];
    const hours = last === undefined ? 0 : Math.min(weighingTable.hours.max, last.hours + usualStepHours);
    onChange([...log, { hours, negativeG: null, positiveG: null }]);
  };
  return (
    <>
      {log.length === 0 ? null : (
        <div className="table-wrap">
          <table className="table">
            <caption>Weighings, each half alone on the scale</caption>
            <thead>
              <tr>
                <th scope="col">Hours after demolding</th>
                <th scope="col">Negative</th>
                <th scope="col">Positive</th>
                <th scope="col">
                  <span className="visually-hidden">Remove</span>
                </th>
              </tr>
            </thead>
            <tbody>
              {log.map((weighing, index) => (
                <WeighingRow
                  key={index}
                  weighing={weighing}
                  number={index + 1}
                  disabled={disabled}
                  onChange={(change) =>
                    onChange(log.map((line, at) => (at === index ? { ...line, ...change } : line)))
                  }
                  onRemove={() => onChange(log.filter((_, at) => at !== index))}
                />
              ))}
            </tbody>
          </table>
        </div>
      )}
      <div className="button-row below-table">
        <Button disabled={disabled} onClick={add}>
          Add a weighing
        </Button>
      </div>
    </>
  );
}

interface WeighingRowProps {
  readonly weighing: Weighing;
  readonly number: number;
  readonly disabled: boolean;
  readonly onChange: (change: Partial<Weighing>) => void;
  readonly onRemove: () => void;
}

function WeighingRow({ weighing, number, disabled, onChange, onRemove }: WeighingRowProps) {
  return (
    <tr>
      <td>
        <NumberCell
          label={`${weighingTable.hours.label}, weighing ${number}`}
          limits={weighingTable.hours}
          value={weighing.hours}
          disabled={disabled}
          onChange={(hours) => {
            if (hours !== null) onChange({ hours });
          }}
        />
      </td>
      {(['negativeG', 'positiveG'] as const).map((half) => (
        <td key={half}>
          <NumberCell
            label={`${weighingTable[half].label}, weighing ${number}`}
            limits={weighingTable[half]}
            value={weighing[half]}
            mayBeEmpty
            disabled={disabled}
            onChange={(grams) => onChange({ [half]: grams })}
          />
        </td>
      ))}
      <td>
        <Button aria-label={`Remove weighing ${number}`} disabled={disabled} onClick={onRemove}>
          ×
        </Button>
      </td>
    </tr>
  );
}
