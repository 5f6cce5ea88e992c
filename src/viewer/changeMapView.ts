import type { DisplayChunk } from '../pipeline/told';
import { purpleOrange, type RampScale } from './colorScales';
import type { MapView } from './mapColors';
import { signed } from './signed';

/** A made pattern to be drawn beside the import that it was made of. */
export interface DrawnPattern {
  readonly display: readonly DisplayChunk[];
  /** Per facet, mm; see `Asks.pattern`. */
  readonly changeMm: Float32Array;
}

/** Past this the color says no more; most changes are the draft of one wall. */
const mostShownMm = 1;

const scale: RampScale = { kind: 'ramp', ramp: purpleOrange, low: -mostShownMm, high: mostShownMm };

/** What the made show face adds to the import and takes off it. */
export const changeMapView = ({ changeMm }: DrawnPattern): MapView => ({
  values: changeMm,
  scale,
  legend: {
    kind: 'ramp',
    title: 'Added (+) or taken off (−), mm',
    scale,
    ticks: [-mostShownMm, 0, mostShownMm].map((at) => ({
      at,
      label: at === 0 ? '0' : signed(at, 1),
    })),
    limit: null,
    noValue: 'import, core face and rim',
  },
});
