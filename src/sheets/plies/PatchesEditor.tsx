import { patchKinds } from '../../steps/inputs/ply';
import { patchTable, type Ply, type PlyPatch } from '../../steps/inputs/ply';
import { type Material } from '../../steps/inputs/material';
import { Button } from '../../ui/Button';
import { CheckField } from '../../ui/CheckField';
import { ChoiceField } from '../../ui/ChoiceField';
import { NumberField } from '../../ui/NumberField';
import { TextField } from '../../ui/TextField';
import { MaterialSelect } from './MaterialSelect';
import { withPatchAdded, withPatchChanged } from './stackEdits';

export interface PatchesEditorProps {
  readonly patches: readonly PlyPatch[];
  readonly stack: readonly Ply[];
  readonly materials: readonly Material[];
  readonly disabled: boolean;
  readonly onChange: (patches: PlyPatch[]) => void;
}

const numberFields = ['angleDeg', 'areaCm2', 'afterPly'] as const;
const longestPlace = 80;

/** Doublers, overlaps and darts: places where more plies lie than elsewhere. */
export function PatchesEditor({ patches, stack, materials, disabled, onChange }: PatchesEditorProps) {
  return (
    <>
      <ul className="patch-list">
        {patches.map((patch, index) => {
          const edit = (change: Partial<PlyPatch>) => onChange(withPatchChanged(patches, patch.id, change));
          return (
            <li key={patch.id} aria-label={`Patch ${index + 1}`}>
              <TextField
                label="Place"
                value={patch.place}
                disabled={disabled}
                check={(text) => (text.length > longestPlace ? `At most ${longestPlace} characters.` : null)}
                onChange={(place) => edit({ place })}
              />
              <MaterialSelect
                label={`Material of patch ${index + 1}`}
                materials={materials}
                value={patch.materialId}
                disabled={disabled}
                onChange={(materialId) => edit({ materialId })}
              />
              <ChoiceField
                label="What it is"
                meaning="A doubler strengthens; an overlap or a dart lays one ply on itself. All of them need room in the wall."
                choices={patchKinds.map((kind) => ({ value: kind, label: kind }))}
                value={patch.kind}
                disabled={disabled}
                onChange={(kind) => edit({ kind })}
              />
              <NumberField
                spec={patchTable.wallMm}
                value={patch.wallMm}
                emptyWord="as the rest"
                disabled={disabled}
                onChange={(wallMm) => edit({ wallMm })}
              />
              {numberFields.map((field) => (
                <NumberField
                  key={field}
                  spec={patchTable[field]}
                  value={patch[field]}
                  disabled={disabled}
                  onChange={(value) => {
                    if (value !== null) edit({ [field]: value });
                  }}
                />
              ))}
              <div className="button-row">
                <CheckField
                  checked={patch.faceDown}
                  label={`Patch ${index + 1} lies face down`}
                  disabled={disabled}
                  onChange={(faceDown) => edit({ faceDown })}
                >
                  face down
                </CheckField>
                <Button
                  disabled={disabled}
                  onClick={() => onChange(patches.filter((other) => other.id !== patch.id))}
                >
                  Remove patch {index + 1}
                </Button>
              </div>
            </li>
          );
        })}
      </ul>
      <div className="button-row">
        <Button
          disabled={disabled || materials.length === 0}
          onClick={() => onChange(withPatchAdded(patches, stack, materials))}
        >
          Add patch
        </Button>
      </div>
    </>
  );
}
