import { partSpecs, type PartInputs } from '../../steps/part/inputs';
import { pliesSpecs } from '../../steps/plies/inputs';
import { ChoiceField } from '../../ui/ChoiceField';
import { NumberField } from '../../ui/NumberField';

export interface SolidPatternRowsProps {
  readonly part: PartInputs;
  readonly lineWidthMm: number;
  readonly disabled: boolean;
  readonly onPart: (change: Partial<PartInputs>) => void;
  readonly onLineWidth: (lineWidthMm: number) => void;
}

/** For a pattern drawn solid and hollowed by the print: where its wall comes from. */
export function SolidPatternRows({
  part,
  lineWidthMm,
  disabled,
  onPart,
  onLineWidth,
}: SolidPatternRowsProps) {
  return (
    <>
      <ChoiceField
        label={partSpecs['part.nominalWall'].label}
        meaning={partSpecs['part.nominalWall'].meaning}
        choices={partSpecs['part.nominalWall'].choices}
        value={part.nominalWall}
        disabled={disabled}
        onChange={(nominalWall) => onPart({ nominalWall })}
      />
      {part.nominalWall === 'print' ? (
        <>
          <NumberField
            spec={partSpecs['part.printLines']}
            value={part.printLines}
            disabled={disabled}
            onChange={(printLines) => {
              if (printLines !== null) onPart({ printLines });
            }}
          />
          <NumberField
            spec={pliesSpecs['plies.lineWidthMm']}
            value={lineWidthMm}
            note="the same as on the ply schedule"
            disabled={disabled}
            onChange={(width) => {
              if (width !== null) onLineWidth(width);
            }}
          />
          <ChoiceField
            label={partSpecs['part.openFace'].label}
            meaning={partSpecs['part.openFace'].meaning}
            choices={partSpecs['part.openFace'].choices}
            value={part.openFace}
            disabled={disabled}
            onChange={(openFace) => onPart({ openFace })}
          />
        </>
      ) : null}
    </>
  );
}
