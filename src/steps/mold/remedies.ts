/** Cover, land, keys, batches, the material and scale of the print, drying: what can be done about the stone mold. */
import { formatNumber } from '../../core/units/formatNumber';
import {
  changeCosts,
  isTroubled,
  type ProposeRemedies,
  type Remedy,
  type RemedyFacts,
} from '../shared/remedy';
import { axisSizes, commonPrintScale } from './sizes';

const coverPaths = [
  'coverXLowMm',
  'coverXHighMm',
  'coverYLowMm',
  'coverYHighMm',
  'coverOverShowMm',
  'coverUnderRimMm',
] as const;
/** Least cover that is trusted (common practice). */
const usualCoverMm = 10;
/** Print materials by the temperature at which they soften, °C (from memory). */
const printMaterials = [
  { name: 'PETG', softensC: 75 },
  { name: 'ABS or ASA', softensC: 98 },
  { name: 'polycarbonate', softensC: 130 },
] as const;
const gentleDryingC = 45;
const most = { coverMm: 60, bowlMl: 5000 } as const;

export const moldRemedies: ProposeRemedies = (facts) => [
  ...(isTroubled(facts, 'mold.box', 'mold.thinnest') ? moreCover(facts) : []),
  ...(isTroubled(facts, 'mold.keys') ? roomForKeys(facts) : []),
  ...(isTroubled(facts, 'mold.layers') ? largerBowls(facts) : []),
  ...(isTroubled(facts, 'mold.heat') ? harderPrints(facts) : []),
  ...(isTroubled(facts, 'mold.size') ? otherScale(facts) : []),
  ...(isTroubled(facts, 'mold.rimOnBoard', 'mold.float') ? otherPour(facts) : []),
  ...(isTroubled(facts, 'mold.drying')
    ? [
        remedy(
          'mold.dryingC',
          `Dry the halves at ${gentleDryingC} °C with a fan.`,
          { 'mold.dryingC': gentleDryingC },
          changeCosts.bench,
        ),
      ]
    : []),
];

const remedy = (id: string, what: string, patch: Remedy['patch'], cost: number): Remedy => ({
  id,
  what,
  patch,
  cost,
});

function moreCover({ context: { inputs } }: RemedyFacts): readonly Remedy[] {
  const { mold } = inputs;
  const thin = coverPaths.filter((path) => mold[path] < usualCoverMm);
  const raised = (paths: readonly (typeof coverPaths)[number][], to: (nowMm: number) => number) =>
    Object.fromEntries(paths.map((path) => [`mold.${path}`, to(mold[path])]));
  const thick = (byMm: number) => {
    const patch = raised(coverPaths, (nowMm) => Math.min(most.coverMm, Math.max(usualCoverMm, nowMm) + byMm));
    return remedy(
      'mold.cover',
      `Give the box ${formatNumber(byMm, 0)} mm more cover on every side.`,
      patch,
      changeCosts.bench,
    );
  };
  return [
    ...(thin.length === 0
      ? []
      : [
          remedy(
            'mold.cover',
            `Give the box ${usualCoverMm} mm of cover on every side.`,
            raised(thin, () => usualCoverMm),
            changeCosts.bench,
          ),
        ]),
    thick(5),
  ];
}

function roomForKeys({ context: { inputs } }: RemedyFacts): readonly Remedy[] {
  const { landWidthMm, keyDiameterMm } = inputs.mold;
  const landMm = Math.max(landWidthMm, keyDiameterMm) + 5;
  const keyMm = Math.round(7 * keyDiameterMm) / 10;
  return [
    remedy(
      'mold.keyDiameterMm',
      `Take keys of ${formatNumber(keyMm, 1)} mm.`,
      { 'mold.keyDiameterMm': keyMm },
      changeCosts.setting,
    ),
    remedy(
      'mold.landWidthMm',
      `Make the land ${formatNumber(landMm, 0)} mm wide.`,
      { 'mold.landWidthMm': landMm },
      changeCosts.bench,
    ),
  ];
}

function largerBowls({ context: { inputs } }: RemedyFacts): readonly Remedy[] {
  return [2, 3, 5]
    .map((factor) => factor * inputs.mold.bowlMl)
    .filter((bowlMl) => bowlMl <= most.bowlMl)
    .map((bowlMl) =>
      remedy(
        'mold.bowlMl',
        `Mix in a bowl of ${formatNumber(bowlMl / 1000, 1)} L.`,
        { 'mold.bowlMl': bowlMl },
        changeCosts.setting,
      ),
    );
}

/** The tougher one first that is cheaper to print. */
function harderPrints({ context: { inputs } }: RemedyFacts): readonly Remedy[] {
  return printMaterials
    .filter(({ softensC }) => softensC > inputs.mold.patternSoftensC)
    .map(({ name, softensC }) =>
      remedy(
        'mold.patternSoftensC',
        `Print the pattern in ${name}, which softens at about ${softensC} °C.`,
        { 'mold.patternSoftensC': softensC },
        changeCosts.patternPrintedAnew,
      ),
    );
}

function otherScale({ context }: RemedyFacts): readonly Remedy[] {
  const sizes = axisSizes(context);
  if (!sizes.known) return [];
  const scale = Math.round(10_000 * commonPrintScale(sizes.value)) / 10_000;
  return [
    remedy(
      'mold.printScale',
      `Print at a scale of ${formatNumber(scale, 4)}.`,
      { 'mold.printScale': scale },
      changeCosts.patternPrintedAnew,
    ),
  ];
}

function otherPour({ context: { inputs } }: RemedyFacts): readonly Remedy[] {
  if (inputs.mold.pourMethod === 'pressed in') return [];
  return [
    remedy(
      'mold.pourMethod',
      'Press the pattern into the stone from above instead of pouring over it on a board.',
      { 'mold.pourMethod': 'pressed in' },
      changeCosts.bench,
    ),
  ];
}
