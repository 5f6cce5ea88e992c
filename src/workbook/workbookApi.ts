/** The one surface through which pages use the saved document. */
import type { PatternRecord } from '../steps/shared/context';
import type { ProjectInputs } from '../steps/inputs/project';
import type { BenchTimer } from './benchTimers';
import type { OvenRun } from './ovenRun';
import type { LockPort } from './lockPort';
import type { Outcome } from './outcome';
import type { MadeOf } from './patternSchema';
import type { Project, RecordLine } from './project';
import type { ProjectFileOutcome } from './projectFile';
import type { CardCopy, CardValues, ShelfCard } from './shelfCards';
import type { CardKind } from './shelfKinds';
import type { SaveState, WorkbookStore } from './state';
import type { StoragePort } from './storagePort';
import type { Usage } from './usage';

/** A project as it is put in from outside: from a file, a duplicate, or the demo. */
export interface ProjectSeed {
  readonly enclosure: string;
  readonly name: string;
  readonly inputs: ProjectInputs;
  readonly cards?: readonly CardCopy[];
  readonly pattern: PatternRecord | null;
  /** The packed mesh that `pattern.meshKey` names. */
  readonly packedMesh: string | null;
  /** The workbook already has its mesh. */
  readonly madeOf?: MadeOf | null;
}

/** Everything outside that the workbook touches, so that tests can stand in for it. */
export interface WorkbookPorts {
  /** null when the browser denies storage: the workbook then works in memory and says so. */
  readonly storage: StoragePort | null;
  readonly locks: LockPort;
  /** Milliseconds since 1970. */
  readonly nowMs: () => number;
  /** Milliseconds since this page was opened, by a clock that nobody sets; it may stand while the machine sleeps. */
  readonly pageMs: () => number;
  readonly newId: () => string;
  /** The demo's projects with their meshes packed; called on the very first start and by `restoreDemo`. */
  readonly demoSeeds: () => Promise<readonly ProjectSeed[]>;
  /** Calls back when the page gets hidden or closed. Returns the way to stop. */
  readonly onHidden: (listener: () => void) => () => void;
  /** Calls back with the key (null: all) that another tab wrote. Returns the way to stop. */
  readonly onOtherTabWrote: (listener: (key: string | null) => void) => () => void;
}

/** A text to be saved to disk by the page. */
export interface TextFile {
  readonly fileName: string;
  readonly text: string;
}

/** A card as it is put on the shelf. */
export interface NewCard {
  readonly kind: CardKind;
  readonly name: string;
  readonly note?: string;
  readonly values?: CardValues;
}

/** All are refused while the shelf cannot be read, has no room, or another tab changes it at that very moment. */
export interface ShelfActions {
  readonly addCard: (card: NewCard) => Promise<Outcome<{ card: ShelfCard }>>;
  /** Puts the card on the shelf that a project has a copy of. */
  readonly putCopyOnShelf: (copy: CardCopy) => Promise<Outcome>;
  /** The recipe is given the card as it is saved now, which another tab may have changed. */
  readonly changeCard: (id: string, recipe: (card: ShelfCard) => ShelfCard) => Promise<Outcome>;
  /** Copies in projects stay. Undone by `undeleteCard` until the end of this tab. */
  readonly deleteCard: (id: string) => Promise<Outcome>;
  readonly undeleteCard: (id: string) => Promise<Outcome>;
  /** Writes down that a roll was out of the freezer, and for what. */
  readonly logHours: (id: string, hoursH: number, project: string) => Promise<Outcome>;
  readonly removeSession: (id: string, sessionId: string) => Promise<Outcome>;
  readonly exportShelf: () => Outcome<{ file: TextFile }>;
  /** Adds the cards of a saved shelf; what stands on this one stays as it is. */
  readonly importShelf: (text: string) => Promise<Outcome<{ added: number }>>;
}

/**
 * Changes to the open project are refused (with the reason) while another tab edits it. Actions on a project that is
 * not open wait for nothing: they are refused when another tab has it open.
 */
export interface Workbook {
  readonly store: WorkbookStore;

  /** Seeds the demo on the very first start. Call once; the list is readable before it resolves. Tells the projects that were put in. */
  readonly start: () => Promise<readonly string[]>;

