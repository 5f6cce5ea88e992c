import { useId } from 'react';
import { HatchPattern } from '../ui/charts/HatchPattern';
import { cssOf, noValueColor, rampColor } from './colorScales';
import type { MapLegend as Legend } from './mapColors';

const barWidthPx = 190;
const barSteps = 64;

/** What the colors mean: a bar with numbers, or hatched classes with words. */
export function MapLegend({ legend }: { readonly legend: Legend }) {
  return legend.kind === 'classes' ? <ClassesLegend legend={legend} /> : <RampLegend legend={legend} />;
}

type Of<Kind extends Legend['kind']> = { readonly legend: Extract<Legend, { readonly kind: Kind }> };

function ClassesLegend({ legend }: Of<'classes'>) {
  const id = useId();
  return (
    <div className="map-legend">
      <p className="map-legend-title">{legend.title}</p>
      <ul>
        {legend.classes.map(({ label, hatch }, i) => (
          <li key={label}>
            <svg width={22} height={16} aria-hidden>
              {hatch === 'none' ? null : (
                <defs>
                  <HatchPattern
                    id={`${id}-${i}`}
                    hatch={hatch}
                    className={isDark(legend.scale.colors[i]) ? 'legend-hatch-light' : 'legend-hatch'}
                  />
                </defs>
              )}
              <rect width={22} height={16} fill={cssOf(legend.scale.colors[i] ?? noValueColor)} />
              {hatch === 'none' ? null : <rect width={22} height={16} fill={`url(#${id}-${i})`} />}
              <rect x={0.5} y={0.5} width={21} height={15} className="chart-frame" />
            </svg>
            {label}
          </li>
        ))}
      </ul>
      {legend.noValue === undefined ? null : <NoValue words={legend.noValue} />}
    </div>
  );
}

function RampLegend({ legend }: Of<'ramp'>) {
  const { limit } = legend;
  const { low, high, ramp } = legend.scale;
  const place = (value: number) => ((value - low) / (high - low)) * barWidthPx;
  return (
    <div className="map-legend">
      <p className="map-legend-title">{legend.title}</p>
      <svg
        width={barWidthPx}
        height={limit === null ? 40 : 58}
        role="img"
        aria-label={`Colors from ${legend.ticks.map(({ label }) => label).join(' over ')}`}
        className="map-legend-bar"
      >
        {Array.from({ length: barSteps }, (_, i) => (
          <rect
            key={i}
            x={(i * barWidthPx) / barSteps}
            width={barWidthPx / barSteps + 0.5}
            height={16}
            fill={cssOf(rampColor(ramp, i / (barSteps - 1)))}
          />
        ))}
        <rect x={0.5} y={0.5} width={barWidthPx - 1} height={15} className="chart-frame" />
        {legend.ticks.map(({ at, label }) => {
          const x = place(at);
          return (
            <g key={label}>
              <line x1={clampToBar(x)} x2={clampToBar(x)} y1={12} y2={20} className="chart-axis" />
              <text x={x} y={31} textAnchor={anchorAt(x, 8)} className="map-legend-number">
                {label}
              </text>
            </g>
          );
        })}
        {limit === null ? null : (
          <g>
            <line x1={place(limit.at)} x2={place(limit.at)} y1={0} y2={44} className="map-legend-limit" />
            <text
              x={Math.min(barWidthPx, Math.max(0, place(limit.at)))}
              y={51}
              textAnchor={anchorAt(place(limit.at), 52)}
              className="map-legend-number"
            >
              {limit.label}
            </text>
          </g>
        )}
      </svg>
      <NoValue words={legend.noValue} />
    </div>
  );
}

function NoValue({ words }: { readonly words: string }) {
  return (
    <p className="map-legend-note">
      <svg width={16} height={12} aria-hidden>
        <rect width={16} height={12} fill={cssOf(noValueColor)} />
      </svg>
      {words}; arrow: pull
    </p>
  );
}

const clampToBar = (x: number) => Math.min(barWidthPx - 0.5, Math.max(0.5, x));

/** Lettering near an end of the bar stays inside of it. */
function anchorAt(x: number, nearPx: number): 'start' | 'middle' | 'end' {
  if (x < nearPx) return 'start';
  return x > barWidthPx - nearPx ? 'end' : 'middle';
}

function isDark(color: readonly [number, number, number] | undefined): boolean {
  return color !== undefined && 0.299 * color[0] + 0.587 * color[1] + 0.114 * color[2] < 110;
}
