import { useState } from 'react';
import type { CureChoices } from '../../core/cure/predictCure';
import { airCurve, columnCurve } from '../../sheets/cure/run/keptLog';
import type { MeasuringDesk, PullOfImport } from '../../sheets/measuring/measuringDesk';
import type { ChangeInputs } from '../../sheets/sheetProps';
import { cureChoicesOf } from '../../steps/cure/cureChoicesOf';
import type { MadeHere } from '../../sheets/pattern/patternControl';
import { writeReading } from '../../steps/bench/written';
import { keptSummary } from '../../steps/pattern/keptSummary';
import { nameOfMade } from '../../steps/pattern/nameOfMade';
import type { ProjectInputs } from '../../steps/inputs/project';
import type { OvenRunLog, Outcome, Project, RecordLine } from '../../workbook';
import { useWorkbook } from '../../workbook/useWorkbook';
import { openGivenFile } from '../givenFile';
import { goTo, projectHref } from '../route';
import { cuttingActions } from './cuttingActions';
import { editedSince } from './editedSince';
import { patternActions } from './patternActions';
import { savingActions } from './savingActions';

/** What belonged to the old file does not fit the new one; the rest of the inputs stays. */
function inputsForNewFile(inputs: ProjectInputs): ProjectInputs {
  return { ...inputs, part: { ...inputs.part, unit: 'unconfirmed', body: 0, scale: 1 } };
}

/** A made pattern is a shell in mm, whatever it was made from. */
function inputsForMadePattern(inputs: ProjectInputs): ProjectInputs {
  return {
    ...inputs,
    part: { ...inputs.part, unit: 'mm', body: 0, scale: 1, nominalWall: 'model', rightWayUp: 'settled' },
  };
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

  /** Resolves with the key of the mesh that is the project's pattern then; null when it was not taken. */
  const take = async (
    file: File,
    fresh: ProjectInputs,
    pullOfImport: PullOfImport,
    made?: Pick<MadeHere, 'choices' | 'summary'>,
  ) => {
    const imported = await desk.importFile(file, fresh, pullOfImport);
    if (imported === null) return null;
    const outcome = workbook.setPattern(
      imported.pattern,
      imported.packed,
      (draft) => {
        const meanwhile = editedSince(inputs.part, draft.part);
        draft.part = {
          ...fresh.part,
          pull: imported.pull,
          rightWayUp: imported.rightWayUp,
          ...meanwhile,
        };
      },
      made,
    );
    told(outcome);
    return outcome.done ? imported.pattern.meshKey : null;
  };

  return {
    refusal,
    change,
    importFile: (file: File) => take(file, inputsForNewFile(inputs), 'by its shape'),
    ...patternActions(desk, fileName, inputs.mold.printScale),
    ...cuttingActions(desk, fileName),
    takeMadePattern({ stl, choices, summary }: MadeHere, madeOf: string) {
      const file = new File([new Uint8Array(stl)], nameOfMade(madeOf), { type: 'model/stl' });
      const made = { choices, summary: keptSummary(summary) };
      return take(file, inputsForMadePattern(inputs), 'as given', made);
    },
    goBackToImport() {
      told(workbook.goBackToImport());
    },
    ...savingActions(workbook, project, desk, fileName, told),
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
    reading(path: string, value: number | null) {
      told(workbook.updateInputs((draft) => writeReading(draft, path, value), `reading ${path}`));
    },
    record: (lineId: string, line: Partial<RecordLine>) => told(workbook.setRecord(lineId, line)),
    async openFile(file: File) {
      const outcome = await openGivenFile(workbook, file);
      told(outcome);
      if (outcome.done) goTo(projectHref(outcome.id));
    },
  };
}

export type ProjectActions = ReturnType<typeof useProjectActions>;
