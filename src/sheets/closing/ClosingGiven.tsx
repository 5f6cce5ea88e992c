import { formatNumber } from '../../core/units/formatNumber';
import { closingTable, type ClosingInputs } from '../../steps/inputs/closing';
import { cureTable } from '../../steps/inputs/cure';
import type { Material } from '../../steps/inputs/material';
import type { Process } from '../../steps/shared/process';
import { NumberField } from '../../ui/NumberField';
import { Row } from '../../ui/Row';
import { SectionHead } from '../../ui/SectionHead';
import { FollowedField } from '../FollowedField';
import { InputFold, InputRows } from '../InputRows';
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

/** Lands, debulking and resin first: they decide most. The fiber bed and the limits follow. */
export function ClosingGiven(props: ClosingGivenProps) {
  const { closing, process, landMm, materials, disabled, onChange, onGelC } = props;
  const rows = { table: closingTable, values: closing, disabled, onChange };
  const landWidth = (
    <Row
      label="Width of the lands"
      helpLabel="Where the width of the lands comes from"
      help={
        <p>
          Narrowest stone beside the part, from the side cover and the land of the Stone mold step. The mold
          rocks over its outer edge.
        </p>
      }
      value={
        <>
          <span className="number">{formatNumber(landMm, 0)}</span>
          <span className="unit">mm</span>
        </>
      }
    />
  );
  return (
    <>
      <section aria-label="Lands, stack and resin">
        <SectionHead title="Given: lands, stack and resin" />
        <InputRows
          {...rows}
          fields={['lands', 'shimMm']}
          own={closing.lands === 'none' ? { shimMm: null } : {}}
        />
        {closing.lands === 'none' ? null : landWidth}
        <InputRows
          {...rows}
          fields={[
            'debulk',
            'debulkedMm',
            'debulkFactor',
            'resin',
            'acceptedStandOffMm',
            'wantedFiberFraction',
          ]}
          own={{
            debulkedMm: (
              <NumberField
                spec={closingTable.debulkedMm}
                value={closing.debulkedMm > 0 ? closing.debulkedMm : null}
                emptyWord="none"
                disabled={disabled}
                onChange={(debulkedMm) => onChange({ debulkedMm: debulkedMm ?? 0 })}
              />
            ),
            ...(closing.debulkedMm > 0 ? { debulkFactor: null } : {}),
          }}
        />
      </section>
      <InputFold
        fold="Given: fiber bed and friction"
        remark={bedRemark(closing)}
        own={{
          bedPoints: (
            <MeasuredBeds
              materials={materials}
              bedPoints={closing.bedPoints}
              disabled={disabled}
              onChange={(bedPoints) => onChange({ bedPoints })}
            />
          ),
        }}
        {...rows}
      />
      <InputFold
        fold="Given: resin flow"
        remark={`gels at ${formatNumber(process.gel.valueC, 0)} °C`}
        {...rows}
      >
        <FollowedField spec={cureTable.gelC} followed={process.gel} disabled={disabled} onChange={onGelC} />
      </InputFold>
    </>
  );
}

function bedRemark({ bedLaw, bedPoints, scatterPercent }: ClosingInputs): string {
  const law = bedPoints.length > 0 ? 'measured' : bedLaw;
  return `${law}, scatter ${scatterPercent} %`;
}
