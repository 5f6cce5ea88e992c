/** The shape of the bench card and its phase pages as plain data. */
import type { BenchBlank, BenchPhase } from '../steps/bench/blank';
import type { DecisionWord } from '../steps/shared/decision';
import type { Drawing } from './card/drawing';

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

/** One action: one line with its number. */
export interface Action {
  /** Stable; the record is kept by it. */
  readonly id: string;
  readonly text: string;
  /** Ids of the figures whose numbers stand in the text. */
  readonly figures: readonly string[];
  /** Room to write, here or on the card. */
  readonly blanks: readonly PrintedBlank[];
  readonly done: boolean;
}

/** A blank with what was written into it. */
export interface PrintedBlank extends BenchBlank {
  /** '' until something was. */
  readonly written: string;
}

/** Facts in rows that stand before the actions of a phase. */
export interface FactTable {
  readonly caption: string;
  readonly columns: readonly string[];
  /** As many cells as columns. */
  readonly rows: readonly (readonly string[])[];
}

export interface PhasePage {
  readonly id: BenchPhase;
  readonly title: string;
  /** Once per phase, after the lead word. */
  readonly caution: string;
  /** Why checks say stop that the maker must know of before this phase. */
  readonly stops: readonly string[];
  readonly table: FactTable | null;
  readonly actions: readonly Action[];
  /** Who did it, and a note; one of each for the page. */
  readonly signedBy: string;
  readonly note: string;
}

/** One of the twelve numbers of the card. */
export interface CardNumber {
  readonly label: string;
  readonly value: string;
  /** What goes after it, smaller. */
  readonly after: string;
}

export interface BenchCard {
  /** One line: date, file, hash, version. */
  readonly of: string;
  readonly word: DecisionWord;
  readonly stamp: string;
  readonly headline: string;
  readonly numbers: readonly CardNumber[];
  readonly drawings: readonly { readonly drawing: Drawing; readonly under: string }[];
  readonly blanks: readonly PrintedBlank[];
  readonly safety: string;
  readonly footer: string;
}

export interface ChecklistModel {
  readonly title: string;
  /** Why this checklist lacks results, a sentence each; none when it is complete. */
  readonly incomplete: readonly string[];
  readonly card: BenchCard;
  readonly phases: readonly PhasePage[];
  /** Noted under lines that this paper has no more; nothing that was saved is lost. */
  readonly earlier: readonly { readonly id: string; readonly told: string }[];
  /** All of them, in the order of the paper. */
  readonly blanks: readonly PrintedBlank[];
}
