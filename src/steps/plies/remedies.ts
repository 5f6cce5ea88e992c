/** Other stacks for the wall there is, another print for the stack there is, and stacks that stay flat. */
import { wallWord, type AcceptedWalls, type WallWord } from '../../core/laminate/acceptedWalls';
import { beadRange } from '../../core/laminate/pairing';
import { formatNumber } from '../../core/units/formatNumber';
import { wallBand } from '../shared/band';
import { count } from '../kit/figures';
import type { ProjectInputs } from '../inputs/project';
import {
  changeCosts,
  isTroubled,
  type ProposeRemedies,
  type Remedy,
  type RemedyFacts,
} from '../shared/remedy';
import { wallInUse, type WallInUse } from '../shared/wallInUse';
import type { PliesInputs } from '../inputs/plies';
import type { Ply } from '../inputs/ply';

/** Stacks of more plies, and of more kinds of ply, are not proposed. */
const [mostPlies, mostCards] = [12, 3];
const mostBeads = 6;
/** Of all combinations so many are tried: those that suit the wall best. */
const mostTried = 3;

const ofTheWall = [
  'walls.band',
  'plies.fit',
  'plies.content',
  'closing.load',
  'closing.choked',
  'closing.closes',
  'closing.resin',
] as const;

export const pliesRemedies: ProposeRemedies = (facts) => {
  const wall = wallInUse(facts.context);
  return [
    ...(isTroubled(facts, ...ofTheWall) && wall.known
      ? [...otherStacks(facts, wall), ...otherPrints(facts, wall)]
      : []),
    ...(isTroubled(facts, 'plies.warp', 'plies.balance') ? flatStack(facts) : []),
    ...(isTroubled(facts, 'plies.pairing') && wall.known ? fittingBead(facts, wall) : []),
  ];
};

const rank: Readonly<Record<WallWord, number>> = { go: 0, 'look again': 1, stop: 2 };
const mm = (value: number) => `${formatNumber(value, 2)} mm`;

interface Fit<What> {
  readonly what: What;
  readonly rank: number;
  readonly offMm: number;
}

/** The few that suit best: by word, then by how far the wall is from the wanted one. */
function bestOf<What>(fits: readonly Fit<What>[]): readonly What[] {
  return fits
    .filter((fit) => fit.rank < rank.stop)
    .toSorted((a, b) => a.rank - b.rank || a.offMm - b.offMm)
    .slice(0, mostTried)
    .map(({ what }) => what);
}

const fitOf = <What>(what: What, band: AcceptedWalls, wallMm: number): Fit<What> => ({
  what,
  rank: rank[wallWord(band, wallMm)],
  offMm: Math.abs(band.wantedMm - wallMm),
});

function otherStacks({ context: { inputs } }: RemedyFacts, wall: WallInUse): readonly Remedy[] {
  const cards = inputs.plies.materials.slice(0, mostCards);
  const fits = countsUpTo(mostPlies, cards.length).flatMap((counts) => {
    const stack = mirroredStack(inputs.plies, counts);
    const band = wallBand(withStack(inputs, stack));
    return band === null ? [] : [fitOf({ counts, stack }, band, wall.medianMm)];
  });
  const present = JSON.stringify(countsOf(inputs.plies));
  return bestOf(fits.filter(({ what }) => JSON.stringify(what.counts) !== present)).map(
    ({ counts, stack }) => ({
      id: 'plies.stack',
      what: `Lay ${stackWords(inputs.plies, counts)}.`,
      patch: { 'plies.stack': stack },
      cost: changeCosts.plies,
    }),
  );
}

/** All ways to take 1 to `most` plies of so many cards. */
function countsUpTo(most: number, cards: number): readonly (readonly number[])[] {
  let all: readonly (readonly number[])[] = [[]];
  for (let card = 0; card < cards; card++)
    all = all.flatMap((counts) => {
      const left = most - counts.reduce((sum, one) => sum + one, 0);
      return Array.from({ length: left + 1 }, (_, one) => [...counts, one]);
    });
  return all.filter((counts) => counts.some((one) => one > 0));
}

const countsOf = ({ materials, stack }: PliesInputs): readonly number[] =>
  materials.slice(0, mostCards).map(({ id }) => stack.filter(({ materialId }) => materialId === id).length);

