import { wallBand } from '../../steps/band';
import { wallInUse } from '../../steps/wallInUse';
import { wallsSpecs } from '../../steps/walls/inputs';
import { ChoiceField } from '../../ui/ChoiceField';
import { Disclosure } from '../../ui/Disclosure';
import { FigureRow } from '../../ui/FigureRow';
import { NumberField } from '../../ui/NumberField';
import { SectionHead } from '../../ui/SectionHead';
import { Sheet } from '../Sheet';
import type { SheetProps } from '../sheetProps';
import { WallCharts } from './WallCharts';

export interface WallsSheetProps extends SheetProps {
  readonly title: string;
  readonly question: string;
}

/** Judgements of common practice: they stand, but seldom need a change. */
const practice = [
  'goVoidPercent',
  'lookVoidPercent',
  'badVoidPercent',
  'wovenGoFraction',
  'wovenLookFraction',
  'alignedGoFraction',
  'alignedLookFraction',
  'leastOuterRadiusMm',
  'leastInnerRadiusMm',
] as const;
const asked = ['leastDraftDeg', 'wrongShareAllowedPercent'] as const;

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
  const number = (name: (typeof asked)[number] | (typeof practice)[number] | 'filmMm') => (
    <NumberField
      key={name}
      spec={wallsSpecs[`walls.${name}`]}
      value={walls[name]}
      disabled={readOnly}
      onChange={(value) => {
        if (value !== null) change('walls', { [name]: value });
      }}
    />
  );
  return (
    <Sheet title={title} question={question} report={report}>
      <section aria-label="Given">
        <SectionHead title="Given" />
        <NumberField
          spec={wallsSpecs['walls.toleranceMm']}
          value={walls.toleranceMm}
          emptyWord="usual"
          disabled={readOnly}
          onChange={(toleranceMm) => change('walls', { toleranceMm })}
        />
        <ChoiceField
          label={wallsSpecs['walls.filmFaces'].label}
          meaning={wallsSpecs['walls.filmFaces'].meaning}
          choices={wallsSpecs['walls.filmFaces'].choices}
          value={walls.filmFaces}
          disabled={readOnly}
          onChange={(filmFaces) => change('walls', { filmFaces })}
        />
        {walls.filmFaces === 'none' ? null : (
          <>
            {number('filmMm')}
            <NumberField
              spec={wallsSpecs['walls.filmLimitC']}
              value={walls.filmLimitC > 0 ? walls.filmLimitC : null}
              emptyWord="not read"
              disabled={readOnly}
              onChange={(filmLimitC) => change('walls', { filmLimitC: filmLimitC ?? 0 })}
            />
          </>
        )}
        {asked.map(number)}
        <ChoiceField
          label={wallsSpecs['walls.laidIn'].label}
          meaning={wallsSpecs['walls.laidIn'].meaning}
          choices={wallsSpecs['walls.laidIn'].choices}
          value={walls.laidIn}
          disabled={readOnly}
          onChange={(laidIn) => change('walls', { laidIn })}
        />
        <ChoiceField
          label={wallsSpecs['walls.measure'].label}
          meaning={wallsSpecs['walls.measure'].meaning}
          choices={wallsSpecs['walls.measure'].choices}
          value={walls.measure}
          disabled={readOnly}
          onChange={(measure) => change('walls', { measure })}
        />
        <Disclosure title="Limits" remark="common practice: voids, fiber, radii">
          {practice.map(number)}
        </Disclosure>
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
