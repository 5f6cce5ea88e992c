import { max } from 'd3-array';
import { scaleLinear } from 'd3-scale';
import { useId, useState } from 'react';
import type { AreaHistogram, HistogramBin } from '../../core/mesh/areaHistogram';
import { formatNumber } from '../../core/units/formatNumber';
import { Button } from '../Button';
import { DataTable } from '../DataTable';
import { HatchPattern } from './HatchPattern';
import { useWidth } from './useWidth';

export interface HistogramProps {
  /** E.g. "Wall of the show face". */
  readonly title: string;
  /** One sentence on what can be seen, for those who don't see it. */
  readonly description: string;
  readonly histogram: AreaHistogram;
  /** Unit of the values, e.g. "mm". */
  readonly unit: string;
  readonly decimals: number;
  /** Values that are as wanted; null when nothing is wanted yet. */
  readonly band: { readonly low: number; readonly high: number; readonly label: string } | null;
}

const heightPx = 190;
const edges = { left: 52, right: 12, top: 28, bottom: 44 };
const squareMmPerCm = 100;

/** Where a bin lies against the band, by its middle. */
function toneOf({ from, to }: HistogramBin, band: HistogramProps['band']): 'loose' | 'fits' | 'tight' {
  const middle = (from + to) / 2;
  if (band === null || (middle >= band.low && middle <= band.high)) return 'fits';
  return middle > band.high ? 'loose' : 'tight';
}

/** Area over value, with the wanted band marked; the same numbers as a table at the press of a button. */
export function Histogram({ title, description, histogram, unit, decimals, band }: HistogramProps) {
  const id = useId();
  const [box, widthPx] = useWidth<HTMLElement>();
  const [asTable, setAsTable] = useState(false);
  const { bins, belowMm2, aboveMm2 } = histogram;
  const first = bins[0];
  const last = bins.at(-1);
  if (first === undefined || last === undefined) return null;

  const x = scaleLinear(
    [first.from, last.to],
    [edges.left, Math.max(edges.left + 40, widthPx - edges.right)],
  );
  const tallestCm2 = (max(bins, (bin) => bin.areaMm2) ?? 0) / squareMmPerCm;
  const y = scaleLinear([0, tallestCm2 || 1], [heightPx - edges.bottom, edges.top]).nice(3);
  const bottom = y(0);
  const inDrawing = (value: number) => value >= first.from && value <= last.to;
  const outer = [
    belowMm2 > 0 ? `under ${formatNumber(first.from, decimals)} ${unit}: ${areaText(belowMm2)}` : null,
    aboveMm2 > 0 ? `over ${formatNumber(last.to, decimals)} ${unit}: ${areaText(aboveMm2)}` : null,
  ].filter((text) => text !== null);

  return (
    <figure ref={box} className="chart">
      <svg
        width="100%"
        height={heightPx}
        role="img"
        aria-labelledby={`${id}-title ${id}-desc`}
        className="chart-drawing"
      >
        <title id={`${id}-title`}>{title}</title>
        <desc id={`${id}-desc`}>{description}</desc>
        <defs>
          <HatchPattern id={`${id}-loose`} hatch="slant" />
          <HatchPattern id={`${id}-tight`} hatch="cross" />
        </defs>
        {band === null ? null : (
          <rect
            x={x(Math.max(first.from, band.low))}
            width={Math.max(0, x(Math.min(last.to, band.high)) - x(Math.max(first.from, band.low)))}
            y={edges.top}
            height={bottom - edges.top}
            className="chart-band"
          />
        )}
        {y.ticks(3).map((tick) => (
          <g key={tick}>
            <line x1={edges.left} x2={x.range()[1]} y1={y(tick)} y2={y(tick)} className="chart-rule" />
            <text x={edges.left - 8} y={y(tick)} className="chart-number chart-left">
              {y.tickFormat(3)(tick)}
            </text>
          </g>
        ))}
        {bins.map((bin) => {
          const tone = toneOf(bin, band);
          const shape = {
            x: x(bin.from) + 0.5,
            width: Math.max(0.5, x(bin.to) - x(bin.from) - 1),
            y: y(bin.areaMm2 / squareMmPerCm),
            height: bottom - y(bin.areaMm2 / squareMmPerCm),
          };
          return (
            <g key={bin.from}>
              <rect {...shape} className={`tone-${tone} chart-bar`} />
              {tone === 'fits' ? null : <rect {...shape} fill={`url(#${id}-${tone})`} />}
            </g>
          );
        })}
        <line x1={edges.left} x2={x.range()[1]} y1={bottom} y2={bottom} className="chart-axis" />
        {x.ticks(Math.max(3, Math.floor(widthPx / 90))).map((tick) => (
          <g key={tick}>
            <line x1={x(tick)} x2={x(tick)} y1={bottom} y2={bottom + 5} className="chart-axis" />
            <text x={x(tick)} y={bottom + 20} className="chart-number chart-middle">
              {formatNumber(tick, decimals)}
            </text>
          </g>
        ))}
        <text x={x.range()[1]} y={heightPx - 6} className="chart-word chart-end">
          {unit}
        </text>
        <text x={4} y={14} className="chart-word">
          cm²
        </text>
        {band === null
          ? null
          : [band.low, band.high]
              .filter(inDrawing)
              .map((value) => (
                <line
                  key={value}
                  x1={x(value)}
                  x2={x(value)}
                  y1={edges.top - 6}
                  y2={bottom}
                  className="chart-band-edge"
                />
              ))}
        {band !== null && band.high >= first.from && band.low <= last.to ? (
          <text
            x={Math.min(
              Math.max(
                x((Math.max(first.from, band.low) + Math.min(last.to, band.high)) / 2),
                edges.left + band.label.length * 4,
              ),
              widthPx - edges.right - band.label.length * 4,
            )}
            y={edges.top - 11}
            className="chart-word chart-middle"
          >
            {band.label}
          </text>
        ) : null}
      </svg>
      {outer.length === 0 ? null : <p className="chart-note">Not drawn: {outer.join('; ')}.</p>}
      <Button aria-expanded={asTable} onClick={() => setAsTable(!asTable)} className="screen-only">
        {asTable ? 'Hide the table' : 'Show as a table'}
      </Button>
      {asTable ? (
        <DataTable
          caption={`${title}, area by value`}
          captionHidden
          columns={[
            {
              id: 'value',
              header: `from, to ${unit}`,
              cell: ({ from, to }) => `${formatNumber(from, decimals)} – ${formatNumber(to, decimals)}`,
            },
            { id: 'area', header: 'area cm²', numeric: true, cell: ({ areaMm2 }) => cm2Text(areaMm2) },
            {
              id: 'share',
              header: '% of area',
              numeric: true,
              cell: ({ areaMm2 }) => formatNumber((100 * areaMm2) / (histogram.totalMm2 || 1), 1),
            },
          ]}
          rows={bins}
          rowKey={({ from }) => String(from)}
        />
      ) : null}
    </figure>
  );
}

const cm2Text = (areaMm2: number) => formatNumber(areaMm2 / squareMmPerCm, 2);
const areaText = (areaMm2: number) => `${cm2Text(areaMm2)} cm²`;
