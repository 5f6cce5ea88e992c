/** The shape of the checklist as plain data. */
import type { Caution, VerdictWord } from '../core/figure';

/** Facts that the reports do not know. */
export interface ChecklistFacts {
  /** The enclosure, or what the maker calls the work. */
  readonly project: string;
  readonly part: string;
  /** As it is to be printed; the model reads no clock. */
  readonly date: string;
  readonly appVersion: string;
  /** Format number of the saved project. */
  readonly formatNumber: number;
}

/** What was entered on a line, on screen or carried over from paper. */
export interface LineRecord {
  readonly done: boolean;
  readonly measured: string;
  readonly initials: string;
}
export type ChecklistRecord = Readonly<Record<string, LineRecord>>;

export interface ChecklistLine {
  /** Stable; the record is kept by it. */
  readonly id: string;
  readonly text: string;
  /** Ids of the figures whose numbers stand in the text. */
  readonly figures: readonly string[];
  /** Room for a value that is measured at the bench. */
  readonly measure?: { readonly label: string; readonly unit: string };
  readonly record: LineRecord;
}

/** Facts in rows that stand before the lines of a section. */
export interface ChecklistFactTable {
  readonly caption: string;
  readonly columns: readonly string[];
  /** As many cells as columns. */
  readonly rows: readonly (readonly string[])[];
}

export interface ChecklistSection {
  readonly id: string;
  readonly title: string;
  /** Verdicts that the maker must know before this section; "go" is not repeated on paper. */
  readonly warnings: readonly { readonly word: VerdictWord; readonly reason: string; readonly fix: string }[];
  readonly cautions: readonly Caution[];
  readonly table?: ChecklistFactTable;
  readonly lines: readonly ChecklistLine[];
}

/** A label with its value, both ready to print. */
export interface LabeledText {
  readonly label: string;
  readonly value: string;
  /** How the value is known, e.g. "measured" or "common practice"; '' for plain facts. */
  readonly status: string;
}

export interface ChecklistModel {
  readonly title: string;
  /** Why this checklist lacks results, a sentence each; none when it is complete. */
  readonly incomplete: readonly string[];
  readonly header: readonly LabeledText[];
  /** The worst verdict of all steps, with one line per step. */
  readonly ready: {
    readonly word: VerdictWord;
    readonly steps: readonly { readonly title: string; readonly word: VerdictWord }[];
  };
  readonly quantities: readonly LabeledText[];
  readonly sections: readonly ChecklistSection[];
}
