import { useId } from 'react';
import { Row } from './Row';

export interface ChoiceFieldProps<Value extends string> {
  readonly label: string;
  readonly meaning: string;
  readonly choices: readonly { readonly value: Value; readonly label: string }[];
  readonly value: Value;
  readonly note?: React.ReactNode;
  readonly disabled?: boolean;
  readonly onChange: (value: Value) => void;
}

/** One of a few named possibilities. */
export function ChoiceField<Value extends string>(props: ChoiceFieldProps<Value>) {
  const inputId = useId();
  return (
    <Row
      label={props.label}
      inputId={inputId}
      note={props.note}
      helpLabel={`What "${props.label}" means`}
      help={<p>{props.meaning}</p>}
      value={
        <select
          id={inputId}
          className="select"
          value={props.value}
          disabled={props.disabled}
          onChange={(event) => props.onChange(event.target.value as Value)}
        >
          {props.choices.map((choice) => (
            <option key={choice.value} value={choice.value}>
              {choice.label}
            </option>
          ))}
        </select>
      }
    />
  );
}
