import { facetKind, type FacetKind } from '../core/mesh/types';
import { formatNumber, formatQuantity } from '../core/units/formatNumber';
import type { Probe } from '../pipeline/told';
import { kindLabels } from './mapColors';

const kindOrder = Object.keys(facetKind) as FacetKind[];

/** What was measured at the place that was clicked. */
export function ProbeReadout({ probe, stackMm }: { readonly probe: Probe; readonly stackMm: number | null }) {
  const { rayWallMm } = probe;
  const kind = kindOrder.findIndex((name) => facetKind[name] === probe.kind);
  const rows: (readonly [string, string])[] = [
    ['Wall along the normal', formatQuantity(rayWallMm, 2, 'mm')],
    ['Wall by largest sphere', formatQuantity(probe.ballWallMm, 2, 'mm')],
    ...(stackMm === null || rayWallMm === null
      ? []
      : [['Ray wall less stack', formatQuantity(rayWallMm - stackMm, 2, 'mm')] as const]),
    ['Draft', formatQuantity(probe.draftDeg, 1, '°')],
    [
      'Inside corner',
      probe.cornerRadiusMm === null ? 'none here' : formatQuantity(probe.cornerRadiusMm, 2, 'mm'),
    ],
    ['Face', kindLabels[kind]?.label ?? ''],
    ['At', `${probe.pointMm.map((at) => formatNumber(at, 1)).join(', ')} mm`],
  ];
  return (
    <section className="probe-readout" aria-label="Probe" aria-live="polite">
      <h3>Probe: {probe.place}</h3>
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
