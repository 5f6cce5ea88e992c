/**
 * The oven run that is on, one entry in storage per project, apart from the document: undo must not stop an oven. Times
 * are those of the bench clock, so that the run goes on over a reload and a closed lid.
 */
import * as z from 'zod/mini';
import type { BenchKind } from './benchStore';
import { ovenRunKey } from './keys';

const ms = z.number().check(z.minimum(0));
const logColumnSchema = z.object({
  name: z.string(),
  timesS: z.array(z.number()),
  valuesC: z.array(z.number()),
  gaps: z.array(z.object({ fromS: z.number(), untilS: z.number() })),
});

const placeSchema = z.union([
  z.object({ kind: z.enum(['coldest', 'hottest', 'show middle']) }),
  z.object({ kind: z.literal('point'), atMm: z.tuple([z.number(), z.number(), z.number()]) }),
]);

const ovenRunSchema = z.object({
  /** Milliseconds since 1970; null before it is started. */
  startedAtMs: z.nullable(ms),
  /** Time for which the program was held so far. */
  heldMs: ms,
  /** Since when it is held; null when it goes on. */
  heldSinceMs: z.nullable(ms),
  endedAtMs: z.nullable(ms),
  notes: z.array(z.object({ atMs: ms, text: z.string().check(z.maxLength(400)) })),
  log: z.nullable(
    z.object({
      fileName: z.string(),
      columns: z.array(logColumnSchema).check(z.minLength(1)),
      /** What was guessed or left out on reading. */
      remarks: z.array(z.string()),
      /** Column at the laminate. */
      laminate: z.number().check(z.minimum(0)),
      /** Column in the oven's air; null: none. Runs saved before there was a choice have none. */
      air: z.prefault(z.nullable(z.number().check(z.minimum(0))), null),
      /** Where the thermocouple at the laminate sits; a point in the part's own axes. */
      place: z.prefault(placeSchema, { kind: 'coldest' }),
      /** By how much the log starts after the oven. */
      startsAfterS: z.number(),
    }),
  ),
});
export type OvenRun = z.infer<typeof ovenRunSchema>;
export type OvenRunLog = NonNullable<OvenRun['log']>;

export const noOvenRun: OvenRun = {
  startedAtMs: null,
  heldMs: 0,
  heldSinceMs: null,
  endedAtMs: null,
  notes: [],
  log: null,
};

export const ovenRunKind: BenchKind<OvenRun> = {
  called: 'The oven run',
  keyOf: ovenRunKey,
  schema: ovenRunSchema,
  none: noOvenRun,
  notSaved:
    'The browser did not let the oven run be saved: it goes on, but only while this project is open here. Write the start time down.',
};
