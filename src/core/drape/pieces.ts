/** From the laid net to the flat pieces of one ply. */
import type { Outline, PlyPiece, Point2 } from '../templates/piece';
import type { Drape } from './drapePly';
import { locate } from './locate';
import { dartMarks, datumOn, marksOn, rimMarks } from './marks';
import type { BorderPoint } from './outline';
import type { PartDatum } from './partDatum';
import { isSimple, isWithin, outlineAreaMm2, smoothOutline } from './smoothOutline';

export interface PieceChoices {
  readonly ply: number;
  readonly fabric: string;
  readonly fiberDeg: number;
  readonly faceDown: boolean;
  readonly mirrored: boolean;
  /** Of dart edges past the middle of their gap. */
  readonly overlapMm: number;
  /** Letter of the first piece, counted from 0 for A. */
  readonly firstLetter: number;
}

/** Smaller scraps are no pieces, and smaller gaps no openings, in cells. */
const leastPieceCells = 30;
const leastGapCells = 8;

export function piecesOf(drape: Drape, datum: PartDatum, choices: PieceChoices): readonly PlyPiece[] {
  const { net } = drape;
  const cellMm2 = net.stepMm ** 2;
  const sized = drape.outlines.map((points) => ({ points, areaMm2: outlineAreaMm2(points.map(toPoint)) }));
  const cloth = sized.filter(({ areaMm2 }) => areaMm2 > leastPieceCells * cellMm2);
  const gaps = sized.filter(({ areaMm2 }) => areaMm2 < -leastGapCells * cellMm2);
  const growMm = net.stepMm / 2 + choices.overlapMm / 2;
  const marks = [...dartMarks(drape, drape.outlines), ...rimMarks(drape, datum)];
  const holes = holesInNet(drape);
  return cloth
    .toSorted((a, b) => b.areaMm2 - a.areaMm2)
    .map(({ points }, at) => {
      const outlineMm = simpleOutline(points, net.stepMm, growMm);
      const within = (hole: Outline) => isWithin(outlineMm, hole[0]!);
      const piece: PlyPiece = {
        name: `${choices.ply}${letter(choices.firstLetter + at)}`,
        ply: choices.ply,
        fabric: choices.fabric,
        outlineMm,
        holesMm: [...holes, ...gaps.map((gap) => smoothOutline(gap.points, net.stepMm, 0))].filter(within),
        fiberDeg: choices.fiberDeg,
        ...datumOn(outlineMm, choices.fiberDeg),
        marks: marksOn(outlineMm, marks),
        upGoesToMold: !choices.faceDown,
        mirrored: choices.mirrored,
      };
      return choices.faceDown ? turnedOver(piece) : piece;
    });
}

const toPoint = ({ x, y }: BorderPoint): Point2 => [x, y];

/** Thinned with less tolerance, in the end not at all, where an edge would cross another. */
function simpleOutline(points: readonly BorderPoint[], stepMm: number, growMm: number): Outline {
  const smooth = smoothOutline(points, stepMm, growMm);
  if (isSimple(smooth)) return smooth;
  const stairs = smoothOutline(points, stepMm / 10, 0);
  return isSimple(stairs) ? stairs : points.map(toPoint);
}

/** A to Z, then AA and so on. */
function letter(at: number): string {
  const own = String.fromCharCode(65 + (at % 26));
  return at < 26 ? own : `${letter(Math.floor(at / 26) - 1)}${own}`;
}

/** The loops of covered holes, clockwise, where the net lies over them. */
function holesInNet({ net, surface }: Drape): readonly Outline[] {
  return surface.holes.flatMap((loop) => {
    const outline = Array.from(loop).flatMap((vertex): readonly Point2[] => {
      const place = locate(net, surface.positions, 3 * vertex);
      return place === null ? [] : [[place.xMm, place.yMm]];
    });
    if (outline.length < 3 || outline.length < loop.length / 2) return [];
    return [outlineAreaMm2(outline) > 0 ? outline.toReversed() : outline];
  });
}

const turn = ([x, y]: Point2): Point2 => [x, -y];

/** As it lies on the table with the other side up: mirrored about the warp. */
function turnedOver(piece: PlyPiece): PlyPiece {
  return {
    ...piece,
    outlineMm: piece.outlineMm.map(turn).toReversed(),
    holesMm: piece.holesMm.map((hole) => hole.map(turn).toReversed()),
    datumMm: [turn(piece.datumMm[0]), turn(piece.datumMm[1])],
    registrationMm: piece.registrationMm.map(turn),
    marks: piece.marks.map(({ atMm, into, label }) => ({ atMm: turn(atMm), into: turn(into), label })),
  };
}
