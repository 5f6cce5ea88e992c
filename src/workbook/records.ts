/**
 * The records of the projects in storage: per project one entry that points to its current record slot.
 *
 * A save writes the record into a new slot, then flips the entry to it; the slot before stays until the next flip.
 * So a save that fails at any point leaves the former state readable.
 */
import * as z from 'zod/mini';
import { checksumAgrees, withChecksum } from './checksum';
import { decodeProject, encodeProject, type LoadOutcome } from './envelope';
import { moveAside } from './keptAside';
import {
  entryKey,
  entryPrefix,
  ovenRunKey,
  parseEntryKey,
  parseRecordKey,
  recordKey,
  timersKey,
} from './keys';
import { isJsonObject } from './migrations';
import { projectSchema, type Project } from './project';
import type { ListedProject } from './state';
import { isQuotaError, type StoragePort } from './storagePort';

const entrySchema = z.extend(
  z.pick(projectSchema, { id: true, enclosure: true, name: true, createdAt: true, changedAt: true }),
  {
    slot: z.number().check(z.minimum(1), z.multipleOf(1)),
  },
);
type Entry = z.infer<typeof entrySchema>;

export type ReadOutcome =
  /** `recovered`: the current record was damaged and the one before it is handed over. */
  | { readonly outcome: 'ok' | 'migrated' | 'recovered'; readonly project: Project }
  | { readonly outcome: 'newer'; readonly format: number }
  | { readonly outcome: 'damaged'; readonly reason: string };

export type WriteOutcome = 'saved' | 'full' | 'denied';

/** The stored texts of one project, to be put back as they were. */
export type StoredTexts = ReadonlyMap<string, string>;

export interface RecordsOptions {
  readonly storage: StoragePort;
  /** ISO 8601, UTC. */
  readonly now: () => string;
  /** Told in a plain sentence when damage was met. */
  readonly onDamage: (note: string) => void;
}

export type Records = ReturnType<typeof createRecords>;

/** What went wrong with a write, told apart by the error's name. */
export function writeOutcomeOf(error: unknown): WriteOutcome {
  return isQuotaError(error) ? 'full' : 'denied';
}

export function createRecords({ storage, now, onDamage }: RecordsOptions) {
  /** Slots in storage, newest first. */
  function slotsOf(id: string): number[] {
    return storage
      .keys()
      .flatMap((key) => {
        const parsed = parseRecordKey(key);
        return parsed?.id === id ? [parsed.slot] : [];
      })
      .sort((a, b) => b - a);
  }

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

  function read(id: string): ReadOutcome {
    const entry = readEntry(id);
    const called = entry === null ? 'A project' : `"${entry.enclosure}, ${entry.name}"`;
    const pointed = entry?.slot;
    const others = slotsOf(id).filter((slot) => slot !== pointed);
    const order = pointed === undefined ? others : [pointed, ...others];
    let reason: string | null = null;
    let foundDamage = false;
    for (const slot of order) {
      const text = storage.getItem(recordKey(id, slot));
      const loaded = text === null ? missing : decodeOwn(text, id);
      if (loaded.outcome === 'newer') return loaded;
      if (loaded.outcome === 'damaged') {
        reason ??= loaded.reason;
        foundDamage ||= text !== null;
        moveAside(storage, recordKey(id, slot), now());
        continue;
      }
      if (reason === null) return loaded;
      pointTo(loaded.project, slot);
      onDamage(
        `The last save of ${called} was damaged (${reason}). It is kept aside, and the save before it stands in its place.`,
      );
      return { outcome: 'recovered', project: loaded.project };
    }
    reason ??= missing.reason;
    if (foundDamage) {
      onDamage(`${called} cannot be read: ${reason}. What was found is kept aside and can be saved to disk.`);
    }
    return { outcome: 'damaged', reason };
  }

  function readListed(id: string): ListedProject {
    const entry = readEntry(id);
    if (entry === null) moveAside(storage, entryKey(id), now());
    const loaded = read(id);
    if (loaded.outcome === 'newer' || loaded.outcome === 'damaged') {
      const { enclosure, name, createdAt, changedAt } = entry ?? unreadable;
      return { id, enclosure, name, createdAt, changedAt, condition: loaded.outcome };
    }
    if (entry === null) pointTo(loaded.project, slotsOf(id)[0] ?? 1);
    return listedOf(loaded.project);
  }

  /** Mends the entry. Without room it stays as it is, and the record is found again the same way next time. */
  function pointTo(project: Project, slot: number): void {
    try {
      storage.setItem(entryKey(project.id), entryText(project, slot));
    } catch (error) {
      if (writeOutcomeOf(error) === 'full')
        onDamage('There is no room to mend the project list; free some space.');
    }
  }

  function write(project: Project): WriteOutcome {
    const former = readEntry(project.id)?.slot;
    const slot = (slotsOf(project.id)[0] ?? 0) + 1;
    const key = recordKey(project.id, slot);
    try {
      storage.setItem(key, encodeProject(project));
      storage.setItem(entryKey(project.id), entryText(project, slot));
    } catch (error) {
      storage.removeItem(key);
      return writeOutcomeOf(error);
    }
    dropOldSlots(project.id, slot, former);
    return 'saved';
  }

  /** Keeps the current slot and the last good one before it; texts that must not be lost are moved aside or left. */
  function dropOldSlots(id: string, current: number, former: number | undefined): void {
    const others = slotsOf(id).filter((slot) => slot !== current);
    const formerFirst = [...others].sort((a, b) => Number(b === former) - Number(a === former));
    let kept = false;
    for (const slot of formerFirst) {
      const good = isGood(slot, id);
      if (good && !kept) kept = true;
      else dropSlot(id, slot);
    }
  }

  function isGood(slot: number, id: string): boolean {
    const { outcome } = decodeOwn(storage.getItem(recordKey(id, slot)) ?? '', id);
    return outcome === 'ok' || outcome === 'migrated';
  }

  function dropSlot(id: string, slot: number): void {
    const key = recordKey(id, slot);
    const { outcome } = decodeProject(storage.getItem(key) ?? '');
    if (outcome === 'damaged') moveAside(storage, key, now());
    else if (outcome !== 'newer') storage.removeItem(key);
  }

  function keysOf(id: string): string[] {
    return [entryKey(id), timersKey(id), ovenRunKey(id), ...slotsOf(id).map((slot) => recordKey(id, slot))];
  }

  return {
    read,
    write,
    has: (id: string): boolean => storage.getItem(entryKey(id)) !== null,
    list: (): ListedProject[] => entryIds(storage).map(readListed),

    /** Takes a project out of storage; the texts put it back exactly. */
    takeOut(id: string): StoredTexts {
      const texts = new Map<string, string>();
      for (const key of keysOf(id)) {
        const text = storage.getItem(key);
        if (text !== null) texts.set(key, text);
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

    /** Removes records that no entry names: left by a tab that was closed between two writes. */
    dropOrphans(): void {
      const known = new Set(entryIds(storage));
      for (const key of storage.keys()) {
        const parsed = parseRecordKey(key);
        if (parsed !== undefined && !known.has(parsed.id)) dropSlot(parsed.id, parsed.slot);
      }
    },
  };
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

function entryText({ id, enclosure, name, createdAt, changedAt }: Project, slot: number): string {
  const entry: Entry = { id, enclosure, name, createdAt, changedAt, slot };
  return JSON.stringify(withChecksum(entry));
}

export function listedOf({ id, enclosure, name, createdAt, changedAt }: Project): ListedProject {
  return { id, enclosure, name, createdAt, changedAt, condition: 'ok' };
}
