/**
 * What runs at the bench, oven run and timers: one text in storage per project and kind, apart from the document, since
 * undo must not stop an oven.
 */
import type * as z from 'zod/mini';
import type { StoragePort } from './storagePort';

/** One kind of thing that runs at the bench. */
export interface BenchKind<Value> {
  /** In the maker's words, for sentences. */
  readonly called: string;
  readonly keyOf: (projectId: string) => string;
  readonly schema: z.ZodMiniType<Value>;
  /** Before anything was started. */
  readonly none: Value;
  /** Sentence for a write that the browser refused. */
  readonly notSaved: string;
}

export type BenchStore = ReturnType<typeof createBenchStore>;

export function createBenchStore(storage: StoragePort) {
  return {
    /** What is saved; none when nothing readable is. */
    read<Value>(kind: BenchKind<Value>, projectId: string): Value {
      const text = storage.getItem(kind.keyOf(projectId));
      if (text === null) return kind.none;
      try {
        const read = kind.schema.safeParse(JSON.parse(text));
        return read.success ? read.data : kind.none;
      } catch {
        return kind.none;
      }
    },

    /** False when the browser refuses. */
    write<Value>(kind: BenchKind<Value>, projectId: string, value: Value): boolean {
      try {
        storage.setItem(kind.keyOf(projectId), JSON.stringify(value));
        return true;
      } catch {
        return false;
      }
    },
  };
}
