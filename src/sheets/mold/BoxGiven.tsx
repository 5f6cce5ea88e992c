import type { MoldInputs } from '../../steps/inputs/mold';
import { MoldFold, MoldRows, type MoldFieldsProps } from './MoldNumbers';

/** The box: shape, cover, lands, keys and slots. */
export function BoxGiven(props: MoldFieldsProps) {
  const { mold } = props;
  return (
    <>
      <MoldRows fields={['boxShape']} {...props} />
      <MoldFold fold="Stone cover and lands" remark={coverWords(mold)} {...props} />
      <MoldFold
        fold="Walls, keys and pry slots"
        remark={`${mold.wallDraftDeg}° draft, ${mold.keyCount} keys, ${mold.prySlotCount} slots`}
        idle={mold.boxShape === 'rounded rectangle' ? [] : ['cornerRadiusMm']}
        {...props}
      />
    </>
  );
}

function coverWords(mold: MoldInputs): string {
  const sides = [mold.coverXLowMm, mold.coverXHighMm, mold.coverYLowMm, mold.coverYHighMm];
  const all = [...sides, mold.coverOverShowMm, mold.coverUnderRimMm];
  const [low, high] = [Math.min(...all), Math.max(...all)];
  return low === high ? `${low} mm all round` : `${low} to ${high} mm`;
}
