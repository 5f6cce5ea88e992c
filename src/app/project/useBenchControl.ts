import { useRef, useState } from 'react';
import type { MeasuredShape, Probe } from '../../pipeline/told';
import type { BenchControl, Marked } from '../../sheets/benchControl';
import { useKeyedState } from '../../ui/useKeyedState';

/** What sheet and view tell each other. */
export interface ViewControl extends BenchControl {
  /** Hands what a click met to whoever asked for it; false when nobody did. */
  readonly takePick: (met: Probe) => boolean;
}

/** Session state between sheet and view; marks belong to one measurement and go with it. */
export function useBenchControl(reply: MeasuredShape | null): ViewControl {
  const [marked, mark] = useKeyedState<Marked | null>(reply, () => null);
  const [picking, setPicking] = useState<'direction' | 'place' | null>(null);
  const onPick = useRef<((met: Probe) => void) | null>(null);

  const pick = (what: 'direction' | 'place', callback: ((met: Probe) => void) | null) => {
    onPick.current = callback;
    setPicking(callback === null ? null : what);
  };
  return {
    marked,
    mark,
    picking: picking === 'direction',
    pickNormal: (callback) => pick('direction', callback === null ? null : ({ normal }) => callback(normal)),
    pickingPlace: picking === 'place',
    pickPlace: (callback) => pick('place', callback),
    takePick: (met) => {
      const callback = onPick.current;
      if (callback === null) return false;
      onPick.current = null;
      setPicking(null);
      callback(met);
      return true;
    },
  };
}
