/**
 * Where things lie in the browser's storage.
 *
 * Each project has an entry of its own (its line in the list, with the pointer to its current record slot), written
 * only by the tab that edits the project. One shared list would lose lines when two tabs write at the same time.
 */
const root = 'mold-layup/';

/** Says that the workbook was started once on this machine: the demo is not put in again. */
export const startedKey = `${root}started`;
export const entryPrefix = `${root}entry/`;
export const recordPrefix = `${root}record/`;
export const meshPrefix = `${root}mesh/`;
export const shelfKey = `${root}shelf`;
/** Where apps before the shelf kept material cards for all projects. */
export const materialLibraryKey = `${root}materials`;
export const keptAsidePrefix = `${root}kept-aside/`;
const timersPrefix = `${root}timers/`;
const ovenRunPrefix = `${root}oven-run/`;
const benchClockPrefix = `${root}bench-clock/`;

export const entryKey = (projectId: string): string => entryPrefix + projectId;
export const timersKey = (projectId: string): string => timersPrefix + projectId;
export const ovenRunKey = (projectId: string): string => ovenRunPrefix + projectId;
export const benchClockKey = (projectId: string): string => benchClockPrefix + projectId;
/** Record slots are numbered upward; at most two of a project are kept. */
export const recordKey = (projectId: string, slot: number): string => `${recordPrefix}${projectId}/${slot}`;
export const meshStorageKey = (meshKey: string): string => meshPrefix + meshKey;
export const editorLockName = (projectId: string): string => `${root}editor/${projectId}`;
export const startLockName = `${root}start`;

/** Project id of an entry key, undefined for other keys. */
export function parseEntryKey(key: string): string | undefined {
  return key.startsWith(entryPrefix) ? key.slice(entryPrefix.length) : undefined;
}

/** Project id of the key of timers, an oven run or their clock, undefined for other keys. */
export function parseBenchKey(key: string): string | undefined {
  const prefix = [timersPrefix, ovenRunPrefix, benchClockPrefix].find((one) => key.startsWith(one));
  return prefix === undefined ? undefined : key.slice(prefix.length);
}

/** Project id and slot of a record key, undefined for other keys. */
export function parseRecordKey(key: string): { id: string; slot: number } | undefined {
  if (!key.startsWith(recordPrefix)) return undefined;
  const [id, slot] = key.slice(recordPrefix.length).split('/');
  return id === undefined || slot === undefined ? undefined : { id, slot: Number(slot) };
}
