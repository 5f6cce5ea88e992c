/** What would bring wall and stack together: other plies, another wall, or both; in numbers. */
import { pairWallsWithStacks, type WallStackPair } from '../core/laminate/pairing';
import { wantedPlies, wantedWallMm } from '../core/laminate/wantedPlies';
import { formatNumber } from '../core/units/formatNumber';
import type { WallBand } from './band';
import type { ProjectInputs } from './inputs';
import type { KnownStack } from './plies/stack';

/** Walls of more lines than this are not offered; an enclosure wall of eight lines is a block. */
const mostLines = 8;

const mm = (value: number) => `${formatNumber(value, 2)} mm`;
/** Rounding crumbs must not rank one exact pair before another. */
const size = (row: WallStackPair) => (row.exact ? 0 : Math.abs(row.mismatchMm));

/** All pairs of whole lines and whole plies up to eight lines, for the stack's mean thickness as laid. */
export function pairingRows(lineWidthMm: number, stack: KnownStack): readonly WallStackPair[] {
  return pairWallsWithStacks(lineWidthMm, stack.laidPlyMm, mostLines);
}

/** The pair with the least mismatch; between equals the one nearest to the present wall. */
export function bestPair(rows: readonly WallStackPair[], presentWallMm: number): WallStackPair | null {
  const away = (row: WallStackPair) => Math.abs(row.wallMm - presentWallMm);
  return rows.reduce<WallStackPair | null>(
    (best, row) =>
      best === null || size(row) < size(best) || (size(row) === size(best) && away(row) < away(best))
        ? row
        : best,
    null,
  );
}

/** e.g. "Lay 4 plies for this wall; or make the wall 0.80 mm (0.70 to 0.90 mm suits 3 plies); or 3 lines and 5 plies." */
export function wallFix(
  wallMm: number,
  stack: KnownStack,
  band: WallBand,
  { plies: { lineWidthMm }, walls: { overMm } }: ProjectInputs,
): string {
  const ways: string[] = [];
  const { plies } = stack.total;
  const better = wantedPlies(wallMm, stack.curedPlyMm, stack.laidPlyMm, overMm);
  if (better !== plies)
    ways.push(`lay ${better} ${better === 1 ? 'ply' : 'plies'} for a wall of ${mm(wallMm)}`);
  ways.push(
    `make the wall ${mm(wantedWallMm(band.curedMm, band.laidMm))} (${mm(band.lowMm)} to ${mm(band.highMm)} is accepted for ${plies} ${plies === 1 ? 'ply' : 'plies'})`,
  );
  const pair = bestPair(pairingRows(lineWidthMm, stack), wallMm);
  if (pair !== null && pair.plies !== plies && Math.abs(pair.wallMm - wallMm) > overMm)
    ways.push(
      `change both: ${pair.lines} × ${mm(lineWidthMm)} lines are ${mm(pair.wallMm)} for ${pair.plies} plies of ${mm(stack.laidPlyMm)}, ${mm(pair.stackMm)} as laid`,
    );
  const text = ways.join('; or ');
  return `${text.charAt(0).toUpperCase()}${text.slice(1)}.`;
}
