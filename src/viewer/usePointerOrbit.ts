import { useCallback, useRef, type PointerEvent } from 'react';
import { orbitedBy, pannedBy, pixelsPerMm, zoomedBy, type OrbitView, type PartBox } from './orbitView';

/** A press that moves less than this is a click, also with a gloved finger. */
const clickPx = 6;
const degreesPerPx = 0.4;

export interface PointerOrbit {
  readonly onPointerDown: (event: PointerEvent<HTMLElement>) => void;
  readonly onPointerMove: (event: PointerEvent<HTMLElement>) => void;
  readonly onPointerUp: (event: PointerEvent<HTMLElement>) => void;
  readonly onPointerCancel: (event: PointerEvent<HTMLElement>) => void;
}

interface Finger {
  x: number;
  y: number;
}

/**
 * Mouse, pen and touch: one finger or the left button turns, two fingers or the right button (or shift) move and
 * zoom. A press without a drag is a click at that pixel of the element.
 */
export function usePointerOrbit(
  box: PartBox,
  change: (update: (view: OrbitView) => OrbitView) => void,
  onClick: (atPx: readonly [number, number], sizePx: readonly [number, number]) => void,
): PointerOrbit {
  const fingers = useRef(new Map<number, Finger>());
  const travelledPx = useRef(0);
  const hadTwo = useRef(false);

  const onPointerDown = useCallback((event: PointerEvent<HTMLElement>) => {
    event.currentTarget.setPointerCapture(event.pointerId);
    if (fingers.current.size === 0) {
      travelledPx.current = 0;
      hadTwo.current = false;
    }
    fingers.current.set(event.pointerId, { x: event.clientX, y: event.clientY });
    if (fingers.current.size > 1) hadTwo.current = true;
  }, []);

  const onPointerMove = useCallback(
    (event: PointerEvent<HTMLElement>) => {
      const finger = fingers.current.get(event.pointerId);
      if (finger === undefined) return;
      const { width, height } = event.currentTarget.getBoundingClientRect();
      const dx = event.clientX - finger.x;
      const dy = event.clientY - finger.y;
      const other = [...fingers.current].find(([id]) => id !== event.pointerId)?.[1];
      travelledPx.current += Math.hypot(dx, dy);
      if (other === undefined && travelledPx.current < clickPx) return;
      if (other !== undefined) {
        const before = Math.hypot(finger.x - other.x, finger.y - other.y);
        const after = Math.hypot(event.clientX - other.x, event.clientY - other.y);
        change((view) => {
          const zoomed = before > 10 ? zoomedBy(view, after / before, box) : view;
          // Each finger moves the picture by half of its own way.
          const perMm = 2 * pixelsPerMm(zoomed, width, height);
          return pannedBy(zoomed, dx / perMm, -dy / perMm);
        });
      } else if (event.shiftKey || (event.buttons & 2) !== 0) {
        change((view) => {
          const perMm = pixelsPerMm(view, width, height);
          return pannedBy(view, dx / perMm, -dy / perMm);
        });
      } else {
        change((view) => orbitedBy(view, -dx * degreesPerPx, dy * degreesPerPx));
      }
      finger.x = event.clientX;
      finger.y = event.clientY;
    },
    [box, change],
  );

  const onPointerUp = useCallback(
    (event: PointerEvent<HTMLElement>) => {
      const known = fingers.current.delete(event.pointerId);
      if (!known || hadTwo.current || travelledPx.current >= clickPx || event.button !== 0) return;
      const { left, top, width, height } = event.currentTarget.getBoundingClientRect();
      onClick([event.clientX - left, event.clientY - top], [width, height]);
    },
    [onClick],
  );

  const onPointerCancel = useCallback((event: PointerEvent<HTMLElement>) => {
    fingers.current.delete(event.pointerId);
    hadTwo.current = true;
  }, []);

  return { onPointerDown, onPointerMove, onPointerUp, onPointerCancel };
}
