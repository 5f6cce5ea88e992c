/** Does the wall suit the stack? One judgement for Walls, Ply schedule and whoever else asks. */
import { filledWall, wallWord, type AcceptedWalls, type WallWord } from '../../core/laminate/acceptedWalls';
import type { AreaShares } from '../../core/numeric/areaShares';
import { formatNumber } from '../../core/units/formatNumber';
import { wallsFor } from './band';
import type { StepContext } from './context';
import type { Missing } from './missing';
import { resolveStack, type KnownStack } from './stack';
import { wallInUse, type WallInUse } from './wallInUse';

export interface WallFit {
  readonly known: true;
  readonly word: WallWord;
  /** The sentence on what the plies fill and what the wall is. */
  readonly told: string;
  /** Of the show face: under, within and over the walls that are right. */
  readonly shares: AreaShares;
  readonly wall: WallInUse;
  readonly stack: KnownStack;
  readonly band: AcceptedWalls;
}

/** Below this share of area a finding is a scatter of single facets, not a place (common practice). */
const noticedShare = 0.005;

export function wallFit(context: StepContext): WallFit | ({ readonly known: false } & Missing) {
  const wall = wallInUse(context);
  if (!wall.known) return wall;
  const { walls, plies } = context.inputs;
  const stack = resolveStack(plies);
  if (!stack.known) return stack;
  const band = wallsFor(stack, walls);
  return {
    known: true,
    word: wordOf(wall, band, walls.wrongShareAllowedPercent / 100),
    told: toldOf(wall.medianMm, band),
    shares: wall.shares(band.goLowMm, band.goHighMm),
    wall,
    stack,
    band,
  };
}

/** By the wall that most of the face has, and by places that are wrong on more of it than is allowed. */
function wordOf(wall: WallInUse, band: AcceptedWalls, allowedShare: number): WallWord {
  const whole = wallWord(band, wall.medianMm);
  const bad = wall.shares(band.lookLowMm, band.badHighMm);
  if (whole === 'stop' || bad.under + bad.over > allowedShare) return 'stop';
  const wrong = wall.shares(band.lookLowMm, band.lookHighMm);
  const off = wall.shares(band.goLowMm, band.goHighMm);
  const offShare = off.under + off.over;
  return whole === 'look again' || wrong.under + wrong.over > noticedShare || offShare > allowedShare
    ? 'look again'
    : 'go';
}

/** Reads as 0.0 %: no reason to tell. */
const unseenShare = 0.0005;
const percent = (share: number) => `${formatNumber(100 * share, 1)} %`;

/** "94.7 % of the show face is right (0.64 to 0.71 mm), 5.3 % thicker."; what is nothing is not said. */
export function spreadWords({ shares: { under, within, over }, band, wall }: WallFit): string {
  if (wall.nominal) return '';
  const range = `${formatNumber(band.goLowMm, 2)} to ${mm(band.goHighMm)}`;
  if (within > 1 - noticedShare / 10) return ` All of the show face is right (${range}).`;
  return ` ${[
    `${percent(within)} of the show face is right (${range})`,
    ...(over > unseenShare ? [`${percent(over)} thicker`] : []),
    ...(under > unseenShare ? [`${percent(under)} thinner`] : []),
  ].join(', ')}.`;
}

const mm = (value: number) => `${formatNumber(value, 2)} mm`;

/** "Your plies fill 0.70 mm. The wall is 0.90 mm: about one fifth of it would be air." */
export function toldOf(wallMm: number, band: AcceptedWalls): string {
  const { voidShare, fiberFraction } = filledWall(band, wallMm);
  const film = band.filmMm > 0 ? `, ${mm(band.filmMm)} of it film` : '';
  const start = `Your plies fill ${mm(band.voidFreeMm)}. The wall is ${mm(wallMm)}${film}`;
  const fiber = `${formatNumber(100 * fiberFraction, 0)} %`;
  if (wallMm < band.goLowMm)
    return `${start}: fiber would fill ${fiber} of it, so it is short of resin and holds the mold open.`;
  if (wallMm > band.goHighMm) return `${start}: ${shareWords(voidShare)} of it would be air.`;
  return voidShare > 0
    ? `${start}: ${percent(voidShare)} of it would be air, which is within what you accept.`
    : `${start}: it is filled, with ${fiber} fiber.`;
}

const fractions = [
  [1 / 2, 'half'],
  [1 / 3, 'one third'],
  [1 / 4, 'one quarter'],
  [1 / 5, 'one fifth'],
  [1 / 6, 'one sixth'],
  [1 / 8, 'one eighth'],
  [1 / 10, 'one tenth'],
] as const;
const nearEnough = 0.12;

/** "about one fifth (22 %)", or the percent alone where no plain fraction is near. */
function shareWords(share: number): string {
  const shown = `${formatNumber(100 * share, share < 0.1 ? 1 : 0)} %`;
  const missOf = ([value]: (typeof fractions)[number]) => Math.abs(share - value) / value;
  const [nearest] = fractions.toSorted((a, b) => missOf(a) - missOf(b));
  return nearest === undefined || missOf(nearest) > nearEnough ? shown : `about ${nearest[1]} (${shown})`;
}
