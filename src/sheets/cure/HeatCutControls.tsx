import { useId } from 'react';
import { valueAt } from '../../core/cure/curve';
import type { OvenProgram } from '../../core/cure/ovenProgram';
import type { CurePrediction } from '../../core/cure/predictCure';
import type { Vec3 } from '../../core/mesh/types';
import { formatNumber } from '../../core/units/formatNumber';
import type { HeatCutQuestion, HeatCutReply } from '../../pipeline/told';
import { celsius, hoursMinutes, treatmentNames } from '../../steps/cure/say';
import { Button } from '../../ui/Button';
import { ChoiceField } from '../../ui/ChoiceField';
import { heatRange, moldBox } from '../../viewer/heatSheet';
import { HeatPointReadout, type HeatPoint } from './HeatPointReadout';

/** A cut with the question that it answers. */
export interface AnsweredCut {
  readonly question: HeatCutQuestion;
  readonly reply: HeatCutReply;
}

export interface HeatCutControlsProps {
  readonly prediction: CurePrediction;
  readonly program: OvenProgram;
  readonly question: HeatCutQuestion;
  /** Answer to the question, or to the one before it; null while there is none. */
  readonly answer: AnsweredCut | null;
  /** null while it is asked for. */
  readonly point: HeatPoint | null;
  readonly onQuestion: (question: HeatCutQuestion) => void;
  /** null goes back to the coldest place of the laminate. */
  readonly onPoint: (pointMm: Vec3 | null) => void;
  /** Colors from the coldest to the hottest of this cut, not of the whole run. */
  readonly isOwnScale: boolean;
  readonly onOwnScale: (own: boolean) => void;
}

const axes = [
  { axis: 0, name: 'length' },
  { axis: 1, name: 'width' },
  { axis: 2, name: 'the pull' },
] as const;

const rangeWords = (range: readonly [number, number] | null) =>
  range === null ? 'none in this cut' : `${formatNumber(range[0], 0)} to ${celsius(range[1])}`;

/** Which cut of the heated mold is shown, when, and what it reads, in words as well as in colors. */
export function HeatCutControls(props: HeatCutControlsProps) {
  const { prediction, program, question, answer, point, onQuestion } = props;
  const reply = answer?.reply ?? null;
  // What is read belongs together: air and cut are those of the question that was answered.
  const readAtS = answer?.question.timeS ?? question.timeS;
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
      <div className="button-row heat-ways" role="group" aria-label="Cut the mold">
        <span>Across</span>
        {axes.map(({ axis, name }) => (
          <Button
            key={axis}
            aria-label={`across ${name}`}
            aria-pressed={question.axis === axis}
            onClick={() => ask({ axis, atMm: null })}
          >
            {name}
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
      <dl className="heat-readout" aria-live="polite" aria-busy={answer?.question !== question}>
        <div>
          <dt>Air in the oven</dt>
          <dd>{celsius(valueAt(prediction.air, readAtS))}</dd>
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
      {point === null || reply === null ? null : (
        <HeatPointReadout
          point={point}
          box={moldBox(reply)}
          program={program}
          timeS={question.timeS}
          onPoint={props.onPoint}
        />
      )}
    </section>
  );
}
