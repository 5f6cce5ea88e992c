/**
 * The records of the projects in storage: per project one entry that points to its current record slot.
 *
 * A save writes the record into a new slot, then flips the entry to it; the slot before stays until the next flip.
 * So a save that fails at any point leaves the former state readable.
 */
import * as z from 'zod/mini';
import { checksumAgrees, withChecksum } from './checksum';
import { decodeProject, encodeProject, type LoadOutcome } from './envelope';
import type { MoveAside } from './keptAside';
import {
  benchClockKey,
  entryKey,
  entryPrefix,
  ovenRunKey,
  parseEntryKey,
  parseRecordKey,
  recordKey,
  timersKey,
} from './keys';
import { isJsonObject } from './json';
import { projectSchema, type Project } from './project';
import type { ListedProject } from './state';
import { isQuotaError, type StoragePort } from './storagePort';

const slotSchema = z.number().check(z.minimum(1), z.multipleOf(1));
const entrySchema = z.extend(
  z.pick(projectSchema, { id: true, enclosure: true, name: true, createdAt: true, changedAt: true }),
  {
    slot: slotSchema,
    /** The last good record before the current one, null for none. Entries of older apps do not tell. */
    formerSlot: z.optional(z.nullable(slotSchema)),
  },
);
type Entry = z.infer<typeof entrySchema>;

export type ReadOutcome =
  /** `recovered`: the current record was damaged and the one before it is handed over. */
  | { readonly outcome: 'ok' | 'migrated' | 'recovered'; readonly project: Project }
  | { readonly outcome: 'newer'; readonly format: number }
  | { readonly outcome: 'damaged'; readonly reason: string }
  /** Neither an entry nor a record. */
  | { readonly outcome: 'absent' };

export type WriteOutcome = 'saved' | 'full' | 'denied';

/** The stored texts of one project, to be put back as they were. */
export type StoredTexts = ReadonlyMap<string, string>;

export interface RecordsOptions {
  readonly storage: StoragePort;
  readonly moveAside: MoveAside;
  /** Told in a plain sentence when damage was met. */
  readonly onDamage: (note: string) => void;
  /** Told the text of a record that was dropped; what it named may be named by nothing now. */
  readonly onDropped: (text: string) => void;
}

export type Records = ReturnType<typeof createRecords>;

/** What went wrong with a write, told apart by the error's name. */
export function writeOutcomeOf(error: unknown): WriteOutcome {
  return isQuotaError(error) ? 'full' : 'denied';
}

