/** The command line of the headless report, checked at the door. */
import { Problem } from '../core/problem';
import { parseNumber } from '../core/units/parseNumber';
import type { PartInputs } from '../steps/inputs/part';

type Unit = Exclude<PartInputs['unit'], 'unconfirmed'>;
type Pull = PartInputs['pull'];

export interface ReportArguments {
  readonly meshPath: string | null;
  readonly projectPath: string | null;
  readonly unit: Unit | null;
  readonly body: number | null;
  readonly scale: number | null;
  readonly pull: Pull | 'best' | null;
  /** In the order given. */
  readonly set: readonly { readonly path: string; readonly value: unknown }[];
  /** Folder that every file to save is written into; null writes none. */
  readonly outFolder: string | null;
  /** Model or project file of the other half. */
  readonly matePath: string | null;
  /** Which body of it; null takes all, or what its project says. */
  readonly mateBody: number | null;
  /** Height of a plane that parts the model into two halves, mm over its lowest point along the pull. */
  readonly splitMm: number | null;
  /** JSON of what goes inside. */
  readonly contentsPath: string | null;
  readonly json: boolean;
  /** The plan is worked out and printed. */
  readonly plan: boolean;
  /** The report is that with the plan applied. */
  readonly applyPlan: boolean;
  readonly listInputs: boolean;
  readonly help: boolean;
}

export const usage = `Usage:
  npm run --silent report -- --stl FILE [--unit mm|cm|m|in] [--body N] [--scale S] [--pull x,y,z|best]
                             [--project FILE] [--set PATH=JSON]... [--json] [--plan] [--apply-plan] [--out FOLDER]
                             [--mate FILE] [--mate-body N] [--contents FILE] [--split MM]
  npm run --silent report -- --inputs`;

const units: readonly Unit[] = ['mm', 'cm', 'm', 'in'];
const flagsWithValue = [
  '--stl',
  '--project',
  '--unit',
  '--body',
  '--scale',
  '--pull',
  '--set',
  '--out',
  '--mate',
  '--mate-body',
  '--split',
  '--contents',
];
const flagsAlone = ['--json', '--plan', '--apply-plan', '--inputs', '--help'];

function refuse(message: string): Problem {
  return new Problem('arguments', message);
}

/** Flags with their values, both `--flag value` and `--flag=value`. */
function splitFlags(words: readonly string[]): Map<string, string[]> {
  const found = new Map<string, string[]>();
  for (let at = 0; at < words.length; at++) {
    const word = words[at] ?? '';
    const equals = word.startsWith('--') ? word.indexOf('=') : -1;
    const flag = equals < 0 ? word : word.slice(0, equals);
    const inline = equals < 0 ? null : word.slice(equals + 1);
    if (flagsAlone.includes(flag)) {
      if (inline !== null) throw refuse(`${flag} takes no value.`);
      found.set(flag, ['']);
    } else if (flagsWithValue.includes(flag)) {
      const value = inline ?? words[++at];
      if (value === undefined) throw refuse(`${flag} needs a value after it.`);
      const values = [...(found.get(flag) ?? []), value];
      if (values.length > 1 && flag !== '--set') throw refuse(`${flag} is given twice.`);
      found.set(flag, values);
    } else
      throw refuse(`${word} is not known here. Known: ${[...flagsWithValue, ...flagsAlone].join(', ')}.`);
  }
  return found;
}

function numberOf(flag: string, text: string): number {
  const parsed = parseNumber(text);
  if (!parsed.ok) throw refuse(`${flag}: ${parsed.message}`);
  return parsed.value;
}

function unitOf(text: string | undefined): Unit | null {
  if (text === undefined) return null;
  const unit = units.find((one) => one === text);
  if (unit === undefined) throw refuse(`--unit ${text}: must be one of ${units.join(', ')}.`);
  return unit;
}

function pullOf(text: string | undefined): Pull | 'best' | null {
  if (text === undefined || text === 'best') return text ?? null;
  const parts = text.split(',').map((part) => Number(part.trim() === '' ? Number.NaN : part));
  const [x, y, z] = parts;
  if (
    parts.length !== 3 ||
    x === undefined ||
    y === undefined ||
    z === undefined ||
    !parts.every(Number.isFinite)
  )
    throw refuse(`--pull ${text}: write three numbers as x,y,z (for example 0,0,1), or best.`);
  if (x === 0 && y === 0 && z === 0) throw refuse(`--pull ${text}: the direction has no length.`);
  return [x, y, z];
}

function assignmentOf(text: string): { path: string; value: unknown } {
  const equals = text.indexOf('=');
  if (equals < 1) throw refuse(`--set ${text}: write PATH=JSON, for example plies.lineWidthMm=0.4.`);
  const path = text.slice(0, equals);
  const json = text.slice(equals + 1);
  try {
    return { path, value: JSON.parse(json) as unknown };
  } catch {
    // Shells eat quotes; a bare word can only mean a text.
    if (/^[-+]?[A-Za-z][\w -]*$/u.test(json)) return { path, value: json };
    throw refuse(`--set ${path}: ${json} is not JSON.`);
  }
}

/** @throws Problem with a sentence that names the flag */
export function parseArguments(words: readonly string[]): ReportArguments {
  const flags = splitFlags(words);
  const only = (flag: string) => flags.get(flag)?.[0];
  const body = only('--body');
  const scale = only('--scale');
  const mateBody = only('--mate-body');
  const split = only('--split');
  const parsed: ReportArguments = {
    meshPath: only('--stl') ?? null,
    projectPath: only('--project') ?? null,
    unit: unitOf(only('--unit')),
    body: body === undefined ? null : numberOf('--body', body),
    scale: scale === undefined ? null : numberOf('--scale', scale),
    pull: pullOf(only('--pull')),
    set: (flags.get('--set') ?? []).map(assignmentOf),
    outFolder: only('--out') ?? null,
    matePath: only('--mate') ?? null,
    mateBody: mateBody === undefined ? null : numberOf('--mate-body', mateBody),
    splitMm: split === undefined ? null : numberOf('--split', split),
    contentsPath: only('--contents') ?? null,
    json: flags.has('--json'),
    plan: flags.has('--plan') || flags.has('--apply-plan'),
    applyPlan: flags.has('--apply-plan'),
    listInputs: flags.has('--inputs'),
    help: flags.has('--help'),
  };
  if (!parsed.help && !parsed.listInputs && parsed.meshPath === null && parsed.projectPath === null)
    throw refuse('Give a model with --stl FILE, or a project with --project FILE; --help shows the rest.');
  if (parsed.mateBody !== null && parsed.matePath === null)
    throw refuse('--mate-body tells a body of the other half: give its file with --mate FILE.');
  if (parsed.splitMm !== null && parsed.outFolder === null)
    throw refuse('--split writes two files: say where with --out FOLDER.');
  return parsed;
}
