import { contentTable, fitTable, transmitterTable, type FitInputs } from '../../steps/inputs/fit';
import { startOf } from '../../steps/kit/inputTable';
import { ChoiceField } from '../../ui/ChoiceField';
import { SectionHead } from '../../ui/SectionHead';
import { EntryList } from '../EntryList';
import { FigureGroups, type FigureGroup } from '../FigureGroups';
import { InputFold, InputRows } from '../InputRows';
import { Sheet } from '../Sheet';
import type { SheetProps } from '../sheetProps';
import { RimCurve } from './RimCurve';
import { SplitPlace, type SplitControl } from './SplitPlace';

export interface FitSheetProps extends SheetProps {
  readonly title: string;
  readonly question: string;
  readonly mates: MateOffer;
  readonly splitting: SplitControl;
}

/** Other projects of this enclosure that have a model, and the one that is kept; '' for none. */
export interface MateOffer {
  readonly choices: readonly { readonly value: string; readonly label: string }[];
  readonly chosen: string;
}

const groups: readonly FigureGroup[] = [
  {
    title: 'Sizes and posts',
    ids: ['fit.shiftThatFitsMm', 'fit.ladder', 'fit.posts', 'fit.postGlueMm2'],
    shown: ['fit.posts'],
  },
  {
    title: 'Rims',
    ids: ['fit.rimLengthMm', 'fit.rimMeasuredMm', 'fit.mateScale', 'fit.rimScrapedMm'],
    shown: ['fit.mateScale'],
  },
  {
    title: 'Seam',
    ids: ['fit.gasketMl', 'fit.cartridgePercent', 'fit.squeezedMl', 'fit.screws', 'fit.screwEdgeMm'],
    shown: ['fit.gasketMl'],
  },
  {
    title: 'Tolerances',
    ids: ['fit.stackWorstMm', 'fit.stackRssMm'],
    shown: ['fit.stackWorstMm', 'fit.stackRssMm'],
  },
  { title: 'Radio', ids: ['fit.sheetOhm', 'fit.radioLossDb'], shown: ['fit.radioLossDb'] },
];

/** Do the halves meet, does everything fit, does radio get out? */
export function FitSheet(props: FitSheetProps) {
  const { title, question, context, report, readOnly, change, mates, splitting } = props;
  const { fit } = context.inputs;
  const onChange = (inputs: Partial<FitInputs>) => change('fit', inputs);
  const rows = { table: fitTable, values: fit, disabled: readOnly, onChange };
  const rims = context.fit?.rims ?? null;
  const keep = (projectId: string) => {
    if (projectId === mates.chosen) return;
    const name = mates.choices.find(({ value }) => value === projectId)?.label ?? '';
    onChange({ mate: projectId === '' ? null : { projectId, name } });
  };
  return (
    <Sheet title={title} question={question} report={report}>
      <section aria-label="Given">
        <SectionHead title="Given" />
        <ChoiceField
          label={fitTable.mate.label}
          meaning="The project of the other half, of the same enclosure."
          choices={[{ value: '', label: 'not compared' }, ...mates.choices]}
          value={mates.chosen}
          disabled={readOnly}
          onChange={keep}
        />
        <SplitPlace {...splitting} disabled={readOnly} />
        <InputRows {...rows} />
        <SectionHead title="Contents" />
        <EntryList
          table={contentTable}
          entries={fit.contents}
          newEntry={(id) => ({ ...startOf(contentTable), id })}
          addWords="Add to the contents"
          remarkOf={({ what, lengthMm, widthMm, heightMm }) =>
            `${what}, ${lengthMm} × ${widthMm} × ${heightMm} mm`
          }
          disabled={readOnly}
          onChange={(contents) => onChange({ contents })}
        />
        <SectionHead title="Transmitters" />
        <EntryList
          table={transmitterTable}
          entries={fit.transmitters}
          newEntry={(id) => ({ ...startOf(transmitterTable), id })}
          addWords="Add a transmitter"
          remarkOf={({ frequencyMHz, works }) => `${works}, ${frequencyMHz} MHz`}
          disabled={readOnly}
          onChange={(transmitters) => onChange({ transmitters })}
        />
        <InputFold {...rows} fold="Seam" remark={fit.seam === 'none' ? 'nothing chosen' : fit.seam} />
        <InputFold {...rows} fold="Tolerances, measured rims and sizes" remark="print, posts, ladder" />
        <InputFold {...rows} fold="Shell against radio" remark="conductivity" />
      </section>
      <section aria-label="Worked out">
        <SectionHead title="Worked out" />
        {rims === null ? null : <RimCurve stations={rims.stations} lengthMm={rims.lengthMm} />}
        <FigureGroups figures={report.figures} groups={groups} />
      </section>
    </Sheet>
  );
}
