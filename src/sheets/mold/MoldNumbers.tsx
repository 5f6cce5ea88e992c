import { moldGroupSpecs, moldNumberSpecs, type MoldInputs } from '../../steps/mold/inputs';
import type { InputSpecs, NumberSpec } from '../../steps/inputSpec';
import { NumberField } from '../../ui/NumberField';

export type MoldNumber = keyof typeof moldNumberSpecs;

export interface MoldFieldsProps {
  readonly mold: MoldInputs;
  readonly disabled: boolean;
  readonly onChange: (change: Partial<MoldInputs>) => void;
}

/** Plain numbers of the step, one line each. */
export function MoldNumbers({
  fields,
  mold,
  disabled,
  onChange,
}: MoldFieldsProps & { readonly fields: readonly MoldNumber[] }) {
  return fields.map((field) => (
    <NumberField
      key={field}
      spec={moldNumberSpecs[field]}
      value={mold[field]}
      disabled={disabled}
      onChange={(value) => {
        if (value !== null) onChange({ [field]: value });
      }}
    />
  ));
}

type Group = 'bag' | 'measured' | 'wanted' | 'coatSheet';

export interface MoldGroupProps extends MoldFieldsProps {
  readonly group: Group;
  /** All of the group when left out. */
  readonly fields?: readonly string[];
  /** Said in a field that is empty, e.g. "not measured". */
  readonly emptyWord: string;
}

/** Numbers that may be left out. */
export function MoldGroup({ group, fields, emptyWord, mold, disabled, onChange }: MoldGroupProps) {
  const specs: InputSpecs = moldGroupSpecs[`mold.${group}`] ?? {};
  const values: Readonly<Record<string, number | null>> = mold[group];
  return (fields ?? Object.keys(specs)).map((field) => (
    <NumberField
      key={field}
      spec={specs[field] as NumberSpec}
      value={values[field] ?? null}
      emptyWord={emptyWord}
      disabled={disabled}
      onChange={(value) => onChange({ [group]: { ...values, [field]: value } })}
    />
  ));
}

/** How many of a group have been given, for the closed line. */
export function givenWords(group: Readonly<Record<string, number | null>>, none: string): string {
  const given = Object.values(group).filter((value) => value !== null).length;
  return given === 0 ? none : `${given} given`;
}
