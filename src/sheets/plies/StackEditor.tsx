import { useEffect, useRef } from 'react';
import type { Material, Ply } from '../../steps/plies/inputs';
import { Button } from '../../ui/Button';
import { NumberCell } from '../../ui/NumberCell';
import { withPlyAdded, withPlyChanged, withPlyMoved } from './stackEdits';

const angleLimits = { unit: '°', min: -180, max: 180, decimals: 0 };

export interface StackEditorProps {
  readonly stack: readonly Ply[];
  readonly materials: readonly Material[];
  readonly disabled: boolean;
  readonly onChange: (stack: Ply[]) => void;
}

/** The stack from the show face inward: material, angle and order of each ply; Alt with an arrow key moves a ply. */
export function StackEditor({ stack, materials, disabled, onChange }: StackEditorProps) {
  const list = useRef<HTMLOListElement>(null);
  const focusAfterMove = useRef<string | null>(null);

  // Moving a row in the page can drop the focus; it goes back to the control that moved the ply.
  useEffect(() => {
    if (focusAfterMove.current === null) return;
    const control = list.current?.querySelector<HTMLElement>(`[data-control="${focusAfterMove.current}"]`);
    focusAfterMove.current = null;
    control?.focus();
  });

  const move = (plyId: string, offset: number, controlName: string | undefined) => {
    const moved = withPlyMoved(stack, plyId, offset);
    if (moved === stack) return;
    focusAfterMove.current = controlName ?? null;
    onChange([...moved]);
  };

  return (
    <div className="stack-editor">
      <p className="stack-end">show face</p>
      <ol ref={list}>
        {stack.map((ply, index) => (
          <li
            key={ply.id}
            onKeyDown={(event) => {
              if (disabled || !event.altKey || (event.key !== 'ArrowUp' && event.key !== 'ArrowDown')) return;
              event.preventDefault();
              const control = (event.target as HTMLElement).closest<HTMLElement>('[data-control]');
              move(ply.id, event.key === 'ArrowUp' ? -1 : 1, control?.dataset['control']);
            }}
          >
            <span className="number">{index + 1}</span>
            <select
              className="select"
              aria-label={`Material of ply ${index + 1}`}
              data-control={`${ply.id}-material`}
              value={ply.materialId}
              disabled={disabled}
              onChange={(event) =>
                onChange(withPlyChanged(stack, ply.id, { materialId: event.target.value }))
              }
            >
              {materials.some((card) => card.id === ply.materialId) ? null : (
                <option value={ply.materialId}>card is missing: choose one</option>
              )}
              {materials.map((card) => (
                <option key={card.id} value={card.id}>
                  {card.name}
                </option>
              ))}
            </select>
            <NumberCell
              label={`Angle of ply ${index + 1}`}
              limits={angleLimits}
              value={ply.angleDeg}
              disabled={disabled}
              onChange={(angleDeg) => {
                if (angleDeg !== null) onChange(withPlyChanged(stack, ply.id, { angleDeg }));
              }}
            />
            <span className="stack-buttons">
              <Button
                aria-label={`Move ply ${index + 1} towards the show face`}
                data-control={`${ply.id}-up`}
                aria-disabled={index === 0}
                disabled={disabled}
                onClick={() => move(ply.id, -1, `${ply.id}-up`)}
              >
                ↑
              </Button>
              <Button
                aria-label={`Move ply ${index + 1} towards the core face`}
                data-control={`${ply.id}-down`}
                aria-disabled={index === stack.length - 1}
                disabled={disabled}
                onClick={() => move(ply.id, 1, `${ply.id}-down`)}
              >
                ↓
              </Button>
              <Button
                aria-label={`Remove ply ${index + 1}`}
                disabled={disabled}
                onClick={() => onChange(stack.filter((other) => other.id !== ply.id))}
              >
                ×
              </Button>
            </span>
          </li>
        ))}
      </ol>
      {stack.length === 0 ? <p>No ply yet. Add the first one.</p> : null}
      <p className="stack-end">core face</p>
      <div className="button-row">
        <Button
          disabled={disabled || materials.length === 0}
          onClick={() => onChange(withPlyAdded(stack, materials))}
        >
          Add ply
        </Button>
        <span className="quiet">Alt with ↑ or ↓ moves a ply.</span>
      </div>
    </div>
  );
}
