/** Undo and redo of the open project, kept apart per project, with bursts of typing taken together. */
import { meshKeysOf, type Project } from './project';
import type { Undoable, WorkbookStore } from './state';

/** Edits of the same group that follow each other within this time are one undo step. */
export const coalesceMs = 1000;

interface Stash {
  readonly project: Project;
  readonly pastStates: Partial<Undoable>[];
  readonly futureStates: Partial<Undoable>[];
}

export type History = ReturnType<typeof createHistory>;

export function createHistory(store: WorkbookStore, nowMs: () => number) {
  const { temporal } = store;
  const stashes = new Map<string, Stash>();
  let lastGroup: { readonly name: string; readonly atMs: number } | null = null;

  function setUntracked(project: Project | null): void {
    temporal.getState().pause();
    store.setState({ project });
    temporal.getState().resume();
  }

  function step(direction: 'undo' | 'redo'): Project | null {
    lastGroup = null;
    temporal.getState()[direction]();
    const { project } = store.getState();
    if (project === null) return null;
    const changed = { ...project, changedAt: new Date(nowMs()).toISOString() };
    setUntracked(changed);
    return changed;
  }

  function drop(): void {
    lastGroup = null;
    temporal.getState().clear();
  }

  return {
    /** Shows a project with the history it had in this tab, unless it was changed elsewhere since. */
    show(project: Project | null): void {
      const shown = store.getState().project;
      if (shown !== null) {
        const { pastStates, futureStates } = temporal.getState();
        stashes.set(shown.id, { project: shown, pastStates, futureStates });
      }
      setUntracked(project);
      drop();
      const stash = project === null ? undefined : stashes.get(project.id);
      if (project === null || stash === undefined) return;
      stashes.delete(project.id);
      if (stash.project.changedAt !== project.changedAt) return;
      temporal.setState({ pastStates: stash.pastStates, futureStates: stash.futureStates });
    },

    /** Replaces the open project by a version from another tab; its history no longer fits. */
    replace(project: Project | null): void {
      setUntracked(project);
      drop();
    },

    /** Takes an edit of the open project. */
    commit(project: Project, group: string | null): void {
      const atMs = nowMs();
      const joins = group !== null && lastGroup?.name === group && atMs - lastGroup.atMs <= coalesceMs;
      lastGroup = group === null ? null : { name: group, atMs };
      if (joins) setUntracked(project);
      else store.setState({ project });
    },

    /** The project after the step, null when none is open. */
    undo: (): Project | null => step('undo'),
    redo: (): Project | null => step('redo'),

    forget: (id: string): void => void stashes.delete(id),

    /** Mesh keys that an undo or redo in this tab can bring back. */
    meshKeys(): Set<string> {
      const { pastStates, futureStates } = temporal.getState();
      const stashed = [...stashes.values()].flatMap((stash) => [...stash.pastStates, ...stash.futureStates]);
      const keys = new Set<string>();
      for (const { project } of [...pastStates, ...futureStates, ...stashed]) {
        if (project) for (const key of meshKeysOf(project)) keys.add(key);
      }
      return keys;
    },
  };
}
