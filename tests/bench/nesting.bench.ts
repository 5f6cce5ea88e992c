/** Time and length of a nest, against the length that the area alone would need. */
import { nestPieces } from '../../src/core/templates/nest';
import { signedAreaMm2 } from '../../src/core/templates/outline';
import type { PlyPiece } from '../../src/core/templates/piece';
import { tenPieces } from '../support/flatPieces';

/** Lines to print: the ten pieces of the test by three seeds, on a wider roll, then forty. */
export function benchNesting(): string[] {
  const forty = [1, 2, 3, 4].flatMap((round) =>
    tenPieces.map((piece) => ({ ...piece, name: `${piece.name}${round}` })),
  );
  return [
    ...[1, 2, 3].map((seed) => lineFor(tenPieces, 300, seed, 0)),
    lineFor(tenPieces, 300, 1, 2),
    lineFor(tenPieces, 500, 1, 0),
    lineFor(forty, 500, 1, 0),
  ];
}

function lineFor(
  pieces: readonly PlyPiece[],
  widthMm: number,
  seed: number,
  fiberToleranceDeg: number,
): string {
  const started = performance.now();
  const cpuBefore = process.cpuUsage();
  const [nest] = nestPieces(
    pieces,
    [{ fabric: 'twill 200 g', widthMm, remnantsMm: [], arealWeightGsm: 340, pricePerM2: null }],
    { gapMm: 4, fiberToleranceDeg, halfTurns: true, seed },
  );
  const cpuMs = process.cpuUsage(cpuBefore).user / 1000;
  const boundMm = pieces.reduce((sum, { outlineMm }) => sum + signedAreaMm2(outlineMm), 0) / widthMm;
  return `${pieces.length} pieces, roll ${widthMm} mm, seed ${seed}, fibers within ${fiberToleranceDeg} degrees: ${nest!.rollLengthMm.toFixed(0)} mm, ${(nest!.rollLengthMm / boundMm).toFixed(3)} x the area bound, ${(performance.now() - started).toFixed(0)} ms, processor ${cpuMs.toFixed(0)} ms`;
}
