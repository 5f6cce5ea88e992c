/** A change of inputs as data: what a remedy proposes, a what-if tries, and Apply or `--set` enters. */
import { projectInputsSchema, type ProjectInputs } from '../inputs/project';

/** Values by the path of their input, e.g. `{ 'closing.shimMm': 0.2 }`. */
export type InputPatch = Readonly<Record<string, unknown>>;

type Tree = Record<string, unknown>;
const isTree = (value: unknown): value is Tree => typeof value === 'object' && value !== null;

/** A copy of the inputs with the value at the path replaced; null where the path leads to nothing that is there. */
export function withValueAt(
  tree: unknown,
  keys: readonly string[],
  value: unknown,
): { tree: unknown } | null {
  const [key, ...rest] = keys;
  if (key === undefined) return { tree: value };
  if (!isTree(tree) || !Object.hasOwn(tree, key)) return null;
  if (Array.isArray(tree) && !/^\d+$/u.test(key)) return null;
  const below = withValueAt(tree[key], rest, value);
  if (below === null) return null;
  return {
    tree: Array.isArray(tree)
      ? tree.map((one: unknown, index) => (index === Number(key) ? below.tree : one))
      : { ...tree, [key]: below.tree },
  };
}

/** The inputs with a patch entered; null where it is not one that the maker could enter. */
export function patched(inputs: ProjectInputs, patch: InputPatch): ProjectInputs | null {
  let tree: unknown = inputs;
  for (const [path, value] of Object.entries(patch)) {
    const next = withValueAt(tree, path.split('.'), value);
    if (next === null) return null;
    ({ tree } = next);
  }
  const parsed = projectInputsSchema.safeParse(tree);
  if (!parsed.success) return null;
  // Steps that the patch leaves alone stay the same objects: what is kept by them is not worked out again.
  const touched = new Set(Object.keys(patch).map((path) => path.split('.')[0]));
  const untouched = Object.entries(inputs).filter(([step]) => !touched.has(step));
  return { ...parsed.data, ...Object.fromEntries(untouched) };
}
