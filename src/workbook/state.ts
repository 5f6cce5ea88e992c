/** What the workbook's store holds, and the scope of every field. */
import { temporal, type TemporalState } from 'zundo';
import { createStore, type StoreApi } from 'zustand/vanilla';
import { noTimers, type BenchTimer } from './benchTimers';
import type { KeptAside } from './keptAside';
import { noOvenRun, type OvenRun } from './ovenRun';
import type { Project } from './project';
import type { ShelfCard } from './shelfCards';

/**
 * How the maker's work stands with the browser's storage.
 * `full`: the last changes are only in this tab; what was saved before is untouched.
 * `denied`: the browser gives no storage, everything is only in this tab.
 * `readOnly`: another tab edits the open project; this one follows it.
 */
export type SaveState = 'saved' | 'saving' | 'full' | 'denied' | 'readOnly';

/** Who may edit the open project: this tab, another tab, or nobody because none is open. */
export type Editor = 'none' | 'here' | 'elsewhere';

/** One line of the project list. */
export interface ListedProject {
  readonly id: string;
  readonly enclosure: string;
  readonly name: string;
  /** ISO 8601, UTC. */
  readonly createdAt: string;
  /** ISO 8601, UTC. */
  readonly changedAt: string;
  /** Key of its mesh, to find it in the use of storage; null without a pattern, or when it cannot be read. */
  readonly meshKey: string | null;
  /** Key of the import that its pattern was made of; null where it was made of none. */
  readonly importKey: string | null;
  /** Only an `ok` project can be opened; the others are listed so that they can be deleted or left for a newer app. */
  readonly condition: 'ok' | 'newer' | 'damaged';
}

/**
 * Each field by its scope. Document: saved and undoable. Bench: saved, and no undo stops it. Session: this tab only.
 * Derived: read again from what is saved.
 */
export interface WorkbookState {
  /** Document: the open project. Frozen; change it through the workbook's actions only. */
  readonly project: Project | null;
  /** Session. */
  readonly editor: Editor;
  /** Bench: timers of the open project; none before the first is started. */
  readonly timers: readonly BenchTimer[];
  /** Bench: the oven run of the open project that is on or was the last. */
  readonly ovenRun: OvenRun;
  /** Session. */
  readonly saveState: SaveState;
  /** Derived. */
  readonly projects: readonly ListedProject[];
  /** Session: what was deleted in this tab and can be put back, the last one first. */
  readonly deleted: readonly ListedProject[];
  /** Derived. */
  readonly keptAside: readonly KeptAside[];
  /** Derived: the cards of the shop, over all projects, by kind and name. */
  readonly shelf: readonly ShelfCard[];
  /** Session: cards that were deleted in this tab and can be put back, the last one first. */
  readonly deletedCards: readonly ShelfCard[];
  /** Session: plain sentences on what happened to saved data (recovered, kept aside, no locks); the page shows them until dismissed. */
  readonly notes: readonly string[];
}

/** What one undo step puts back. */
export type Undoable = Pick<WorkbookState, 'project'>;
export type WorkbookStore = StoreApi<WorkbookState> & { temporal: StoreApi<TemporalState<Undoable>> };

/** Steps kept per project; they share structure, so a step costs what it changed. */
export const undoLimit = 200;

export function createWorkbookStore(): WorkbookStore {
  return createStore<WorkbookState>()(
    temporal(
      (): WorkbookState => ({
        project: null,
        editor: 'none',
        timers: noTimers,
        ovenRun: noOvenRun,
        saveState: 'saved',
        projects: [],
        deleted: [],
        keptAside: [],
        shelf: [],
        deletedCards: [],
        notes: [],
      }),
      {
        partialize: ({ project }): Undoable => ({ project }),
        equality: (past, current) => past.project === current.project,
        limit: undoLimit,
      },
    ),
  );
}
