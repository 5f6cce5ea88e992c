/** Invented flat pieces of cloth: boxes with notched corners, strips, disks, patches on the bias. */
import { turned } from '../../src/core/templates/outline';
import type { Outline, PlyPiece, Point2 } from '../../src/core/templates/piece';

export const rectangle = (length: number, width: number): Outline => [
  [0, 0],
  [length, 0],
  [length, width],
  [0, width],
];

/** A box laid flat: a top with four sides, a square notch at each corner. */
export const crossed = (length: number, width: number, notch: number): Outline => [
  [notch, 0],
  [length - notch, 0],
  [length - notch, notch],
  [length, notch],
  [length, width - notch],
  [length - notch, width - notch],
  [length - notch, width],
  [notch, width],
  [notch, width - notch],
  [0, width - notch],
  [0, notch],
  [notch, notch],
];

export const oval = (length: number, width: number, corners = 48): Outline =>
  Array.from({ length: corners }, (_, i): Point2 => {
    const at = (2 * Math.PI * i) / corners;
    return [(length / 2) * Math.cos(at), (width / 2) * Math.sin(at)];
  });

export const onTheBias = (outline: Outline, deg: number): Outline =>
  outline.map((point) => turned(point, deg));

export const angleShape = (length: number, width: number, limb: number): Outline => [
  [0, 0],
  [length, 0],
  [length, limb],
  [limb, limb],
  [limb, width],
  [0, width],
];

/** A piece around an outline; marks, datum and holes where the test asks for none in particular. */
export function flatPiece(name: string, outlineMm: Outline, more: Partial<PlyPiece> = {}): PlyPiece {
  const [x, y] = outlineMm.reduce(
    ([sx, sy], [px, py]) => [sx + px / outlineMm.length, sy + py / outlineMm.length],
    [0, 0] as [number, number],
  );
  return {
    name,
    ply: Number.parseInt(name, 10) || 1,
    fabric: 'twill 200 g',
    outlineMm,
    holesMm: [],
    fiberDeg: 0,
    datumMm: [
      [x - 10, y],
      [x + 10, y],
    ],
    marks: [],
    registrationMm: [
      [x - 8, y],
      [x + 8, y],
    ],
    upGoesToMold: true,
    mirrored: false,
    ...more,
  };
}

/** Ten pieces for two hand-held halves: upright, at 45 degrees, strips and small patches. */
export const tenPieces: readonly PlyPiece[] = [
  flatPiece('1A', crossed(190, 130, 22)),
  flatPiece('2A', onTheBias(crossed(186, 126, 22), 45)),
  flatPiece('3A', crossed(184, 124, 20)),
  flatPiece('4A', onTheBias(rectangle(110, 60), 45)),
  flatPiece('5A', oval(120, 80)),
  flatPiece('6A', angleShape(140, 110, 40)),
  flatPiece('7A', rectangle(170, 45)),
  flatPiece('8A', rectangle(120, 24)),
  flatPiece('9A', oval(50, 50)),
  flatPiece('10A', onTheBias(rectangle(60, 40), 30)),
];
