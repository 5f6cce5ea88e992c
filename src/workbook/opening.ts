/** Opening a project as its one editor, or following the tab that edits it until that tab lets go. */
import type { Bench } from './bench';
import { whyUnreadable, type WorkbookCore } from './core';
import { keptAsidePrefix, parseEntryKey, shelfKey } from './keys';
import { refused } from './outcome';
import type { Workbook } from './workbookApi';

const noLocksNote =
  'This browser cannot tell whether another tab has the same project open. Keep it open in one tab only.';

export type Opening = ReturnType<typeof createOpening>;

export function createOpening(core: WorkbookCore, bench: Bench) {
  const { store, history, locks, records, saver, session } = core;
  let turn = 0;

  const openProject: Workbook['openProject'] = async (id) => {
    const mine = ++turn;
    session.openingId = id;
    locks.stopWaiting();
    const isEditor = await locks.take(id);
    if (mine !== turn) {
      core.flush();
      return refused('Another project was opened meanwhile.');
    }
    core.flush();
    session.openingId = null;
    const loaded = core.readCurrent(id);
    if (!('project' in loaded)) {
      locks.letGo(id);
      core.refreshLine(id);
      return refused(whyUnreadable(loaded));
    }
    const { project, editor } = store.getState();
    if (project?.id !== id) {
      history.show(loaded.project);
      bench.show(id);
    } else if (isEditor && editor === 'elsewhere') catchUp(id);
    store.setState({ editor: isEditor ? 'here' : 'elsewhere' });
    if (!locks.available) core.addNote(noLocksNote);
    if (!isEditor) void locks.takeOver(id, () => takeOver(id));
    core.flush();
    return { done: true, load: loaded.outcome };
  };

  /** The tab that had the project let it go: this one reads its last save and edits from there. */
  function takeOver(id: string): void {
    catchUp(id);
    if (store.getState().project !== null) store.setState({ editor: 'here' });
    core.flush();
  }

  function catchUp(id: string): void {
    follow(id);
    if (store.getState().project !== null) bench.follow(id);
  }

  /** Shows the open project as another tab has saved it. */
  function follow(id: string): void {
    if (saver.waiting(id) !== undefined) return;
    const loaded = records.read(id);
    if ('project' in loaded) {
      history.replace(loaded.project);
      return;
    }
    core.addNote('The open project is no longer there: it was deleted in another tab, or cannot be read.');
    leave();
  }

  /** Closes without keeping the history, because the project is gone. */
  function leave(): void {
    turn += 1;
    session.openingId = null;
    locks.stopWaiting();
    history.replace(null);
    bench.show(null);
    store.setState({ editor: 'none' });
  }

  return {
    openProject,
    leave,

    closeProject: (): void => {
      turn += 1;
      session.openingId = null;
      locks.stopWaiting();
      history.show(null);
      bench.show(null);
      store.setState({ editor: 'none' });
      core.flush();
    },

    onOtherTabWrote: (key: string | null): void => {
      core.storage.changedElsewhere(key);
      if (key?.startsWith(keptAsidePrefix)) core.refreshKeptAside();
      if (key === null || key === shelfKey) core.shelf.refresh();
      const { project, editor } = store.getState();
      // Without locks nobody is the only editor, so every tab follows.
      const follows = editor === 'elsewhere' || !locks.available;
      if (project !== null && follows && (key === null || bench.holds(key, project.id)))
        bench.follow(project.id);
      const written = key === null ? undefined : parseEntryKey(key);
      if (key === null) core.refreshList();
      else if (written === undefined) return;
      else core.refreshLine(written);
      const isOpen = project !== null && (key === null || written === project.id);
      if (isOpen && follows) follow(project.id);
    },
  };
}
