import { patchSpecs, type Material, type Ply, type PlyPatch } from '../../steps/plies/inputs';
import { Button } from '../../ui/Button';
import { CheckField } from '../../ui/CheckField';
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

/** Local patches (doublers): extra plies where a boss, a hinge or an edge needs them. */
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
              {numberFields.map((field) => (
                <NumberField
                  key={field}
                  spec={patchSpecs[field]}
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
