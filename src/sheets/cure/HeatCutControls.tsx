import { useId } from 'react';
import { highestC, valueAt } from '../../core/cure/curve';
import type { HeatAtPoint } from '../../core/cure/heatFields';
import type { OvenProgram } from '../../core/cure/ovenProgram';
import type { CurePrediction } from '../../core/cure/predictCure';
import type { Vec3 } from '../../core/mesh/types';
import { formatNumber } from '../../core/units/formatNumber';
import type { HeatCutQuestion, HeatCutReply } from '../../jobs/protocol';
import { celsius, hoursMinutes, treatmentNames } from '../../steps/cure/say';
import { Button } from '../../ui/Button';
import { ChoiceField } from '../../ui/ChoiceField';
import { heatRange } from '../../viewer/heatSheet';
import { HeatCurves } from './HeatCurves';

/** A point of the cut that was clicked, and its temperature over the run. */
export interface HeatPoint {
  readonly pointMm: Vec3;
  readonly heat: HeatAtPoint;
}

export interface HeatCutControlsProps {
  readonly prediction: CurePrediction;
  readonly program: OvenProgram;
  readonly question: HeatCutQuestion;
  /** Answer to the question, or to the one before it; null while there is none. */
  readonly reply: HeatCutReply | null;
  readonly point: HeatPoint | null;
  readonly onQuestion: (question: HeatCutQuestion) => void;
  /** Colors from the coldest to the hottest of this cut, not of the whole run. */
  readonly isOwnScale: boolean;
  readonly onOwnScale: (own: boolean) => void;
}

const axes = [
  { axis: 0, label: 'across length' },
  { axis: 1, label: 'across width' },
  { axis: 2, label: 'across the pull' },
] as const;

const fillNames = {
  laminate: 'laminate',
  negative: "the negative's stone",
  positive: "the positive's stone",
} as const;

const rangeWords = (range: readonly [number, number] | null) =>
  range === null ? 'none in this cut' : `${formatNumber(range[0], 0)} to ${celsius(range[1])}`;

/** Which cut of the heated mold is shown, when, and what it reads, in words as well as in colors. */
export function HeatCutControls(props: HeatCutControlsProps) {
  const { prediction, program, question, reply, point, onQuestion } = props;
  const id = useId();
  const ask = (change: Partial<HeatCutQuestion>) => onQuestion({ ...question, ...change });
  const run = prediction.runs.find(({ treatment }) => treatment === question.treatment);
  const endS = run?.slice.timesS.at(-1) ?? prediction.heatedS;
  const low = reply?.lowMm[question.axis] ?? 0;
  const high = reply?.highMm[question.axis] ?? 0;
  const middle = (low + high) / 2;
  const atMm = question.atMm ?? middle;
  const fromMiddle = `${formatNumber(atMm - middle, 1)} mm from the middle`;
  return (
    <section className="heat-cut" aria-label="Cut of the heated mold">
      <ChoiceField
        label="Heat shown for"
        meaning="Which of the three runs is cut: what the stone does with its crystal water is not known beforehand."
        choices={prediction.runs.map(({ treatment }) => ({
          value: treatment,
          label: treatmentNames[treatment],
        }))}
        value={question.treatment}
        onChange={(treatment) => ask({ treatment })}
      />
      <div className="button-row" role="group" aria-label="Cut the mold">
        {axes.map(({ axis, label }) => (
          <Button key={axis} aria-pressed={question.axis === axis} onClick={() => ask({ axis, atMm: null })}>
            {label}
          </Button>
        ))}
        <Button aria-pressed={props.isOwnScale} onClick={() => props.onOwnScale(!props.isOwnScale)}>
          colors for this cut
        </Button>
      </div>
      <label htmlFor={`${id}-at`}>Cut {fromMiddle}</label>
      <input
        id={`${id}-at`}
        className="section-slider"
        type="range"
        min={low}
        max={high}
        step={0.5}
        value={atMm}
        disabled={reply === null}
        aria-valuetext={fromMiddle}
        onChange={(event) => ask({ atMm: Number(event.target.value) })}
      />
      <label htmlFor={`${id}-time`}>{hoursMinutes(question.timeS)} from the start</label>
      <input
        id={`${id}-time`}
        className="section-slider"
        type="range"
        min={0}
        max={endS}
        step={60}
        value={question.timeS}
        aria-valuetext={`${hoursMinutes(question.timeS)} from the start`}
        onChange={(event) => ask({ timeS: Number(event.target.value) })}
      />
      <dl className="heat-readout" aria-live="polite">
        <div>
          <dt>Air in the oven</dt>
          <dd>{celsius(valueAt(prediction.air, question.timeS))}</dd>
        </div>
        <div>
          <dt>Laminate in this cut</dt>
          <dd>{reply === null ? '…' : rangeWords(heatRange(reply.cut, 'laminate'))}</dd>
        </div>
        <div>
          <dt>Stone in this cut</dt>
          <dd>{reply === null ? '…' : rangeWords(heatRange(reply.cut, 'stone'))}</dd>
        </div>
      </dl>
      {point === null ? (
        <p className="places-note">
          Click the cut (or press Enter over it) for one point over the whole run.
        </p>
      ) : (
        <figure className="heat-point">
          <figcaption>
            At {point.pointMm.map((mm) => formatNumber(mm, 0)).join(', ')} mm, in {fillNames[point.heat.fill]}
            : {celsius(valueAt(point.heat.curve, question.timeS))} now, {celsius(highestC(point.heat.curve))}{' '}
            at most (estimate).
          </figcaption>
          <HeatCurves
            program={program}
            prediction={null}
            logs={[{ name: 'point', label: 'At the clicked point', curve: point.heat.curve }]}
            nowS={question.timeS}
          />
        </figure>
      )}
    </section>
  );
}
