import type { RimStation } from '../../core/fit/compareRims';
import { formatNumber } from '../../core/units/formatNumber';

const [widthPx, heightPx, edgePx] = [640, 150, 24];

/** Step of the own outline over the mate's, and gap between the lands, along the rim. */
export function RimCurve({
  stations,
  lengthMm,
}: {
  readonly stations: readonly RimStation[];
  readonly lengthMm: number;
}) {
  const most = Math.max(0.1, ...stations.flatMap(({ stepMm, gapMm }) => [Math.abs(stepMm ?? 0), gapMm ?? 0]));
  const x = (alongMm: number) => edgePx + ((widthPx - 2 * edgePx) * alongMm) / lengthMm;
  const y = (mm: number) => heightPx / 2 - ((heightPx / 2 - edgePx) * mm) / most;
  const path = (valueOf: (station: RimStation) => number | null): string => {
    let isOn = false;
    return stations
      .map((station) => {
        const value = valueOf(station);
        if (value === null) {
          isOn = false;
          return '';
        }
        const step = `${isOn ? 'L' : 'M'}${x(station.alongMm).toFixed(1)} ${y(value).toFixed(1)}`;
        isOn = true;
        return step;
      })
      .join('');
  };
  const end = formatNumber(most, 2);
  return (
    <figure className="chart">
      <svg
        viewBox={`0 0 ${widthPx} ${heightPx}`}
        role="img"
        aria-label={`Step and gap along the rim, up to ${end} mm`}
      >
        <line
          x1={edgePx}
          x2={widthPx - edgePx}
          y1={y(0)}
          y2={y(0)}
          stroke="currentColor"
          strokeOpacity="0.4"
        />
        <path d={path(({ stepMm }) => stepMm)} fill="none" stroke="currentColor" strokeWidth="2" />
        <path d={path(({ gapMm }) => gapMm)} fill="none" stroke="currentColor" strokeDasharray="5 4" />
        <text x={edgePx} y={14} fontSize="14" fill="currentColor">
          {end} mm
        </text>
      </svg>
      <figcaption>
        Along the rim, {formatNumber(lengthMm, 0)} mm: step of this half over the other (line), gap between
        the lands (dashed).
      </figcaption>
    </figure>
  );
}
