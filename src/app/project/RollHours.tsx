import { useState } from 'react';
import { Button } from '../../ui/Button';
import { NumberField } from '../../ui/NumberField';
import { hoursOutSpec } from '../shelf/hoursOutSpec';

export interface RollHoursProps {
  readonly rollName: string;
  readonly disabled: boolean;
  readonly onLog: (hoursH: number) => void;
}

/** Writes down in the roll's log that it was out of the freezer for this part. */
export function RollHours({ rollName, disabled, onLog }: RollHoursProps) {
  const [hoursH, setHoursH] = useState<number | null>(null);
  return (
    <div className="roll-hours">
      <NumberField
        spec={{ ...hoursOutSpec, label: `${hoursOutSpec.label}, ${rollName}` }}
        value={hoursH}
        emptyWord=""
        disabled={disabled}
        onChange={setHoursH}
      />
      <Button
        disabled={disabled || hoursH === null}
        aria-label={`Write down the hours of ${rollName}`}
        onClick={() => {
          if (hoursH === null) return;
          onLog(hoursH);
          setHoursH(null);
        }}
      >
        Write it down
      </Button>
    </div>
  );
}
