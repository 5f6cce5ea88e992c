import { useState } from 'react';
import type { BestPull } from '../../core/mesh/bestPull';
import type { Vec3 } from '../../core/mesh/types';
import { formatNumber } from '../../core/units/formatNumber';
import { lengthUnitNames } from '../../core/units/length';
import type { SelfTouching } from '../../pipeline/told';
import { partTable, type PartInputs } from '../../steps/inputs/part';
import { Button } from '../../ui/Button';
import { ChoiceField } from '../../ui/ChoiceField';
import { FigureRow } from '../../ui/FigureRow';
import { NumberField } from '../../ui/NumberField';
import { SectionHead } from '../../ui/SectionHead';
import { useKeyedState } from '../../ui/useKeyedState';
import type { BenchControl } from '../benchControl';
import type { Measuring } from '../measuring/useMeasured';
import { Sheet } from '../Sheet';
import type { SheetProps } from '../sheetProps';
import { BodyChoice } from './BodyChoice';
import { HealthTable } from './HealthTable';
import { PatternFile } from './PatternFile';
import { BestPullNote } from './BestPullNote';
import { PullChoiceRow } from './PullChoiceRow';
import { RightWayUpQuestion } from './RightWayUpQuestion';
import { SolidPatternRows } from './SolidPatternRows';

export interface PartSheetProps extends SheetProps {
  readonly title: string;
  readonly question: string;
  readonly measuring: Measuring;
  readonly bench: BenchControl;
  readonly onImportFile: (file: File) => void;
}

/** Told elsewhere on the sheet: the scale under "Given", the counts in the table of findings with their meaning. */
const toldElsewhere = new Set([
  'part.scale',
  'part.openEdges',
  'part.crowdedEdges',
  'part.flippedFacets',
  'part.degenerateFacets',
  'part.duplicateFacets',
  'part.selfTouchingFacets',
]);

/** No caliper and no print sees less. */
const unseenShiftMm = 1e-3;

