import { moldTable, type MoldInputs } from '../../steps/inputs/mold';
import { coatSheetTable } from '../../steps/inputs/coat';
import { wantedTable } from '../../steps/inputs/moldBench';
import { bagTable, measuredTable } from '../../steps/inputs/stone';
import type { InputTable } from '../../steps/kit/inputTable';
import { InputFold, InputRows } from '../InputRows';

export interface MoldFieldsProps {
  readonly mold: MoldInputs;
  readonly disabled: boolean;
  readonly onChange: (change: Partial<MoldInputs>) => void;
}

/** Inputs of the first view. */
export function MoldRows({
  fields,
  mold,
  ...props
}: MoldFieldsProps & { readonly fields: readonly (keyof MoldInputs)[] }) {
  return <InputRows table={moldTable} values={mold} fields={fields} {...props} />;
}

const groups = { bag: bagTable, measured: measuredTable, wanted: wantedTable, coatSheet: coatSheetTable };
type Group = keyof typeof groups;
const emptyWords: Readonly<Record<Group, string>> = {
  bag: 'not given',
  measured: 'not measured',
  wanted: 'as drawn',
  coatSheet: 'not given',
};

export interface MoldFoldProps extends MoldFieldsProps {
  readonly fold: string;
  readonly remark: string;
  /** Inputs that another answer makes idle. */
  readonly idle?: readonly (keyof MoldInputs)[];
  readonly children?: React.ReactNode;
}

/** One fold: its inputs, and what the bag, the sheets or the bench say to it. */
export function MoldFold({ fold, remark, idle = [], mold, disabled, onChange, children }: MoldFoldProps) {
  return (
    <InputFold
      table={moldTable}
      values={mold}
      fold={fold}
      remark={remark}
      own={Object.fromEntries(idle.map((name) => [name, null]))}
      disabled={disabled}
      onChange={onChange}
    >
      {(Object.keys(groups) as Group[]).map((group) => (
        <InputRows<InputTable>
          key={group}
          table={groups[group]}
          values={mold[group]}
          // A group that is whole in one fold says so itself; of the measured ones each says it.
          {...(moldTable[group].fold === fold ? {} : { fold })}
          emptyWord={emptyWords[group]}
          disabled={disabled}
          onChange={(change) => onChange({ [group]: { ...mold[group], ...change } })}
        />
      ))}
      {children}
    </InputFold>
  );
}

/** How many of a group have been given, for the closed line. */
export function givenWords(group: Readonly<Record<string, number | null>>, none: string): string {
  const given = Object.values(group).filter((value) => value !== null).length;
  return given === 0 ? none : `${given} given`;
}
