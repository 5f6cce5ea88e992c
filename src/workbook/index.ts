/** The saved document: what pages may use. React bindings are in `useWorkbook`, the browser's ports in `browserPorts`. */
export { longestTimerS, type BenchTimer } from './benchTimers';
export { noOvenRun, type OvenRun, type OvenRunLog } from './ovenRun';
export type { KeptAside } from './keptAside';
export type { Outcome } from './outcome';
export { currentFormat } from './migrations';
export { longestName } from './names';
export type { Project, RecordLine } from './project';
export { projectFileExtension, readProjectFile, writeProjectFile } from './projectFile';
export type { Editor, ListedProject, SaveState, WorkbookState, WorkbookStore } from './state';
export type { Usage } from './usage';
export { createWorkbook } from './workbook';
export type { DraftInputs, ProjectSeed, TextFile, Workbook, WorkbookPorts } from './workbookApi';
