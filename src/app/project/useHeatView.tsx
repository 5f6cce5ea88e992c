import { useEffect, useMemo, useRef, useState } from 'react';
import { highestC, valueAt } from '../../core/cure/curve';
import type { DehydrationTreatment } from '../../core/cure/dehydration';
import type { CurePrediction } from '../../core/cure/predictCure';
import type { Vec3 } from '../../core/mesh/types';
import type { HeatCutQuestion, HeatCutReply } from '../../jobs/protocol';
import { HeatCutControls, type AnsweredCut } from '../../sheets/cure/HeatCutControls';
import type { CureForecast } from '../../sheets/cure/useCurePrediction';
import type { MeasuringDesk } from '../../sheets/measuring/measuringDesk';
import { programOf } from '../../steps/cure/cureChoicesOf';
import type { ProjectInputs } from '../../steps/inputs';
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
): HeatOnBench | null {
  const prediction = isShown ? forecast.prediction : null;
  const [asked, setAsked] = useState<Omit<HeatCutQuestion, 'timeS'> & { readonly timeS: number | null }>({
    treatment: 'vapor-held',
    axis: 1,
    atMm: null,
    timeS: null,
  });
  const [answer, setAnswer] = useKeyedState<AnsweredCut | null>(prediction, () => null);
  const reply = answer?.reply ?? null;
  const question = useMemo<HeatCutQuestion>(
    () => ({ ...asked, timeS: asked.timeS ?? mostBehindS(prediction, asked.treatment) }),
    [asked, prediction],
  );
  const take = useRef(setAnswer);
  useEffect(() => {
    take.current = setAnswer;
  });
  useEffect(() => {
    if (prediction === null) return undefined;
    let wanted = true;
    void desk.ask(desk.client.heatCut(question)).then((cut) => {
      if (wanted && cut !== null) take.current({ question, reply: cut });
    });
    return () => {
      wanted = false;
    };
  }, [desk, prediction, question]);

  const [chosenMm, choosePoint] = useState<Vec3 | null>(null);
  const frameKey = reply === null ? '' : JSON.stringify(reply.frame);
  const coldestMm = useMemo(
    () => (frameKey === '' ? null : coldestInPart(prediction, asked.treatment, frameKey)),
    [prediction, asked.treatment, frameKey],
  );
  const point = useHeatAt(desk, prediction, asked.treatment, chosenMm ?? coldestMm);

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
          onQuestion={setAsked}
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

/** When the laminate lags furthest behind the air while the oven heats: then a cut has most to show. */
function mostBehindS(prediction: CurePrediction | null, treatment: DehydrationTreatment): number {
  const curve = prediction?.runs.find((run) => run.treatment === treatment)?.coldest.curve;
  if (prediction === null || curve === undefined) return 0;
  let [mostK, atS] = [-Infinity, 0];
  curve.timesS.forEach((timeS, i) => {
    const behindK = valueAt(prediction.air, timeS) - curve.valuesC[i]!;
    if (timeS <= prediction.heatedS && behindK > mostK) [mostK, atS] = [behindK, timeS];
  });
  return atS;
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