export function createRecords({ storage, moveAside, onDamage, onDropped }: RecordsOptions) {
  /** Slots in storage, newest first. It looks at every key, so only what is in doubt may ask. */
  function slotsOf(id: string): number[] {
    return storage
      .keys()
      .flatMap((key) => {
        const parsed = parseRecordKey(key);
        return parsed?.id === id ? [parsed.slot] : [];
      })
      .sort((a, b) => b - a);
  }

  /** Slots in the order in which they are to be trusted; the others than the current one are looked for when asked. */
  function* slotsByTrust(id: string, entry: Entry | null): Generator<number> {
    if (entry !== null) yield entry.slot;
    for (const slot of slotsOf(id)) if (slot !== entry?.slot) yield slot;
  }

  /** The same as a list, without a look at every key where the entry names all there are. */
  function knownSlots(id: string, entry: Entry | null): number[] {
    // A tab that ended between its two writes has left a record above the pointer.
    const isCutShort = entry !== null && storage.getItem(recordKey(id, entry.slot + 1)) !== null;
    if (entry?.formerSlot === undefined || isCutShort || unsettled.has(id))
      return [...slotsByTrust(id, entry)];
    return entry.formerSlot === null ? [entry.slot] : [entry.slot, entry.formerSlot];
  }

  /** Projects with a slot that had to be left where it is, for want of room to keep it aside. */
  const unsettled = new Set<string>();

  function readEntry(id: string): Entry | null {
    const text = storage.getItem(entryKey(id));
    if (text === null) return null;
    try {
      const value: unknown = JSON.parse(text);
      const checked = entrySchema.safeParse(value);
      return checked.success && isJsonObject(value) && checksumAgrees(value) ? checked.data : null;
    } catch {
      return null;
    }
  }

  function read(id: string, entry = readEntry(id)): ReadOutcome {
    const called = entry === null ? 'A project' : `"${entry.enclosure}, ${entry.name}"`;
    let reason: string | null = null;
    let foundDamage = false;
    for (const slot of slotsByTrust(id, entry)) {
      const text = storage.getItem(recordKey(id, slot));
      const loaded = text === null ? missing : decodeOwn(text, id);
      if (loaded.outcome === 'newer') return loaded;
      if (loaded.outcome === 'damaged') {
        reason ??= loaded.reason;
        foundDamage ||= text !== null;
        moveAside(recordKey(id, slot));
        continue;
      }
      if (reason === null) return loaded;
      pointTo(loaded.project, slot);
      onDamage(
        `The last save of ${called} was damaged (${reason}). It is kept aside, and the save before it stands in its place.`,
      );
      return { outcome: 'recovered', project: loaded.project };
    }
    if (entry === null && reason === null) return { outcome: 'absent' };
    reason ??= missing.reason;
    if (foundDamage) {
      onDamage(`${called} cannot be read: ${reason}. What was found is kept aside and can be saved to disk.`);
    }
    return { outcome: 'damaged', reason };
  }

  function readListed(id: string): ListedProject {
    const entry = readEntry(id);
    if (entry === null) moveAside(entryKey(id));
    const loaded = read(id, entry);
    if (!('project' in loaded)) {
      const { enclosure, name, createdAt, changedAt } = entry ?? unreadable;
      const condition = loaded.outcome === 'newer' ? 'newer' : 'damaged';
      return { id, enclosure, name, createdAt, changedAt, meshKey: null, importKey: null, condition };
    }
    if (entry === null) pointTo(loaded.project, slotsOf(id)[0] ?? 1);
    return listedOf(loaded.project);
  }

  /** Mends the entry. Without room it stays as it is, and the record is found again the same way next time. */
  function pointTo(project: Project, slot: number): void {
    try {
      storage.setItem(entryKey(project.id), entryText(project, { slot }));
    } catch (error) {
      if (writeOutcomeOf(error) === 'full')
        onDamage('There is no room to mend the project list; free some space.');
    }
  }

  function write(project: Project): WriteOutcome {
    const { id } = project;
    const entry = readEntry(id);
    const slots = knownSlots(id, entry);
    const slot = Math.max(0, ...slots) + 1;
    const formerSlot = slots.find((one) => isGood(id, one)) ?? null;
    const key = recordKey(id, slot);
    try {
      storage.setItem(key, encodeProject(project));
      storage.setItem(entryKey(id), entryText(project, { slot, formerSlot }));
    } catch (error) {
      storage.removeItem(key);
      return writeOutcomeOf(error);
    }
    dropSlots(
      id,
      slots.filter((one) => one !== formerSlot),
    );
    return 'saved';
  }

  function isGood(id: string, slot: number): boolean {
    const { outcome } = decodeOwn(storage.getItem(recordKey(id, slot)) ?? '', id);
    return outcome === 'ok' || outcome === 'migrated';
  }

  /** Texts that must not be lost are moved aside or left. */
  function dropSlots(id: string, slots: readonly number[]): void {
    const dropped = slots.map((slot) => dropSlot(recordKey(id, slot)));
    if (dropped.every(Boolean)) unsettled.delete(id);
    else unsettled.add(id);
  }

  /** False when the text had to stay. */
  function dropSlot(key: string): boolean {
    const text = storage.getItem(key);
    if (text === null) return true;
    const { outcome } = decodeProject(text);
    if (outcome === 'newer') return false;
    if (outcome === 'damaged') return moveAside(key);
    storage.removeItem(key);
    onDropped(text);
    return true;
  }

  return {
    read: (id: string): ReadOutcome => read(id),
    write,
    has: (id: string): boolean => storage.getItem(entryKey(id)) !== null,
    list: (): ListedProject[] => entryIds(storage).map(readListed),
    /** The line of one project, null when it has no entry. */
    listOne: (id: string): ListedProject | null =>
      storage.getItem(entryKey(id)) === null ? null : readListed(id),

    /** Takes a project out of storage; the texts put it back exactly. The entry goes first: without it there is no project. */
    takeOut(id: string): StoredTexts {
      const slots = knownSlots(id, readEntry(id));
      const texts = new Map<string, string>();
      for (const key of [
        entryKey(id),
        timersKey(id),
        ovenRunKey(id),
        benchClockKey(id),
        ...slots.map((slot) => recordKey(id, slot)),
      ]) {
        const text = storage.getItem(key);
        if (text === null) continue;
        texts.set(key, text);
        storage.removeItem(key);
      }
      return texts;
    },

    /** All or nothing. The entry goes last: it is what makes the project appear. */
    putBack(texts: StoredTexts): WriteOutcome {
      const inOrder = [...texts].sort(
        ([a], [b]) => Number(a.startsWith(entryPrefix)) - Number(b.startsWith(entryPrefix)),
      );
      try {
        for (const [key, text] of inOrder) storage.setItem(key, text);
        return 'saved';
      } catch (error) {
        for (const [key] of inOrder) storage.removeItem(key);
        return writeOutcomeOf(error);
      }
    },

    /** Removes what a tab that ended between two writes has left: records without an entry, and those it had no time to drop. */
    dropLeftovers(): void {
      const slotsById = new Map<string, number[]>();
      for (const key of storage.keys()) {
        const parsed = parseRecordKey(key);
        if (parsed !== undefined)
          slotsById.set(parsed.id, [...(slotsById.get(parsed.id) ?? []), parsed.slot]);
      }
      for (const [id, slots] of slotsById) {
        if (storage.getItem(entryKey(id)) === null) dropSlots(id, slots);
        else if (slots.length > 2) dropSlots(id, outdated(slots, readEntry(id)));
      }
    },
  };
}

