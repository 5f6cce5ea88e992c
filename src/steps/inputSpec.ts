/** How an input is described once, for the page's field, the headless `--inputs` list and validation messages. */
export interface NumberSpec {
  readonly kind: 'number';
  readonly label: string;
  /** Unit shown after the field; '' when dimensionless. */
  readonly unit: string;
  /** One plain sentence: what it is and where the maker gets it. */
  readonly meaning: string;
  /** null: nothing is given in advance, and it may stay so. */
  readonly default: number | null;
  readonly min: number;
  readonly max: number;
  /** Decimals shown. */
  readonly decimals: number;
  /** Whole numbers only. */
  readonly whole?: boolean;
}

export interface ChoiceSpec {
  readonly kind: 'choice';
  readonly label: string;
  readonly unit: '';
  readonly meaning: string;
  readonly default: string;
  readonly choices: readonly { readonly value: string; readonly label: string }[];
}

/** Free text, lists and vectors: described, edited by their own controls. */
export interface OtherSpec {
  readonly kind: 'other';
  readonly label: string;
  readonly unit: string;
  readonly meaning: string;
  readonly default: unknown;
}

export type InputSpec = NumberSpec | ChoiceSpec | OtherSpec;

/** Every input of one step by its path inside the project inputs, e.g. `walls.toleranceMm`. */
export type InputSpecs = Readonly<Record<string, InputSpec>>;
