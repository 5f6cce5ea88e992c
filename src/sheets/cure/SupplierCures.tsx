import type { CureInputs } from '../../steps/inputs/cure';
import { supplierCureTable } from '../../steps/inputs/program';
import { Button } from '../../ui/Button';
import { DataTable } from '../../ui/DataTable';
import { NumberCell } from '../../ui/NumberCell';

type SupplierCure = CureInputs['supplierCures'][number];

export interface SupplierCuresProps {
  readonly cures: readonly SupplierCure[];
  readonly disabled: boolean;
  readonly onChange: (cures: SupplierCure[]) => void;
}

/** A first guess for the next line: hotter and shorter than the last. */
function nextCure(last: SupplierCure | undefined): SupplierCure {
  const { hours, temperatureC } = supplierCureTable;
  if (last === undefined) return { hours: hours.default, temperatureC: temperatureC.default };
  return {
    hours: Math.max(hours.min, last.hours / 4),
    temperatureC: Math.min(temperatureC.max, last.temperatureC + 20),
  };
}

/** Cures of the prepreg's data sheet; two or more make the dose. */
export function SupplierCures({ cures, disabled, onChange }: SupplierCuresProps) {
  const edit = (index: number, change: Partial<SupplierCure>) =>
    onChange(cures.map((cure, at) => (at === index ? { ...cure, ...change } : cure)));
  const cell = (field: 'hours' | 'temperatureC') => (cure: SupplierCure, index: number) => (
    <NumberCell
      label={`${supplierCureTable[field].label}, cure ${index + 1}`}
      limits={supplierCureTable[field]}
      value={cure[field]}
      disabled={disabled}
      onChange={(value) => {
        if (value !== null) edit(index, { [field]: value });
      }}
    />
  );
  const remove = (_cure: SupplierCure, index: number) => (
    <Button
      aria-label={`Remove cure ${index + 1}`}
      disabled={disabled}
      onClick={() => onChange(cures.filter((_, at) => at !== index))}
    >
      ×
    </Button>
  );
  return (
    <>
      {cures.length === 0 ? (
        <p className="quiet">
          None entered yet. Read them off your prepreg&apos;s data sheet; none is assumed.
        </p>
      ) : (
        <DataTable
          caption="Least cures of the data sheet, at the laminate"
          columns={[
            { id: 'hours', header: 'Held for', cell: cell('hours') },
            { id: 'temperature', header: 'At', cell: cell('temperatureC') },
            {
              id: 'remove',
              header: <span className="visually-hidden">Remove</span>,
              cell: remove,
            },
          ]}
          rows={cures}
          rowKey={(_cure, index) => String(index)}
        />
      )}
      <div className="button-row below-table">
        <Button disabled={disabled} onClick={() => onChange([...cures, nextCure(cures.at(-1))])}>
          Add a cure
        </Button>
      </div>
    </>
  );
}
