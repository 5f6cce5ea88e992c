/** The actions on the open project: each one validates, commits to the history, and hands on to the saver. */
import type { PatternRecord } from '../steps/shared/context';
import type { ProjectInputs } from '../steps/inputs/project';
import type { History } from './history';
import { editInputs, setInputAt } from './inputEdit';
import type { MeshShelf } from './meshShelf';
import { withCardPicked } from './cardPicks';
import { longestName, nameSchema, trimmedName } from './names';
import { refused, type Outcome } from './outcome';
import { patternSchema, type MadeOf } from './patternSchema';
import { meshKeysOf, recordLineSchema, type Project, type RecordLine } from './project';
import type { WorkbookStore } from './state';
import type { Workbook } from './workbookApi';

export interface EditingParts {
  readonly store: WorkbookStore;
  readonly history: History;
  readonly meshes: MeshShelf;
  /** ISO 8601, UTC. */
  readonly now: () => string;
  /** The open project has a new version. */
  readonly onChanged: (project: Project) => void;
}

export type Editing = Pick<
  Workbook,
  | 'setInput'
  | 'updateInputs'
  | 'pickCard'
  | 'setPattern'
  | 'goBackToImport'
  | 'setRecord'
  | 'undo'
  | 'redo'
  | 'canUndo'
  | 'canRedo'
> & {
  /** Names of the open project. */
  readonly setNames: (names: Names) => Outcome;
};

export interface Names {
  readonly enclosure: string;
  readonly name: string;
}

export const openElsewhere =
  'This project is open in another tab, which edits it. Close it there to go on here.';

/** Names without what cannot be seen around them, or why they cannot be used. */
export function checkNames({ enclosure, name }: Names): Outcome<Names> {
  const names = { enclosure: trimmedName(enclosure), name: trimmedName(name) };
  for (const [given, which] of [
    [names.enclosure, 'enclosure'],
    [names.name, 'part'],
  ] as const) {
    if (given === '') return refused(`Give the ${which} a name that can be seen.`);
    if (!nameSchema.safeParse(given).success)
      return refused(`The name of the ${which} is too long: ${longestName} characters are the most.`);
  }
  return { done: true, ...names };
}

/** The open project, if this tab may edit it. */
export function editable(store: WorkbookStore): Outcome<{ project: Project }> {
  const { project, editor } = store.getState();
  if (project === null) return refused('No project is open.');
  return editor === 'here' ? { done: true, project } : refused(openElsewhere);
}

