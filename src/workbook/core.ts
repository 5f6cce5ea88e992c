/** The parts that every action of the workbook shares: storage, history, saver and the list, tied together. */
import type { Deleted } from './deleted';
import { createEditorLocks } from './editorLocks';
import { createHistory } from './history';
import { listKeptAside, moveAside as moveValueAside } from './keptAside';
import { createMeshShelf } from './meshShelf';
import { meshKeysOf, type Project } from './project';
import { createRecords, listedOf, type ReadOutcome, type WriteOutcome } from './records';
import { createSaver } from './saver';
import { createShelf } from './shelf';
import { createWorkbookStore, type ListedProject, type SaveState } from './state';
import { memoryStorage } from './storagePort';
import { sizedStorage } from './storageSizes';
import type { WorkbookPorts } from './workbookApi';

export type WorkbookCore = ReturnType<typeof createCore>;

export function createCore(ports: WorkbookPorts) {
  const storage = sizedStorage(ports.storage ?? memoryStorage());
  const now = (): string => new Date(ports.nowMs()).toISOString();
  const store = createWorkbookStore();
  const history = createHistory(store, ports.nowMs);
  const locks = createEditorLocks(ports.locks);
  const meshes = createMeshShelf(storage, moveAside);
  const records = createRecords({
    storage,
    moveAside,
    onDamage: addNote,
    onDropped: (text) => meshes.suspect(text),
  });
  const shelf = createShelf({
    storage,
    moveAside,
    // No project can have this id.
    alone: (action) => locks.during('*shelf', action),
    newId: ports.newId,
    now,
    onCards: (cards) => store.setState({ shelf: cards }),
    onTrouble: addNote,
  });
  const saver = createSaver({ write, onDue: flush, onStatus: showSaveState });
  /** `deleted` can be put back, by id; `openingId` is about to be opened, so its lock must be kept. */
  const session: { readonly deleted: Map<string, Deleted>; openingId: string | null } = {
    deleted: new Map(),
    openingId: null,
  };

  function addNote(note: string): void {
    store.setState(({ notes }) => (notes.includes(note) ? {} : { notes: [...notes, note] }));
  }

  function showSaveState(): void {
    const status = saver.status();
    const failed = status === 'full' || status === 'denied';
    const calm = store.getState().editor === 'elsewhere' ? 'readOnly' : status;
    const saveState: SaveState = ports.storage === null ? 'denied' : failed ? status : calm;
    if (saveState !== store.getState().saveState) store.setState({ saveState });
  }

  /** False when there is no room for the copy: the value then stays where it is and must be left alone. */
  function moveAside(foundAt: string): boolean {
    const moved = moveValueAside(storage, foundAt, now());
    refreshKeptAside();
    return moved;
  }

  function refreshKeptAside(): void {
    store.setState({ keptAside: listKeptAside(storage) });
  }

  /** Reads the list from storage; versions that wait for storage stand in front of the saved ones. */
  function refreshList(): void {
    const byId = new Map(records.list().map((listed) => [listed.id, listed]));
    for (const project of saver.allWaiting()) byId.set(project.id, listedOf(project));
    store.setState({ projects: [...byId.values()].sort(byName) });
    refreshKeptAside();
  }

  /** Puts one line into the list in place of the former; null takes it out. */
  function showLine(projectId: string, listed: ListedProject | null): void {
    const others = store.getState().projects.filter(({ id }) => id !== projectId);
    store.setState({ projects: listed === null ? others : [...others, listed].sort(byName) });
  }

  /** Reads one line of the list from storage. */
  function refreshLine(projectId: string): void {
    const waiting = saver.waiting(projectId);
    showLine(projectId, waiting === undefined ? records.listOne(projectId) : listedOf(waiting));
  }

  /** A project has a new version: list it and have it written. */
  function takeChange(project: Project): void {
    showLine(project.id, listedOf(project));
    saver.mark(project);
  }

  /** Meshes that may still be asked for although no record in storage names them. */
  function wantedMeshes(): Set<string> {
    const wanted = history.meshKeys();
    for (const { meshKeys } of session.deleted.values()) for (const key of meshKeys) wanted.add(key);
    for (const project of [store.getState().project, ...saver.allWaiting()])
      if (project !== null) for (const key of meshKeysOf(project)) wanted.add(key);
    return wanted;
  }

  /** `named` are meshes that a text has just been saved for, so that nobody need look whether there is one. */
  function tidyMeshes(named: Iterable<string> = []): void {
    const wanted = wantedMeshes();
    meshes.prune(wanted);
    for (const key of named) meshes.trust(key);
    meshes.sweep(wanted);
  }

  function write(project: Project): WriteOutcome {
    return writeWithMeshes(meshKeysOf(project), () => records.write(project));
  }

  /** Meshes first, then what names them: a record never names a mesh that is not there. */
  function writeWithMeshes(meshKeys: Iterable<string>, writeTexts: () => WriteOutcome): WriteOutcome {
    const own = new Set(meshKeys);
    const attempt = (): WriteOutcome => {
      for (const key of own) {
        const outcome = meshes.store(key);
        if (outcome !== 'saved') return outcome;
      }
      return writeTexts();
    };
    const outcome = attempt();
    if (outcome !== 'full') return outcome;
    // What is wanted for undo only is held in memory too; it gives way to what has to be saved.
    meshes.suspectAll();
    meshes.sweep(own);
    return attempt();
  }

  /** Where the import of a made pattern cannot be read, the project goes on without it, and a note says so. */
  function withoutLostImport(project: Project): Project {
    const { madeOf, enclosure, name } = project;
    if (madeOf === null) return project;
    const found = meshes.find(madeOf.import.meshKey);
    if (found.found) return project;
    addNote(
      `"${enclosure}, ${name}": ${madeOf.import.fileName}, which its pattern was made of, is left out. ${found.reason}`,
    );
    return { ...project, madeOf: null };
  }

  function flush(): SaveState {
    saver.flush();
    tidyMeshes();
    const openId = store.getState().project?.id;
    locks.releaseIdle((id) => id === openId || id === session.openingId || saver.waiting(id) !== undefined);
    showSaveState();
    return store.getState().saveState;
  }

  /** The newest version: open, waiting for storage, or saved. */
  function readCurrent(id: string): ReadOutcome {
    const { project } = store.getState();
    const newest = project?.id === id ? project : saver.waiting(id);
    return newest === undefined ? records.read(id) : { outcome: 'ok', project: newest };
  }

  /** Puts a project into the workbook and tries to save it at once; null for a model that the workbook already has. */
  function add(
    project: Project,
    packedMesh: string | null,
    packedImport: string | null,
  ): { done: true; id: string } {
    if (project.pattern !== null) meshes.hold(project.pattern.meshKey, packedMesh);
    if (project.madeOf !== null) meshes.hold(project.madeOf.import.meshKey, packedImport);
    takeChange(project);
    flush();
    return { done: true, id: project.id };
  }

  return {
    ports,
    storage,
    now,
    store,
    history,
    locks,
    meshes,
    records,
    shelf,
    saver,
    session,
    addNote,
    refreshKeptAside,
    refreshList,
    refreshLine,
    moveAside,
    takeChange,
    tidyMeshes,
    flush,
    writeWithMeshes,
    readCurrent,
    withoutLostImport,
    add,
  };
}

function byName(a: ListedProject, b: ListedProject): number {
  return (
    a.enclosure.localeCompare(b.enclosure) ||
    a.name.localeCompare(b.name) ||
    a.createdAt.localeCompare(b.createdAt) ||
    a.id.localeCompare(b.id)
  );
}

/** Why a project is not handed over, for the maker. */
export function whyUnreadable(loaded: ReadOutcome): string {
  if (loaded.outcome === 'newer') {
    return `This project was saved by a newer version of the workbook (format ${loaded.format}). Update the app to open it; until then it is left as it is.`;
  }
  if (loaded.outcome === 'absent') {
    return 'This project is not in this browser: it was deleted, or the link is from another browser. Choose one from the list, or open its project file.';
  }
  const reason = loaded.outcome === 'damaged' ? loaded.reason : 'it changed meanwhile';
  return `This project cannot be read: ${reason}. Damaged data is kept aside and can be saved to disk.`;
}
