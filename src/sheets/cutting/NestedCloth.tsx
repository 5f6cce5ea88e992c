import { clothSheets, type ClothSheet } from '../../core/templates/clothDrawing';
import type { FabricNest, Placement } from '../../core/templates/nest';
import { posed } from '../../core/templates/outline';
import type { Outline, Point2 } from '../../core/templates/piece';
import { roomiest } from '../../core/templates/pieceDrawing';
import { formatNumber } from '../../core/units/formatNumber';

export interface NestedClothProps {
  readonly nest: FabricNest;
  readonly picked: string;
  readonly onPick: (name: string) => void;
}

/** All cloth of one fabric that is cut into: remnants, then the roll. */
export function NestedCloth({ nest, picked, onPick }: NestedClothProps) {
  return (
    <div className="nested-cloths">
      {clothSheets(nest).map((sheet) => (
        <OneCloth key={sheet.title} sheet={sheet} picked={picked} onPick={onPick} />
      ))}
    </div>
  );
}

/** Across to the right and along upwards, as the cloth lies before who cuts it: the loose end is nearest. */
const onPage = ([x, y]: Point2): Point2 => [-y, -x];

const pathOf = (outline: Outline) =>
  `M${outline
    .map(onPage)
    .map(([x, y]) => `${x.toFixed(1)} ${y.toFixed(1)}`)
    .join('L')}Z`;

function OneCloth({
  sheet,
  picked,
  onPick,
}: Omit<NestedClothProps, 'nest'> & { readonly sheet: ClothSheet }) {
  const { title, outlineMm, placements, bounds } = sheet;
  const [alongMm, acrossMm] = [bounds.highXMm - bounds.lowXMm, bounds.highYMm - bounds.lowYMm];
  const unit = acrossMm / 100;
  const box = [-bounds.highYMm - unit, -bounds.highXMm - unit, acrossMm + 2 * unit, alongMm + 2 * unit];
  return (
    <figure className="cutting-view">
      <svg
        viewBox={box.join(' ')}
        role="img"
        aria-label={`${title}: ${placements.length} pieces on ${formatNumber(alongMm, 0)} × ${formatNumber(acrossMm, 0)} mm, piece ${picked} picked out`}
      >
        <path className="nest-cloth" d={pathOf(outlineMm)} strokeWidth={0.3 * unit} />
        {placements.map((placement) => (
          <PlacedPiece
            key={placement.piece.name}
            placement={placement}
            unit={unit}
            isPicked={placement.piece.name === picked}
            onPick={onPick}
          />
        ))}
      </svg>
      <figcaption className="quiet">
        {title}: {formatNumber(alongMm, 0)} mm along the warp, {formatNumber(acrossMm, 0)} mm across; the
        loose end below. Cut in the order of the numbers.
      </figcaption>
    </figure>
  );
}

interface PlacedPieceProps {
  readonly placement: Placement;
  readonly unit: number;
  readonly isPicked: boolean;
  readonly onPick: (name: string) => void;
}

function PlacedPiece({ placement, unit, isPicked, onPick }: PlacedPieceProps) {
  const { piece, cutOrder } = placement;
  const [x, y] = onPage(posed(roomiest(piece).middle, placement));
  return (
    <g className={isPicked ? 'nest-piece picked' : 'nest-piece'} onPointerDown={() => onPick(piece.name)}>
      <path d={pathOf(piece.outlineMm.map((point) => posed(point, placement)))} strokeWidth={0.3 * unit} />
      <text className="flat-name" x={x} y={y} fontSize={2.4 * unit}>
        {piece.name}
      </text>
      <text className="flat-label" x={x} y={y + 2.4 * unit} fontSize={1.8 * unit}>
        {cutOrder}
      </text>
    </g>
  );
}
