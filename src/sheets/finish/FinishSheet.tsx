import { finishCoatTable, finishTable, type FinishInputs } from '../../steps/inputs/finish';
import type { Job } from '../../steps/finish/job';
import { readDate } from '../../core/finish/civilTime';
import { startOf } from '../../steps/kit/inputTable';
import { Button } from '../../ui/Button';
import { SectionHead } from '../../ui/SectionHead';
import { TextField } from '../../ui/TextField';
import { EntryList } from '../EntryList';
import { FigureGroups, type FigureGroup } from '../FigureGroups';
import { InputFold, InputRows } from '../InputRows';
import { Sheet } from '../Sheet';
import type { SheetProps } from '../sheetProps';
import { JobStrip } from './JobStrip';

export interface FinishSheetProps extends SheetProps {
  readonly title: string;
  readonly question: string;
  /** null while it cannot be planned; the verdict says why. */
  readonly job: Job | null;
  readonly onSaveCalendar: () => void;
}

const groups: readonly FigureGroup[] = [
  {
    title: 'Area, sanding and weight',
    ids: ['finish.areaCm2', 'finish.sandedUm', 'finish.weightG'],
    shown: ['finish.weightG'],
  },
];

const wrongDate = 'Enter a day as year, month and day, for example 2026-05-04, or leave it empty.';

/** Which coats, and when is it done? */
export function FinishSheet(props: FinishSheetProps) {
  const { title, question, context, report, readOnly, change, job, onSaveCalendar } = props;
  const { finish } = context.inputs;
  const onChange = (inputs: Partial<FinishInputs>) => change('finish', inputs);
  const rows = { table: finishTable, values: finish, disabled: readOnly, onChange };
  return (
    <Sheet title={title} question={question} report={report}>
      <section aria-label="Given">
        <SectionHead title="Coats" />
        <EntryList
          table={finishCoatTable}
          entries={finish.coats}
          newEntry={(id) => ({ ...startOf(finishCoatTable), id })}
          addWords="Add a coat"
          remarkOf={({ count, filmUm }) => `${count} × ${filmUm} µm`}
          disabled={readOnly}
          onChange={(coats) => onChange({ coats })}
        />
        {props.fromShelf?.('finish coat')}
        <SectionHead title="Given" />
        <InputRows {...rows} />
        <TextField
          label={finishTable.startDate.label}
          value={finish.startDate ?? ''}
          disabled={readOnly}
          check={(text) => (text === '' || readDate(text) !== null ? null : wrongDate)}
          onChange={(text) => onChange({ startDate: text === '' ? null : text })}
        />
        <InputFold
          {...rows}
          fold="Working hours"
          remark={`${finish.dayFromH} to ${finish.dayToH} h, ${finish.workdays}`}
        />
      </section>
      <section aria-label="Worked out">
        <SectionHead title="Worked out" />
        {job === null ? null : <JobStrip job={job} />}
        <div className="button-row">
          <Button disabled={job === null || !job.isDated} onClick={onSaveCalendar}>
            Save the calendar
          </Button>
          {job !== null && !job.isDated ? (
            <span className="quiet">Enter the start of the job first.</span>
          ) : null}
        </div>
        <FigureGroups figures={report.figures} groups={groups} />
      </section>
    </Sheet>
  );
}
