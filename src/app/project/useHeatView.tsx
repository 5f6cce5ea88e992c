import { useEffect, useMemo, useRef, useState } from 'react';
import { highestC } from '../../core/cure/curve';
import type { DehydrationTreatment } from '../../core/cure/dehydration';
import type { CurePrediction } from '../../core/cure/predictCure';
import type { Vec3 } from '../../core/mesh/types';
import type { HeatCutQuestion, HeatCutReply } from '../../pipeline/told';
import { HeatCutControls, type AnsweredCut } from '../../sheets/cure/HeatCutControls';
import { momentS, type HeatMoment } from '../../sheets/cure/heatMoment';
import type { CureForecast } from '../../sheets/cure/forecast';
import type { MeasuringDesk } from '../../sheets/measuring/measuringDesk';
import { programOf } from '../../steps/shared/process';
import type { ProjectInputs } from '../../steps/inputs/project';
import { useKeyedState } from '../../ui/useKeyedState';
import { useHeatAt } from './useHeatAt';
import type { HeatView } from '../../viewer/BenchView';
import {
  cutEnds,
  heatLegend,
  heatScale,
  heatSheet,
  inPart,
  moldBox,
  sightOnSheet,
} from '../../viewer/heatSheet';

export interface HeatOnBench {
  readonly view: HeatView;
  /** A click on the view, as a line of sight. */
  readonly onSight: (originMm: Vec3, direction: Vec3) => void;
}

/**
 * The mold in the oven on the bench view: cut where and when the maker asks. Null while nothing is predicted or another
 * map is shown.
 */
export function useHeatView(
  desk: MeasuringDesk,
  forecast: CureForecast,
  inputs: ProjectInputs,
  isShown: boolean,
  moment: HeatMoment,
  onMoment: (moment: HeatMoment) => void,
): HeatOnBench | null {
  const prediction = isShown ? forecast.prediction : null;
  const [asked, setAsked] = useState<Pick<HeatCutQuestion, 'axis' | 'atMm'>>({ axis: 1, atMm: null });
  const { treatment } = moment;
  const { shownRun } = forecast;
  const [answer, setAnswer] = useKeyedState<AnsweredCut | null>(prediction, () => null);
  const reply = answer?.reply ?? null;
  const question = useMemo<HeatCutQuestion>(
    () => ({ ...asked, treatment: moment.treatment, timeS: momentS(prediction, moment) }),
    [asked, moment, prediction],
  );
  const take = useRef(setAnswer);
  useEffect(() => {
    take.current = setAnswer;
  });
  useEffect(() => {
    if (prediction === null) return undefined;
    let wanted = true;
    void desk.ask('heat cut', { ...question, run: shownRun }).then((cut) => {
      if (wanted && cut !== null) take.current({ question, reply: cut });
    });
    return () => {
      wanted = false;
    };
  }, [desk, prediction, shownRun, question]);

  const [chosenMm, choosePoint] = useState<Vec3 | null>(null);
  const frameKey = reply === null ? '' : JSON.stringify(reply.frame);
  const coldestMm = useMemo(
    () => (frameKey === '' ? null : coldestInPart(prediction, treatment, frameKey)),
    [prediction, treatment, frameKey],
  );
  const point = useHeatAt(desk, forecast, isShown, treatment, chosenMm ?? coldestMm);

  const [isOwnScale, setOwnScale] = useState(true);
  const scale = useMemo(() => {
    if (prediction === null) return null;
    if (isOwnScale && reply !== null) {
      const [low, high] = cutEnds(reply.cut);
      return heatScale(low, high, 1);
    }
    const peaks = prediction.runs.map(({ stonePeakC, hottest }) =>
      Math.max(stonePeakC, highestC(hottest.curve)),
    );
    const start = prediction.air.valuesC.reduce((low, celsius) => Math.min(low, celsius), Infinity);
    return heatScale(start, Math.max(...peaks));
  }, [prediction, reply, isOwnScale]);
  const box = useMemo(() => (reply === null ? null : moldBox(reply)), [reply]);
  // By value: another time of the same mold is no reason to fit the view again.
  const boxKey = box === null ? '' : JSON.stringify(box);
  const keptBox = useMemo(
    () => (boxKey === '' ? null : (JSON.parse(boxKey) as NonNullable<typeof box>)),
    [boxKey],
  );
  const sheet = useMemo(
    () => (reply === null || scale === null ? null : heatSheet(reply, scale)),
    [reply, scale],
  );
  if (prediction === null || scale === null) return null;

  return {
    view: {
      drawn: sheet === null || keptBox === null ? null : { sheet, box: keptBox },
      legend: heatLegend(scale),
      pointMm: chosenMm ?? coldestMm,
      controls: (
        <HeatCutControls
          prediction={prediction}
          program={programOf(inputs)}
          question={question}
          answer={answer}
          point={point && { ...point, isColdest: chosenMm === null }}
          onQuestion={({ axis, atMm, treatment: wanted, timeS }) => {
            setAsked({ axis, atMm });
            // Another place is cut at the moment that was shown, chosen or not.
            if (wanted !== treatment || timeS !== question.timeS)
              onMoment({ treatment: wanted, timeS: timeS === question.timeS ? moment.timeS : timeS });
          }}
          onPoint={choosePoint}
          isOwnScale={isOwnScale}
          onOwnScale={setOwnScale}
        />
      ),
    },
    onSight: (originMm, direction) => {
      const met = sheet === null ? null : sightOnSheet(sheet, originMm, direction);
      if (met !== null) choosePoint(inTenths(met));
    },
  };
}

/** Middle of the coldest place's brick in the part's own axes, to the tenth of a millimeter. */
function coldestInPart(
  prediction: CurePrediction | null,
  treatment: DehydrationTreatment,
  frameKey: string,
): Vec3 | null {
  const run = prediction?.runs.find((one) => one.treatment === treatment);
  if (run === undefined) return null;
  const frame = JSON.parse(frameKey) as HeatCutReply['frame'];
  return inTenths(inPart({ frame }, run.coldestAtMm));
}

const inTenths = ([x, y, z]: Vec3): Vec3 => [tenth(x), tenth(y), tenth(z)];
const tenth = (mm: number) => Math.round(10 * mm) / 10;
