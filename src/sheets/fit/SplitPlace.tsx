import { useState } from 'react';
import { Button } from '../../ui/Button';
import { Disclosure } from '../../ui/Disclosure';
import { NumberField } from '../../ui/NumberField';

export interface SplitControl {
  /** Of the model along the pull; null while it is not measured. */
  readonly heightMm: number | null;
  readonly isBusy: boolean;
  readonly split: (heightMm: number) => void;
}

/** One closed solid of the whole enclosure becomes two projects that are mates. */
export function SplitPlace({
  heightMm,
  isBusy,
  split,
  disabled,
}: SplitControl & { readonly disabled: boolean }) {
  const [entered, setEntered] = useState<number | null>(null);
  const shownMm = entered ?? (heightMm === null ? null : Math.round(5 * heightMm) / 10);
  const most = heightMm ?? 1;
  return (
    <Disclosure title="Split one closed model" remark="into two halves that are mates">
      <p className="quiet">
        For a model of the whole enclosure as one closed solid. The two halves become new projects of this
        enclosure; this project stays as it is.
      </p>
      <NumberField
        spec={{
          label: 'Parting plane at',
          unit: 'mm',
          min: 0.1,
          max: Math.max(0.1, Math.floor(10 * most) / 10),
          decimals: 1,
          meaning:
            'Over the lowest point of the model along the pull of Part; the plane lies across the pull.',
        }}
        value={shownMm}
        disabled={disabled || heightMm === null}
        onChange={setEntered}
      />
      <div className="button-row">
        <Button
          disabled={disabled || isBusy || shownMm === null}
          onClick={() => shownMm !== null && split(shownMm)}
        >
          Split into two projects
        </Button>
      </div>
    </Disclosure>
  );
}
