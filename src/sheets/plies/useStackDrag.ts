import { useState, type PointerEvent, type RefObject } from 'react';
import type { Ply } from '../../steps/inputs/ply';
import { placeAt, withPlyMoved } from './stackEdits';

interface Drag {
  readonly plyId: string;
  readonly to: number;
}

/**
 * Moving a ply by its number with mouse, pen or finger: the list shows the new order while it is held, and the project
 * changes once, on letting go. Keys and buttons do the same for who can't drag.
 */
export function useStackDrag(
  stack: readonly Ply[],
  list: RefObject<HTMLOListElement | null>,
  onMoved: (stack: Ply[]) => void,
) {
  const [drag, setDrag] = useState<Drag | null>(null);
  const movedBy = ({ plyId, to }: Drag) =>
    withPlyMoved(stack, plyId, to - stack.findIndex(({ id }) => id === plyId));
  const shown = drag === null ? stack : movedBy(drag);

  const follow = (plyId: string, heightPx: number) => {
    const rows = [...(list.current?.children ?? [])].filter(
      (row) => row instanceof HTMLElement && row.dataset['ply'] !== plyId,
    );
    const middles = rows.map((row) => {
      const { top, height } = row.getBoundingClientRect();
      return top + height / 2;
    });
    setDrag({ plyId, to: placeAt(heightPx, middles) });
  };

  return {
    shown,
    draggedId: drag?.plyId ?? null,
    handleFor: (plyId: string) => ({
      onPointerDown: (event: PointerEvent<HTMLElement>) => {
        if (event.button !== 0) return;
        event.currentTarget.setPointerCapture(event.pointerId);
        setDrag({ plyId, to: stack.findIndex(({ id }) => id === plyId) });
      },
      onPointerMove: (event: PointerEvent<HTMLElement>) => {
        if (drag?.plyId === plyId) follow(plyId, event.clientY);
      },
      onPointerUp: () => {
        if (drag === null) return;
        const moved = movedBy(drag);
        setDrag(null);
        if (moved !== stack) onMoved([...moved]);
      },
      onPointerCancel: () => setDrag(null),
    }),
  };
}
