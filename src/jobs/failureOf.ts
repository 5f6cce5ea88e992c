import { isMissingPart, missingPartWords } from '../core/missingPart';
import { Problem } from '../core/problem';
import type { JobFailure } from './protocol';

/** Allocation failures are told apart by their words only; engines agree on RangeError, not on the sentence. */
const memoryWords = /allocat|out of memory|array buffer|array length|typed array length/i;

/** Any thrown value as plain data that the page can show: a `Problem` as it stands, the rest with a way out. */
export function failureOf(error: unknown): JobFailure {
  if (error instanceof Problem) return { code: error.code, message: error.message };
  if (isMissingPart(error)) return { code: 'job.missingPart', message: missingPartWords };
  const detail = error instanceof Error ? error.message : String(error);
  if (error instanceof RangeError && memoryWords.test(detail)) {
    return {
      code: 'job.memory',
      message:
        'This model needs more memory than the browser gives. Close other tabs, or export it with fewer triangles, and try again.',
    };
  }
  return {
    code: 'job.failed',
    message: `The workbook could not finish this by a fault of its own (${detail}). Nothing that was saved is lost; try again, or with another export of the model.`,
  };
}
