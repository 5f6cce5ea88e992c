import type { StoneHalf } from '../../pipeline/told';
import type { MeasuringDesk } from '../../sheets/measuring/measuringDesk';
import type { Outcome, Project } from '../../workbook';
import type { Workbook } from '../../workbook/workbookApi';
import { saveBytes, saveTextFile } from '../saveTextFile';

/** What the maker may save of an open project as a file. */
export const savingActions = (
  workbook: Workbook,
  { id }: Project,
  desk: MeasuringDesk,
  fileName: (what: string) => string,
  told: (outcome: Outcome) => void,
) => ({
  async saveHalf(half: StoneHalf) {
    const bytes = await desk.run(`saving the ${half}`, 'saved half', half);
    if (bytes !== null) saveBytes(fileName(`${half}.stl`), bytes, 'model/stl');
  },
  saveRecord(html: string) {
    saveTextFile({ fileName: fileName('full record.html'), text: html }, 'text/html');
  },
  saveCalendar(text: string) {
    saveTextFile({ fileName: fileName('calendar.ics'), text }, 'text/calendar');
  },
  /** The same text as the headless command's. */
  saveFigures(json: string) {
    saveTextFile({ fileName: fileName('figures.json'), text: json }, 'application/json');
  },
  saveFile() {
    const outcome = workbook.exportProjectFile(id);
    told(outcome);
    if (outcome.done) saveTextFile(outcome.file);
  },
});
