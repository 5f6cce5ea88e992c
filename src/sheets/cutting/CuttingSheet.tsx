import { useState } from 'react';
import { formatNumber } from '../../core/units/formatNumber';
import { cuttingTable, type CuttingInputs } from '../../steps/inputs/cutting';
import { Button } from '../../ui/Button';
import { Note } from '../../ui/Note';
import { NumberField } from '../../ui/NumberField';
import { SectionHead } from '../../ui/SectionHead';
import { FigureGroups, type FigureGroup } from '../FigureGroups';
import { InputFold, InputRows } from '../InputRows';
import { Sheet } from '../Sheet';
import type { SheetProps } from '../sheetProps';
import type { CuttingControl } from './cuttingControl';
import { FlatPiece } from './FlatPiece';
import { LaidPlan } from './LaidPlan';
import { NestedCloth } from './NestedCloth';
import { PieceTable } from './PieceTable';
import './cutting.css';

export interface CuttingSheetProps extends SheetProps {
  readonly title: string;
  readonly question: string;
  readonly control: CuttingControl;
}

const groups: readonly FigureGroup[] = [
  {
    title: 'Cloth and roll',
    ids: [
      'cutting.thickestSheared',
      'cutting.dartsTogetherShare',
      'cutting.clothAreaCm2',
      'cutting.piecesMassG',
      'cutting.rollLengthMm',
      'cutting.wasteShare',
      'cutting.clothMassG',
    ],
    shown: ['cutting.rollLengthMm', 'cutting.clothMassG'],
  },
];

/** What do I cut? Each ply laid on its own face, and the flat pieces. */
export function CuttingSheet(props: CuttingSheetProps) {
  const { title, question, context, report, control } = props;
  const { cut, why, isBusy, isOutdated } = control;
  return (
    <Sheet title={title} question={question} report={report}>
      <CuttingGiven {...props} />
      <div className="button-row">
        <Button
          kind={cut === null ? 'main' : 'plain'}
          disabled={context.pattern === null || isBusy}
          onClick={control.workOut}
        >
          Work out the pieces
        </Button>
        {why === '' && cut === null ? <span className="quiet">It takes some seconds.</span> : null}
      </div>
      {why === '' ? null : <Note problem>{why}</Note>}
      {isOutdated ? (
        <Note>The last pieces belong to other inputs or to another part. Work them out again.</Note>
      ) : null}
      {cut === null ? null : <CutPieces {...props} cut={cut} />}
    </Sheet>
  );
}

function CutPieces(props: CuttingSheetProps & { readonly cut: NonNullable<CuttingControl['cut']> }) {
  const { report, readOnly, change } = props;
  const { cut, nests } = props.cut;
  const [picked, setPicked] = useState('');
  const piece = cut.pieces.find(({ name }) => name === picked) ?? cut.pieces[0];
  const ply = cut.plies.find((one) => one.ply === piece?.ply);
  if (piece === undefined || ply === undefined) return null;
  return (
    <>
      <section aria-label="The pieces">
        <SectionHead
          title="The pieces"
          remark={`laid from ${formatNumber(cut.start.alongMm, 1)}, ${formatNumber(cut.start.acrossMm, 1)} mm off the middle`}
        />
        <FigureGroups figures={report.figures} groups={groups} />
        <div className="cutting-views">
          <FlatPiece piece={piece} ply={ply} />
          <LaidPlan
            cut={cut}
            ply={ply}
            disabled={readOnly}
            onStart={({ alongMm, acrossMm }) =>
              change('cutting', { startAlongMm: alongMm, startAcrossMm: acrossMm })
            }
          />
        </div>
        <PieceTable pieces={cut.pieces} picked={piece.name} onPick={setPicked} />
      </section>
      <section aria-label="On the roll">
        <SectionHead title="On the roll" remark="each piece where it is cut" />
        {typeof nests === 'string' ? (
          <Note>{nests}</Note>
        ) : (
          nests.map((nest) => (
            <NestedCloth key={nest.roll.fabric} nest={nest} picked={piece.name} onPick={setPicked} />
          ))
        )}
      </section>
      {typeof nests === 'string' ? null : <Templates {...props} />}
    </>
  );
}

function Templates({
  context,
  readOnly,
  change,
  control,
  cut: { noPaper },
}: CuttingSheetProps & { readonly cut: NonNullable<CuttingControl['cut']> }) {
  return (
    <section aria-label="Templates">
      <SectionHead title="Templates" remark="pieces at true size" />
      <InputRows
        table={cuttingTable}
        values={context.inputs.cutting}
        fields={['paper']}
        disabled={readOnly}
        onChange={(inputs) => change('cutting', inputs)}
      />
      <div className="button-row">
        <Button kind="main" disabled={control.isBusy} onClick={() => control.save('pdf')}>
          Save PDF to print
        </Button>
        <Button disabled={control.isBusy} onClick={() => control.save('svg')}>
          Save SVG
        </Button>
        <Button disabled={control.isBusy} onClick={() => control.save('dxf')}>
          Save DXF
        </Button>
      </div>
      {noPaper === '' ? null : <Note problem>{noPaper}</Note>}
      <p className="quiet">
        Print at 100 %, and measure the bar of 100 mm before you cut. SVG and DXF hold the whole nest in mm,
        for a knife plotter.
      </p>
    </section>
  );
}

function CuttingGiven({ context, readOnly, change, control: { cut } }: CuttingSheetProps) {
  const { cutting } = context.inputs;
  const onChange = (inputs: Partial<CuttingInputs>) => change('cutting', inputs);
  const rows = { table: cuttingTable, values: cutting, disabled: readOnly, onChange };
  const start = (field: 'startAlongMm' | 'startAcrossMm', proposed: number | undefined) => (
    <NumberField
      spec={cuttingTable[field]}
      value={cutting[field]}
      emptyWord={proposed === undefined ? '–' : formatNumber(proposed, 1)}
      {...(cutting[field] === null ? { note: 'empty: where the cloth shears least' } : {})}
      disabled={readOnly}
      onChange={(value) => onChange({ [field]: value })}
    />
  );
  return (
    <section aria-label="Given">
      <SectionHead title="Given" />
      <InputRows
        {...rows}
        own={{
          startAlongMm: start('startAlongMm', cut?.cut.proposed.alongMm),
          startAcrossMm: start('startAcrossMm', cut?.cut.proposed.acrossMm),
          // Asked where it is used.
          paper: null,
          seamAboveRimMm: (
            <NumberField
              spec={cuttingTable.seamAboveRimMm}
              value={cutting.seamAboveRimMm}
              emptyWord="–"
              {...(cutting.seamAboveRimMm === null ? { note: 'empty: each ply in one' } : {})}
              disabled={readOnly}
              onChange={(seamAboveRimMm) => onChange({ seamAboveRimMm })}
            />
          ),
        }}
      />
      <InputFold {...rows} fold="Nest" remark="gap and turns; width of the roll on its card" />
      <InputFold {...rows} fold="More" remark="net" />
    </section>
  );
}
