import { useId, useState, type KeyboardEvent, type PointerEvent } from 'react';
import type { CurePrediction } from '../../core/cure/predictCure';
import { stagesOnDial, type Dwell, type OvenProgram } from '../../core/cure/ovenProgram';
import { Problem } from '../../core/problem';
import { stageTable, type OvenStageInput } from '../../steps/inputs/program';
import { hoursMinutes } from '../../steps/cure/say';
import { HeatCurves, type ChartScales, type ChartSpan } from './HeatCurves';
import {
  draggedTo,
  dwellWords,
  isSameStage,
  movedBy,
  nearestOnPlot,
  withRoom,
  type MovedStages,
} from './programHandles';

export interface ProgramChartProps {
  readonly program: OvenProgram;
  readonly stages: readonly OvenStageInput[];
  readonly prediction: CurePrediction | null;
  readonly disabled: boolean;
  /** While a handle is dragged; null when the drag was given up. */
  readonly onDraft: (stages: OvenStageInput[] | null) => void;
  /** A finished move: one step of undo. */
  readonly onChange: (stages: OvenStageInput[]) => void;
}

/** A drag as it began; the chart keeps its scales until it ends, or it would run away under the finger. */
interface Drag {
  readonly pointerId: number;
  readonly index: number;
  readonly span: ChartSpan;
  readonly stages: readonly OvenStageInput[];
  readonly program: OvenProgram;
  readonly grabbedPx: readonly [number, number];
  readonly handlePx: readonly [number, number];
  /** A direction counts once it was meant; until then a trembling hand changes nothing. */
  readonly meant: { readonly time: boolean; readonly temperature: boolean };
  readonly moved: OvenStageInput[] | null;
}

const meantPx = 6;

/** Arrow keys move by one step, with Shift along the time and Page keys along the temperature by many. */
const keyMoves: Readonly<Record<string, { kelvins?: number; minutes?: number; shiftMinutes?: number }>> = {
  ArrowUp: { kelvins: 1 },
  ArrowDown: { kelvins: -1 },
  PageUp: { kelvins: 10 },
  PageDown: { kelvins: -10 },
  ArrowRight: { minutes: 5, shiftMinutes: 30 },
  ArrowLeft: { minutes: -5, shiftMinutes: -30 },
};

