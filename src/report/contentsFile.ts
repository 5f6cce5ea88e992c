/** What goes inside, from a JSON file: a list of entries whose keys are those of `fit.contents`. */
import { basename } from 'node:path';
import { Problem } from '../core/problem';
import { contentTable } from '../steps/inputs/fit';
import { startOf } from '../steps/kit/inputTable';

/** More is no list of contents. */
const mostBytes = 1_000_000;

/**
 * What an entry leaves out is as in a new one. Its fields are checked where the list is put into the inputs.
 * @throws Problem for what is no list of entries
 */
export function contentsIn(path: string, bytes: Uint8Array): readonly object[] {
  const name = basename(path);
  const refuse = (why: string) =>
    new Problem(
      'contents',
      `--contents ${name}: ${why}. Write a list like [{"name": "Board", "lengthMm": 60, "widthMm": 30, "heightMm": 4, "xMm": 0, "yMm": 0, "zMm": 8}].`,
    );
  if (bytes.length > mostBytes) throw refuse('it is larger than 1 MB, which is no list of contents');
  let read: unknown;
  try {
    read = JSON.parse(new TextDecoder().decode(bytes));
  } catch {
    throw refuse('this is not JSON');
  }
  if (!Array.isArray(read)) throw refuse('this is no list');
  return read.map((entry: unknown, at) => {
    if (typeof entry !== 'object' || entry === null || Array.isArray(entry))
      throw refuse(`entry ${at + 1} is no entry with names and values`);
    return { ...startOf(contentTable), id: `contents-${at + 1}`, ...entry };
  });
}
