/** Time of a stack of six plies at 1 mm, and how close the pieces that come of real faces nest. */
import { cutPlies } from '../../src/core/drape/cutPlies';
import { measurePart } from '../../src/core/mesh/measure';
import { nestPieces } from '../../src/core/templates/nest';
import { signedAreaMm2 } from '../../src/core/templates/outline';
import type { PlyPiece } from '../../src/core/templates/piece';
import { madeFace, madeFaces, stackOn } from '../support/madeFaces';

const sixDeg = [0, 45, 90, 0, 45, 90];

/** Lines to print. The first stack of a process also pays for its code being compiled, as the first one of a page does. */
export async function benchDraping(): Promise<string[]> {
  const lines: string[] = [];
  const pieces: PlyPiece[] = [];
  for (const [name, pull] of madeFaces) {
    const mesh = await madeFace(name, pull);
    const measurement = measurePart(mesh, pull);
    const secondsOf = (start: 'proposed' | 'middle') => {
      const before = process.cpuUsage();
      const cut = cutPlies(
        mesh,
        measurement,
        stackOn(pull, sixDeg, start === 'proposed' ? { start: null } : {}),
        () => undefined,
      );
      return [process.cpuUsage(before).user / 1e6, cut] as const;
    };
    const [withStartS, { plies }] = secondsOf('proposed');
    const [laidS, cut] = secondsOf('middle');
    lines.push(
      `${name}, ${(plies[0]!.wantedMm2 / 100).toFixed(0)} cm², six plies: ${withStartS.toFixed(2)} s of processor with the search for a start, ${laidS.toFixed(2)} s without, ${(laidS / 6).toFixed(2)} s a ply`,
    );
    pieces.push(...cut.pieces.map((piece) => ({ ...piece, name: `${piece.name} of ${name}` })));
  }
  const ten = pieces.toSorted((a, b) => signedAreaMm2(b.outlineMm) - signedAreaMm2(a.outlineMm)).slice(0, 10);
  for (const widthMm of [300, 500, 1000]) {
    const before = process.cpuUsage();
    const [nest] = nestPieces(
      ten,
      [{ fabric: 'twill', widthMm, remnantsMm: [], arealWeightGsm: 340, pricePerM2: null }],
      { gapMm: 4, fiberToleranceDeg: 0, halfTurns: true, seed: 1 },
    );
    const cpuS = process.cpuUsage(before).user / 1e6;
    const boundMm = ten.reduce((sum, { outlineMm }) => sum + signedAreaMm2(outlineMm), 0) / widthMm;
    lines.push(
      `${ten.length} of their pieces on a roll of ${widthMm} mm: ${nest!.rollLengthMm.toFixed(0)} mm, ${(nest!.rollLengthMm / boundMm).toFixed(3)} x the area bound, ${cpuS.toFixed(2)} s of processor`,
    );
  }
  return lines;
}
