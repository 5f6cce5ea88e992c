import type { CurePrediction } from '../../core/cure/predictCure';
import type { CureInputs } from '../../steps/inputs/cure';
import { cureChoicesOf } from '../../steps/cure/cureChoicesOf';
import { waterLeft } from '../../steps/stone/waterLeft';
import { resolveStack } from '../../steps/shared/stack';
import { processOf, programOf } from '../../steps/shared/process';
import { Button } from '../../ui/Button';
import { FigureRow } from '../../ui/FigureRow';
import { Note } from '../../ui/Note';
import { ProgressBar } from '../../ui/ProgressBar';
import { SectionHead } from '../../ui/SectionHead';
import { Sheet } from '../Sheet';
import type { SheetProps } from '../sheetProps';
import { CureGiven } from './CureGiven';
import { BandTable } from './DwellTable';
import type { HeatMoment } from './heatMoment';
import { HeatSliceView } from './HeatSliceView';
import { RunPanel, type RunPanelProps } from './run/RunPanel';
import { ProgramSection } from './ProgramSection';
import { SideBySide, type SideBySideProps } from './SideBySide';
import { SupplierCures } from './SupplierCures';
import type { CureForecast } from './forecast';
import './cure.css';

export interface CureSheetProps extends SheetProps {
  readonly title: string;
  readonly question: string;
  readonly forecast: CureForecast;
  readonly moment: HeatMoment;
  readonly onMoment: (moment: HeatMoment) => void;
  readonly run: RunPanelProps['control'];
  readonly onFit: RunPanelProps['onFit'];
  readonly onCompare: SideBySideProps['onCompare'];
}

const bricksOf = ({ voxelMm, stage }: CurePrediction) =>
  `cells of ${voxelMm} mm${stage === 'coarse' ? ', coarse' : ''}`;

/** Will the laminate in the middle of the stone really cure? */
export function CureSheet(props: CureSheetProps) {
  const { title, question, context, report, readOnly, change, forecast } = props;
  const { cure } = context.inputs;
  const setCure = (cureChange: Partial<CureInputs>) => change('cure', cureChange);
  const shown = forecast.lastPrediction;
  const isOfBefore = shown !== null && forecast.prediction === null;
  const program = programOf(context.inputs);
  const choices = cureChoicesOf(context.inputs, context.mold);
  const stack = resolveStack(context.inputs.plies);
  return (
    <Sheet
      title={title}
      question={question}
      report={report}
      before={
        forecast.stopped ? (
          <Note>
            The oven run is not worked out. <Button onClick={forecast.again}>Work it out</Button>
          </Note>
        ) : forecast.progress === null ? null : (
          <ProgressBar {...forecast.progress} onCancel={forecast.cancel} />
        )
      }
    >
      <ProgramSection
        key={readOnly ? 'shown' : 'edited'}
        inputs={context.inputs}
        prediction={shown}
        isOfBefore={isOfBefore}
        disabled={readOnly}
        onChange={(stages) => setCure({ stages })}
      />
      <section aria-label="Supplier's cures">
        <SectionHead title="Supplier's cures" remark="at the laminate" />
        <SupplierCures
          cures={cure.supplierCures}
          disabled={readOnly}
          onChange={(supplierCures) => setCure({ supplierCures })}
        />
      </section>
      <section aria-label="Given">
        <SectionHead title="Given" />
        <CureGiven
          cure={cure}
          process={processOf(context.inputs)}
          water={waterLeft(context.inputs, context.mold)}
          disabled={readOnly}
          onChange={setCure}
          fromShelf={props.fromShelf}
        />
      </section>
      <section aria-label="Worked out">
        <SectionHead title="Worked out" remark={forecast.prediction && bricksOf(forecast.prediction)} />
        {shown === null ? null : (
          <div className={isOfBefore ? 'of-before' : undefined}>
            {isOfBefore ? <p className="quiet">Of the values before:</p> : null}
            <BandTable prediction={shown} />
          </div>
        )}
        {report.figures.map((figure) => (
          <FigureRow key={figure.id} figure={figure} />
        ))}
      </section>
      <SideBySide
        choices={choices.known && shown !== null ? choices.value : null}
        disabled={readOnly}
        wallMm={stack.known ? stack.total.curedMm : null}
        onCompare={props.onCompare}
        onTake={(stages) => setCure({ stages })}
      />
      <RunPanel
        control={props.run}
        program={program}
        prediction={shown}
        cure={cure}
        disabled={readOnly}
        onChange={setCure}
        onFit={props.onFit}
      />
      {shown === null ? null : (
        <section aria-label="Cut through the mold" className={isOfBefore ? 'of-before' : undefined}>
          <SectionHead
            title="Cut through the mold"
            remark={isOfBefore ? 'of the values before' : 'along the pull'}
          />
          <HeatSliceView prediction={shown} moment={props.moment} onMoment={props.onMoment} />
        </section>
      )}
    </Sheet>
  );
}
