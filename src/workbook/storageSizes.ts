/** A storage that knows how much room each key takes, so that its use can be shown without reading everything each time. */
import type { StoragePort } from './storagePort';

export interface SizedStorage extends StoragePort {
  /** UTF-16 units by key, the key counted. Everything is read once, when first asked. */
  sizes(): ReadonlyMap<string, number>;
  /** Another tab wrote this key; null: any. */
  changedElsewhere(key: string | null): void;
}

export function sizedStorage(storage: StoragePort): SizedStorage {
  let known: Map<string, number> | null = null;
  const look = (key: string, value: string | null): void => {
    if (value === null) known?.delete(key);
    else known?.set(key, key.length + value.length);
  };
  return {
    ...storage,
    setItem(key, value) {
      storage.setItem(key, value);
      look(key, value);
    },
    removeItem(key) {
      storage.removeItem(key);
      look(key, null);
    },
    sizes() {
      if (known === null) {
        known = new Map();
        for (const key of storage.keys()) look(key, storage.getItem(key));
      }
      return known;
    },
    changedElsewhere(key) {
      if (key === null) known = null;
      else if (known !== null) look(key, storage.getItem(key));
    },
  };
}
