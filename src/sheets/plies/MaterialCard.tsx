import { materialTable, usualRollWidthMm, type Material } from '../../steps/inputs/material';
import { Button } from '../../ui/Button';
import { Disclosure } from '../../ui/Disclosure';
import { NumberField } from '../../ui/NumberField';
import { TextField } from '../../ui/TextField';
import { InputRows } from '../InputRows';

const requiredFields = [
  'arealWeightGsm',
  'resinMassFraction',
  'fiberDensityGCm3',
  'resinDensityGCm3',
] as const;
const offcutFields = ['offcutMassG', 'offcutAreaCm2'] as const;
const elasticFields = [
  'e1GPa',
  'e2GPa',
  'g12GPa',
  'nu12',
  'expansion1PpmPerK',
  'expansion2PpmPerK',
  'expansion3PpmPerK',
] as const;
const strengthFields = [
  'tension1Mpa',
  'compression1Mpa',
  'tension2Mpa',
  'compression2Mpa',
  'shear12Mpa',
] as const;
const remnantFields = ['remnantLengthMm', 'remnantWidthMm'] as const;
const shearFields = ['shearWarningDeg', 'shearLockingDeg'] as const;

export interface MaterialCardProps {
  readonly card: Material;
  /** A ply or patch is cut from it, so it can't be deleted. */
  readonly used: boolean;
  readonly disabled: boolean;
  readonly onChange: (change: Partial<Material>) => void;
  readonly onDuplicate: () => void;
  readonly onDelete: () => void;
}

/** One prepreg roll, opened: the label first; what is measured, timed or looked up less often behind a line each. */
export function MaterialCard(props: MaterialCardProps) {
  const { card, used, disabled, onChange } = props;
  const given = (fields: readonly (keyof Material)[]) =>
    fields.filter((field) => card[field] !== null).length;
  return (
    <>
      <TextField
        label="Name"
        value={card.name}
        disabled={disabled}
        check={(text) => (text.trim() === '' ? 'A card needs a name.' : null)}
        onChange={(name) => onChange({ name: name.trim() })}
      />
      <InputRows
        table={materialTable}
        values={card}
        fields={['weave']}
        disabled={disabled}
        onChange={onChange}
      />
      {requiredFields.map((field) => (
        <NumberField
          key={field}
          spec={materialTable[field]}
          value={card[field]}
          disabled={disabled}
          onChange={(value) => {
            if (value !== null) onChange({ [field]: value });
          }}
        />
      ))}
      <NumberField
        spec={materialTable.laidThicknessMm}
        value={card.laidThicknessMm}
        note={
          card.caliperTotalMm === null
            ? card.laidThicknessMm === null
              ? 'taken from the bulk factor'
              : ''
            : 'replaced by the caliper reading below'
        }
        emptyWord="none"
        disabled={disabled}
        onChange={(laidThicknessMm) => onChange({ laidThicknessMm })}
      />
      <Disclosure title="Measured at the bench" remark={measuredRemark(card)}>
        <NumberField
          spec={materialTable.caliperTotalMm}
          value={card.caliperTotalMm}
          emptyWord="none"
          disabled={disabled}
          onChange={(caliperTotalMm) => onChange({ caliperTotalMm })}
        />
        <NumberField
          spec={materialTable.caliperPlies}
          value={card.caliperPlies}
          disabled={disabled}
          onChange={(caliperPlies) => {
            if (caliperPlies !== null) onChange({ caliperPlies });
          }}
        />
        <OptionalFields fields={offcutFields} emptyWord="none" {...props} />
      </Disclosure>
      <Disclosure title="Roll and out-time" remark={rollRemark(card)}>
        <InputRows
          table={materialTable}
          values={card}
          fields={['freezerDate']}
          disabled={disabled}
          onChange={onChange}
        />
        <NumberField
          spec={materialTable.hoursOutH}
          value={card.hoursOutH}
          disabled={disabled}
          onChange={(hoursOutH) => {
            if (hoursOutH !== null) onChange({ hoursOutH });
          }}
        />
        <OptionalFields fields={['allowedOutTimeH']} emptyWord="not known" {...props} />
      </Disclosure>
      <Disclosure
        title="Width, remnant and price"
        remark={card.rollWidthMm === null ? 'width by common practice' : `${card.rollWidthMm} mm wide`}
      >
        <OptionalFields fields={['rollWidthMm']} emptyWord={`${usualRollWidthMm}`} {...props} />
        <OptionalFields fields={remnantFields} emptyWord="none" {...props} />
        <OptionalFields fields={['pricePerM2']} emptyWord="not known" {...props} />
      </Disclosure>
      <Disclosure
        title="Stiffness and expansion"
        remark={`${given(elasticFields)} of ${elasticFields.length} from your data sheet, the rest typical`}
      >
        <OptionalFields fields={elasticFields} emptyWord="typical" {...props} />
      </Disclosure>
      <Disclosure
        title="Shear when it is laid"
        remark={given(shearFields) === 0 ? 'typical of its kind' : 'measured'}
      >
        <OptionalFields fields={shearFields} emptyWord="typical" {...props} />
      </Disclosure>
      <Disclosure title="Strengths" remark={strengthRemark(given(strengthFields))}>
        <OptionalFields fields={strengthFields} emptyWord="none" {...props} />
      </Disclosure>
      <div className="button-row card-foot">
        <Button disabled={disabled} onClick={props.onDuplicate}>
          Duplicate card
        </Button>
        <Button kind="danger" disabled={disabled || used} onClick={props.onDelete}>
          Delete card
        </Button>
        {used ? <span className="quiet">In use by the stack, so it can't be deleted.</span> : null}
      </div>
    </>
  );
}

type OptionalField =
  | (
      | typeof offcutFields
      | typeof remnantFields
      | typeof elasticFields
      | typeof shearFields
      | typeof strengthFields
    )[number]
  | 'allowedOutTimeH'
  | 'rollWidthMm'
  | 'pricePerM2';

interface OptionalFieldsProps extends Pick<MaterialCardProps, 'card' | 'disabled' | 'onChange'> {
  readonly fields: readonly OptionalField[];
  readonly emptyWord: string;
}

function OptionalFields({ fields, emptyWord, card, disabled, onChange }: OptionalFieldsProps) {
  return fields.map((field) => (
    <NumberField
      key={field}
      spec={materialTable[field]}
      value={card[field]}
      emptyWord={emptyWord}
      disabled={disabled}
      onChange={(value) => onChange({ [field]: value })}
    />
  ));
}

function measuredRemark({ caliperTotalMm, offcutMassG, offcutAreaCm2 }: Material): string {
  const words = [
    ...(caliperTotalMm === null ? [] : ['caliper']),
    ...(offcutMassG === null || offcutAreaCm2 === null ? [] : ['weighed offcut']),
  ];
  return words.length === 0 ? 'nothing yet' : words.join(' and ');
}

function rollRemark({ hoursOutH, allowedOutTimeH }: Material): string {
  return allowedOutTimeH === null ? 'out-time not known' : `${hoursOutH} h out of ${allowedOutTimeH} h`;
}

function strengthRemark(count: number): string {
  if (count === 0) return 'none given';
  return count === strengthFields.length ? 'given' : `${count} of ${strengthFields.length}: all are needed`;
}
