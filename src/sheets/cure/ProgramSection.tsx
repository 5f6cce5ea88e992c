import { useState } from 'react';
import type { CurePrediction } from '../../core/cure/predictCure';
import { programOf } from '../../steps/shared/process';
import type { OvenStageInput } from '../../steps/inputs/program';
import type { ProjectInputs } from '../../steps/inputs/project';
import { SectionHead } from '../../ui/SectionHead';
import { DwellTable } from './DwellTable';
import { ProgramChart } from './ProgramChart';
import { ProgramEditor } from './ProgramEditor';

export interface ProgramSectionProps {
  readonly inputs: ProjectInputs;
  readonly prediction: CurePrediction | null;
  /** The prediction answers the values before the last change. */
  readonly isOfBefore: boolean;
  readonly disabled: boolean;
  readonly onChange: (stages: OvenStageInput[]) => void;
}

/** The oven program as a chart and as a table, both to edit; while a handle is dragged both show where it is. */
export function ProgramSection(props: ProgramSectionProps) {
  const { inputs, prediction, isOfBefore, disabled, onChange } = props;
  const [draft, setDraft] = useState<OvenStageInput[] | null>(null);
  const stages = draft ?? inputs.cure.stages;
  return (
    <section aria-label="Oven program" className={isOfBefore ? 'of-before' : undefined}>
      <SectionHead
        title="Oven program"
        remark={isOfBefore ? 'curves and times: of the values before' : 'dial and laminate'}
      />
      <ProgramChart
        program={programOf({ ...inputs, cure: { ...inputs.cure, stages } })}
        stages={stages}
        prediction={prediction}
        disabled={disabled}
        onDraft={setDraft}
        onChange={onChange}
      />
      <ProgramEditor stages={stages} disabled={disabled} onChange={onChange} />
      {prediction === null ? null : <DwellTable prediction={prediction} />}
    </section>
  );
}
