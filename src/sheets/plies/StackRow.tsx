import { useState, type ComponentProps } from 'react';
import { formatNumber } from '../../core/units/formatNumber';
import { plyTable, type Ply } from '../../steps/inputs/ply';
import { type Material } from '../../steps/inputs/material';
import { laidAngleDeg } from '../../steps/inputs/ply';
import { Button } from '../../ui/Button';
import { CheckField } from '../../ui/CheckField';
import { NumberCell } from '../../ui/NumberCell';
import { MaterialSelect } from './MaterialSelect';

export interface StackRowProps {
  readonly ply: Ply;
  readonly index: number;
  readonly last: boolean;
  readonly dragged: boolean;
  readonly materials: readonly Material[];
  readonly disabled: boolean;
  readonly handle: ComponentProps<'span'>;
  readonly onChange: (change: Partial<Ply>) => void;
  /** -1 towards the show face, 1 towards the core face; the control's name gets the focus back. */
  readonly onMove: (offset: -1 | 1, controlName: string | undefined) => void;
  readonly onRemove: () => void;
}

/** One ply: what it is cut from, how it is turned, and where it lies. */
export function StackRow(props: StackRowProps) {
  const { ply, index, last, dragged, materials, disabled, handle, onChange, onMove, onRemove } = props;
  const [open, setOpen] = useState(false);
  const number = index + 1;
  const note = turnedWords(ply);
  return (
    <li
      data-ply={ply.id}
      data-dragged={dragged}
      onKeyDown={(event) => {
        if (disabled || !event.altKey || (event.key !== 'ArrowUp' && event.key !== 'ArrowDown')) return;
        event.preventDefault();
        const control = (event.target as HTMLElement).closest<HTMLElement>('[data-control]');
        onMove(event.key === 'ArrowUp' ? -1 : 1, control?.dataset['control']);
      }}
    >
      <span className="number ply-handle" aria-disabled={disabled} {...(disabled ? {} : handle)}>
        {number}
      </span>
      <MaterialSelect
        label={`Material of ply ${number}`}
        controlName={`${ply.id}-material`}
        materials={materials}
        value={ply.materialId}
        disabled={disabled}
        onChange={(materialId) => onChange({ materialId })}
      />
      <NumberCell
        label={`Angle of ply ${number}`}
        limits={plyTable.angleDeg}
        value={ply.angleDeg}
        disabled={disabled}
        onChange={(angleDeg) => {
          if (angleDeg !== null) onChange({ angleDeg });
        }}
      />
      <span className="stack-buttons">
        <Button
          aria-label={`Turn or pair ply ${number}`}
          aria-expanded={open}
          data-control={`${ply.id}-more`}
          onClick={() => setOpen(!open)}
        >
          …
        </Button>
        <Button
          aria-label={`Move ply ${number} towards the show face`}
          data-control={`${ply.id}-up`}
          aria-disabled={index === 0}
          disabled={disabled}
          onClick={() => onMove(-1, `${ply.id}-up`)}
        >
          ↑
        </Button>
        <Button
          aria-label={`Move ply ${number} towards the core face`}
          data-control={`${ply.id}-down`}
          aria-disabled={last}
          disabled={disabled}
          onClick={() => onMove(1, `${ply.id}-down`)}
        >
          ↓
        </Button>
        <Button aria-label={`Remove ply ${number}`} disabled={disabled} onClick={onRemove}>
          ×
        </Button>
      </span>
      {note === '' ? null : <span className="ply-note">{note}</span>}
      {open ? (
        <div className="ply-more">
          <CheckField
            checked={ply.faceDown}
            label={`Ply ${number} lies face down`}
            disabled={disabled}
            onChange={(faceDown) => onChange({ faceDown })}
          >
            face down
          </CheckField>
          <CheckField
            checked={ply.mirroredPair}
            label={`Ply ${number} is cut as a mirrored pair`}
            disabled={disabled}
            onChange={(mirroredPair) => onChange({ mirroredPair })}
          >
            mirrored pair (book-matched at the center line)
          </CheckField>
        </div>
      ) : null}
    </li>
  );
}

const lies = (angle: number) => `${formatNumber(angle, 0)}°`;

function turnedWords(ply: Ply): string {
  const words: string[] = [];
  if (ply.faceDown)
    words.push(ply.angleDeg === 0 ? 'face down' : `face down: lies at ${lies(laidAngleDeg(ply))}`);
  if (ply.mirroredPair)
    words.push(
      ply.angleDeg === 0
        ? 'mirrored pair'
        : `mirrored pair: the second piece lies at ${lies(laidAngleDeg(ply, 'second'))}`,
    );
  return words.join('; ');
}
