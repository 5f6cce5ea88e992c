/** The actions on the list: create, rename, duplicate, delete and its undo. */
import { whyUnreadable, type WorkbookCore } from './core';
import { takeOutProject, type Deleted } from './deleted';
import { checkNames, openElsewhere, type Names } from './editing';
import type { Opening } from './opening';
import { refused, type Outcome } from './outcome';
import { longestName } from './names';
import { newProject } from './project';
import type { ListedProject } from './state';
import type { ProjectSeed, Workbook } from './workbookApi';

type ProjectList = Pick<
  Workbook,
  | 'createProject'
  | 'addMates'
  | 'renameProject'
  | 'duplicateProject'
  | 'deleteProject'
  | 'undeleteProject'
  | 'forgetDeleted'
>;

/** Adds a seed as an ordinary project under a new id. */
export function addSeed(core: WorkbookCore, seed: ProjectSeed, id = core.ports.newId()): string {
  const { enclosure, name, inputs, cards = [], pattern, packedMesh, madeOf = null } = seed;
  const empty = newProject({ id, enclosure, name, at: core.now() });
  return core.add({ ...empty, inputs, cards, pattern, madeOf }, packedMesh, null).id;
}

const keeping = (seed: ProjectSeed, projectId: string, { name }: ProjectSeed): ProjectSeed => ({
  ...seed,
  inputs: { ...seed.inputs, fit: { ...seed.inputs.fit, mate: { projectId, name } } },
});

function addMates(core: WorkbookCore, [one, other]: readonly [ProjectSeed, ProjectSeed]) {
  const ids = [core.ports.newId(), core.ports.newId()] as const;
  addSeed(core, keeping(one, ids[1], other), ids[0]);
  addSeed(core, keeping(other, ids[0], one), ids[1]);
  return ids;
}

export function createProjectList(
  core: WorkbookCore,
  opening: Opening,
  setNames: (names: Names) => Outcome,
): ProjectList {
  const { store, history, locks, meshes, records, saver, session } = core;

  function rename(id: string, names: Names): Outcome {
    if (store.getState().project?.id === id) return setNames(names);
    const loaded = core.readCurrent(id);
    if (!('project' in loaded)) return refused(whyUnreadable(loaded));
    core.takeChange({ ...loaded.project, ...names, changedAt: core.now() });
    saver.flush();
    return { done: true };
  }

  function deleteListed(listed: ListedProject): Outcome {
    const deleted = takeOutProject(records, listed, saver.waiting(listed.id));
    for (const key of deleted.meshKeys) meshes.hold(key, null);
    session.deleted.set(listed.id, deleted);
    if (store.getState().project?.id === listed.id) opening.leave();
    saver.forget(listed.id);
    history.forget(listed.id);
    showDeleted();
    core.refreshLine(listed.id);
    core.flush();
    return { done: true };
  }

  function showDeleted(): void {
    store.setState({ deleted: [...session.deleted.values()].map(({ listed }) => listed).toReversed() });
  }

  /** Puts everything back that was stored, then what storage did not have yet. */
  function undelete({ listed, unsaved, texts, meshKeys }: Deleted): Outcome {
    if (records.has(listed.id))
      return refused(`"${listed.name}" is there again already: its project file was opened in another tab.`);
    if (core.writeWithMeshes(meshKeys, () => records.putBack(texts)) !== 'saved')
      return refused(`There is no room to put "${listed.name}" back. Free some space, then try again.`);
    session.deleted.delete(listed.id);
    core.tidyMeshes(meshKeys);
    showDeleted();
    core.refreshLine(listed.id);
    if (unsaved !== null) core.add(unsaved, null, null);
    return { done: true };
  }

  return {
    createProject(names) {
      const checked = checkNames(names);
      if (!checked.done) return checked;
      const { enclosure, name } = checked;
      return core.add(newProject({ id: core.ports.newId(), enclosure, name, at: core.now() }), null, null);
    },

    addMates: (seeds) => addMates(core, seeds),

    async renameProject(id, names) {
      const checked = checkNames(names);
      if (!checked.done) return checked;
      const { enclosure, name } = checked;
      return (await locks.during(id, () => rename(id, { enclosure, name }))) ?? refused(openElsewhere);
    },

    duplicateProject: (id) => duplicateOf(core, id),

    async deleteProject(id) {
      const listed = store.getState().projects.find((one) => one.id === id);
      if (listed === undefined) return refused('This project is no longer there.');
      return (await locks.during(id, () => deleteListed(listed))) ?? refused(openElsewhere);
    },

    undeleteProject(id) {
      const deleted = session.deleted.get(id);
      return deleted === undefined ? refused('There is no delete to undo.') : undelete(deleted);
    },

    forgetDeleted(id) {
      session.deleted.delete(id);
      showDeleted();
      core.flush();
    },
  };
}

function duplicateOf(core: WorkbookCore, id: string) {
  const loaded = core.readCurrent(id);
  if (!('project' in loaded)) return refused(whyUnreadable(loaded));
  const { project } = loaded;
  const mesh = project.pattern === null ? null : core.meshes.find(project.pattern.meshKey);
  if (mesh?.found === false) return refused(mesh.reason);
  const name = copyName(project, core.store.getState().projects);
  const { madeOf } = core.withoutLostImport(project);
  return {
    done: true as const,
    id: addSeed(core, { ...project, name, madeOf, packedMesh: mesh?.packed ?? null }),
  };
}

/** "Upper half (copy)", then "(copy 2)" and so on within the same enclosure. */
function copyName({ enclosure, name }: Names, listed: readonly ListedProject[]): string {
  const taken = new Set(listed.filter((one) => one.enclosure === enclosure).map((one) => one.name));
  for (let number = 1; ; number += 1) {
    const ending = number === 1 ? ' (copy)' : ` (copy ${number})`;
    const candidate = name.slice(0, longestName - ending.length) + ending;
    if (!taken.has(candidate)) return candidate;
  }
}
