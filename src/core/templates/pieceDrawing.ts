/** A piece as it is drawn at true size, in its own frame: what is cut, what only helps to lay it, what is written on it. */
import { formatNumber } from '../units/formatNumber';
import { circleOf, lineOf, textOf, type DrawnLine, type DrawnText, type Drawing } from './drawing';
import { borderDistanceMm, boundsOf, isInside } from './outline';
import type { PlyPiece, Point2 } from './piece';

const holeRadiusMm = 1.5;
const markLengthMm = 5;
const headMm = 3;
/** A wider letter than most of its kind, per size. */
const letterShare = 0.58;

/** Which side is up when the template lies on the cloth, and what that side meets. */
export const wayUpText = ({ upGoesToMold }: PlyPiece): string =>
  upGoesToMold ? 'this side goes against the mold' : 'this side looks away from the mold';

export const pieceTitle = (piece: PlyPiece): string =>
  `${piece.name} · ply ${piece.ply} · ${piece.fabric} · ${formatNumber(piece.fiberDeg, 0)}°`;

export function pieceDrawing(piece: PlyPiece): Drawing {
  const { outlineMm, holesMm, datumMm, marks, registrationMm } = piece;
  const place = roomiest(piece);
  return {
    lines: [
      lineOf('cut', outlineMm, { closed: true, widthMm: 0.25 }),
      ...holesMm.map((hole) => lineOf('afterCure', hole, { closed: true, dashed: true })),
      lineOf('mark', datumMm, { dashed: true }),
      ...marks.map(({ atMm: [x, y], into: [dx, dy] }) =>
        lineOf('mark', [
          [x, y],
          [x + dx * markLengthMm, y + dy * markLengthMm],
        ]),
      ),
      ...registrationMm.flatMap(crossedHole),
      ...fiberArrow(place),
    ],
    texts: [
      ...captions(piece, place),
      textOf('datum', nearEndOf(datumMm), 2, { turnDeg: uprightDeg(datumMm) }),
      ...marks.map(({ atMm: [x, y], into: [dx, dy], label }) =>
        textOf(label, [x + dx * (markLengthMm + 1.8), y + dy * (markLengthMm + 1.8) - 0.7], 2.2, {
          anchor: 'middle',
        }),
      ),
      ...holesMm.map((hole) => {
        const { lowXMm, lowYMm, highXMm, highYMm } = boundsOf(hole);
        return textOf('cut after the cure', [(lowXMm + highXMm) / 2, (lowYMm + highYMm) / 2], 2, {
          anchor: 'middle',
        });
      }),
    ],
  };
}

/** The middle of the largest clear circle, about. */
interface Room {
  readonly middle: Point2;
  readonly radiusMm: number;
}

/** Clear of the border, of holes, and of the marks that it is laid by. */
export function roomiest({ outlineMm, holesMm, datumMm, registrationMm }: PlyPiece): Room {
  const { lowXMm, lowYMm, highXMm, highYMm } = boundsOf(outlineMm);
  const others = [...holesMm, datumMm, ...registrationMm.map((point) => [point])];
  const steps = 14;
  let best: Room = { middle: [(lowXMm + highXMm) / 2, (lowYMm + highYMm) / 2], radiusMm: 0 };
  for (let i = 1; i < steps; i++)
    for (let k = 1; k < steps; k++) {
      const middle: Point2 = [
        lowXMm + ((highXMm - lowXMm) * i) / steps,
        lowYMm + ((highYMm - lowYMm) * k) / steps,
      ];
      if (!isInside(outlineMm, middle) || holesMm.some((hole) => isInside(hole, middle))) continue;
      const radiusMm = Math.min(...[outlineMm, ...others].map((one) => borderDistanceMm(one, middle)));
      if (radiusMm > best.radiusMm + 1e-9) best = { middle, radiusMm };
    }
  return best;
}

/** Along the warp, a head at both ends: fibers have no forward. Its half is within the clear circle. */
function fiberArrow({ middle: [x, y], radiusMm }: Room): DrawnLine[] {
  const half = Math.min(20, Math.max(3, 0.8 * radiusMm));
  const head = Math.min(headMm, half / 2);
  const at = y - Math.min(4, radiusMm / 4);
  const headOf = (end: number, sense: number) =>
    lineOf('mark', [
      [end - sense * head, at + head / 2],
      [end, at],
      [end - sense * head, at - head / 2],
    ]);
  return [
    lineOf('mark', [
      [x - half, at],
      [x + half, at],
    ]),
    headOf(x + half, 1),
    headOf(x - half, -1),
  ];
}

function captions(piece: PlyPiece, { middle: [x, y], radiusMm }: Room): DrawnText[] {
  const under = Math.min(4, radiusMm / 4);
  const rows = [
    pieceTitle(piece),
    wayUpText(piece),
    ...(piece.mirrored ? ['mirror image, for the mate'] : []),
  ];
  const widest = Math.max(...rows.map((row) => row.length));
  const sizeMm = Math.min(3, Math.max(1.6, (1.8 * radiusMm) / (widest * letterShare)));
  const nameMm = Math.min(9, Math.max(2.5, radiusMm / 3));
  return [
    textOf(piece.name, [x, y - under + 2], nameMm, { anchor: 'middle' }),
    textOf('warp', [x, y - under - 2.4], 2, { anchor: 'middle' }),
    ...rows.map((row, i) =>
      textOf(row, [x, y - under - 3 - (i + 1) * 1.3 * sizeMm], sizeMm, { anchor: 'middle' }),
    ),
  ];
}

function crossedHole([x, y]: Point2): DrawnLine[] {
  const reach = 2 * holeRadiusMm;
  return [
    circleOf('mark', [x, y], holeRadiusMm),
    lineOf('mark', [
      [x - reach, y],
      [x + reach, y],
    ]),
    lineOf('mark', [
      [x, y - reach],
      [x, y + reach],
    ]),
  ];
}

const nearEndOf = ([[ax, ay], [bx, by]]: PlyPiece['datumMm']): Point2 => [
  ax + 0.05 * (bx - ax),
  ay + 0.05 * (by - ay) + 0.6,
];

/** Along the line, and never upside down. */
function uprightDeg([[ax, ay], [bx, by]]: PlyPiece['datumMm']): number {
  const deg = (Math.atan2(by - ay, bx - ax) * 180) / Math.PI;
  return deg > 90 ? deg - 180 : deg < -90 ? deg + 180 : deg;
}
