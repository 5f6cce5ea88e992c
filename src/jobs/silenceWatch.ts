/** A worker that is closed ends without an event: all that can be noticed is that nothing is heard of it. */

/** Longer than a slow machine works on one slice of the walls, ms. */
export const helperSilenceMs = 15_000;
/** Longer than most steps of a job go without a word, ms. */
export const benchSilenceMs = 20_000;

export interface SilenceWatch {
  /** A sign of life, or the beginning of something to listen for. */
  readonly heard: () => void;
  /** There is nothing to listen for. */
  readonly rest: () => void;
}

/** Tells true once nothing was heard for `silenceMs`, and false when something is heard again or nothing is to be heard. */
export function createSilenceWatch(tell: (isSilent: boolean) => void, silenceMs: number): SilenceWatch {
  let timer: ReturnType<typeof setTimeout> | undefined;
  let isSilent = false;
  const set = (next: boolean) => {
    if (isSilent === next) return;
    isSilent = next;
    tell(next);
  };
  return {
    heard() {
      set(false);
      clearTimeout(timer);
      timer = setTimeout(() => set(true), silenceMs);
    },
    rest() {
      clearTimeout(timer);
      set(false);
    },
  };
}

/** Rejects when there is no answer within `silenceMs`. */
export async function answeredWithin<Reply>(answer: Promise<Reply>, silenceMs: number): Promise<Reply> {
  let timer: ReturnType<typeof setTimeout> | undefined;
  const silence = new Promise<never>((_, reject) => {
    timer = setTimeout(() => reject(new Error(`no answer within ${silenceMs} ms`)), silenceMs);
  });
  try {
    return await Promise.race([answer, silence]);
  } finally {
    clearTimeout(timer);
  }
}
