/** One machine with a disk, locks and a clock; each tab on it gets a workbook. Everything is a stand-in. */
import * as fc from 'fast-check';
import { meshKey } from '../../src/core/mesh/meshKey';
import { packText } from '../../src/core/mesh/packHeader';
import type { PatternRecord } from '../../src/steps/shared/context';
import { createWorkbook } from '../../src/workbook';
import type { Outcome, ProjectSeed, Workbook } from '../../src/workbook';
import { noLocks, type LockPort, type Release } from '../../src/workbook/lockPort';
import type { StoragePort } from '../../src/workbook/storagePort';

/** The error as browsers throw it: known by its name only. */
export function quotaError(): Error {
  return Object.assign(new Error('full'), { name: 'QuotaExceededError' });
}

export interface Machine {
  readonly disk: Map<string, string>;
  /** On the wall, milliseconds since 1970, and the clock of every page; both are moved by hand. */
  clock: { nowMs: number; pageMs: number };
  /** Calls of all tabs, as a browser counts them: a list of the keys is one call for each of them. */
  calls: { count: number };
  /** Throws to make a write fail; the old value stays, as in a browser. */
  beforeWrite: (key: string, value: string) => void;
  /** Opens a tab. */
  tab(options?: TabOptions): Tab;
}

export interface TabOptions {
  readonly storage?: 'denied';
  readonly locks?: 'absent';
  readonly demoSeeds?: () => Promise<readonly ProjectSeed[]>;
}

export interface Tab {
  readonly workbook: Workbook;
  /** The page is put away. */
  hide(): void;
  /** The tab ends without a goodbye: nothing is flushed, its locks are freed by the browser. */
  crash(): void;
}

export function createMachine(): Machine {
  const disk = new Map<string, string>();
  const calls = { count: 0 };
  const clock = { nowMs: Date.UTC(2026, 0, 5, 8), pageMs: 0 };
  const listeners = new Map<symbol, (key: string | null) => void>();
  const locks = createLocks();
  let ids = 0;

  const machine: Machine = {
    disk,
    clock,
    calls,
    beforeWrite: () => {},
    tab(options = {}) {
      const self = Symbol('tab');
      const hidden = new Set<() => void>();
      let alive = true;
      const tellOthers = (key: string): void => {
        for (const [tab, listener] of listeners) if (tab !== self) listener(key);
      };
      const storage: StoragePort = {
        getItem(key) {
          calls.count += 1;
          return disk.get(key) ?? null;
        },
        setItem(key, value) {
          calls.count += 1;
          if (!alive) return;
          machine.beforeWrite(key, value);
          disk.set(key, value);
          tellOthers(key);
        },
        removeItem(key) {
          calls.count += 1;
          if (alive && disk.delete(key)) tellOthers(key);
        },
        keys() {
          calls.count += disk.size + 1;
          return [...disk.keys()];
        },
      };
      const workbook = createWorkbook({
        storage: options.storage === 'denied' ? null : storage,
        locks: options.locks === 'absent' ? noLocks : locks.portOf(self),
        nowMs: () => machine.clock.nowMs,
        pageMs: () => machine.clock.pageMs,
        newId: () => `id-${(ids += 1)}`,
        demoSeeds: options.demoSeeds ?? (() => Promise.resolve([])),
        onHidden(listener) {
          hidden.add(listener);
          return () => hidden.delete(listener);
        },
        onOtherTabWrote(listener) {
          listeners.set(self, listener);
          return () => listeners.delete(self);
        },
      });
      return {
        workbook,
        hide: () => hidden.forEach((listener) => listener()),
        crash() {
          alive = false;
          listeners.delete(self);
          locks.freeAll(self);
        },
      };
    },
  };
  return machine;
}

/** Lock manager of one browser: first come, first served, asynchronous like the real one. */
function createLocks(): { portOf(tab: symbol): LockPort; freeAll(tab: symbol): void } {
  const holders = new Map<string, symbol>();
  const queues = new Map<string, { tab: symbol; grant: (release: Release) => void }[]>();
  const hold = (name: string, tab: symbol): Release => {
    holders.set(name, tab);
    return () => {
      if (holders.get(name) !== tab) return;
      holders.delete(name);
      const next = queues.get(name)?.shift();
      if (next !== undefined) next.grant(hold(name, next.tab));
    };
  };
  return {
    portOf: (tab) => ({
      available: true,
      tryHold: async (name) => {
        await Promise.resolve();
        return holders.has(name) ? null : hold(name, tab);
      },
      waitFor: (name, signal) =>
        new Promise((resolve) => {
          if (!holders.has(name)) {
            resolve(hold(name, tab));
            return;
          }
          const waiting = { tab, grant: resolve };
          const queue = queues.get(name) ?? [];
          queues.set(name, [...queue, waiting]);
          signal.addEventListener('abort', () => {
            queues.set(
              name,
              (queues.get(name) ?? []).filter((one) => one !== waiting),
            );
            resolve(null);
          });
        }),
    }),
    freeAll(tab) {
      for (const [name, holder] of holders) if (holder === tab) hold(name, tab)();
    },
  };
}

/** A saved text as an app before checksums would have written it. */
export function withoutChecksum(text: string): string {
  return text.replaceAll(/,"checksum":"[0-9a-f]{8}"/g, '');
}

/** Lets pending promises finish. */
export async function settle(): Promise<void> {
  for (let turn = 0; turn < 20; turn += 1) await Promise.resolve();
}

/** The result of an action that must have worked. */
export function done<Result extends object>(outcome: Outcome<Result>): { readonly done: true } & Result {
  if (!outcome.done) throw new Error(`refused: ${outcome.reason}`);
  return outcome;
}

/** The reason of an action that must have been refused. */
export function reasonOf(outcome: Outcome): string {
  if (outcome.done) throw new Error('was not refused');
  return outcome.reason;
}

/** Text with the header of a packed mesh; what follows is noise of the given size, since nobody unpacks it here. */
export function fakePackedMesh(seed: number, payloadBytes = 64): string {
  const payload = Uint8Array.from({ length: payloadBytes }, (_, i) => (seed * 31 + i * 7) % 256);
  const grid = { stepsPerUnit: 1024, origin: [0, 0, 0] as const };
  const header = {
    vertexCount: 4,
    facetCount: 4,
    grid,
    bits: 16,
    errorFileUnits: 0.0004,
    payloadBytes,
    checksum: seed,
  };
  return packText(header, payload);
}

export function patternOf(packed: string, fileName = 'shell.stl'): PatternRecord {
  return {
    fileName,
    sha256: 'ab'.repeat(32),
    format: 'stl-binary',
    declaredUnit: null,
    triangles: 4,
    degenerateFacets: 0,
    meshKey: meshKey(packed),
    packErrorFileUnits: 0.0004,
    notes: [],
  };
}

/** A fresh seed for property tests; fast-check prints it when one fails, and `RUN_SEED` runs it again. */
export const propertySeed = Number(process.env['RUN_SEED'] ?? Date.now() % 2 ** 31);
fc.configureGlobal({ seed: propertySeed });

/** A tab with one open project, for tests that edit. */
export async function tabWithProject(
  machine = createMachine(),
): Promise<{ machine: Machine; tab: Tab; workbook: Workbook; id: string }> {
  const tab = machine.tab();
  const { id } = done(tab.workbook.createProject({ enclosure: 'Lamp', name: 'Lid' }));
  done(await tab.workbook.openProject(id));
  return { machine, tab, workbook: tab.workbook, id };
}
