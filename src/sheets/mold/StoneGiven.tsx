import { formatNumber } from '../../core/units/formatNumber';
import { followedSpecs } from '../../steps/cure/programInputs';
import type { MoldInputs } from '../../steps/mold/inputs';
import { releaseSpec, sealerSpec } from '../../steps/mold/coatInputs';
import { pourMethodSpec, stoneTypeSpec } from '../../steps/mold/stoneInputs';
import type { Followed } from '../../steps/process';
import { ChoiceField } from '../../ui/ChoiceField';
import { Disclosure } from '../../ui/Disclosure';
import { FollowedField } from '../FollowedField';
import { givenWords, MoldGroup, MoldNumbers, type MoldFieldsProps } from './MoldNumbers';

type Choices<Value extends string> = readonly { readonly value: Value; readonly label: string }[];

export interface StoneGivenProps extends MoldFieldsProps {
  /** Where the laminate gels and takes the mold's size. */
  readonly gel: Followed;
  /** One's own gel temperature, an input of the cure; null: it follows. */
  readonly onGelC: (gelC: number | null) => void;
}

/** The stone, the bag, the bowl and the pattern in it. */
export function StoneGiven({ gel, onGelC, ...props }: StoneGivenProps) {
  const { mold, disabled, onChange } = props;
  return (
    <>
      <ChoiceField
        label={stoneTypeSpec.label}
        meaning={stoneTypeSpec.meaning}
        choices={stoneTypeSpec.choices as Choices<MoldInputs['stoneType']>}
        value={mold.stoneType}
        disabled={disabled}
        onChange={(stoneType) => onChange({ stoneType })}
      />
      <ChoiceField
        label={pourMethodSpec.label}
        meaning={pourMethodSpec.meaning}
        choices={pourMethodSpec.choices as Choices<MoldInputs['pourMethod']>}
        value={mold.pourMethod}
        disabled={disabled}
        onChange={(pourMethod) => onChange({ pourMethod })}
      />
      <Disclosure title="Your own bag" remark={givenWords(mold.bag, 'as usual for the type')}>
        <MoldGroup group="bag" emptyWord="not given" {...props} />
      </Disclosure>
      <Disclosure
        title="Bowl, mixing and losses"
        remark={`${mold.bowlMl} mL, ${mold.lossPercent} % lost, ${mold.roomC} °C`}
      >
        <MoldNumbers
          fields={[
            'bowlMl',
            'bowlFillPercent',
            'lossPercent',
            'mixingMin',
            'pouringMlPerMin',
            'roomC',
            'degreeOfReactionPercent',
          ]}
          {...props}
        />
        <MoldGroup group="measured" fields={['slurryGMl']} emptyWord="not weighed" {...props} />
      </Disclosure>
      <Disclosure
        title="The pattern in the stone"
        remark={
          mold.measured.patternG === null
            ? `${mold.patternDensityGCm3} g/cm³, softens at ${mold.patternSoftensC} °C`
            : `${mold.measured.patternG} g, softens at ${mold.patternSoftensC} °C`
        }
      >
        <MoldGroup group="measured" fields={['patternG']} emptyWord="not weighed" {...props} />
        <MoldNumbers fields={['patternDensityGCm3', 'patternSoftensC', 'counterweightMargin']} {...props} />
        <MoldGroup group="measured" fields={['peakC']} emptyWord="not measured" {...props} />
      </Disclosure>
      <Disclosure
        title="Sizes from print to part"
        remark={`print × ${mold.printScale}, gels at ${formatNumber(gel.valueC, 0)} °C`}
      >
        <MoldNumbers fields={['printScale', 'printShrinkPercent']} {...props} />
        <MoldGroup
          group="measured"
          fields={['printXMm', 'printYMm', 'printZMm', 'settingExpansionPercent']}
          emptyWord="not measured"
          {...props}
        />
        <MoldNumbers fields={['stoneExpansionPerMK', 'laminateExpansionPerMK']} {...props} />
        <FollowedField spec={followedSpecs.gelC} followed={gel} disabled={disabled} onChange={onGelC} />
        <MoldNumbers fields={['sizeToleranceMm']} {...props} />
        <MoldGroup group="wanted" emptyWord="as drawn" {...props} />
      </Disclosure>
      <Disclosure title="Sealer and release" remark={`${mold.sealerCoats} and ${mold.releaseCoats} coats`}>
        <ChoiceField
          label={sealerSpec.label}
          meaning={sealerSpec.meaning}
          choices={sealerSpec.choices as Choices<MoldInputs['sealer']>}
          value={mold.sealer}
          disabled={disabled}
          onChange={(sealer) => onChange({ sealer })}
        />
        <ChoiceField
          label={releaseSpec.label}
          meaning={releaseSpec.meaning}
          choices={releaseSpec.choices as Choices<MoldInputs['release']>}
          value={mold.release}
          disabled={disabled}
          onChange={(release) => onChange({ release })}
        />
        <MoldGroup group="coatSheet" emptyWord="not given" {...props} />
        <MoldNumbers
          fields={[
            'sealerCoats',
            'sealerM2PerL',
            'sealerSolidsPercent',
            'sealerWaitMin',
            'releaseCoats',
            'releaseM2PerL',
            'releaseSolidsPercent',
            'releaseWaitMin',
            'coatLossPercent',
          ]}
          {...props}
        />
      </Disclosure>
    </>
  );
}
