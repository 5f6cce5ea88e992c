/** What this tab has deleted, kept in memory so that every delete can be undone until the tab ends. */
import { meshKeysIn } from './meshShelf';
import { meshKeysOf, type Project } from './project';
import type { Records, StoredTexts } from './records';
import type { ListedProject } from './state';

export interface Deleted {
  readonly listed: ListedProject;
  /** The version that storage did not have yet; null when everything was saved. */
  readonly unsaved: Project | null;
  /** Everything that was stored of it: entry, records, timers, oven run and their clock. */
  readonly texts: StoredTexts;
  /** Meshes that its texts name, in whatever format they are. */
  readonly meshKeys: ReadonlySet<string>;
}

/** Takes a project out of storage. */
export function takeOutProject(
  records: Records,
  listed: ListedProject,
  unsaved: Project | undefined,
): Deleted {
  const texts = records.takeOut(listed.id);
  const meshKeys = new Set([...texts.values()].flatMap(meshKeysIn));
  if (unsaved !== undefined) for (const key of meshKeysOf(unsaved)) meshKeys.add(key);
  return { listed, unsaved: unsaved ?? null, texts, meshKeys };
}
