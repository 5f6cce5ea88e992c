/** One enclosure part: what the maker gave, and the record of what was done at the bench. Nothing derived. */
import * as z from 'zod/mini';
import type { PatternRecord } from '../steps/shared/context';
import { defaultProjectInputs, projectInputsSchema, type ProjectInputs } from '../steps/inputs/project';
import { nameSchema } from './names';
import { madeOfSchema, patternSchema, type MadeOf } from './patternSchema';
import { cardCopiesSchema, type CardCopy } from './shelfCards';

// The page's content security policy forbids code made at run time; zod must know before its first parse.
z.config({ jitless: true });

const longestEntry = 400;

/** What was signed off on one line of the checklist. */
export interface RecordLine {
  readonly done: boolean;
  /** As the maker wrote it, with or without a unit. */
  readonly measured: string;
  readonly initials: string;
}

/** The saved document. All fields are of document scope: saved, undoable, printed. */
export interface Project {
  /** Letters, digits, `-` and `_`: it is part of storage keys. */
  readonly id: string;
  /** Name of the enclosure that the part belongs to; projects are grouped by it. */
  readonly enclosure: string;
  readonly name: string;
  /** ISO 8601, UTC. */
  readonly createdAt: string;
  /** ISO 8601, UTC. */
  readonly changedAt: string;
  /** null until a pattern file is imported. */
  readonly pattern: PatternRecord | null;
  /** What the pattern was made of; null while it is an import. */
  readonly madeOf: MadeOf | null;
  readonly inputs: ProjectInputs;
  /** Frozen copies of the shelf's cards that the inputs were filled from. */
  readonly cards: readonly CardCopy[];
  /** By checklist line id; a line that was never touched is absent. */
  readonly record: Readonly<Record<string, RecordLine>>;
}

const entryText = z.string().check(z.maxLength(longestEntry));

export const recordLineSchema = z.object({ done: z.boolean(), measured: entryText, initials: entryText });

const projectIdSchema = z.string().check(z.regex(/^[A-Za-z0-9_-]{1,64}$/));

export const projectSchema = z.object({
  id: projectIdSchema,
  enclosure: nameSchema,
  name: nameSchema,
  createdAt: z.iso.datetime(),
  changedAt: z.iso.datetime(),
  pattern: z.nullable(patternSchema),
  /** Documents that were saved while format 7 was still growing have neither this nor cards. */
  madeOf: z.prefault(z.nullable(madeOfSchema), null),
  inputs: projectInputsSchema,
  cards: z.prefault(cardCopiesSchema, []),
  record: z.record(z.string().check(z.minLength(1)), recordLineSchema),
});

/** The facts that make a new project; everything else starts at its default. */
export interface NewProject {
  readonly id: string;
  readonly enclosure: string;
  readonly name: string;
  /** ISO 8601, UTC. */
  readonly at: string;
}

export function newProject({ id, enclosure, name, at }: NewProject): Project {
  return {
    id,
    enclosure,
    name,
    createdAt: at,
    changedAt: at,
    pattern: null,
    madeOf: null,
    inputs: defaultProjectInputs,
    cards: [],
    record: {},
  };
}

/** Of all models that the project needs: the one in use first, then the import that it was made of. */
export const meshKeysOf = ({ pattern, madeOf }: Pick<Project, 'pattern' | 'madeOf'>): readonly string[] =>
  [pattern, madeOf?.import].flatMap((one) => one?.meshKey ?? []);