/** Is this model sound, the right size, the right way up? */
export function PartSheet(props: PartSheetProps) {
  const { context, report, readOnly, change, measuring, bench } = props;
  const { part, plies } = context.inputs;
  const { found, reply, shape } = measuring;
  const { measured } = found;
  const [best, setBest] = useKeyedState<BestPull | null>(context.pattern?.meshKey, () => null);
  const [selfTouching, setSelfTouching] = useState<{ of: object; found: SelfTouching } | null>(null);
  const setPart = (partChange: Partial<PartInputs>) => change('part', partChange);
  const off = readOnly || context.pattern === null;
  const figures = report.figures.filter(
    ({ id, value }) =>
      !toldElsewhere.has(id) &&
      !(id === 'part.packErrorMm' && typeof value === 'number' && value < unseenShiftMm) &&
      !(id === 'part.nominalWallMm' && part.nominalWall === 'model'),
  );

  const setPull = (pull: Vec3) => setPart({ pull: [...pull], rightWayUp: 'settled' });
  const findBestPull = async () => {
    const tried = await measuring.desk.run('trying pull directions', 'best pull', null);
    if (tried === null) return;
    setBest(tried);
    setPull(tried.pull);
  };
  const findSelfTouching = async () => {
    if (reply === null) return;
    const touching = await measuring.desk.run(
      'looking for facets that cut through others',
      'self touching',
      null,
    );
    if (touching !== null) setSelfTouching({ of: reply, found: touching });
  };
  const pick = () =>
    bench.pickNormal(
      bench.picking
        ? null
        : (normal: Vec3) => {
            setPull(normal);
          },
    );

  return (
    <Sheet
      title={props.title}
      question={props.question}
      report={report}
      before={
        <>
          <PatternFile
            pattern={context.pattern}
            problem={measuring.importProblem}
            disabled={readOnly}
            onFile={props.onImportFile}
          />
          <RightWayUpQuestion
            part={part}
            hasPattern={context.pattern !== null}
            desk={measuring.desk}
            disabled={readOnly}
            onPull={setPull}
          />
        </>
      }
    >
      {context.pattern ? (
        <section aria-label="Given">
          <SectionHead title="Given" />
          <UnitRow part={part} shape={shape} disabled={off} setPart={setPart} />
          <NumberField
            spec={partTable.scale}
            value={part.scale}
            note={shape ? `size with it: ${boxText(shape.boxMinMm, shape.boxMaxMm)}` : undefined}
            disabled={off}
            onChange={(scale) => {
              if (scale !== null) setPart({ scale });
            }}
          />
          <PullChoiceRow
            pull={part.pull}
            disabled={off}
            picking={bench.picking}
            onPull={setPull}
            onPick={pick}
            onFindBest={() => void findBestPull()}
          />
          {best === null ? null : (
            <BestPullNote best={best} pull={part.pull} disabled={off} onPull={setPull} />
          )}
          {measured ? (
            <BodyChoice
              bodies={measured.health.bodies}
              body={part.body}
              disabled={off}
              onChange={(body) => setPart({ body })}
            />
          ) : null}
          {measured && measured.health.flippedFacets > 0 ? (
            <ChoiceField
              label={partTable.winding.label}
              meaning={partTable.winding.meaning}
              choices={partTable.winding.choices}
              value={part.winding}
              disabled={off}
              onChange={(winding) => setPart({ winding })}
            />
          ) : null}
          {measured?.summary.solid || part.nominalWall === 'print' ? (
            <SolidPatternRows
              part={part}
              lineWidthMm={plies.lineWidthMm}
              disabled={off}
              onPart={setPart}
              onLineWidth={(lineWidthMm) => change('plies', { lineWidthMm })}
            />
          ) : null}
        </section>
      ) : null}
      {context.pattern ? (
        <section aria-label="Worked out">
          <SectionHead title="Worked out" remark={measured ? undefined : 'being measured'} />
          {figures.map((figure) => (
            <FigureRow key={figure.id} figure={figure} />
          ))}
        </section>
      ) : null}
      {reply && measured ? (
        <section aria-label="Health of the mesh">
          <SectionHead title="Health of the mesh" />
          <HealthTable
            reply={reply}
            degenerateFacets={context.pattern?.degenerateFacets ?? 0}
            selfTouching={selfTouching?.of === reply ? selfTouching.found : null}
            bench={bench}
            onFindSelfTouching={() => void findSelfTouching()}
          />
        </section>
      ) : null}
    </Sheet>
  );
}

function boxText(boxMinMm: Vec3, boxMaxMm: Vec3): string {
  const size = [0, 1, 2].map((axis) => formatNumber((boxMaxMm[axis] ?? 0) - (boxMinMm[axis] ?? 0), 1));
  return `${size.join(' × ')} mm`;
}

interface UnitRowProps {
  readonly part: PartInputs;
  readonly shape: Measuring['shape'];
  readonly disabled: boolean;
  readonly setPart: (change: Partial<PartInputs>) => void;
}

/** The unit of the file; while it is not confirmed, the guess with its reason, and a button that takes a doubtful one. */
function UnitRow({ part, shape, disabled, setPart }: UnitRowProps) {
  const guess = shape?.unitGuess;
  const told = part.unit === 'unconfirmed' && guess !== undefined;
  return (
    <>
      <ChoiceField
        label={partTable.unit.label}
        meaning={partTable.unit.meaning}
        choices={partTable.unit.choices}
        value={part.unit}
        note={told && guess.sure ? `${lengthUnitNames[guess.unit]}: ${guess.reason}` : undefined}
        disabled={disabled}
        onChange={(unit) => setPart({ unit })}
      />
      {told && !guess.sure ? (
        <div className="unit-question">
          <p>
            Taken as <strong>{lengthUnitNames[guess.unit]}</strong>: {guess.reason}
          </p>
          <Button disabled={disabled} onClick={() => setPart({ unit: guess.unit })}>
            Yes, {lengthUnitNames[guess.unit]}
          </Button>
        </div>
      ) : null}
    </>
  );
}