/** Slots below the pointer that the entry does not name. What is above it may be another tab's save that is going on. */
function outdated(slots: readonly number[], entry: Entry | null): number[] {
  if (entry?.formerSlot === undefined) return [];
  return slots.filter((slot) => slot < entry.slot && slot !== entry.formerSlot);
}

const missing = { outcome: 'damaged', reason: 'its record is missing' } as const;
const unreadable = { enclosure: 'Unreadable', name: 'project', createdAt: '', changedAt: '' };

function decodeOwn(text: string, id: string): LoadOutcome {
  const loaded = decodeProject(text);
  const strange = 'project' in loaded && loaded.project.id !== id;
  return strange ? { outcome: 'damaged', reason: 'its record belongs to another project' } : loaded;
}

function entryIds(storage: StoragePort): string[] {
  return storage.keys().flatMap((key) => parseEntryKey(key) ?? []);
}

function entryText(
  { id, enclosure, name, createdAt, changedAt }: Project,
  slots: Pick<Entry, 'slot' | 'formerSlot'>,
): string {
  const entry: Entry = { id, enclosure, name, createdAt, changedAt, ...slots };
  return JSON.stringify(withChecksum(entry));
}

export function listedOf(project: Project): ListedProject {
  const { id, enclosure, name, createdAt, changedAt, pattern, madeOf } = project;
  const meshKey = pattern?.meshKey ?? null;
  const importKey = madeOf?.import.meshKey ?? null;
  return { id, enclosure, name, createdAt, changedAt, meshKey, importKey, condition: 'ok' };
}
