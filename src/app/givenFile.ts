/** What "Open project file" does with a file: a project file becomes a project, a model becomes a new project's pattern. */
import { longestName, type Outcome, type Workbook } from '../workbook';
import { canBeSeen, trimmedName } from '../workbook/names';
import { readProjectFileAside } from '../workbook/readProjectFileAside';

export const givenFileKinds = '.json,application/json,.stl,.obj,.3mf';
const modelEnding = /\.(?:stl|obj|3mf)$/iu;

/** Models that wait for the page of the project that was made for them, by its id. */
const waiting = new Map<string, File>();
/** Projects that were opened from a file in this tab, by id. */
const fromFile = new Set<string>();

export const cameFromFile = (projectId: string): boolean => fromFile.has(projectId);
export const forgetItCameFromFile = (projectId: string): void => void fromFile.delete(projectId);

/** Adds the project without opening it. */
export async function openGivenFile(workbook: Workbook, file: File): Promise<Outcome<{ id: string }>> {
  if (!modelEnding.test(file.name)) {
    const imported = workbook.importProjectFile(await readProjectFileAside(file));
    if (imported.done) fromFile.add(imported.id);
    return imported;
  }
  const stem = trimmedName(file.name.replace(modelEnding, '').slice(0, longestName));
  const made = workbook.createProject({ enclosure: canBeSeen(stem) ? stem : 'New enclosure', name: 'Part' });
  if (made.done) waiting.set(made.id, file);
  return made;
}

/** The model that was given for a new project; null after it was taken once. */
export function takeGivenModel(projectId: string): File | null {
  const file = waiting.get(projectId) ?? null;
  waiting.delete(projectId);
  return file;
}
