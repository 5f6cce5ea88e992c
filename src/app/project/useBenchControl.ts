import { useRef, useState } from 'react';
import type { Vec3 } from '../../core/mesh/types';
import type { MeasuredShape } from '../../jobs/protocol';
import type { BenchControl, Marked } from '../../sheets/benchControl';
import { useKeyedState } from '../../ui/useKeyedState';

/** What sheet and view tell each other. */
export interface ViewControl extends BenchControl {
  /** Hands a clicked facet's normal to whoever asked for it; false when nobody did. */
  readonly takePick: (normal: Vec3) => boolean;
}

/** Session state between sheet and view; marks belong to one measurement and go with it. */
export function useBenchControl(reply: MeasuredShape | null): ViewControl {
  const [marked, mark] = useKeyedState<Marked | null>(reply, () => null);
  const [picking, setPicking] = useState(false);
  const onPick = useRef<((normal: Vec3) => void) | null>(null);

  return {
    marked,
    mark,
    picking,
    pickNormal: (callback) => {
      onPick.current = callback;
      setPicking(callback !== null);
    },
    takePick: (normal) => {
      const callback = onPick.current;
      if (callback === null) return false;
      onPick.current = null;
      setPicking(false);
      callback(normal);
      return true;
    },
  };
}
