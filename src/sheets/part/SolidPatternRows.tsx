import { partTable, type PartInputs } from '../../steps/inputs/part';
import { pliesTable } from '../../steps/inputs/plies';
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
        label={partTable.nominalWall.label}
        meaning={partTable.nominalWall.meaning}
        choices={partTable.nominalWall.choices}
        value={part.nominalWall}
        disabled={disabled}
        onChange={(nominalWall) => onPart({ nominalWall })}
      />
      {part.nominalWall === 'print' ? (
        <>
          <NumberField
            spec={partTable.printLines}
            value={part.printLines}
            disabled={disabled}
            onChange={(printLines) => {
              if (printLines !== null) onPart({ printLines });
            }}
          />
          <NumberField
            spec={pliesTable.lineWidthMm}
            value={lineWidthMm}
            note="the same as on the ply schedule"
            disabled={disabled}
            onChange={(width) => {
              if (width !== null) onLineWidth(width);
            }}
          />
          <ChoiceField
            label={partTable.openFace.label}
            meaning={partTable.openFace.meaning}
            choices={partTable.openFace.choices}
            value={part.openFace}
            disabled={disabled}
            onChange={(openFace) => onPart({ openFace })}
          />
        </>
      ) : null}
    </>
  );
}
