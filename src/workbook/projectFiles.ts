/** What goes to disk and comes from it: project files, packed meshes, bytes kept aside. */
import { whyUnreadable, type WorkbookCore } from './core';
import { keptAsidePrefix } from './keys';
import { refused } from './outcome';
import { projectFileExtension, writeProjectFile } from './projectFile';
import type { Workbook } from './workbookApi';

type ProjectFiles = Pick<
  Workbook,
  | 'packedMeshOf'
  | 'packedImportOf'
  | 'readProject'
  | 'setMeshAside'
  | 'importProjectFile'
  | 'exportProjectFile'
  | 'keptAsideFile'
  | 'discardKeptAside'
>;

export function createProjectFiles(core: WorkbookCore): ProjectFiles {
  const { storage, store, meshes, records } = core;

  return {
    packedMeshOf(projectId) {
      const loaded = core.readCurrent(projectId);
      if (!('project' in loaded) || loaded.project.pattern === null) return null;
      const mesh = meshes.find(loaded.project.pattern.meshKey);
      if (mesh.found) return mesh.packed;
      core.addNote(`"${loaded.project.enclosure}, ${loaded.project.name}": ${mesh.reason}`);
      return null;
    },

    packedImportOf(projectId) {
      const loaded = core.readCurrent(projectId);
      if (!('project' in loaded) || loaded.project.madeOf === null) return null;
      const mesh = meshes.find(loaded.project.madeOf.import.meshKey);
      return mesh.found ? mesh.packed : null;
    },

    readProject(projectId) {
      const loaded = core.readCurrent(projectId);
      return 'project' in loaded ? loaded.project : null;
    },

    setMeshAside(projectId) {
      const loaded = core.readCurrent(projectId);
      if ('project' in loaded && loaded.project.pattern !== null)
        meshes.setAside(loaded.project.pattern.meshKey);
    },

    exportProjectFile(projectId) {
      const loaded = core.readCurrent(projectId);
      if (!('project' in loaded)) return refused(whyUnreadable(loaded));
      const project = core.withoutLostImport(loaded.project);
      const mesh = project.pattern === null ? null : meshes.find(project.pattern.meshKey);
      if (mesh?.found === false) return refused(mesh.reason);
      const fileName = fileNameOf(`${project.enclosure} - ${project.name}`) + projectFileExtension;
      const imported = project.madeOf === null ? null : meshes.find(project.madeOf.import.meshKey);
      const packedImport = imported?.found === true ? imported.packed : null;
      return {
        done: true,
        file: { fileName, text: writeProjectFile(project, mesh?.packed ?? null, packedImport) },
      };
    },

    importProjectFile(read) {
      if (!('project' in read)) return refused(read.message);
      const { project, packedMesh, packedImport } = read;
      const listed = store.getState().projects.some(({ id }) => id === project.id);
      const isTaken = listed || records.has(project.id) || core.session.deleted.has(project.id);
      return core.add(isTaken ? { ...project, id: core.ports.newId() } : project, packedMesh, packedImport);
    },

    keptAsideFile(key) {
      const text = key.startsWith(keptAsidePrefix) ? storage.getItem(key) : null;
      return text === null
        ? null
        : { fileName: `${fileNameOf(key.slice(keptAsidePrefix.length))}.txt`, text };
    },

    discardKeptAside(key) {
      if (!key.startsWith(keptAsidePrefix)) return;
      meshes.suspect(storage.getItem(key) ?? '');
      storage.removeItem(key);
      core.refreshKeptAside();
      core.flush();
    },
  };
}

/** A name that every file system takes. */
function fileNameOf(text: string): string {
  return text.replaceAll(/[^\p{L}\p{N} ._-]+/gu, '-').replace(/^[.-]+/, '') || 'project';
}
