import type { CureInputs } from '../../steps/inputs/cure';
import { stageTable, type OvenStageInput } from '../../steps/inputs/program';
import { Button } from '../../ui/Button';
import { DataTable } from '../../ui/DataTable';
import { NumberCell } from '../../ui/NumberCell';

export interface ProgramEditorProps {
  readonly stages: CureInputs['stages'];
  readonly disabled: boolean;
  readonly onChange: (stages: OvenStageInput[]) => void;
}

/** The oven program as a table: what the dial is turned to, how fast, and for how long. */
export function ProgramEditor({ stages, disabled, onChange }: ProgramEditorProps) {
  const cell = (field: keyof typeof stageTable) => (stage: OvenStageInput, index: number) => (
    <NumberCell
      label={`${stageTable[field].label}, stage ${index + 1}`}
      limits={stageTable[field]}
      value={stage[field]}
      mayBeEmpty={field === 'rampKPerMin'}
      disabled={disabled}
      onChange={(value) => {
        if (value === null && field !== 'rampKPerMin') return;
        onChange(stages.map((one, at) => (at === index ? { ...one, [field]: value } : one)));
      }}
    />
  );
  const remove = (_stage: OvenStageInput, index: number) => (
    <Button
      aria-label={`Remove stage ${index + 1}`}
      disabled={disabled}
      onClick={() => onChange(stages.filter((_, at) => at !== index))}
    >
      ×
    </Button>
  );
  const add = () => {
    const last = stages.at(-1);
    onChange([...stages, last ?? { targetC: stageTable.targetC.default, rampKPerMin: null, dwellHours: 1 }]);
  };
  return (
    <>
      <DataTable
        caption="Oven program, on the dial; an empty ramp turns the dial there at once"
        columns={[
          { id: 'target', header: 'Goes to', cell: cell('targetC') },
          { id: 'ramp', header: 'Ramp', cell: cell('rampKPerMin') },
          { id: 'dwell', header: 'Dwell', cell: cell('dwellHours') },
          { id: 'remove', header: <span className="visually-hidden">Remove</span>, cell: remove },
        ]}
        rows={stages}
        rowKey={(_stage, index) => String(index)}
      />
      <div className="button-row below-table">
        <Button disabled={disabled} onClick={add}>
          Add a stage
        </Button>
      </div>
    </>
  );
}
