/** Damaged bytes are never overwritten: they are copied to a key of their own before anything else happens. */
import { keptAsidePrefix } from './keys';
import type { StoragePort } from './storagePort';

export interface KeptAside {
  readonly key: string;
  /** The key under which the bytes were found. */
  readonly foundAt: string;
  /** ISO 8601, UTC; when it was found. */
  readonly keptAt: string;
  readonly units: number;
}

/** As everybody who may meet damage is given it. */
export type MoveAside = (foundAt: string) => boolean;

/**
 * Moves a value aside under a new key. False when there is no room for the copy; the value then stays where it is,
 * and the caller must leave it alone.
 */
export function moveAside(storage: StoragePort, foundAt: string, keptAt: string): boolean {
  const value = storage.getItem(foundAt);
  if (value === null) return true;
  const base = `${keptAsidePrefix}${keptAt}|${foundAt}`;
  let key = base;
  for (let copy = 2; storage.getItem(key) !== null; copy += 1) key = `${base}|${copy}`;
  try {
    storage.setItem(key, value);
  } catch {
    return false;
  }
  storage.removeItem(foundAt);
  return true;
}

export function listKeptAside(storage: StoragePort): KeptAside[] {
  return storage
    .keys()
    .filter((key) => key.startsWith(keptAsidePrefix))
    .map((key) => {
      const [keptAt = '', foundAt = ''] = key.slice(keptAsidePrefix.length).split('|');
      return { key, foundAt, keptAt, units: key.length + (storage.getItem(key)?.length ?? 0) };
    })
    .sort((a, b) => a.key.localeCompare(b.key));
}
