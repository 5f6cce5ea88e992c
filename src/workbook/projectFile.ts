/** A project as one file to keep or to send: the envelope and the packed mesh. No browser needed. */
import { meshKey } from '../core/mesh/meshKey';
import { openEnvelope, sealProject, type LoadOutcome } from './envelope';
import { isJsonObject } from './json';
import type { Project } from './project';

export const projectFileExtension = '.workbook.json';
const fileKind = 'mold-layup-workbook';

export type ProjectFileOutcome =
  | {
      readonly outcome: 'ok' | 'migrated';
      readonly project: Project;
      /** null for a project without a pattern. */
      readonly packedMesh: string | null;
      /** The import that the pattern was made of; null for a pattern that is an import. */
      readonly packedImport: string | null;
    }
  | { readonly outcome: 'not a project file' | 'newer' | 'damaged'; readonly message: string };

/** Four times what a browser keeps for one site; a model of the most triangles that are read takes a half of it. */
export const mostProjectFileBytes = 48_000_000;

/** Why a file of this size is none of ours; null when it may be one. */
export function tooLargeForProjectFile(bytes: number): ProjectFileOutcome | null {
  if (bytes <= mostProjectFileBytes) return null;
  return {
    outcome: 'not a project file',
    message: `This file has ${(bytes / 1e6).toFixed(0)} MB; no project file of this workbook has more than ${mostProjectFileBytes / 1e6} MB. If it is a model, import it on the page of its part.`,
  };
}

/** For a file that the disk does not give, or that ended whoever read it. */
export const unreadableProjectFile: ProjectFileOutcome = {
  outcome: 'damaged',
  message:
    'This project file could not be read: reading it stopped on the way. Choose it again; if that fails, reload the page.',
};

/** Text of the file. `packedMesh` is the one that `project.pattern.meshKey` names, `packedImport` that of `project.madeOf`. */
export function writeProjectFile(
  project: Project,
  packedMesh: string | null,
  packedImport: string | null = null,
): string {
  const importMesh = packedImport === null ? {} : { importMesh: packedImport };
  return JSON.stringify({ kind: fileKind, envelope: sealProject(project), mesh: packedMesh, ...importMesh });
}

/** Reads the text of a project file; never throws. Messages are complete sentences for the maker. */
export function readProjectFile(text: string): ProjectFileOutcome {
  let file: unknown;
  try {
    file = JSON.parse(text.replace(/^\uFEFF/, ''));
  } catch {
    return text.includes(`"${fileKind}"`)
      ? {
          outcome: 'damaged',
          message: 'This project file breaks off or was changed. Save it again from the workbook.',
        }
      : notAProjectFile;
  }
  if (!isJsonObject(file) || file['kind'] !== fileKind) return notAProjectFile;
  const loaded = openEnvelope(file['envelope']);
  if (loaded.outcome === 'newer' || loaded.outcome === 'damaged') return failure(loaded);
  const { outcome, project } = loaded;
  const mesh = namedMesh(file['mesh'], project.pattern?.meshKey ?? null, 'mesh');
  if ('message' in mesh) return mesh;
  const imported = namedMesh(file['importMesh'], project.madeOf?.import.meshKey ?? null, 'import');
  if ('message' in imported) return imported;
  return { outcome, project, packedMesh: mesh.packed, packedImport: imported.packed };
}

function namedMesh(
  mesh: unknown,
  wantedKey: string | null,
  called: 'mesh' | 'import',
): { readonly packed: string | null } | Extract<ProjectFileOutcome, { message: string }> {
  if (wantedKey === null) return { packed: null };
  if (typeof mesh === 'string' && meshKey(mesh) === wantedKey) return { packed: mesh };
  const what = typeof mesh === 'string' ? 'is damaged' : 'is missing';
  return {
    outcome: 'damaged',
    message: `The ${called} in this project file ${what}. Save the file again from the workbook, or import the pattern into a new project.`,
  };
}

const notAProjectFile: ProjectFileOutcome = {
  outcome: 'not a project file',
  message: `This is not a project file of this workbook. Project files end in ${projectFileExtension}.`,
};

function failure(loaded: Extract<LoadOutcome, { outcome: 'newer' | 'damaged' }>): ProjectFileOutcome {
  return loaded.outcome === 'newer'
    ? {
        outcome: 'newer',
        message: `This project file was saved by a newer version of the workbook (format ${loaded.format}). Update the app to open it.`,
      }
    : { outcome: 'damaged', message: `This project file is damaged: ${loaded.reason}.` };
}
