/** Edits of the list of clamps as plain functions from list to list, and how its lines are called. */
import { defaultClamp, type Clamp } from '../../steps/inputs/clamp';

/** One more line: like the last one, at a place of its own. */
export function withClampAdded(clamps: readonly Clamp[]): Clamp[] {
  const last = clamps.at(-1);
  const ids = new Set(clamps.map(({ id }) => id));
  let number = clamps.length + 1;
  while (ids.has(`clamps-${number}`)) number++;
  const id = `clamps-${number}`;
  if (last === undefined) return [{ ...defaultClamp, id }];
  return [...clamps, { ...last, id, count: 1, placed: 'at a place', xMm: 0, yMm: 0 }];
}

export function withClampChanged(clamps: readonly Clamp[], id: string, change: Partial<Clamp>): Clamp[] {
  return clamps.map((clamp) => (clamp.id === id ? { ...clamp, ...change } : clamp));
}
