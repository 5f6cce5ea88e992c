import { formatNumber } from '../../core/units/formatNumber';
import { cureTable } from '../../steps/inputs/cure';
import type { Followed } from '../../steps/shared/process';
import { FollowedField } from '../FollowedField';
import type { FromShelf } from '../sheetProps';
import { givenWords, MoldFold, MoldRows, type MoldFieldsProps } from './MoldNumbers';

export interface StoneGivenProps extends MoldFieldsProps {
  /** Where the laminate gels and takes the mold's size. */
  readonly gel: Followed;
  /** One's own gel temperature, an input of the cure; null: it follows. */
  readonly onGelC: (gelC: number | null) => void;
  readonly fromShelf?: FromShelf | undefined;
}

/** The stone, the bag, the bowl and the pattern in it. */
export function StoneGiven({ gel, onGelC, fromShelf, ...props }: StoneGivenProps) {
  const { mold, disabled } = props;
  const { patternG } = mold.measured;
  const pattern = patternG === null ? `${mold.patternDensityGCm3} g/cm³` : `${patternG} g`;
  return (
    <>
      <MoldRows fields={['stoneType', 'pourMethod']} {...props} />
      <MoldFold fold="Your own bag" remark={givenWords(mold.bag, 'as usual for the type')} {...props}>
        {fromShelf?.('stone')}
      </MoldFold>
      <MoldFold
        fold="Bowl, mixing and losses"
        remark={`${mold.bowlMl} mL, ${mold.lossPercent} % lost, ${mold.roomC} °C`}
        {...props}
      />
      <MoldFold
        fold="The pattern in the stone"
        remark={`${pattern}, softens at ${mold.patternSoftensC} °C`}
        {...props}
      >
        {fromShelf?.('print material')}
      </MoldFold>
      <MoldFold
        fold="Sizes from print to part"
        remark={`print × ${mold.printScale}, gels at ${formatNumber(gel.valueC, 0)} °C`}
        {...props}
      >
        <FollowedField spec={cureTable.gelC} followed={gel} disabled={disabled} onChange={onGelC} />
      </MoldFold>
      <MoldFold
        fold="Sealer and release"
        remark={`${mold.sealerCoats} and ${mold.releaseCoats} coats`}
        {...props}
      >
        {fromShelf?.('sealer')}
        {fromShelf?.('release')}
      </MoldFold>
    </>
  );
}
