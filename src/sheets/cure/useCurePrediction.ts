import { useCallback, useEffect, useMemo, useState } from 'react';
import type { LaminatePlace } from '../../core/cure/laminatePlace';
import type { CurePrediction } from '../../core/cure/predictCure';
import { wasDropped } from '../../jobs/client';
import type { Progress } from '../../jobs/protocol';
import { cureChoicesOf } from '../../steps/cure/cureChoicesOf';
import type { ProjectInputs } from '../../steps/inputs';
import type { Measuring } from '../measuring/useMeasured';

export interface CureForecast {
  /** The answer to the present question only; what reports work from. */
  readonly prediction: CurePrediction | null;
  /** The last answer, also while a newer one is being worked out; for drawings. */
  readonly lastPrediction: CurePrediction | null;
  readonly problem: string | null;
  readonly progress: Progress | null;
  /** The maker canceled it. */
  readonly stopped: boolean;
  readonly cancel: () => void;
  readonly again: () => void;
}

interface Told {
  readonly key: string;
  readonly prediction: CurePrediction | null;
  readonly problem: string | null;
  readonly progress: Progress | null;
  readonly stopped: boolean;
}

/** Typing settles before the mold is heated again. */
const settleMs = 300;
const nothing: Told = { key: '', prediction: null, problem: null, progress: null, stopped: false };

/**
 * Keeps the oven run predicted for the present inputs: a coarse answer as soon as the part is measured and its mold is
 * cast, then the refined one.
 * @param thermocouple where it sits, a point in the part's own axes; null: no curve of it is wanted
 */
export function useCurePrediction(
  measuring: Measuring,
  inputs: ProjectInputs,
  thermocouple: LaminatePlace | null,
): CureForecast {
  const { desk, measured, mold, moldProblem } = measuring;
  const [told, setTold] = useState<Told>(nothing);
  const [last, setLast] = useState<CurePrediction | null>(null);
  const [controller, setController] = useState<AbortController | null>(null);
  const [turn, setTurn] = useState(0);
  const choices = useMemo(() => cureChoicesOf(inputs, mold?.geometry ?? null), [inputs, mold]);
  // A mold that cannot be cast says why; asking to heat it would only say so again.
  const ready = measured !== null && mold !== null && moldProblem === null && choices.known;
  const key = ready
    ? JSON.stringify([{ ...choices.value, thermocouple }, measuring.reply?.shape.facetCount, turn])
    : '';
  const shape = measuring.reply?.shape ?? null;

  useEffect(() => {
    if (key === '' || shape === null) return undefined;
    const [wanted] = JSON.parse(key) as [Parameters<typeof desk.client.predictCure>[0]];
    let isWanted = true;
    const own = new AbortController();
    const tell = (change: Partial<Told>) => {
      if (isWanted) setTold((before) => ({ ...(before.key === key ? before : nothing), key, ...change }));
    };
    const ask = async (stage: CurePrediction['stage']) => {
      const prediction = await desk.client.predictCure(wanted, stage, {
        signal: own.signal,
        onProgress: (progress) => tell({ progress }),
      });
      if (!isWanted) return;
      tell({ prediction, progress: null });
      setLast(prediction);
    };
    const work = async () => {
      setController(own);
      try {
        await ask('coarse');
        if (isWanted) await ask('refined');
      } catch (error) {
        const problem = error instanceof Error ? error.message : String(error);
        if (!wasDropped(error)) tell({ prediction: null, problem, progress: null });
        else if (own.signal.aborted) tell({ progress: null, stopped: true });
      }
    };
    const timer = setTimeout(() => void work(), settleMs);
    return () => {
      isWanted = false;
      clearTimeout(timer);
    };
  }, [desk, key, shape]);

  const cancel = useCallback(() => controller?.abort(), [controller]);
  const again = useCallback(() => setTurn((before) => before + 1), []);
  const now = key !== '' && told.key === key ? told : nothing;
  return {
    prediction: now.prediction,
    lastPrediction: measured === null ? null : (now.prediction ?? last),
    problem: now.problem ?? (measured === null ? null : moldProblem),
    progress: now.progress,
    stopped: now.stopped,
    cancel,
    again,
  };
}
