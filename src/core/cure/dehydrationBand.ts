/**
 * One mold and program worked out three ways: no dehydration, held back by the stone's own vapor, and as in open air. The
 * three stand for what is not known, and what they say together is the verdict.
 */
import { dehydrationTreatments, type DehydrationTreatment } from './dehydration';
import type { HeatCase, HeatOptions } from './heatCase';
import { runHeat, type HeatRun } from './heatRun';
import { laminateAnswers, type LaminateAnswers } from './laminateAnswers';
import type { Dwell } from './ovenProgram';

export interface TreatedRun {
  readonly treatment: DehydrationTreatment;
  readonly run: HeatRun;
  readonly answers: LaminateAnswers;
}

/** Progress counts over all three runs. */
export function runBand(
  one: HeatCase,
  dwells: readonly Dwell[],
  options: HeatOptions,
): readonly TreatedRun[] {
  const count = dehydrationTreatments.length;
  return dehydrationTreatments.map((treatment, i) => {
    const treated: HeatCase = { ...one, dehydration: { ...one.dehydration, treatment } };
    const run = runHeat(treated, {
      ...options,
      onProgress: (share) => options.onProgress?.((i + share) / count),
    });
    return { treatment, run, answers: laminateAnswers(treated, run, dwells) };
  });
}

export type BandWord = 'cures' | 'depends on the stone' | 'does not cure' | 'not judged';

export interface BandVerdict {
  readonly word: BandWord;
  readonly sentence: string;
}

const plainly: Readonly<Record<DehydrationTreatment, string>> = {
  none: 'the stone keeps all its crystal water',
  'vapor-held': "the stone's own vapor holds its water back",
  'open air': 'the stone lets its water go as in open air',
};

/** What three doses at the coldest place say together. */
export function bandVerdict(
  doses: readonly { readonly treatment: DehydrationTreatment; readonly dose: number | null }[],
): BandVerdict {
  const known = doses.filter(
    (each): each is { treatment: DehydrationTreatment; dose: number } => each.dose !== null,
  );
  if (known.length === 0)
    return {
      word: 'not judged',
      sentence: "Enter the supplier's cures to judge this: only temperatures are known.",
    };
  const list = (these: typeof known) =>
    these.map(({ treatment, dose }) => `${plainly[treatment]} (dose ${dose.toFixed(2)})`).join(' or if ');
  const met = known.filter(({ dose }) => dose >= 1);
  const missed = known.filter(({ dose }) => dose < 1);
  if (missed.length === 0)
    return { word: 'cures', sentence: `Meets the supplier's minimum if ${list(met)}.` };
  if (met.length === 0)
    return { word: 'does not cure', sentence: `Misses the supplier's minimum if ${list(missed)}.` };
  return {
    word: 'depends on the stone',
    sentence: `Meets the supplier's minimum if ${list(met)}; misses it if ${list(missed)}. A thermocouple at the laminate is the test.`,
  };
}
