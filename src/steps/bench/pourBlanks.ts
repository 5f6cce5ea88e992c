/** What is read while the stone is mixed, poured and dried. */
import type { StepContext } from '../shared/context';
import { around, type BlankDraft, type Known } from './blank';

const halves = ['negative', 'positive'] as const;

export function pourBlanks(known: Known): readonly BlankDraft[] {
  const { context, number, band } = known;
  const { mold } = context.inputs;
  const weighing = (at: number, half: (typeof halves)[number], label: string, of: string): BlankDraft => ({
    id: `log.${at}.${half}`,
    phase: 'pour',
    label: `${half}, ${label}`,
    unit: 'g',
    decimals: 1,
    path: `mold.dryingLog.${at}.${half}G`,
    expected: number(`mold.${half}.${of}`),
    band: band(`mold.${half}.${of}`),
    figures: [`mold.${half}.waterLeftPercent`],
    verdicts: [`mold.${half}.dry`, 'cure.damp'],
  });
  const hours = (at: number): BlankDraft => ({
    id: `log.${at}.hours`,
    phase: 'pour',
    label: at === 1 ? 'hours since the box, once it seems dry' : 'hours since the box, 4 h later',
    unit: 'h',
    decimals: 1,
    path: `mold.dryingLog.${at}.hours`,
    expected: mold.dryingHours + 4 * (at - 1),
    band: null,
    figures: [],
    verdicts: [],
  });
  return [
    { ...trialCup(known), isAsked: wantsTrialCup(context, band('mold.settingPeakC')) },
    {
      id: 'slurry',
      phase: 'pour',
      label: 'slurry in a cup of known volume',
      unit: 'g/mL',
      decimals: 2,
      path: 'mold.measured.slurryGMl',
      expected: number('mold.slurryDensityGMl'),
      band: around(number('mold.slurryDensityGMl'), 0.03),
      figures: ['mold.slurryDensityGMl', 'mold.counterweightG'],
      verdicts: ['mold.mix', 'mold.float'],
    },
    ...halves.map((half) => weighing(0, half, 'fresh from the box', 'freshG')),
    hours(1),
    ...halves.map((half) => weighing(1, half, 'dry', 'dryTargetG')),
    hours(2),
    ...halves.map((half): BlankDraft => ({
      ...weighing(2, half, 'dry, 4 h later', 'dryTargetG'),
      isOnCard: true,
    })),
  ];
}

/** The estimate reaches from harmless to too hot: only a cup tells. One that was filled stays on the paper. */
function wantsTrialCup(
  { inputs: { mold } }: StepContext,
  peakBandC: readonly [number, number] | null,
): boolean {
  return mold.measured.peakC !== null || (peakBandC !== null && peakBandC[1] >= mold.patternSoftensC);
}

function trialCup({ context, number, band }: Known): BlankDraft {
  const { patternSoftensC } = context.inputs.mold;
  const lowC = band('mold.settingPeakC')?.[0] ?? context.inputs.mold.roomC;
  const workedOutC = number('mold.settingPeakC');
  return {
    id: 'peak',
    phase: 'pour',
    label: 'warmest in the trial cup',
    unit: '°C',
    decimals: 0,
    path: 'mold.measured.peakC',
    // What the print does not bear is nothing to expect: the cup tells whether the pour stays under it.
    expected: workedOutC !== null && workedOutC > patternSoftensC ? null : workedOutC,
    band: [Math.min(lowC, patternSoftensC), patternSoftensC],
    figures: ['mold.settingPeakC'],
    verdicts: ['mold.heat'],
  };
}