  /** Adds an empty project without opening it. */
  readonly createProject: (names: { enclosure: string; name: string }) => Outcome<{ id: string }>;
  /** Adds two halves of one enclosure, each keeping the other as its mate, without opening them. Their new ids. */
  readonly addMates: (seeds: readonly [ProjectSeed, ProjectSeed]) => readonly [string, string];
  readonly renameProject: (id: string, names: { enclosure: string; name: string }) => Promise<Outcome>;
  /** Copies inputs and pattern; the bench record of the copy starts empty, since nothing of it was done. */
  readonly duplicateProject: (id: string) => Outcome<{ id: string }>;
  /** Undone by `undeleteProject` until the end of this tab. */
  readonly deleteProject: (id: string) => Promise<Outcome>;
  /** Puts back everything that was stored of the project: its records, its mesh, its timers and its oven run. */
  readonly undeleteProject: (id: string) => Outcome;
  /** Makes a delete final and frees its space. */
  readonly forgetDeleted: (id: string) => void;
  readonly openProject: (id: string) => Promise<Outcome<{ load: 'ok' | 'migrated' | 'recovered' }>>;
  readonly closeProject: () => void;

  /**
   * Sets one input by its path, e.g. `walls.toleranceMm` or `plies.materials.0.arealWeightGsm`. Edits of the same path
   * within a second are one undo step.
   */
  readonly setInput: (path: string, value: unknown) => Outcome;
  /** Changes inputs by a recipe on a draft; `group` names edits that belong to one undo step when close in time. */
  readonly updateInputs: (recipe: (draft: DraftInputs) => void, group?: string) => Outcome;
  /**
   * Fills inputs of the open project from a card and keeps a frozen copy of it, in one undo step. `entryId` names the
   * entry of the kind's list; null adds one, or fills the inputs that a project has once.
   */
  readonly pickCard: (card: ShelfCard, entryId: string | null) => Outcome;
  /**
   * Takes a pattern and its packed mesh (null for a mesh the workbook already has); null takes the pattern out.
   * `recipe` changes inputs that a new file makes stale, in the same undo step. `made` tells of a pattern that was made of
   * the present one, which is kept then.
   */
  readonly setPattern: (
    pattern: PatternRecord | null,
    packedMesh: string | null,
    recipe?: (draft: DraftInputs) => void,
    made?: Pick<MadeOf, 'choices' | 'summary'>,
  ) => Outcome;
  /** Puts the import that the present pattern was made of in its place, read as it was before. */
  readonly goBackToImport: () => Outcome;
  readonly setRecord: (lineId: string, patch: Partial<RecordLine>) => Outcome;
  readonly undo: () => void;
  readonly redo: () => void;
  readonly canUndo: () => boolean;
  readonly canRedo: () => boolean;

  /** The saved mesh of a project; null without a pattern or when its mesh is missing or damaged (then a note says so). */
  readonly packedMeshOf: (projectId: string) => string | null;
  /** The same of the import that the pattern was made of; null too where it was made of none. */
  readonly packedImportOf: (projectId: string) => string | null;
  /** Keeps the saved mesh of a project aside after unpacking it failed, so that a fresh import can take its place. */
  readonly setMeshAside: (projectId: string) => void;
  /** Adds the project of a project file that was read and checked, under a new id when its own is taken. Does not open it. */
  readonly importProjectFile: (read: ProjectFileOutcome) => Outcome<{ id: string }>;
  readonly exportProjectFile: (projectId: string) => Outcome<{ file: TextFile }>;
  readonly restoreDemo: () => Promise<Outcome<{ ids: readonly string[] }>>;

  /** The newest version of any project, to look at; null when it cannot be read. */
  readonly readProject: (projectId: string) => Project | null;

  /** Timers and oven run of the open project; refused like its inputs while another tab edits it. */
  readonly setTimers: (timers: readonly BenchTimer[]) => Outcome;
  readonly setOvenRun: (run: OvenRun) => Outcome;
  /**
   * The clock that both count by, milliseconds since 1970: it never goes back. `setBackMs` is by how much the clock on
   * the wall was set back meanwhile.
   */
  readonly benchClock: () => { readonly nowMs: number; readonly setBackMs: number };

  /** The shop's cards, over all projects. */
  readonly shelf: ShelfActions;

  /** Damaged bytes as a file to save; null when the key is gone. */
  readonly keptAsideFile: (key: string) => TextFile | null;
  readonly discardKeptAside: (key: string) => void;
  readonly dismissNotes: () => void;

  readonly usage: () => Usage;
  /** Writes what is waiting, now. */
  readonly flush: () => SaveState;
  /** Flushes, lets go of the locks and stops listening. */
  readonly dispose: () => void;
}

/** Project inputs as a recipe may change them. */
export type DraftInputs = ProjectInputs;
