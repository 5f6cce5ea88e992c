/** All inputs of a project, step by step. */
import * as z from 'zod/mini';
import { isFew, mostCounts } from '../../core/counts';
import {
  schemaOf,
  specsBelow,
  startOf,
  type InputSpec,
  type InputSpecs,
  type InputTable,
} from '../kit/inputTable';
import { benchTable } from './bench';
import { closingTable } from './closing';
import { cureTable } from './cure';
import { cuttingTable } from './cutting';
import { finishTable } from './finish';
import { fitTable } from './fit';
import { moldTable } from './mold';
import { partTable } from './part';
import { patternTable } from './pattern';
import { pliesTable } from './plies';
import { wallsTable } from './walls';

/** The tables of the steps, in the order of the work. */
export const inputTables = {
  part: partTable,
  pattern: patternTable,
  walls: wallsTable,
  plies: pliesTable,
  cutting: cuttingTable,
  closing: closingTable,
  mold: moldTable,
  cure: cureTable,
  bench: benchTable,
  fit: fitTable,
  finish: finishTable,
} satisfies Readonly<Record<string, InputTable>>;

export const projectInputsSchema = z
  .object({
    part: schemaOf(partTable),
    pattern: schemaOf(patternTable),
    walls: schemaOf(wallsTable),
    plies: schemaOf(pliesTable),
    cutting: schemaOf(cuttingTable),
    closing: schemaOf(closingTable),
    mold: schemaOf(moldTable),
    cure: schemaOf(cureTable),
    bench: schemaOf(benchTable),
    fit: schemaOf(fitTable),
    finish: schemaOf(finishTable),
  })
  .check(({ value, issues }) => {
    for (const [step, inputs] of Object.entries(value))
      for (const [list, entries] of Object.entries(inputs))
        if (Array.isArray(entries) && !isFew('listEntries', entries.length))
          issues.push({
            code: 'custom',
            input: entries,
            path: [step, list],
            message: `must have no more than ${mostCounts.listEntries} entries`,
          });
  });
export type ProjectInputs = z.infer<typeof projectInputsSchema>;

export const defaultProjectInputs: ProjectInputs = {
  part: startOf(partTable),
  pattern: startOf(patternTable),
  walls: startOf(wallsTable),
  plies: startOf(pliesTable),
  cutting: startOf(cuttingTable),
  closing: startOf(closingTable),
  mold: startOf(moldTable),
  cure: startOf(cureTable),
  bench: startOf(benchTable),
  fit: startOf(fitTable),
  finish: startOf(finishTable),
};

const steps: readonly (readonly [string, InputTable])[] = Object.entries(inputTables);

export const inputSpecs: InputSpecs = Object.assign(
  {},
  ...steps.map(([step, table]) => specsBelow(table, `${step}.`)),
);

function specsWithin(of: 'entries' | 'fields'): Readonly<Record<string, InputSpecs>> {
  const held = steps.flatMap(([step, table]) =>
    Object.entries(table).flatMap(([key, { within }]) =>
      within?.of === of ? [[`${step}.${key}`, specsBelow(within.table)] as const] : [],
    ),
  );
  return Object.fromEntries(held);
}

/** Fields of the entries of each list; the path of a field is `<list>.<position>.<field>`. */
export const entrySpecs = specsWithin('entries');

/** Fields of the inputs that are a group of numbers, null until given; the path of a field is `<group>.<field>`. */
export const groupSpecs = specsWithin('fields');

/** The spec of an input by its path, also of a field inside a list's entry or a group. */
export function specAt(path: string): InputSpec | undefined {
  const [step, list, position = '', field] = path.split('.');
  const of = `${step}.${list}`;
  return field === undefined ? (inputSpecs[path] ?? groupSpecs[of]?.[position]) : entrySpecs[of]?.[field];
}
