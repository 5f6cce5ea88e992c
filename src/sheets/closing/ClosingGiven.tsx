import { formatNumber } from '../../core/units/formatNumber';
import { closingSpecs, type ClosingInputs } from '../../steps/closing/inputs';
import { followedSpecs } from '../../steps/cure/programInputs';
import type { Material } from '../../steps/plies/inputs';
import type { Process } from '../../steps/process';
import { ChoiceField } from '../../ui/ChoiceField';
import { Disclosure } from '../../ui/Disclosure';
import { NumberField } from '../../ui/NumberField';
import { Row } from '../../ui/Row';
import { SectionHead } from '../../ui/SectionHead';
import { FollowedField } from '../FollowedField';
import { MeasuredBeds } from './MeasuredBeds';

export interface ClosingGivenProps {
  readonly closing: ClosingInputs;
  readonly process: Process;
  /** From the Stone mold step. */
  readonly landMm: number;
  /** Cards of the stack. */
  readonly materials: readonly Material[];
  readonly disabled: boolean;
  readonly onChange: (change: Partial<ClosingInputs>) => void;
  /** One's own gel temperature, an input of the cure; null: it follows. */
  readonly onGelC: (gelC: number | null) => void;
}

type NumberName = {
  [Name in keyof ClosingInputs]: ClosingInputs[Name] extends number ? Name : never;
}[keyof ClosingInputs];

/** Lands, debulking and resin first: they decide most. The fiber bed and the limits follow. */
export function ClosingGiven(props: ClosingGivenProps) {
  const { closing, process, landMm, materials, disabled, onChange, onGelC } = props;
  const number = (name: NumberName) => (
    <NumberField
      key={name}
      spec={closingSpecs[`closing.${name}`]}
      value={closing[name]}
      disabled={disabled}
      onChange={(value) => {
        if (value !== null) onChange({ [name]: value });
      }}
    />
  );
  return (
    <>
      <section aria-label="Lands, stack and resin">
        <SectionHead title="Given: lands, stack and resin" />
        <ChoiceField
          label={closingSpecs['closing.lands'].label}
          meaning={closingSpecs['closing.lands'].meaning}
          choices={closingSpecs['closing.lands'].choices}
          value={closing.lands}
          disabled={disabled}
          onChange={(lands) => onChange({ lands })}
        />
        {closing.lands === 'none' ? null : (
          <>
            <Row
              label="Width of the lands"
              helpLabel="Where the width of the lands comes from"
              help={
                <p>
                  Narrowest stone beside the part, from the side cover and the land of the Stone mold step.
                  The mold rocks over its outer edge.
                </p>
              }
              value={
                <>
                  <span className="number">{formatNumber(landMm, 0)}</span>
                  <span className="unit">mm</span>
                </>
              }
            />
            {number('shimMm')}
          </>
        )}
        <ChoiceField
          label={closingSpecs['closing.debulk'].label}
          meaning={closingSpecs['closing.debulk'].meaning}
          choices={closingSpecs['closing.debulk'].choices}
          value={closing.debulk}
          disabled={disabled}
          onChange={(debulk) => onChange({ debulk })}
        />
        <NumberField
          spec={closingSpecs['closing.debulkedMm']}
          value={closing.debulkedMm > 0 ? closing.debulkedMm : null}
          emptyWord="none"
          disabled={disabled}
          onChange={(debulkedMm) => onChange({ debulkedMm: debulkedMm ?? 0 })}
        />
        {closing.debulkedMm > 0 ? null : number('debulkFactor')}
        <ChoiceField
          label={closingSpecs['closing.resin'].label}
          meaning={closingSpecs['closing.resin'].meaning}
          choices={closingSpecs['closing.resin'].choices}
          value={closing.resin}
          disabled={disabled}
          onChange={(resin) => onChange({ resin })}
        />
        {number('acceptedStandOffMm')}
        {number('wantedFiberFraction')}
      </section>
      <Disclosure title="Given: fiber bed and friction" remark={bedRemark(closing)}>
        <ChoiceField
          label={closingSpecs['closing.bedLaw'].label}
          meaning={closingSpecs['closing.bedLaw'].meaning}
          choices={closingSpecs['closing.bedLaw'].choices}
          value={closing.bedLaw}
          disabled={disabled}
          onChange={(bedLaw) => onChange({ bedLaw })}
        />
        <MeasuredBeds
          materials={materials}
          bedPoints={closing.bedPoints}
          disabled={disabled}
          onChange={(bedPoints) => onChange({ bedPoints })}
        />
        {number('scatterPercent')}
        {number('frictionCoefficient')}
      </Disclosure>
      <Disclosure title="Given: resin flow" remark={`gels at ${formatNumber(process.gel.valueC, 0)} °C`}>
        {number('timeToGelMin')}
        {number('gelTimeAtC')}
        <FollowedField
          spec={followedSpecs.gelC}
          followed={process.gel}
          disabled={disabled}
          onChange={onGelC}
        />
        {number('resinMarginKPa')}
        <ChoiceField
          label={closingSpecs['closing.bagged'].label}
          meaning={closingSpecs['closing.bagged'].meaning}
          choices={closingSpecs['closing.bagged'].choices}
          value={closing.bagged}
          disabled={disabled}
          onChange={(bagged) => onChange({ bagged })}
        />
        {number('humidityPercent')}
      </Disclosure>
    </>
  );
}

function bedRemark({ bedLaw, bedPoints, scatterPercent }: ClosingInputs): string {
  const law = bedPoints.length > 0 ? 'measured' : bedLaw;
  return `${law}, scatter ${scatterPercent} %`;
}
