/** `--set` with any path and any value: taken as it is, or refused by the name of the path. */
import { parseArguments } from '../../../src/report/parseArguments';
import { setInput } from '../../../src/report/setInput';
import { defaultProjectInputs, inputSpecs, projectInputsSchema } from '../../../src/steps/inputs/project';
import type { Chance } from '../chance';
import { Finding, orRefused, type FuzzTarget } from '../fuzzTarget';
import { mutatedJson, mutatedText } from '../mutate';

const paths = Object.keys(inputSpecs);

function valueAt(path: string): unknown {
  return path
    .split('.')
    .reduce<unknown>((tree, key) => (tree as Record<string, unknown>)[key], defaultProjectInputs);
}

function anyValue(chance: Chance, path: string): unknown {
  const spec = inputSpecs[path]!;
  if (spec.kind === 'number' && chance.below(2) === 0)
    return chance.pick([
      spec.min,
      spec.max,
      spec.min - 1e-9,
      spec.max + 1e-9,
      (spec.min + spec.max) / 2,
      spec.default,
    ]);
  return mutatedJson(chance, valueAt(path));
}

export const setInputs: FuzzTarget = {
  name: '--set',
  run(chance) {
    const path = chance.pick(paths);
    const hurt = chance.below(5) === 0 ? mutatedText(chance, path) : path;
    const word = `${hurt}=${JSON.stringify(anyValue(chance, path))}`;
    const given = orRefused(() => parseArguments(['--stl', 'a.stl', '--set', word]));
    const assignment = given?.set[0];
    if (assignment === undefined) return;
    const inputs = orRefused(() => setInput(defaultProjectInputs, assignment.path, assignment.value));
    if (inputs === null) return;
    if (!projectInputsSchema.safeParse(inputs).success)
      throw new Finding(`${word} was taken and is not valid`);
  },
};
