/** Every input with its path, unit, default and meaning, for `--inputs`. */
import type { InputSpec } from '../steps/kit/inputTable';
import { entrySpecs, groupSpecs, inputSpecs } from '../steps/inputs/project';

function describe(path: string, spec: InputSpec): string {
  const unit = spec.unit === '' ? '' : ` ${spec.unit}`;
  const range =
    spec.kind === 'number'
      ? `; ${spec.min} to ${spec.max}${unit}`
      : spec.kind === 'choice'
        ? `; one of ${spec.choices.map(({ value }) => value).join(', ')}`
        : '';
  const shown =
    typeof spec.default === 'string'
      ? spec.default
      : spec.default === null
        ? 'not given'
        : JSON.stringify(spec.default);
  return `${path}\n    ${spec.label}. ${spec.meaning}\n    default ${shown}${spec.default === null ? '' : unit}${range}`;
}

export function inputsList(): string {
  const others = Object.entries(inputSpecs).map(([path, spec]) => describe(path, spec));
  const inLists = Object.entries(entrySpecs).flatMap(([list, fields]) =>
    Object.entries(fields).map(([field, spec]) => describe(`${list}.N.${field}`, spec)),
  );
  const inGroups = Object.entries(groupSpecs).flatMap(([group, fields]) =>
    Object.entries(fields).map(([field, spec]) => describe(`${group}.${field}`, spec)),
  );
  return [...others, ...inGroups, ...inLists].join('\n');
}
