import { boxShapeSpec } from '../../steps/mold/boxInputs';
import { moldSpecs, type MoldInputs } from '../../steps/mold/inputs';
import { ChoiceField } from '../../ui/ChoiceField';
import { Disclosure } from '../../ui/Disclosure';
import { MoldNumbers, type MoldFieldsProps } from './MoldNumbers';

const covers = [
  'coverXLowMm',
  'coverXHighMm',
  'coverYLowMm',
  'coverYHighMm',
  'coverOverShowMm',
  'coverUnderRimMm',
] as const;

/** The box: shape, cover, lands, keys and slots. */
export function BoxGiven(props: MoldFieldsProps) {
  const { mold, disabled, onChange } = props;
  return (
    <>
      <ChoiceField<MoldInputs['boxShape']>
        label={moldSpecs['mold.boxShape']?.label ?? ''}
        meaning={boxShapeSpec.meaning}
        choices={boxShapeSpec.choices as readonly { value: MoldInputs['boxShape']; label: string }[]}
        value={mold.boxShape}
        disabled={disabled}
        onChange={(boxShape) => onChange({ boxShape })}
      />
      <Disclosure title="Stone cover and lands" remark={coverWords(mold)}>
        <MoldNumbers fields={[...covers, 'landWidthMm', 'leastStoneMm']} {...props} />
      </Disclosure>
      <Disclosure
        title="Walls, keys and pry slots"
        remark={`${mold.wallDraftDeg}° draft, ${mold.keyCount} keys, ${mold.prySlotCount} slots`}
      >
        <MoldNumbers
          fields={[
            'wallDraftDeg',
            ...(mold.boxShape === 'rounded rectangle' ? (['cornerRadiusMm'] as const) : []),
            'keyCount',
            'keyDiameterMm',
            'keyHeightMm',
            'prySlotCount',
            'prySlotWidthMm',
            'prySlotDepthMm',
            'prySlotHeightMm',
            'sheetMm',
            'freeboardMm',
          ]}
          {...props}
        />
      </Disclosure>
    </>
  );
}

function coverWords(mold: MoldInputs): string {
  const all = covers.map((field) => mold[field]);
  const [low, high] = [Math.min(...all), Math.max(...all)];
  return low === high ? `${low} mm all round` : `${low} to ${high} mm`;
}
