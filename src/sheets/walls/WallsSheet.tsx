import { wallBand } from '../../steps/shared/band';
import { wallInUse } from '../../steps/shared/wallInUse';
import { wallsTable, type WallsInputs } from '../../steps/inputs/walls';
import { FigureRow } from '../../ui/FigureRow';
import { NumberField } from '../../ui/NumberField';
import { SectionHead } from '../../ui/SectionHead';
import { InputFold, InputRows } from '../InputRows';
import { Sheet } from '../Sheet';
import type { SheetProps } from '../sheetProps';
import { WallCharts } from './WallCharts';

export interface WallsSheetProps extends SheetProps {
  readonly title: string;
  readonly question: string;
}

const isBand = (id: string) => id === 'walls.bandLowMm' || id === 'walls.bandHighMm';
const isShare = (id: string) => /^walls\.(inBand|over|under)Percent$/u.test(id);

/** Is the wall even, and will stone let go of it? */
export function WallsSheet({ title, question, context, report, readOnly, change }: WallsSheetProps) {
  const { walls } = context.inputs;
  const band = wallBand(context.inputs);
  const wall = wallInUse(context);
  const figures = (wanted: (id: string) => boolean) =>
    report.figures
      .filter(({ id }) => wanted(id))
      .map((figure) => <FigureRow key={figure.id} figure={figure} />);
  const rows = {
    table: wallsTable,
    values: walls,
    disabled: readOnly,
    onChange: (inputs: Partial<WallsInputs>) => change('walls', inputs),
  };
  const filmLimit = (
    <NumberField
      spec={wallsTable.filmLimitC}
      value={walls.filmLimitC > 0 ? walls.filmLimitC : null}
      emptyWord="not read"
      disabled={readOnly}
      onChange={(filmLimitC) => change('walls', { filmLimitC: filmLimitC ?? 0 })}
    />
  );
  return (
    <Sheet title={title} question={question} report={report}>
      <section aria-label="Given">
        <SectionHead title="Given" />
        <InputRows
          {...rows}
          emptyWord="usual"
          own={walls.filmFaces === 'none' ? { filmMm: null, filmLimitC: null } : { filmLimitC: filmLimit }}
        />
        <InputFold fold="Limits" remark="common practice: voids, fiber, radii" {...rows} />
      </section>
      <section aria-label="Worked out">
        <SectionHead title="Worked out" remark={wall.known ? wall.how : undefined} />
        {figures(isBand)}
        {figures(isShare)}
        {wall.known && band !== null ? (
          <WallCharts
            context={context}
            shares={wall.shares(band.goLowMm, band.goHighMm)}
            band={band}
            nominal={wall.nominal}
          />
        ) : null}
        {figures((id) => !isBand(id) && !isShare(id))}
      </section>
    </Sheet>
  );
}
