import { Problem } from '../../src/core/problem';

/** Code of the `Problem` that is thrown; null when nothing is. Anything else that is thrown goes on. */
export function codeOf(ask: () => unknown): string | null {
  try {
    ask();
    return null;
  } catch (error) {
    if (error instanceof Problem) return error.code;
    throw error;
  }
}
