/** One input of a project changed by its path, checked against the same schema as the page's fields. */
import { Problem } from '../core/problem';
import type { InputSpec } from '../steps/kit/inputTable';
import { specAt, projectInputsSchema, type ProjectInputs } from '../steps/inputs/project';
import { withValueAt } from '../steps/shared/patch';
import { movedInputs } from './movedInputs';

/** What the spec allows, as the end of a sentence. */
function allowed(spec: InputSpec | null): string {
  if (spec?.kind === 'number')
    return `must be a ${spec.whole === true ? 'whole number' : 'number'} from ${spec.min} to ${spec.max}${spec.unit === '' ? '' : ` ${spec.unit}`}`;
  if (spec?.kind === 'choice') return `must be one of ${spec.choices.map(({ value }) => value).join(', ')}`;
  return `does not have the right shape${spec === null ? '' : `: ${spec.meaning}`}`;
}

type Tree = Record<string, unknown>;
const isTree = (value: unknown): value is Tree => typeof value === 'object' && value !== null;

/** `lost`: the path that is not there, where another was asked for that holds it. */
function noSuchInput(path: string, lost: string = path): Problem {
  const moved = movedInputs[lost];
  if (moved !== undefined)
    return new Problem('set.movedInput', `--set ${path}: ${lost} has moved. It is now ${moved}.`);
  const what = lost === path ? 'there is no such input' : `there is no input ${lost}`;
  return new Problem('set.noSuchInput', `--set ${path}: ${what}. List them with --inputs.`);
}

/** The first path that the schema did not take over, e.g. a misspelled field of a card. */
function firstLost(given: unknown, taken: unknown, path: string): string | null {
  if (!isTree(given) || !isTree(taken)) return null;
  for (const [key, value] of Object.entries(given)) {
    const below = path === '' ? key : `${path}.${key}`;
    if (!Object.hasOwn(taken, key)) return below;
    const lost = firstLost(value, taken[key], below);
    if (lost !== null) return lost;
  }
  return null;
}

/** @throws Problem that names the path and what it must be */
export function setInput(inputs: ProjectInputs, path: string, value: unknown): ProjectInputs {
  const at = withValueAt(inputs, path.split('.'), value);
  if (at === null) throw noSuchInput(path);
  const changed = at.tree;
  const parsed = projectInputsSchema.safeParse(changed);
  if (!parsed.success) {
    const issue = parsed.error.issues[0];
    const wrong = issue?.path.join('.') ?? path;
    // Checks of our own say themselves what is wrong.
    const why = issue?.code === 'custom' ? issue.message : allowed(specAt(wrong) ?? specAt(path) ?? null);
    throw new Problem('set.wrongValue', `--set ${path}: ${wrong} ${why}.`);
  }
  const lost = firstLost(changed, parsed.data, '');
  if (lost !== null) throw noSuchInput(path, lost);
  return parsed.data;
}
