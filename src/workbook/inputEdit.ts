/** Changing inputs: by path or by recipe, validated before they reach the document. */
import { produce } from 'immer';
import { inputSpecs, specAt, projectInputsSchema, type ProjectInputs } from '../steps/inputs/project';
import type { InputSpec } from '../steps/kit/inputTable';
import { refused, type Outcome } from './outcome';

/** The inputs after a recipe; refused with a sentence when a value is out of its range. The former are not changed. */
export function editInputs(
  inputs: ProjectInputs,
  recipe: (draft: ProjectInputs) => void,
): Outcome<{ inputs: ProjectInputs }> {
  const next = produce(inputs, (draft) => recipe(draft));
  if (next === inputs) return { done: true, inputs };
  const checked = projectInputsSchema.safeParse(next);
  const issue = checked.error?.issues[0];
  return issue === undefined ? { done: true, inputs: next } : refused(explain(issue.path.map(String)));
}

/** The inputs with one value set by its dotted path; the path must exist already, so that a misspelt one is told. */
export function setInputAt(
  inputs: ProjectInputs,
  path: string,
  value: unknown,
): Outcome<{ inputs: ProjectInputs }> {
  const keys = path.split('.');
  const last = keys.pop() ?? '';
  const parentOf = (root: ProjectInputs): Record<string, unknown> | null => {
    let node: unknown = root;
    for (const key of keys) node = isHolder(node) && Object.hasOwn(node, key) ? node[key] : undefined;
    return isHolder(node) && Object.hasOwn(node, last) ? node : null;
  };
  if (parentOf(inputs) === null) return refused(`There is no input "${path}".`);
  return editInputs(inputs, (draft) => {
    const parent = parentOf(draft);
    if (parent !== null) parent[last] = value;
  });
}

function isHolder(node: unknown): node is Record<string, unknown> {
  return typeof node === 'object' && node !== null;
}

/** Why a value cannot be used, by the words of its input. */
export function explain(path: readonly string[]): string {
  const spec = specOf(path);
  if (spec === undefined) return `The value for "${path.join('.')}" cannot be used.`;
  if (spec.kind === 'number') {
    const unit = spec.unit === '' ? '' : ` ${spec.unit}`;
    return `${spec.label} must be a ${spec.whole ? 'whole ' : ''}number from ${spec.min} to ${spec.max}${unit}.`;
  }
  if (spec.kind === 'choice') {
    return `${spec.label} must be one of: ${spec.choices.map(({ label }) => label).join(', ')}.`;
  }
  return `The value for ${spec.label} cannot be used.`;
}

/** The spec of the input itself, of the field in a list's entry, or of the list it stands in. */
function specOf(path: readonly string[]): InputSpec | undefined {
  return specAt(path.join('.')) ?? inputSpecs[path.slice(0, 2).join('.')];
}
