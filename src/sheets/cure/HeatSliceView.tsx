import { scaleLinear } from 'd3-scale';
import { useId } from 'react';
import type { CurePrediction, HeatSlice } from '../../core/cure/predictCure';
import { celsius, hoursMinutes, treatmentNames } from '../../steps/cure/say';
import { ChoiceField } from '../../ui/ChoiceField';
import { useWidth } from '../../ui/charts/useWidth';
import { momentS, type HeatMoment } from './heatMoment';

/** Bands of one color; between them the drawing has steps. */
const bandCount = 9;
const cold = '#f7efd9';
const hot = '#8c2410';
/** A cell that is at least this much laminate is outlined. */
const outlinedShare = 0.2;

export interface HeatSliceViewProps {
  readonly prediction: CurePrediction;
  readonly moment: HeatMoment;
  readonly onMoment: (moment: HeatMoment) => void;
}

/** The mold cut along the pull through the coldest place of the laminate, at a time of the run. */
export function HeatSliceView({ prediction, moment, onMoment }: HeatSliceViewProps) {
  const id = useId();
  const [box, widthPx] = useWidth<HTMLElement>();
  const run = prediction.runs.find((one) => one.treatment === moment.treatment) ?? prediction.runs[0];
  if (run === undefined) return null;
  const { slice } = run;
  const frame = nearest(slice.timesS, momentS(prediction, moment));
  const [low, high] = spanOf(slice, frame);
  const [cellX, cellZ] = slice.sizeMm;
  const perMm = Math.min(widthPx / (slice.nx * cellX), 260 / (slice.nz * cellZ));
  const [width, height] = [slice.nx * cellX * perMm, slice.nz * cellZ * perMm];
  const color = scaleLinear([0, bandCount - 1], [cold, hot]);
  const bandOf = (at: number) =>
    Math.min(bandCount - 1, Math.max(0, Math.floor((bandCount * (at - low)) / (high - low))));
  const atS = slice.timesS[frame] ?? 0;
  return (
    <figure ref={box} className="chart heat-slice">
      <ChoiceField
        label="Cut shown for"
        meaning="Which of the three runs the cut is taken from."
        choices={prediction.runs.map((one) => ({
          value: one.treatment,
          label: treatmentNames[one.treatment],
        }))}
        value={run.treatment}
        onChange={(treatment) => onMoment({ ...moment, treatment })}
      />
      <label className="heat-time">
        <span>
          Time of the cut: {hoursMinutes(atS)} from the start, laminate {laminateWords(slice, frame)}
        </span>
        <input
          type="range"
          min={0}
          max={slice.timesS.length - 1}
          step={1}
          value={frame}
          aria-valuetext={hoursMinutes(atS)}
          onChange={(event) => onMoment({ ...moment, timeS: slice.timesS[Number(event.target.value)] ?? 0 })}
        />
      </label>
      <svg width={width} height={height} role="img" aria-labelledby={`${id}-title`} className="chart-drawing">
        <title id={`${id}-title`}>
          Cut through the closed mold, negative on top: {laminateWords(slice, frame)} in the laminate at{' '}
          {hoursMinutes(atS)}
        </title>
        {stripsOf(slice, frame, bandOf).map(({ i, k, length, band }) => (
          <rect
            key={`${i} ${k}`}
            x={i * cellX * perMm}
            y={(slice.nz - 1 - k) * cellZ * perMm}
            width={length * cellX * perMm + 0.4}
            height={cellZ * perMm + 0.4}
            fill={color(band)}
            shapeRendering="crispEdges"
          />
        ))}
        {laminateCells(slice).map(({ i, k }) => (
          <rect
            key={`${i} ${k}`}
            x={i * cellX * perMm}
            y={(slice.nz - 1 - k) * cellZ * perMm}
            width={cellX * perMm}
            height={cellZ * perMm}
            className="heat-laminate"
          />
        ))}
      </svg>
      <p className="chart-note">
        Light is {celsius(low)}, dark is {celsius(high)}. Outlined: the laminate.
      </p>
    </figure>
  );
}

function nearest(timesS: readonly number[], wantedS: number): number {
  let best = 0;
  timesS.forEach((timeS, i) => {
    if (Math.abs(timeS - wantedS) < Math.abs((timesS[best] ?? 0) - wantedS)) best = i;
  });
  return best;
}

/** Least span of the colors, K: less than this is an even mold. */
const leastSpanK = 9;

/** From the coldest to the hottest cell of this cut. */
function spanOf({ inside, temperatureC }: HeatSlice, frame: number): [number, number] {
  const values = [...(temperatureC[frame] ?? [])].filter((_, at) => inside[at] !== 0);
  const low = Math.floor(values.reduce((least, one) => Math.min(least, one), Infinity));
  const high = Math.ceil(values.reduce((most, one) => Math.max(most, one), -Infinity));
  return [low, Math.max(high, low + leastSpanK)];
}

function laminateWords({ laminateShare, temperatureC }: HeatSlice, frame: number): string {
  const field = temperatureC[frame];
  let [low, high] = [Infinity, -Infinity];
  laminateShare.forEach((share, at) => {
    const value = field?.[at];
    if (share < outlinedShare || value === undefined) return;
    [low, high] = [Math.min(low, value), Math.max(high, value)];
  });
  return low === Infinity ? 'not in this cut' : `${Math.round(low)} to ${celsius(high)}`;
}

/** Neighbors in a row that share a color are one strip. */
function stripsOf(
  { nx, nz, inside, temperatureC }: HeatSlice,
  frame: number,
  bandOf: (at: number) => number,
) {
  const field = temperatureC[frame];
  const strips: { i: number; k: number; length: number; band: number }[] = [];
  for (let k = 0; k < nz; k++)
    for (let i = 0; i < nx; i++) {
      const at = i + nx * k;
      if (inside[at] === 0) continue;
      const band = bandOf(field?.[at] ?? 0);
      const before = strips.at(-1);
      if (before !== undefined && before.k === k && before.i + before.length === i && before.band === band)
        before.length++;
      else strips.push({ i, k, length: 1, band });
    }
  return strips;
}

function laminateCells({ nx, laminateShare }: HeatSlice) {
  return [...laminateShare].flatMap((share, at) =>
    share < outlinedShare ? [] : [{ i: at % nx, k: Math.floor(at / nx) }],
  );
}
