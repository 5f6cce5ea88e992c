/** What would bring wall and stack together: other plies, another wall, or what fills the rest; each one tried. */
import { filledWall, wallWord, type AcceptedWalls } from '../../core/laminate/acceptedWalls';
import {
  beadRange,
  pairWallsWithStacks,
  wallRescue,
  wantedPlies,
  type WallStackPair,
} from '../../core/laminate/pairing';
import { formatNumber } from '../../core/units/formatNumber';
import { meanPly, wallLimits, wallsForCount } from './band';
import type { ProjectInputs } from '../inputs/project';
import type { KnownStack } from './stack';

/** Stacks of more plies than this are not offered. */
const mostPlies = 8;

const mm = (value: number) => `${formatNumber(value, 2)} mm`;
const plyCount = (plies: number) => `${plies} ${plies === 1 ? 'ply' : 'plies'}`;

/** Stacks of one to eight plies of the mean ply, each against the whole beads that come nearest. */
export function pairingRows(stack: KnownStack, { plies, walls }: ProjectInputs): readonly WallStackPair[] {
  return pairWallsWithStacks(plies.lineWidthMm, meanPly(stack, walls), wallLimits(walls), mostPlies);
}

/** Plies that fill a wall, never fewer. */
export function pliesForWall(wallMm: number, stack: KnownStack, { walls }: ProjectInputs): number {
  const { goVoidShare, filmMm } = wallLimits(walls);
  return wantedPlies(Math.max(wallMm - filmMm, 1e-6), meanPly(stack, walls).voidFreeMm, goVoidShare);
}

/**
 * e.g. "Make the wall 0.67 mm (0.64 to 0.71 mm is right for 3 plies); or lay 4 plies, which fill this wall: 1 % voids,
 * fiber 52 %." Plies are offered only when their number is right for the wall; else what fills the rest.
 */
export function wallFix(
  wallMm: number,
  stack: KnownStack,
  band: AcceptedWalls,
  inputs: ProjectInputs,
): string {
  const count = stack.total.plies;
  const ways: string[] = [];
  const better = pliesForWall(wallMm, stack, inputs);
  const filled = wallsForCount(stack, inputs.walls, better);
  const fits = wallWord(filled, wallMm) !== 'stop';
  if (better !== count && fits) ways.push(`lay ${plyCount(better)}: ${filledWords(filled, wallMm)}`);
  if (band.goLowMm <= band.goHighMm)
    ways.push(
      `make the wall ${mm(band.wantedMm)}${beadWords(band.wantedMm, inputs)} (${mm(band.goLowMm)} to ${mm(band.goHighMm)} is right for ${plyCount(count)})`,
    );
  else
    ways.push(
      `take a prepreg with more resin, or add a resin film: ${plyCount(count)} hold ${formatNumber((100 * band.fiberMm) / band.voidFreeMm, 0)} % fiber before any resin has left, more than they let through`,
    );
  if (!fits) ways.push(...rescueWays(wallMm, stack, inputs));
  const text = ways.join('; or ');
  return `${text.charAt(0).toUpperCase()}${text.slice(1)}.`;
}

function filledWords(walls: AcceptedWalls, wallMm: number): string {
  const { voidShare, fiberFraction } = filledWall(walls, wallMm);
  return `${formatNumber(100 * voidShare, 1)} % voids, fiber ${formatNumber(100 * fiberFraction, 0)} %`;
}

/** " = 2 × 0.34 mm beads" where beads of a usual width make it. */
function beadWords(wantedMm: number, { plies: { lineWidthMm } }: ProjectInputs): string {
  const beads = Math.max(1, Math.round(wantedMm / lineWidthMm));
  const width = wantedMm / beads;
  const [narrow, wide] = beadRange;
  return width < narrow * lineWidthMm || width > wide * lineWidthMm
    ? ''
    : `, ${beads} × ${formatNumber(width, 3)} mm ${beads === 1 ? 'bead' : 'beads'}`;
}

/** A wall between two numbers of plies: one thinner ply, or a resin film. */
function rescueWays(wallMm: number, stack: KnownStack, { walls }: ProjectInputs): readonly string[] {
  const card = stack.plies[0]?.card;
  if (card === undefined) return [];
  const rescue = wallRescue(
    wallMm,
    meanPly(stack, walls),
    { fiberGCm3: card.fiberDensityGCm3, resinGCm3: card.resinDensityGCm3 },
    wallLimits(walls),
  );
  if (rescue === null) return [];
  const { plies, missingMm, thinPlyGsm, filmGsm, filmFiberFraction } = rescue;
  return [
    `keep this wall with ${plyCount(plies)} and ${mm(missingMm)} more: one thinner ply of about ${formatNumber(thinPlyGsm, 0)} g/m² of fiber, or a resin film of ${formatNumber(filmGsm, 0)} g/m² (fiber then ${formatNumber(100 * filmFiberFraction, 0)} %)`,
  ];
}