export function createEditing({ store, history, meshes, now, onChanged }: EditingParts): Editing {
  function commit(patch: Partial<Project>, project: Project, group: string | null): Outcome {
    const changed = { ...project, ...patch, changedAt: now() };
    history.commit(changed, group);
    onChanged(changed);
    return { done: true };
  }

  /** Runs an edit on the open project if this tab may edit it. */
  function edit(change: (project: Project) => Outcome): Outcome {
    const open = editable(store);
    return open.done ? change(open.project) : open;
  }

  function takeInputs(
    project: Project,
    edited: Outcome<{ inputs: ProjectInputs }>,
    group: string | null,
  ): Outcome {
    if (!edited.done || edited.inputs === project.inputs) return edited;
    return commit({ inputs: edited.inputs }, project, group);
  }

  function setPattern(
    project: Project,
    pattern: PatternRecord | null,
    packedMesh: string | null,
    recipe: Parameters<typeof editInputs>[1] = () => undefined,
    made: Pick<MadeOf, 'choices' | 'summary'> | null = null,
  ): Outcome {
    const edited = editInputs(project.inputs, recipe);
    if (!edited.done) return edited;
    if (pattern !== null) {
      if (!patternSchema.safeParse(pattern).success)
        return refused('The facts of this pattern file are not complete.');
      meshes.hold(pattern.meshKey, packedMesh);
      if (!meshes.has(pattern.meshKey))
        return refused('The model of this pattern is missing. Import the file again.');
    }
    holdFormer(project);
    const imported = made === null ? null : importOf(project);
    const madeOf = imported === null || made === null ? null : { ...imported, ...made };
    return commit({ pattern, madeOf, inputs: edited.inputs }, project, null);
  }

  /** Former meshes may leave storage; undo needs them. */
  function holdFormer(project: Project): void {
    for (const key of meshKeysOf(project)) meshes.hold(key, null);
  }

  function goBackToImport(project: Project): Outcome {
    const back = importBehind(project, meshes);
    if (!back.done) return back;
    holdFormer(project);
    return commit(back.patch, project, null);
  }

  function setRecord(project: Project, lineId: string, patch: Partial<RecordLine>): Outcome {
    const record = recordWith(project, lineId, patch);
    if (record === null) return refused('This entry is too long for the checklist.');
    return commit({ record }, project, `record ${lineId} ${Object.keys(patch).sort().join()}`);
  }

  return {
    setInput: (path, value) =>
      edit((project) => takeInputs(project, setInputAt(project.inputs, path, value), `input ${path}`)),
    updateInputs: (recipe, group) =>
      edit((project) => takeInputs(project, editInputs(project.inputs, recipe), group ?? null)),
    pickCard: (card, entryId) =>
      edit((project) => {
        const picked = withCardPicked(project, card, entryId, now());
        return picked.done ? commit({ inputs: picked.inputs, cards: picked.cards }, project, null) : picked;
      }),
    setPattern: (pattern, packedMesh, recipe, made) =>
      edit((project) => setPattern(project, pattern, packedMesh, recipe, made)),
    goBackToImport: () => edit(goBackToImport),
    setRecord: (lineId, patch) => edit((project) => setRecord(project, lineId, patch)),
    setNames: (names) =>
      edit((project) => {
        const { enclosure, name } = names;
        return commit({ enclosure, name }, project, null);
      }),
    ...undoAndRedo({ store, history, onChanged }),
  };
}

function undoAndRedo({ store, history, onChanged }: Pick<EditingParts, 'store' | 'history' | 'onChanged'>) {
  function step(direction: 'undo' | 'redo'): void {
    if (!can(direction)) return;
    const project = history[direction]();
    if (project !== null) onChanged(project);
  }

  function can(direction: 'undo' | 'redo'): boolean {
    const { pastStates, futureStates } = store.temporal.getState();
    const states = direction === 'undo' ? pastStates : futureStates;
    return store.getState().editor === 'here' && states.length > 0;
  }

  return {
    undo: () => step('undo'),
    redo: () => step('redo'),
    canUndo: () => can('undo'),
    canRedo: () => can('redo'),
  };
}

/** The project with its import as pattern again. */
function importBehind(
  { madeOf, inputs }: Project,
  meshes: MeshShelf,
): Outcome<{ readonly patch: Partial<Project> }> {
  if (madeOf === null) return refused('The pattern is an import, so there is none to go back to.');
  if (!meshes.has(madeOf.import.meshKey))
    return refused(`${madeOf.import.fileName} is no longer in this browser. Import its file again at Part.`);
  const edited = editInputs(inputs, ({ part }) => void Object.assign(part, madeOf.part));
  if (!edited.done) return edited;
  return { done: true, patch: { pattern: madeOf.import, madeOf: null, inputs: edited.inputs } };
}

/** null for what the paper has no room for. */
function recordWith({ record }: Project, lineId: string, patch: Partial<RecordLine>) {
  const former = record[lineId] ?? { done: false, measured: '', initials: '' };
  const line = recordLineSchema.safeParse({ ...former, ...patch });
  return lineId === '' || !line.success ? null : { ...record, [lineId]: line.data };
}

/** The import behind the present pattern, however often it was made anew, and how it was read. */
function importOf({ pattern, madeOf, inputs: { part } }: Project): Pick<MadeOf, 'import' | 'part'> | null {
  if (madeOf !== null) return { import: madeOf.import, part: madeOf.part };
  if (pattern === null) return null;
  const { unit, body, scale, nominalWall, rightWayUp, pull } = part;
  return { import: pattern, part: { unit, body, scale, nominalWall, rightWayUp, pull } };
}
