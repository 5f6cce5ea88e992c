import { max } from 'd3-array';
import { scaleLinear } from 'd3-scale';
import { useId, useState } from 'react';
import type { AreaHistogram, HistogramBin } from '../../core/mesh/areaHistogram';
import { formatNumber } from '../../core/units/formatNumber';
import { Button } from '../Button';
import { DataTable } from '../DataTable';
import { HatchPattern } from './HatchPattern';
import { Plot, plotOf } from './Plot';
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

  const plot = plotOf(widthPx, heightPx, edges);
  const x = scaleLinear([first.from, last.to], [plot.left, plot.right]);
  const tallestCm2 = (max(bins, (bin) => bin.areaMm2) ?? 0) / squareMmPerCm;
  const y = scaleLinear([0, tallestCm2 || 1], [plot.bottom, plot.top]).nice(3);
  const inDrawing = (value: number) => value >= first.from && value <= last.to;
  const outer = [
    belowMm2 > 0 ? `under ${formatNumber(first.from, decimals)} ${unit}: ${areaText(belowMm2)}` : null,
    aboveMm2 > 0 ? `over ${formatNumber(last.to, decimals)} ${unit}: ${areaText(aboveMm2)}` : null,
  ].filter((text) => text !== null);

  return (
    <figure ref={box} className="chart">
      <Plot
        id={id}
        title={title}
        description={description}
        heightPx={heightPx}
        plot={plot}
        x={x}
        y={y}
        xTicks={Math.max(3, Math.floor(widthPx / 90))}
        yTicks={3}
        xText={(tick) => formatNumber(tick, decimals)}
        up="cm²"
        behind={
          <>
            <defs>
              <HatchPattern id={`${id}-loose`} hatch="slant" />
              <HatchPattern id={`${id}-tight`} hatch="cross" />
            </defs>
            {band === null ? null : (
              <rect
                x={x(Math.max(first.from, band.low))}
                width={Math.max(0, x(Math.min(last.to, band.high)) - x(Math.max(first.from, band.low)))}
                y={edges.top}
                height={plot.bottom - plot.top}
                className="chart-band"
              />
            )}
          </>
        }
        inFront={
          <>
            <text x={x.range()[1]} y={heightPx - 6} className="chart-word chart-end">
              {unit}
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
                      y2={plot.bottom}
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
          </>
        }
      >
        {bins.map((bin) => {
          const tone = toneOf(bin, band);
          const shape = {
            x: x(bin.from) + 0.5,
            width: Math.max(0.5, x(bin.to) - x(bin.from) - 1),
            y: y(bin.areaMm2 / squareMmPerCm),
            height: plot.bottom - y(bin.areaMm2 / squareMmPerCm),
          };
          return (
            <g key={bin.from}>
              <rect {...shape} className={`tone-${tone} chart-bar`} />
              {tone === 'fits' ? null : <rect {...shape} fill={`url(#${id}-${tone})`} />}
            </g>
          );
        })}
      </Plot>
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
