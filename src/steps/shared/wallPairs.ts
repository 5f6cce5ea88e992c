/** Which numbers of plies go with which walls. */
import { pairWallsWithStacks, wantedPlies, type WallStackPair } from '../../core/laminate/pairing';
import { meanPly, wallLimits } from './band';
import type { ProjectInputs } from '../inputs/project';
import type { KnownStack } from './stack';

/** Stacks of more plies than this are not offered. */
const mostPlies = 8;

/** Stacks of one to eight plies of the mean ply, each against the whole beads that come nearest. */
export function pairingRows(stack: KnownStack, { plies, walls }: ProjectInputs): readonly WallStackPair[] {
  return pairWallsWithStacks(plies.lineWidthMm, meanPly(stack, walls), wallLimits(walls), mostPlies);
}

/** Plies that fill a wall, never fewer. */
export function pliesForWall(wallMm: number, stack: KnownStack, { walls }: ProjectInputs): number {
  const { goVoidShare, filmMm } = wallLimits(walls);
  return wantedPlies(Math.max(wallMm - filmMm, 1e-6), meanPly(stack, walls).voidFreeMm, goVoidShare);
}
