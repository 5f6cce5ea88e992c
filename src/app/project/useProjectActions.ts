import { useState } from 'react';
import type { CureChoices } from '../../core/cure/predictCure';
import type { StoneHalf } from '../../pipeline/told';
import { airCurve, columnCurve } from '../../sheets/cure/run/keptLog';
import type { MeasuringDesk } from '../../sheets/measuring/measuringDesk';
import type { ChangeInputs } from '../../sheets/sheetProps';
import { cureChoicesOf } from '../../steps/cure/cureChoicesOf';
import type { ProjectInputs } from '../../steps/inputs/project';
import type { OvenRunLog, Outcome, Project, RecordLine } from '../../workbook';
import { useWorkbook } from '../../workbook/useWorkbook';
import { openGivenFile } from '../givenFile';
import { goTo, projectHref } from '../route';
import { saveBytes, saveTextFile } from '../saveTextFile';

/** What belonged to the old file does not fit the new one; the rest of the inputs stays. */
function inputsForNewFile(inputs: ProjectInputs): ProjectInputs {
  return { ...inputs, part: { ...inputs.part, unit: 'unconfirmed', body: 0, scale: 1 } };
}

/** What the maker may do with an open project, and why the last of it was refused. */
export function useProjectActions(project: Project, desk: MeasuringDesk) {
  const workbook = useWorkbook();
  const [refusal, setRefusal] = useState<string | null>(null);
  const told = (outcome: Outcome) => setRefusal(outcome.done ? null : outcome.reason);
  const { inputs } = project;
  const fileName = (what: string) => `${project.enclosure} - ${project.name} ${what}`;

  const change: ChangeInputs = (stepKey, patch) =>
    told(
      workbook.updateInputs(
        (draft) => {
          Object.assign(draft[stepKey], patch);
        },
        `${stepKey}.${Object.keys(patch).join('.')}`,
      ),
    );

  return {
    refusal,
    change,
    async importFile(file: File) {
      const fresh = inputsForNewFile(inputs);
      const imported = await desk.importFile(file, fresh);
      if (imported === null) return;
      told(
        workbook.setPattern(imported.pattern, imported.packed, (draft) => {
          draft.part = { ...fresh.part, pull: imported.pull };
        }),
      );
    },
    async saveHalf(half: StoneHalf) {
      const bytes = await desk.run(`saving the ${half}`, 'saved half', half);
      if (bytes !== null) saveBytes(fileName(`${half}.stl`), bytes, 'model/stl');
    },
    /** Several runs beside the one that is set. */
    comparePrograms(choices: CureChoices) {
      return desk.run('comparing programs', 'comparison', { choices, mostC: inputs.cure.stoneLimitC });
    },
    async fitToLog(log: OvenRunLog) {
      const choices = cureChoicesOf(inputs);
      const laminate = columnCurve(log, log.laminate);
      if (!choices.known || laminate === null) return null;
      return desk.run('fitting to the log', 'fit', {
        choices: choices.value,
        log: { laminate, air: airCurve(log), place: log.place },
      });
    },
    record(lineId: string, line: Partial<RecordLine>) {
      told(workbook.setRecord(lineId, line));
    },
    saveChecklist(html: string) {
      saveTextFile({ fileName: fileName('checklist.html'), text: html }, 'text/html');
    },
    /** The same text as the headless command's. */
    saveFigures(json: string) {
      saveTextFile({ fileName: fileName('figures.json'), text: json }, 'application/json');
    },
    saveFile() {
      const outcome = workbook.exportProjectFile(project.id);
      told(outcome);
      if (outcome.done) saveTextFile(outcome.file);
    },
    async openFile(file: File) {
      const outcome = await openGivenFile(workbook, file);
      told(outcome);
      if (outcome.done) goTo(projectHref(outcome.id));
    },
  };
}

export type ProjectActions = ReturnType<typeof useProjectActions>;
