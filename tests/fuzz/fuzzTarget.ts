import type { StepReport } from '../../src/core/figure';
import { Problem } from '../../src/core/problem';
import type { Chance } from './chance';

/** One part of the program under chance. */
export interface FuzzTarget {
  readonly name: string;
  /** Throws, or rejects, when something is found. */
  readonly run: (chance: Chance) => void | Promise<void>;
}

/** Something that must not be; the message says what with which input. */
export class Finding extends Error {}

/** What may be refused: a `Problem` with a sentence is fine, anything else that is thrown is a finding. Null when refused. */
export function orRefused<Value>(ask: () => Value): Value | null {
  try {
    return ask();
  } catch (error) {
    if (!(error instanceof Problem)) throw error;
    if (!/[.?!)]$/u.test(error.message)) throw new Finding(`refused without a sentence: ${error.message}`);
    return null;
  }
}

/** A number that is none, by the path to it; null when there is none. Flat arrays may hold NaN where a place has no value. */
export function lostNumber(value: unknown, path = ''): string | null {
  if (typeof value === 'number') return Number.isFinite(value) ? null : `${path} = ${value}`;
  if (value === null || typeof value !== 'object' || ArrayBuffer.isView(value)) return null;
  for (const [key, inner] of Object.entries(value)) {
    const lost = lostNumber(inner, `${path}.${key}`);
    if (lost !== null) return lost;
  }
  return null;
}

const noWord = /\bNaN\b|\bInfinity\b|\bundefined\b|\[object /u;

/** Neither a number that is none nor its word anywhere in the reports. */
export function checkReports(reports: ReadonlyMap<string, StepReport>, paper: string): void {
  for (const [step, report] of reports) {
    const lost = lostNumber(report, step);
    if (lost !== null) throw new Finding(lost);
    for (const { id, working } of report.figures)
      for (const line of working) if (noWord.test(line)) throw new Finding(`${id}: ${line}`);
    for (const { id, reason, fix } of report.verdicts)
      if (noWord.test(reason) || noWord.test(fix)) throw new Finding(`${id}: ${reason} ${fix}`);
  }
  const line = paper.split('\n').find((one) => noWord.test(one));
  if (line !== undefined) throw new Finding(`checklist: ${line}`);
}
