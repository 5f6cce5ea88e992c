import { scaleLinear } from 'd3-scale';
import { useId } from 'react';
import { fittedWeightG } from '../../core/stone/dryingLog';
import { formatNumber } from '../../core/units/formatNumber';
import type { StepContext } from '../../steps/shared/context';
import { halfDryness, type HalfDryness } from '../../steps/stone/dryness';
import { halves, moldWork } from '../../steps/stone/work';
import { Plot, plotOf } from '../../ui/charts/Plot';
import { useWidth } from '../../ui/charts/useWidth';
import './dryingCurve.css';

export interface DryingCurveProps {
  /** E.g. "Negative". */
  readonly name: string;
  readonly dryness: HalfDryness;
}

const heightPx = 190;
const edges = { left: 64, right: 22, top: 26, bottom: 34 };
const curveParts = 60;
const grams = (value: number) => `${formatNumber(value, 1)} g`;
const hoursText = (value: number) => `${formatNumber(value, 1)} h`;

/** Both halves, as far as they have been weighed. */
export function DryingCurves({ context }: { readonly context: StepContext }) {
  if (context.inputs.mold.dryingLog.length === 0) return null;
  const work = moldWork(context);
  return halves.map((half) => {
    const dryness = halfDryness(context, work, half);
    return dryness.known ? <DryingCurve key={half} name={halfNames[half]} dryness={dryness.value} /> : null;
  });
}

const halfNames = { negative: 'Negative', positive: 'Positive' } as const;

/** Weighings of one half over the hours, where they are heading, and the weight at which it counts as dry. */
function DryingCurve({ name, dryness }: DryingCurveProps) {
  const id = useId();
  const [box, widthPx] = useWidth<HTMLElement>();
  const { log, state, expected } = dryness;
  const targetG = expected.dryG;
  const [first, last] = [log[0], log.at(-1)];
  if (first === undefined || last === undefined) return null;
  const untilHours = Math.max(last.hours + Math.min(state.hoursLeft ?? 0, last.hours), first.hours + 1);
  const fitted = Array.from({ length: curveParts + 1 }, (_, part) => {
    const hours = first.hours + ((untilHours - first.hours) * part) / curveParts;
    return { hours, weightG: fittedWeightG(state, first.hours, hours) };
  }).flatMap(({ hours, weightG }) => (weightG === null ? [] : [{ hours, weightG }]));
  const weights = [
    ...log.map((weighing) => weighing.grams),
    targetG,
    ...(state.endG === null ? [] : [state.endG]),
  ];
  const [low, high] = [Math.min(...weights), Math.max(...weights)];
  const room = Math.max(0.5, 0.08 * (high - low));
  const plot = plotOf(widthPx, heightPx, edges);
  const x = scaleLinear([first.hours, untilHours], [plot.left, plot.right]);
  const y = scaleLinear([low - room, high + room], [plot.bottom, plot.top]);
  return (
    <figure ref={box} className="chart drying-curve">
      <Plot
        id={id}
        title={`${name}: weight over hours after demolding`}
        describedBy={`${id}-text`}
        heightPx={heightPx}
        plot={plot}
        x={x}
        y={y}
        xTicks={Math.min(6, Math.max(2, Math.floor(widthPx / 80)))}
        yTicks={4}
        xText={(tick) => `${tick} h`}
        up={`${name}, g`}
      >
        <line x1={plot.left} x2={plot.right} y1={y(targetG)} y2={y(targetG)} className="chart-band-edge" />
        {fitted.length === 0 ? null : (
          <path
            className="section-line"
            d={fitted
              .map(
                ({ hours, weightG }, at) =>
                  `${at === 0 ? 'M' : 'L'}${x(hours).toFixed(1)} ${y(weightG).toFixed(1)}`,
              )
              .join('')}
          />
        )}
        {log.map((weighing) => (
          <circle
            key={weighing.hours}
            cx={x(weighing.hours)}
            cy={y(weighing.grams)}
            r={4.5}
            className="drying-point"
          />
        ))}
      </Plot>
      <figcaption id={`${id}-text`} className="chart-note">
        {drynessText(name, dryness)}
      </figcaption>
    </figure>
  );
}

/** What the drawing shows, in words. */
function drynessText(name: string, { log, state, expected }: HalfDryness): string {
  const last = log.at(-1);
  if (last === undefined) return `${name}: not weighed yet.`;
  const heading =
    state.endG === null
      ? state.reason
      : state.tauHours === null
        ? `It no longer falls, at ${grams(state.endG)}.`
        : `The line is the fitted way down to ${grams(state.endG)}, ${grams(state.toGoG ?? 0)} to go${
            state.hoursLeft === null || state.hoursLeft === 0 ? '' : ` in about ${hoursText(state.hoursLeft)}`
          }.`;
  return `${name}, rings: ${log.length === 1 ? '1 weighing' : `${log.length} weighings`}, ${grams(last.grams)} at ${hoursText(last.hours)}. Dashed: dry at ${grams(expected.dryG)}, by its ${expected.by}. ${heading}`;
}
