import { wasDropped } from '../../jobs/client';
import type { BenchClient, MoldReply, PourChoices } from '../../jobs/protocol';
import { sentenceOf, type DeskJob } from './deskJobs';

/** What is known of the two stone halves of the present part and box. */
export interface CastState {
  /** Only ever the answer to the present question. */
  readonly mold: MoldReply | null;
  /** Why there can be none, in the maker's words. */
  readonly moldProblem: string | null;
  /** The maker canceled the casting. */
  readonly castStopped: boolean;
}

export const nothingCast: CastState = { mold: null, moldProblem: null, castStopped: false };

export interface CastingHalves {
  /** Says what is wanted now; an answer to anything else is no longer shown. */
  want(question: string | null, choices: PourChoices): void;
  /** Casts what is wanted, unless that is known, in progress or was canceled. Call it when the worker holds the part. */
  cast(): Promise<void>;
  /** The job that runs on the desk is a casting. */
  isBusy(): boolean;
  /** After a cancel. */
  castAgain(): Promise<void>;
}

/** Keeps the two stone halves worked out for the part on the bench. */
export function createCastingHalves(
  client: BenchClient,
  begin: (doing: string) => DeskJob,
  state: { readonly now: () => CastState; readonly tell: (change: Partial<CastState>) => void },
): CastingHalves {
  let wanted: { readonly key: string; readonly choices: PourChoices } | null = null;
  let inWork: string | null = null;

  async function cast(): Promise<void> {
    const asked = wanted;
    const { mold, moldProblem, castStopped } = state.now();
    if (asked === null || mold !== null || moldProblem !== null || castStopped) return;
    if (inWork === asked.key) return;
    inWork = asked.key;
    const job = begin('casting the two halves');
    const isWanted = () => wanted?.key === asked.key;
    try {
      const reply = await client.castHalves(asked.choices, job);
      if (isWanted()) state.tell({ mold: reply });
    } catch (error) {
      if (!isWanted()) return;
      if (!wasDropped(error)) state.tell({ moldProblem: sentenceOf(error) });
      else if (!job.replaced()) state.tell({ castStopped: true });
    } finally {
      if (inWork === asked.key) inWork = null;
      job.end();
    }
  }

  return {
    want(question, choices) {
      const key = question === null ? null : `${question} ${JSON.stringify(choices)}`;
      if (key === (wanted?.key ?? null)) return;
      wanted = key === null ? null : { key, choices };
      state.tell(nothingCast);
    },
    cast,
    isBusy: () => inWork !== null,
    castAgain() {
      state.tell({ castStopped: false });
      return cast();
    },
  };
}
