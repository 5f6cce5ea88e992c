/** The few storage functions that the workbook needs, so that tests pass a fake. */
export interface StoragePort {
  getItem(key: string): string | null;
  /** May throw; `isQuotaError` tells a full storage from a denied one. */
  setItem(key: string, value: string): void;
  removeItem(key: string): void;
  keys(): readonly string[];
}

/** Browsers agree on the name of the error, not on its class or code. */
export function isQuotaError(error: unknown): boolean {
  return (
    typeof error === 'object' && error !== null && 'name' in error && error.name === 'QuotaExceededError'
  );
}

/** Keeps everything in this tab, when the browser denies storage. */
export function memoryStorage(): StoragePort {
  const items = new Map<string, string>();
  return {
    getItem: (key) => items.get(key) ?? null,
    setItem: (key, value) => void items.set(key, value),
    removeItem: (key) => void items.delete(key),
    keys: () => [...items.keys()],
  };
}

/** Wraps the browser's own storage; null when touching it is denied (some private windows, blocked site data). */
export function browserStorage(find: () => Storage): StoragePort | null {
  try {
    const storage = find();
    storage.getItem('probe');
    return {
      getItem: (key) => storage.getItem(key),
      setItem: (key, value) => storage.setItem(key, value),
      removeItem: (key) => storage.removeItem(key),
      keys: () => Array.from({ length: storage.length }, (_, i) => storage.key(i) ?? ''),
    };
  } catch {
    return null;
  }
}
