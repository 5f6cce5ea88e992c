import { useEffect, useRef } from 'react';
import type { Material } from '../../steps/inputs/material';
import type { Ply } from '../../steps/inputs/ply';
import { Button } from '../../ui/Button';
import { StackRow } from './StackRow';
import { withPlyAdded, withPlyChanged, withPlyMoved } from './stackEdits';
import { useStackDrag } from './useStackDrag';

export interface StackEditorProps {
  readonly stack: readonly Ply[];
  readonly materials: readonly Material[];
  readonly disabled: boolean;
  readonly onChange: (stack: Ply[]) => void;
}

/** The stack from the show face inward; a ply moves by its number, by buttons, or by Alt with an arrow key. */
export function StackEditor({ stack, materials, disabled, onChange }: StackEditorProps) {
  const list = useRef<HTMLOListElement>(null);
  const focusAfterMove = useRef<string | null>(null);
  const drag = useStackDrag(stack, list, onChange);

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
        {drag.shown.map((ply, index) => (
          <StackRow
            key={ply.id}
            ply={ply}
            index={index}
            last={index === stack.length - 1}
            dragged={drag.draggedId === ply.id}
            materials={materials}
            disabled={disabled}
            handle={drag.handleFor(ply.id)}
            onChange={(change) => onChange(withPlyChanged(stack, ply.id, change))}
            onMove={(offset, controlName) => move(ply.id, offset, controlName)}
            onRemove={() => onChange(stack.filter((other) => other.id !== ply.id))}
          />
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
        <span className="quiet">Drag a number, or press Alt with ↑ or ↓, to move a ply.</span>
      </div>
    </div>
  );
}
