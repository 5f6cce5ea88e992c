/** What the lines of the list are called, so that no two of an enclosure look the same. */
import type { ListedProject } from '../../workbook';
import { canBeSeen, lookOf } from '../../workbook/names';

export interface LineName {
  readonly name: string;
  /** Several of this name: when it was made helps to tell them apart. */
  readonly isShared: boolean;
}

/** Of equal names each gets its number, the one that was made first is the first. */
export function lineNames(projects: readonly ListedProject[]): ReadonlyMap<string, LineName> {
  const byLook = new Map<string, ListedProject[]>();
  for (const project of projects)
    byLook.set(lookOf(project.name), [...(byLook.get(lookOf(project.name)) ?? []), project]);
  const names = new Map<string, LineName>();
  for (const equals of byLook.values()) {
    const inOrder = equals.toSorted(
      (a, b) => a.createdAt.localeCompare(b.createdAt) || a.id.localeCompare(b.id),
    );
    for (const [at, { id, name }] of inOrder.entries()) {
      const seen = canBeSeen(name) ? name : 'without a name that can be seen';
      const isShared = inOrder.length > 1;
      names.set(id, { name: isShared ? `${seen} (${at + 1} of ${inOrder.length})` : seen, isShared });
    }
  }
  return names;
}
