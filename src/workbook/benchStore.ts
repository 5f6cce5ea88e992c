/**
 * What runs at the bench, oven run and timers: one text in storage per project and kind, apart from the document, since
 * undo must not stop an oven.
 */
import type * as z from 'zod/mini';
import { checksumAgrees, checksumReason, withChecksum } from './checksum';
import type { MoveAside } from './keptAside';
import { isJsonObject, type JsonObject } from './json';
import { refused, type Outcome } from './outcome';
import type { StoragePort } from './storagePort';

/** One kind of thing that runs at the bench. */
export interface BenchKind<Value> {
  /** In the maker's words, for sentences: "The oven run". */
  readonly called: string;
  readonly keyOf: (projectId: string) => string;
  readonly schema: z.ZodMiniType<Value>;
  /** Before anything was started. */
  readonly none: Value;
  /** Sentence for a write that the browser refused. */
  readonly notSaved: string;
}

/** The format that this app writes; apps before it wrote the bare value. */
const benchFormat = 1;

type BenchOutcome<Value> =
  | { readonly outcome: 'ok'; readonly value: Value }
  /** Written by a later version of this app; to be left alone. */
  | { readonly outcome: 'newer'; readonly format: number }
  | { readonly outcome: 'damaged'; readonly reason: string };

function encode(value: unknown): string {
  return JSON.stringify(withChecksum({ format: benchFormat, saved: value }));
}

/** Reads a saved text; never throws. */
function decode<Value>({ schema }: BenchKind<Value>, text: string): BenchOutcome<Value> {
  let value: unknown;
  try {
    value = JSON.parse(text);
  } catch {
    return { outcome: 'damaged', reason: 'the text breaks off or was changed' };
  }
  const isBare = !isJsonObject(value) || !('format' in value);
  if (!isBare && !checksumAgrees(value as JsonObject)) return { outcome: 'damaged', reason: checksumReason };
  const { format, saved } = isBare ? { format: benchFormat, saved: value } : (value as JsonObject);
  if (typeof format === 'number' && format > benchFormat) return { outcome: 'newer', format };
  const read = schema.safeParse(saved);
  return read.success
    ? { outcome: 'ok', value: read.data }
    : { outcome: 'damaged', reason: 'it is not as it should be' };
}

export interface BenchStoreOptions {
  readonly storage: StoragePort;
  readonly moveAside: MoveAside;
  /** Told in a plain sentence when something could not be read. */
  readonly onTrouble: (note: string) => void;
}

export function createBenchStore({ storage, moveAside, onTrouble }: BenchStoreOptions) {
  /** What is saved; none when it is damaged (then kept aside), null when it must not be overwritten. */
  function load<Value>(kind: BenchKind<Value>, projectId: string): Value | null {
    const key = kind.keyOf(projectId);
    const text = storage.getItem(key);
    if (text === null) return kind.none;
    const loaded = decode(kind, text);
    if (loaded.outcome === 'ok') return loaded.value;
    if (loaded.outcome === 'newer') {
      onTrouble(
        `${kind.called} of this project was saved by a newer version of the workbook (format ${loaded.format}). It is left as it is; update the app to use it.`,
      );
      return null;
    }
    const moved = moveAside(key);
    onTrouble(
      `${kind.called} of this project cannot be read: ${loaded.reason}. ${moved ? 'What was found is kept aside and can be saved to disk under All projects; look at your watch and start anew.' : 'It stays where it is, because there is no room to keep it aside; free some space.'}`,
    );
    return moved ? kind.none : null;
  }

  return {
    /** What is saved; none when nothing readable is. */
    read: <Value>(kind: BenchKind<Value>, projectId: string): Value => load(kind, projectId) ?? kind.none,

    /** Never over a text that could not be read. */
    write<Value>(kind: BenchKind<Value>, projectId: string, value: Value): Outcome {
      if (load(kind, projectId) === null)
        return refused(
          `${kind.called} cannot be saved over one that this page cannot read; see the note above.`,
        );
      try {
        storage.setItem(kind.keyOf(projectId), encode(value));
        return { done: true };
      } catch {
        return refused(kind.notSaved);
      }
    },
  };
}
