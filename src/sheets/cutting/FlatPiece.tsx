import { useId } from 'react';
import type { CutPly } from '../../core/drape/cutPlies';
import type { Outline, PlyPiece } from '../../core/templates/piece';
import { formatNumber } from '../../core/units/formatNumber';

export interface FlatPieceProps {
  readonly piece: PlyPiece;
  readonly ply: CutPly;
}

const marginMm = 6;

/** On the page y runs down. */
const pathOf = (outline: Outline) =>
  `M${outline.map(([x, y]) => `${x.toFixed(2)} ${(-y).toFixed(2)}`).join('L')}Z`;

/** One flat piece as it lies when it is cut, warp to the right, with the shear that it will have on the part. */
export function FlatPiece({ piece, ply }: FlatPieceProps) {
  const clip = useId();
  const xs = piece.outlineMm.map(([x]) => x);
  const ys = piece.outlineMm.map(([, y]) => -y);
  const [left, top] = [Math.min(...xs) - marginMm, Math.min(...ys) - marginMm];
  const [width, height] = [Math.max(...xs) + marginMm - left, Math.max(...ys) + marginMm - top];
  // What is drawn by the page's own measures stays as large however large the piece is.
  const unit = Math.max(width, height) / 100;
  const [middleX, middleY] = [left + width / 2, top + height / 2];
  const side = piece.upGoesToMold ? 'this side to the mold' : 'this side to the core';
  return (
    <figure className="cutting-view">
      <svg
        viewBox={`${left} ${top} ${width} ${height}`}
        role="img"
        aria-label={`Piece ${piece.name}, flat, ${formatNumber(width - 2 * marginMm, 0)} × ${formatNumber(height - 2 * marginMm, 0)} mm`}
        className="flat-piece"
      >
        <clipPath id={clip}>
          <path d={pathOf(piece.outlineMm)} />
        </clipPath>
        <path className="flat-cloth" d={pathOf(piece.outlineMm)} strokeWidth={0.5 * unit} />
        {piece.mirrored ? null : (
          <g clipPath={`url(#${clip})`}>
            <ShearStrips piece={piece} ply={ply} />
          </g>
        )}
        {piece.holesMm.map((hole, at) => (
          <path key={at} className="flat-hole" d={pathOf(hole)} strokeWidth={0.4 * unit} />
        ))}
        <line
          className="flat-datum"
          x1={piece.datumMm[0][0]}
          y1={-piece.datumMm[0][1]}
          x2={piece.datumMm[1][0]}
          y2={-piece.datumMm[1][1]}
          strokeWidth={0.3 * unit}
          strokeDasharray={`${3 * unit} ${1.5 * unit}`}
        />
        {piece.registrationMm.map(([x, y]) => (
          <circle key={`${x} ${y}`} className="flat-mark" cx={x} cy={-y} r={unit} strokeWidth={0.3 * unit} />
        ))}
        <path
          className="flat-mark"
          d={`M${middleX - 12 * unit} ${middleY}h${24 * unit}m${-3 * unit} ${-1.5 * unit}l${3 * unit} ${1.5 * unit}l${-3 * unit} ${1.5 * unit}`}
          strokeWidth={0.5 * unit}
        />
        <text className="flat-name" x={middleX} y={middleY - 2.5 * unit} fontSize={6 * unit}>
          {piece.name}
        </text>
        <text className="flat-name" x={middleX} y={middleY + 5 * unit} fontSize={3 * unit}>
          {side}
        </text>
        {piece.marks.map(({ atMm: [x, y], into: [dx, dy], label }, at) => (
          <g key={at}>
            <path
              className="flat-mark"
              d={`M${x} ${-y}l${3 * unit * dx} ${-3 * unit * dy}`}
              strokeWidth={0.4 * unit}
            />
            <text
              className="flat-label"
              x={x + 5 * unit * dx}
              y={-y - 5 * unit * dy + unit}
              fontSize={2.8 * unit}
            >
              {label}
            </text>
          </g>
        ))}
      </svg>
      <figcaption className="quiet">
        Piece {piece.name}: warp along the arrow, the part’s length along the dashed line. Light: over half of{' '}
        {formatNumber(ply.warningDeg, 0)}° of shear; dark: over it.
      </figcaption>
    </figure>
  );
}

function ShearStrips({ piece, ply: { view } }: FlatPieceProps) {
  const strips = [];
  for (let at = 0; at < view.strips.length; at += 4) {
    const [from, to, y, shear] = [
      view.strips[at]!,
      view.strips[at + 1]!,
      view.strips[at + 2]!,
      view.strips[at + 3]!,
    ];
    strips.push(
      <rect
        key={at}
        className={shear === 2 ? 'shear-over' : 'shear-half'}
        x={from}
        width={to - from}
        // A ply that lies face down is cut as its mirror image.
        y={piece.upGoesToMold ? -y - view.stepMm : y}
        height={view.stepMm}
      />,
    );
  }
  return strips;
}
