/**
 * The workbook is loaded in parts. After a newer one was put on the server, a page that is still open asks for parts that are
 * no longer there; the model and the memory have nothing to do with it.
 */

/** What is missing and what to do. */
export const missingPartWords =
  'A part of the workbook could not be loaded: there may be a newer workbook on the server, or no connection to it. Load the page again. Nothing that was saved is lost.';

// Engines have no common name for this failure, only these sentences; the last is how the solids' loader says it.
const wordsOfLoading =
  /dynamically imported module|importing a module script failed|fetching of the wasm failed|wasm streaming compile failed|expected magic word/iu;

/** Whether an error says that a part could not be loaded. */
export function isMissingPart(error: unknown): boolean {
  return error instanceof Error && wordsOfLoading.test(error.message);
}