function stackWords({ materials }: PliesInputs, counts: readonly number[]): string {
  const parts = counts.flatMap((one, at) => (one === 0 ? [] : [{ one, name: materials[at]?.name ?? '' }]));
  return parts.length === 1 && materials.length === 1
    ? count(parts[0]!.one, 'ply', 'plies')
    : parts.map(({ one, name }) => `${count(one, 'ply', 'plies')} of ${name}`).join(' and ');
}

const withStack = (inputs: ProjectInputs, stack: readonly Ply[]): ProjectInputs => ({
  ...inputs,
  plies: { ...inputs.plies, stack: [...stack] },
});

/** Mirrored about its middle as far as the numbers allow, with the angles of the present stack in their order. */
function mirroredStack({ materials, stack }: PliesInputs, counts: readonly number[]): readonly Ply[] {
  const ids = (share: (one: number) => number) =>
    counts.flatMap((one, at) => Array.from({ length: share(one) }, () => materials[at]!.id));
  const half = ids((one) => Math.floor(one / 2));
  const order = [...half, ...ids((one) => one % 2), ...half.toReversed()];
  const present = stack.map(({ angleDeg }) => angleDeg);
  const angles = present.length < 2 ? [0, 45] : present.slice(0, Math.ceil(present.length / 2));
  return order.map((materialId, at) => ({
    id: `ply-${at + 1}`,
    materialId,
    angleDeg: angles[Math.min(at, order.length - 1 - at) % angles.length]!,
    faceDown: false,
    mirroredPair: false,
  }));
}

function flatStack({ context: { inputs } }: RemedyFacts): readonly Remedy[] {
  const { plies } = inputs;
  if (plies.stack.length === 0 || plies.materials.length > mostCards) return [];
  const stack = mirroredStack(plies, countsOf(plies));
  return [
    {
      id: 'plies.order',
      what: `Lay the plies so that they mirror: ${stack.map(({ angleDeg }) => `${formatNumber(angleDeg, 0)}°`).join(' / ')}.`,
      patch: { 'plies.stack': stack },
      cost: changeCosts.setting,
    },
  ];
}

/** A solid that the print hollows: its wall is beads, so any number of any width that prints can be had. */
function otherPrints({ context: { inputs } }: RemedyFacts, wall: WallInUse): readonly Remedy[] {
  const band = wallBand(inputs);
  if (!wall.nominal || band === null) return [];
  return beadsFor(band, inputs).map(({ beads, widthMm }) => ({
    id: 'part.printLines',
    what: `Print the wall as ${count(beads, 'bead')} of ${mm(widthMm)}: ${mm(beads * widthMm)}.`,
    patch: { 'part.printLines': beads, 'plies.lineWidthMm': widthMm },
    cost: changeCosts.patternPrintedAnew,
  }));
}

function beadsFor(band: AcceptedWalls, { plies: { lineWidthMm } }: ProjectInputs) {
  const [narrow, wide] = beadRange;
  return Array.from({ length: mostBeads }, (_, at) => ({
    beads: at + 1,
    widthMm: Math.round((100 * band.wantedMm) / (at + 1)) / 100,
  }))
    .filter(({ widthMm }) => widthMm >= narrow * lineWidthMm && widthMm <= wide * lineWidthMm)
    .toSorted((a, b) => Math.abs(a.widthMm - lineWidthMm) - Math.abs(b.widthMm - lineWidthMm))
    .slice(0, mostTried);
}

/** Where the wall of the model is right, the beads of the printer only have to be set to it. */
function fittingBead({ context: { inputs } }: RemedyFacts, wall: WallInUse): readonly Remedy[] {
  const band = wallBand(inputs);
  if (wall.nominal || band === null || wallWord(band, wall.medianMm) === 'stop') return [];
  return beadsFor(band, inputs)
    .slice(0, 1)
    .map(({ beads, widthMm }) => ({
      id: 'plies.lineWidthMm',
      what: `Set the bead width to ${mm(widthMm)}: ${count(beads, 'bead')} across the wall.`,
      patch: { 'plies.lineWidthMm': widthMm },
      cost: changeCosts.setting,
    }));
}
