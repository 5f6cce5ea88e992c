import { noClosingClass, type ClosingMaps } from '../core/closing/closingMaps';
import { formatNumber, formatQuantity } from '../core/units/formatNumber';
import { closingClassLabels } from './closingMapViews';
import { signed } from './signed';

/** What the closed mold does at the place that was clicked. */
export function ClosingReadout({ facet, maps }: { readonly facet: number; readonly maps: ClosingMaps }) {
  const own = maps.closingClass[facet] ?? noClosingClass;
  const rows: (readonly [string, string])[] =
    own === noClosingClass
      ? [['Closed mold', 'no show face here: nothing presses on it']]
      : [
          ['Class', closingClassLabels[own]?.label ?? ''],
          ['Gap', formatQuantity(maps.gapMm[facet]!, 2, 'mm')],
          ['Fiber volume fraction', formatNumber(maps.fiberFraction[facet]!, 3)],
          ['Fiber-bed pressure', formatQuantity(maps.pressureKpa[facet]!, 0, 'kPa')],
          ['Wall change wanted', `${signed(maps.wallChangeMm[facet]!, 2)} mm`],
        ];
  return (
    <section className="probe-readout" aria-label="Closed mold at the probe" aria-live="polite">
      <dl>
        {rows.map(([term, text]) => (
          <div key={term}>
            <dt>{term}</dt>
            <dd>{text}</dd>
          </div>
        ))}
      </dl>
    </section>
  );
}
