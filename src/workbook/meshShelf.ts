/**
 * Packed meshes by content hash: one copy in storage however many projects use it.
 *
 * A stored mesh goes when no saved text names it any more and nothing undoable wants it. "Names" means that its key
 * stands anywhere in a record or in bytes kept aside, so that a record of a newer or damaged format still counts. To look
 * for names is to read every record, so only meshes that something has stopped naming are looked for.
 */
import { readPackHeader } from '../core/mesh/packHeader';
import { Problem } from '../core/problem';
import type { MoveAside } from './keptAside';
import { keptAsidePrefix, meshPrefix, meshStorageKey, recordPrefix } from './keys';
import { writeOutcomeOf, type WriteOutcome } from './records';
import type { StoragePort } from './storagePort';

export type MeshLookup =
  { readonly found: true; readonly packed: string } | { readonly found: false; readonly reason: string };

/** As `meshKey` makes them; the SHA-256 of a model file is longer. */
const anyMeshKey = /\b[0-9a-f]{32}\b/gu;

/** Keys of the meshes that a text names, in whatever format it is. */
export const meshKeysIn = (text: string): readonly string[] => text.match(anyMeshKey) ?? [];

export type MeshShelf = ReturnType<typeof createMeshShelf>;

export function createMeshShelf(storage: StoragePort, moveAside: MoveAside) {
  /** Meshes that this tab may need again although storage may not have them: not saved yet, or wanted for undo. */
  const held = new Map<string, string>();
  /** Something has stopped naming these since they were last looked for. */
  const suspects = new Set<string>();

  function hold(meshKey: string, packed: string | null): void {
    const mesh = packed ?? held.get(meshKey) ?? storage.getItem(meshStorageKey(meshKey));
    if (mesh !== null) held.set(meshKey, mesh);
  }

  return {
    /** Keeps a mesh in memory; with null the stored one. */
    hold,

    has: (meshKey: string): boolean => held.has(meshKey) || storage.getItem(meshStorageKey(meshKey)) !== null,

    /** Looks at the header only: whoever unpacks the mesh checks the rest. */
    find(meshKey: string): MeshLookup {
      const inMemory = held.get(meshKey);
      if (inMemory !== undefined) return { found: true, packed: inMemory };
      const key = meshStorageKey(meshKey);
      const packed = storage.getItem(key);
      if (packed === null)
        return { found: false, reason: 'The saved model is missing. Import the model file again.' };
      try {
        readPackHeader(packed);
        return { found: true, packed };
      } catch (error) {
        if (!(error instanceof Problem)) throw error;
        // A mesh in a newer packing is whole; this app just cannot read it.
        if (error.code !== 'pack.newer') moveAside(key);
        return { found: false, reason: error.message };
      }
    },

    /** Moves a stored mesh that could not be unpacked out of the way of a fresh import. */
    setAside(meshKey: string): void {
      held.delete(meshKey);
      moveAside(meshStorageKey(meshKey));
    },

    /** Writes the mesh if storage has it not. */
    store(meshKey: string): WriteOutcome {
      const packed = held.get(meshKey);
      const key = meshStorageKey(meshKey);
      if (packed === undefined || storage.getItem(key) !== null) return 'saved';
      try {
        storage.setItem(key, packed);
        return 'saved';
      } catch (error) {
        return writeOutcomeOf(error);
      }
    },

    /** A text that names meshes has gone. */
    suspect(text: string): void {
      for (const meshKey of meshKeysIn(text)) suspects.add(meshKey);
    },

    /** A saved text is known to name this mesh. */
    trust: (meshKey: string): void => void suspects.delete(meshKey),

    /** Anything may have happened: at the start, and when room is needed. */
    suspectAll(): void {
      for (const key of storage.keys())
        if (key.startsWith(meshPrefix)) suspects.add(key.slice(meshPrefix.length));
    },

    /** Removes suspected meshes that nothing names and that are not in `wanted`. */
    sweep(wanted: ReadonlySet<string>): void {
      const spare = new Set([...suspects].filter((meshKey) => !wanted.has(meshKey)));
      if (spare.size === 0) return;
      for (const meshKey of spare) suspects.delete(meshKey);
      for (const key of storage.keys()) {
        if (spare.size === 0) return;
        if (!key.startsWith(recordPrefix) && !key.startsWith(keptAsidePrefix)) continue;
        const text = storage.getItem(key) ?? '';
        for (const meshKey of spare) if (text.includes(meshKey)) spare.delete(meshKey);
      }
      for (const meshKey of spare) storage.removeItem(meshStorageKey(meshKey));
    },

    /** Lets go of meshes in memory that are not in `wanted`. */
    prune(wanted: ReadonlySet<string>): void {
      for (const meshKey of held.keys())
        if (!wanted.has(meshKey)) {
          held.delete(meshKey);
          suspects.add(meshKey);
        }
    },
  };
}
