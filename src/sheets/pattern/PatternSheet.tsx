import type { Figure } from '../../core/figure';
import { formatNumber } from '../../core/units/formatNumber';
import { patternTable, type PatternInputs } from '../../steps/inputs/pattern';
import { Button } from '../../ui/Button';
import { NumberField } from '../../ui/NumberField';
import { Note } from '../../ui/Note';
import { SectionHead } from '../../ui/SectionHead';
import { FigureGroups } from '../FigureGroups';
import { InputFold, InputRows } from '../InputRows';
import { Sheet } from '../Sheet';
import type { SheetProps } from '../sheetProps';
import { HolesToCut } from './HolesToCut';
import { madeFigureGroups, MadePatternSection } from './MadePatternSection';
import type { PatternControl, UsedPattern } from './patternControl';

export interface PatternSheetProps extends SheetProps {
  readonly title: string;
  readonly question: string;
  readonly control: PatternControl;
}

/** What do I print? The import as it is, or the shell that is made from its outside. */
export function PatternSheet(props: PatternSheetProps) {
  const { title, question, context, report, readOnly, control } = props;
  const { choices, why, made, used, isBusy } = control;
  return (
    <Sheet title={title} question={question} report={report}>
      <PatternGiven {...props} />
      <div className="button-row">
        <Button
          kind={made === null && used === null ? 'main' : 'plain'}
          disabled={context.pattern === null || choices === null || isBusy}
          onClick={control.make}
        >
          Make the pattern
        </Button>
        {why === '' ? <span className="quiet">It takes some seconds.</span> : null}
      </div>
      {why === '' ? null : <Note problem>{why}</Note>}
      {control.isOutdated ? (
        <Note>The last pattern was made with other inputs or of another model. Make it again.</Note>
      ) : null}
      {made === null || context.pattern === null ? null : (
        <MadePatternSection
          made={made}
          figures={report.figures}
          fileName={context.pattern.fileName}
          mayUse={!readOnly && !isBusy}
          printScale={context.inputs.mold.printScale}
          onSave={control.save}
          onSaveToPrint={control.saveToPrint}
          onSaveTemplate={control.saveTemplate}
          onUse={control.use}
        />
      )}
      {used === null ? null : (
        <PatternInUse
          used={used}
          figures={made === null ? report.figures : []}
          mayGoBack={!readOnly && !isBusy}
          onSaveTemplate={control.saveTemplate}
          onGoBack={control.goBack}
        />
      )}
    </Sheet>
  );
}

/** What the maker still needs to know of the import that the made pattern took the place of. */
function PatternInUse({
  used: { madeOf, summary, whyUnsaved },
  figures,
  mayGoBack,
  onSaveTemplate,
  onGoBack,
}: {
  readonly used: UsedPattern;
  readonly figures: readonly Figure[];
  readonly mayGoBack: boolean;
  readonly onSaveTemplate: PatternControl['saveTemplate'];
  readonly onGoBack: () => void;
}) {
  return (
    <section aria-label="The pattern in use">
      <SectionHead title="The pattern in use" remark={`made from ${madeOf}`} />
      <Note>The other steps judge the made pattern now. {madeOf} stays in the project beside it.</Note>
      {whyUnsaved === '' ? null : <Note problem>{whyUnsaved}</Note>}
      <FigureGroups figures={figures} groups={madeFigureGroups} />
      <HolesToCut summary={summary} onSaveTemplate={() => onSaveTemplate(summary)} />
      <div className="button-row below-table">
        <Button disabled={!mayGoBack} onClick={onGoBack}>
          Go back to the import
        </Button>
      </div>
    </section>
  );
}

function PatternGiven({ context, readOnly, change, control: { choices } }: PatternSheetProps) {
  const { pattern } = context.inputs;
  const onChange = (inputs: Partial<PatternInputs>) => change('pattern', inputs);
  const rows = { table: patternTable, values: pattern, disabled: readOnly, onChange };
  const proposed = (field: 'wallMm' | 'gridMm', how: string) => (
    <NumberField
      spec={patternTable[field]}
      value={pattern[field]}
      emptyWord={choices === null ? '' : formatNumber(choices[field], 2)}
      {...(pattern[field] === null && choices !== null
        ? { note: `empty: ${formatNumber(choices[field], 2)} mm, ${how}` }
        : {})}
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
          wallMm: proposed('wallMm', 'what the stack wants'),
          keepHolesOverMm: (
            <NumberField
              spec={patternTable.keepHolesOverMm}
              value={pattern.keepHolesOverMm}
              emptyWord="–"
              {...(pattern.keepHolesOverMm === null ? { note: 'empty: all are covered' } : {})}
              disabled={readOnly}
              onChange={(keepHolesOverMm) => onChange({ keepHolesOverMm })}
            />
          ),
        }}
      />
      <InputFold
        {...rows}
        fold="More"
        remark="nozzle, grid"
        own={{ gridMm: proposed('gridMm', 'as fine as wall and radius ask for') }}
      />
    </section>
  );
}
