// @vitest-environment jsdom
/** The workbook's ports over a browser's storage, locks and events. */
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { createWorkbook } from '../../src/workbook';
import { browserPorts, newId } from '../../src/workbook/browserPorts';
import { browserLocks, noLocks } from '../../src/workbook/lockPort';
import { browserStorage, isQuotaError, memoryStorage } from '../../src/workbook/storagePort';
import { done, quotaError, settle } from './support';

beforeEach(() => localStorage.clear());
afterEach(() => vi.restoreAllMocks());

function denied(): never {
  throw new DOMException('denied', 'SecurityError');
}

describe('browser storage', () => {
  it('reads, lists and removes what it wrote', () => {
    const storage = browserStorage(() => localStorage);
    storage?.setItem('a', '1');
    storage?.setItem('b', '2');
    storage?.removeItem('a');
    expect([storage?.keys(), storage?.getItem('b'), storage?.getItem('a')]).toEqual([['b'], '2', null]);
  });

  it('that is denied, at the door or on reading, is none', () => {
    expect(browserStorage(denied)).toBeNull();
    const locked = Object.create(localStorage, { getItem: { value: denied } }) as Storage;
    expect(browserStorage(() => locked)).toBeNull();
  });

  it('that is full throws an error known by its name, at the limit of the browser', () => {
    const storage = browserStorage(() => localStorage);
    let thrown: unknown;
    try {
      storage?.setItem('big', 'x'.repeat(6_000_000));
    } catch (error) {
      thrown = error;
    }
    expect(isQuotaError(thrown)).toBe(true);
    expect(isQuotaError(quotaError())).toBe(true);
    for (const other of [new Error('x'), null, 'QuotaExceededError', {}])
      expect(isQuotaError(other)).toBe(false);
  });

  it('in memory does the same', () => {
    const storage = memoryStorage();
    storage.setItem('a', '1');
    expect([storage.getItem('a'), storage.getItem('b'), storage.keys()]).toEqual(['1', null, ['a']]);
    storage.removeItem('a');
    expect(storage.keys()).toEqual([]);
  });
});

/** As the standard describes it, for one exclusive lock at a time. */
function fakeLockManager(): LockManager {
  const queues = new Map<string, Promise<unknown>>();
  const request = async (
    name: string,
    options: LockOptions,
    callback: (lock: Lock | null) => unknown,
  ): Promise<unknown> => {
    const busy = queues.get(name);
    if (busy !== undefined && options.ifAvailable) return callback(null);
    if (busy !== undefined) {
      const aborted = new Promise<never>((_, reject) => {
        options.signal?.addEventListener('abort', () => reject(new DOMException('given up', 'AbortError')));
      });
      await Promise.race([busy, aborted]);
    }
    const held = Promise.resolve(callback({ name, mode: 'exclusive' })).finally(() => queues.delete(name));
    queues.set(name, held);
    return held;
  };
  return { request, query: () => Promise.resolve({}) } as LockManager;
}

describe('browser locks', () => {
  it('are held until released, and then go to the one who waits', async () => {
    const locks = browserLocks(fakeLockManager());
    const release = await locks.tryHold('a');
    expect(release).not.toBeNull();
    expect(await locks.tryHold('a')).toBeNull();
    const got = vi.fn();
    void locks.waitFor('a', new AbortController().signal).then(got);
    await settle();
    expect(got).not.toHaveBeenCalled();
    release?.();
    await settle();
    expect(got).toHaveBeenCalledWith(expect.any(Function));
  });

  it('give up a wait without an error', async () => {
    const locks = browserLocks(fakeLockManager());
    await locks.tryHold('a');
    const waiting = new AbortController();
    const outcome = locks.waitFor('a', waiting.signal);
    waiting.abort();
    expect(await outcome).toBeNull();
  });

  it('that fail otherwise say so', async () => {
    const manager = { request: () => Promise.reject(new DOMException('no', 'SecurityError')) };
    await expect(browserLocks(manager as unknown as LockManager).tryHold('a')).rejects.toThrow('no');
  });

  it('that the browser has not are granted to everybody', async () => {
    expect(browserLocks(undefined)).toBe(noLocks);
    expect(await noLocks.tryHold('a')).not.toBeNull();
    expect(await noLocks.waitFor('a', new AbortController().signal)).not.toBeNull();
  });
});

function isSaved(part: string): boolean {
  const keys = Array.from({ length: localStorage.length }, (_, i) => localStorage.key(i) ?? '');
  return keys.some((key) => localStorage.getItem(key)?.includes(part));
}

function tellOfOtherTab(): void {
  window.dispatchEvent(new StorageEvent('storage', { key: null, storageArea: localStorage }));
}

describe('browser ports', () => {
  it('carry a workbook: saved when the page is hidden, and when it goes away', async () => {
    const workbook = createWorkbook(browserPorts());
    const { id } = done(workbook.createProject({ enclosure: 'Lamp', name: 'Lid' }));
    done(await workbook.openProject(id));
    done(workbook.setInput('walls.wrongShareAllowedPercent', 0.31));
    vi.spyOn(document, 'visibilityState', 'get').mockReturnValue('hidden');
    document.dispatchEvent(new Event('visibilitychange'));
    expect(isSaved('"wrongShareAllowedPercent":0.31')).toBe(true);

    done(workbook.setInput('walls.wrongShareAllowedPercent', 0.32));
    window.dispatchEvent(new Event('pagehide'));
    expect(isSaved('"wrongShareAllowedPercent":0.32')).toBe(true);
    workbook.dispose();
  });

  it('hear what another tab wrote, until disposed', () => {
    const workbook = createWorkbook(browserPorts());
    const names = (): string[] => workbook.store.getState().projects.map(({ name }) => name);
    const other = createWorkbook(browserPorts());
    done(other.createProject({ enclosure: 'Lamp', name: 'Lid' }));
    expect(names()).toEqual([]);
    tellOfOtherTab();
    expect(names()).toEqual(['Lid']);
    workbook.dispose();
    done(other.createProject({ enclosure: 'Lamp', name: 'Base' }));
    tellOfOtherTab();
    expect(names()).toEqual(['Lid']);
    other.dispose();
  });

  it('make ids that fit into storage keys, also on a page that is not served securely', () => {
    const plain = { getRandomValues: crypto.getRandomValues.bind(crypto) } as unknown as Crypto;
    for (const id of [newId(crypto), newId(plain)]) expect(id).toMatch(/^[\w-]{32,36}$/);
    expect(newId(plain)).not.toBe(newId(plain));
  });
});
