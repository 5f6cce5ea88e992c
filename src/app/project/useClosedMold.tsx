import { useMemo } from 'react';
import type { MeasuredShape } from '../../pipeline/told';
import type { Marked } from '../../sheets/benchControl';
import { closingView } from '../../sheets/closing/closingView';
import { facetsOfPlace } from '../../sheets/closing/facetsOfPlace';
import { HoldingPlaces } from '../../sheets/closing/HoldingPlaces';
import { wallChangeCsv } from '../../sheets/closing/wallChangeCsv';
import { closingState } from '../../steps/closedMold/state';
import type { StepContext } from '../../steps/shared/context';
import { useKeyedState } from '../../ui/useKeyedState';
import type { BenchViewProps } from '../../viewer/BenchView';
import { closingTabs } from '../../viewer/closingMapViews';

export interface ClosedMold {
  /** What the bench view shows otherwise than for the part alone. */
  readonly view: Pick<BenchViewProps, 'tabs' | 'closing' | 'ranked'>;
  /** Facets of the place that was chosen in the ranked list, as the present balance loads them. */
  readonly marked: Marked | null;
  readonly unmark: () => void;
}

const tabs = [...closingTabs, 'cut'] as const;

/** The closed mold on the bench view; null while nothing is measured or another sheet is open. */
export function useClosedMold(
  reply: MeasuredShape | null,
  context: StepContext,
  onSaveText: (fileName: string, text: string) => void,
): ClosedMold | null {
  const [held, hold] = useKeyedState<string | null>(reply, () => null);
  const closing = useMemo(
    () => (reply === null ? null : closingView(context, reply.maps.closing, reply.shape.display)),
    [reply, context],
  );
  const marked = useMemo<Marked | null>(() => {
    const state = closingState(context);
    if (held === null || reply === null || closing?.known !== true || !state.known) return null;
    const { boxMinMm, boxMaxMm, display } = reply.shape;
    const frame = { boxMinMm, boxMaxMm, pull: state.histogram.frame.pull };
    return {
      label: `${held}, where it carries`,
      facets: facetsOfPlace(held, frame, display, reply.maps.closing, closing.data.maps),
    };
  }, [held, reply, context, closing]);
  if (reply === null || closing === null) return null;

  const state = closingState(context);
  const saveWallChanges = () => {
    if (closing.known && state.known)
      onSaveText(
        'wall changes.csv',
        wallChangeCsv(reply.shape, reply.maps.closing, closing.data.maps, state.wantedWallMm),
      );
  };
  return {
    view: {
      tabs,
      closing: closing.known ? closing.data : null,
      ranked:
        closing.known && state.known ? (
          <HoldingPlaces state={state} held={held} onHold={hold} onSaveWallChanges={saveWallChanges} />
        ) : (
          <p className="places-note">{closing.known ? '' : closing.why}</p>
        ),
    },
    marked,
    unmark: () => hold(null),
  };
}