/** The oven program on its chart; a ring at the end of each dwell moves its temperature and its length. */
export function ProgramChart(props: ProgramChartProps) {
  const { program, stages, prediction, disabled, onDraft, onChange } = props;
  const helpId = useId();
  const [drag, setDrag] = useState<Drag | null>(null);
  const [told, setTold] = useState<{ readonly index: number; readonly stoppedBy: string | null } | null>(
    null,
  );
  const dwells = disabled ? [] : dwellsOf(program);

  const takeUp = (index: number, { stages: moved, stoppedBy }: MovedStages) => {
    setTold({ index, stoppedBy });
    return moved;
  };
  const commit = (index: number, before: readonly OvenStageInput[], after: OvenStageInput[]) => {
    if (!isSameStage(before[index]!, after[index]!)) onChange(after);
  };
  const giveUp = () => {
    setDrag(null);
    onDraft(null);
  };
  const onPointerDown =
    (index: number, dwell: Dwell, scales: ChartScales) => (event: PointerEvent<HTMLElement>) => {
      if (event.button !== 0 || drag !== null) return;
      event.currentTarget.setPointerCapture(event.pointerId);
      setTold({ index, stoppedBy: null });
      setDrag({
        pointerId: event.pointerId,
        index,
        span: scales.span,
        stages,
        program,
        grabbedPx: [event.clientX, event.clientY],
        handlePx: [scales.timePx(dwell.untilS), scales.temperaturePx(dwell.targetC)],
        meant: { time: false, temperature: false },
        moved: null,
      });
    };
  const onPointerMove = (scales: ChartScales) => (event: PointerEvent<HTMLElement>) => {
    if (drag?.pointerId !== event.pointerId) return;
    const [dx, dy] = [event.clientX - drag.grabbedPx[0], event.clientY - drag.grabbedPx[1]];
    const meant = {
      time: drag.meant.time || Math.abs(dx) >= meantPx,
      temperature: drag.meant.temperature || Math.abs(dy) >= meantPx,
    };
    if (!meant.time && !meant.temperature) return;
    const { atPx, isOutside } = nearestOnPlot(
      [drag.handlePx[0] + (meant.time ? dx : 0), drag.handlePx[1] + (meant.temperature ? dy : 0)],
      scales.plot,
    );
    const { stages: dragged, stoppedBy } = draggedTo(drag.program, drag.stages, drag.index, {
      timeS: meant.time ? scales.timeAtS(atPx[0]) : null,
      temperatureC: meant.temperature ? scales.temperatureAtC(atPx[1]) : null,
    });
    const moved = takeUp(drag.index, {
      stages: dragged,
      stoppedBy: stoppedBy ?? (isOutside ? 'the chart ends here, let go and drag on' : null),
    });
    setDrag({ ...drag, meant, moved });
    onDraft(moved);
  };
  const onPointerUp = (event: PointerEvent<HTMLElement>) => {
    if (drag?.pointerId !== event.pointerId) return;
    giveUp();
    setTold({ index: drag.index, stoppedBy: null });
    if (drag.moved !== null) commit(drag.index, drag.stages, drag.moved);
  };
  const onPointerCancel = (event: PointerEvent<HTMLElement>) => {
    if (drag?.pointerId === event.pointerId) giveUp();
  };
  const onKeyDown = (index: number) => (event: KeyboardEvent<HTMLElement>) => {
    if (event.key === 'Escape' && drag !== null) giveUp();
    const move = event.altKey || event.ctrlKey || event.metaKey ? undefined : keyMoves[event.key];
    if (move === undefined || drag !== null) return;
    event.preventDefault();
    const { kelvins, minutes, shiftMinutes } = move;
    const moved = movedBy(stages, index, {
      ...(kelvins !== undefined && { kelvins }),
      ...(minutes !== undefined && { minutes: event.shiftKey ? (shiftMinutes ?? minutes) : minutes }),
    });
    commit(index, stages, takeUp(index, moved));
  };

  const words = (index: number) => {
    const stage = stages[index];
    if (stage === undefined) return '';
    const stopped = told?.index === index && told.stoppedBy !== null ? `; ${told.stoppedBy}` : '';
    return `${dwellWords(index, stage)}${stopped}`;
  };
  return (
    <>
      <HeatCurves
        program={program}
        prediction={prediction}
        {...(!disabled && { spanFor: (needed) => drag?.span ?? withRoom(needed) })}
        overlay={(scales) =>
          dwells.map((dwell, index) => {
            const wantedPx = [scales.timePx(dwell.untilS), scales.temperaturePx(dwell.targetC)] as const;
            const { atPx, isOutside } = nearestOnPlot(wantedPx, scales.plot);
            // Pushed off the chart by the dwell that is dragged: back once the axes follow.
            if (isOutside && index !== drag?.index) return null;
            return (
              <div
                key={index}
                className="program-handle"
                style={{ left: atPx[0], top: atPx[1] }}
                role="slider"
                tabIndex={0}
                aria-label={`End of dwell ${index + 1}`}
                aria-describedby={helpId}
                aria-valuenow={dwell.targetC}
                aria-valuemin={stageTable.targetC.min}
                aria-valuemax={stageTable.targetC.max}
                aria-valuetext={`${words(index)}, ends at ${hoursMinutes(dwell.untilS)}`}
                onPointerDown={onPointerDown(index, dwell, scales)}
                onPointerMove={onPointerMove(scales)}
                onPointerUp={onPointerUp}
                onPointerCancel={onPointerCancel}
                onKeyDown={onKeyDown(index)}
                onFocus={() => setTold({ index, stoppedBy: null })}
                onBlur={() => setTold(null)}
              />
            );
          })
        }
      />
      {dwells.length === 0 ? null : (
        <div className="screen-only">
          <p>
            {told === null
              ? `The program ends at ${hoursMinutes(dwells.at(-1)?.untilS ?? 0)}.`
              : `${words(told.index)}.`}
          </p>
          <p id={helpId} className="chart-note">
            Drag a ring to move the end of its dwell, or use the arrow keys: up and down 1 °C (Page keys 10),
            left and right 5 min (with Shift 30).
          </p>
        </div>
      )}
    </>
  );
}

/** None for a program that has no dwell to draw; the verdict says why. */
function dwellsOf(program: OvenProgram): readonly Dwell[] {
  try {
    return stagesOnDial(program).dwells;
  } catch (error) {
    if (error instanceof Problem) return [];
    throw error;
  }
}
