import { scaleLinear } from 'd3-scale';
import { useId, type ReactNode } from 'react';
import type { Curve } from '../../core/cure/curve';
import type { CurePrediction } from '../../core/cure/predictCure';
import { stagesOnDial } from '../../core/cure/ovenProgram';
import type { OvenProgram } from '../../core/cure/ovenProgram';
import { Problem } from '../../core/problem';
import { Plot, plotOf, type PlotPx } from '../../ui/charts/Plot';
import { useWidth } from '../../ui/charts/useWidth';
import { curveClass, curveLabel } from './curveStyles';

/** A measured curve drawn over the predicted ones. */
export interface DrawnLog {
  readonly name: string;
  /** In the key, where it is no log. */
  readonly label?: string;
  readonly curve: Curve;
}

export interface HeatCurvesProps {
  readonly program: OvenProgram;
  readonly prediction: CurePrediction | null;
  /** Where in the laminate the prediction is read; where it was not asked at the thermocouple, the coldest place. */
  readonly at?: 'coldest' | 'thermocouple';
  readonly logs?: readonly DrawnLog[];
  /** Where the run is, seconds after its start; null when none is on. */
  readonly nowS?: number | null;
  /** What the axes reach over, from what the curves need; left out: just that. */
  readonly spanFor?: (needed: ChartSpan) => ChartSpan;
  /** Laid over the drawing, for what is taken hold of; places count from its upper left. */
  readonly overlay?: (scales: ChartScales) => ReactNode;
}

export interface ChartSpan {
  readonly lastS: number;
  readonly lowC: number;
  readonly highC: number;
}

/** Places on the drawing, px, and back. */
export interface ChartScales {
  readonly span: ChartSpan;
  readonly timePx: (timeS: number) => number;
  readonly temperaturePx: (temperatureC: number) => number;
  readonly timeAtS: (px: number) => number;
  readonly temperatureAtC: (px: number) => number;
  readonly plot: PlotPx;
}

const heightPx = 300;
const edges = { left: 44, right: 14, top: 30, bottom: 40 };
/** A line along the edge of the plot keeps its whole width. */
const lineRoomPx = 3;

/** Dial, oven air and the laminate's coldest place over the hours. */
export function HeatCurves(props: HeatCurvesProps) {
  const { program, prediction, at = 'coldest', logs = [], nowS = null } = props;
  const id = useId();
  const [box, widthPx] = useWidth<HTMLElement>();
  const dial = dialOf(program);
  const curves = [
    ...(dial === null ? [] : [{ key: 'dial', className: 'heat-dial', label: 'Dial', curve: dial }]),
    ...(prediction === null
      ? []
      : [
          {
            key: 'air',
            className: 'heat-air',
            label: 'Air in the oven',
            curve: clipped(prediction.air, endOfRuns(prediction)),
          },
          ...prediction.runs.map(({ treatment, coldest, thermocouple }) => ({
            key: treatment,
            className: curveClass[treatment],
            label: curveLabel(treatment),
            curve: at === 'thermocouple' && thermocouple !== null ? thermocouple : coldest.curve,
          })),
        ]),
    ...logs.map(({ name, label, curve }) => ({
      key: `log-${name}`,
      className: label === undefined ? 'heat-log' : 'heat-fit',
      label: label ?? `Log: ${name}`,
      curve,
    })),
  ];
  if (curves.length === 0) return null;
  const needed = spanOf(curves.map(({ curve }) => curve));
  const span = props.spanFor?.(needed) ?? needed;
  const { lastS, lowC, highC } = span;
  const plot = plotOf(widthPx, heightPx, edges);
  const x = scaleLinear([0, lastS / 3600], [plot.left, plot.right]);
  const y = scaleLinear([lowC, highC + 5], [plot.bottom, plot.top]).nice(5);
  return (
    <figure ref={box} className="chart heat-chart">
      <div className="heat-drawing">
        <Plot
          id={id}
          title={`Temperature over hours: ${curves.map(({ label }) => label).join('; ')}`}
          heightPx={heightPx}
          plot={plot}
          x={x}
          y={y}
          xTicks={Math.min(8, Math.max(2, Math.floor(widthPx / 70)))}
          yTicks={5}
          xText={(tick) => `${tick} h`}
          up="°C"
        >
          <clipPath id={`${id}-plot`}>
            <rect
              x={plot.left - lineRoomPx}
              y={plot.top - lineRoomPx}
              width={plot.right - plot.left + 2 * lineRoomPx}
              height={plot.bottom - plot.top + 2 * lineRoomPx}
            />
          </clipPath>
          <g clipPath={`url(#${id}-plot)`}>
            {curves.map(({ key, className, curve }) => (
              <path key={key} className={`heat-line ${className}`} d={pathOf(curve, x, y)} />
            ))}
          </g>
          {nowS === null ? null : (
            <line
              x1={x(Math.min(nowS, lastS) / 3600)}
              x2={x(Math.min(nowS, lastS) / 3600)}
              y1={plot.top}
              y2={plot.bottom}
              className="heat-now"
            />
          )}
        </Plot>
        {props.overlay?.({
          span,
          timePx: (timeS) => x(timeS / 3600),
          temperaturePx: y,
          timeAtS: (px) => 3600 * x.invert(px),
          temperatureAtC: (px) => y.invert(px),
          plot,
        })}
      </div>
      <ul className="heat-key">
        {curves.map(({ key, className, label }) => (
          <li key={key}>
            <svg width="36" height="12" aria-hidden>
              <path className={`heat-line ${className}`} d="M0 6H36" />
            </svg>
            {label}
          </li>
        ))}
      </ul>
    </figure>
  );
}

function spanOf(curves: readonly Curve[]): ChartSpan {
  const values = curves.flatMap(({ valuesC }) => valuesC);
  return {
    lastS: Math.max(...curves.map(({ timesS }) => timesS.at(-1) ?? 0), 3600),
    lowC: values.reduce((low, one) => Math.min(low, one), 20),
    highC: values.reduce((high, one) => Math.max(high, one), 60),
  };
}

/** null when the program cannot be drawn; the verdict says why. */
function dialOf(program: OvenProgram): Curve | null {
  try {
    return stagesOnDial(program).setPoint;
  } catch (error) {
    if (error instanceof Problem) return null;
    throw error;
  }
}

const endOfRuns = ({ runs }: CurePrediction) =>
  Math.max(...runs.map(({ coldest }) => coldest.curve.timesS.at(-1) ?? 0));

function clipped({ timesS, valuesC }: Curve, untilS: number): Curve {
  const at = timesS.findIndex((timeS) => timeS > untilS);
  return at === -1 ? { timesS, valuesC } : { timesS: timesS.slice(0, at), valuesC: valuesC.slice(0, at) };
}

function pathOf(
  { timesS, valuesC }: Curve,
  x: (hours: number) => number,
  y: (celsius: number) => number,
): string {
  return timesS
    .map((timeS, i) => `${i === 0 ? 'M' : 'L'}${x(timeS / 3600).toFixed(1)} ${y(valuesC[i] ?? 0).toFixed(1)}`)
    .join('');
}
