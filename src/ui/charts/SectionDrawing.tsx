import { extent } from 'd3-array';
import { line } from 'd3-shape';
import { useId, useMemo } from 'react';
import type { Section } from '../../core/mesh/types';
import { formatNumber } from '../../core/units/formatNumber';
import { HatchPattern } from './HatchPattern';
import { useWidth } from './useWidth';

export interface SectionDrawingProps {
  readonly section: Section;
  /** Names of the axes across and up, e.g. "y" and "z". */
  readonly across: string;
  readonly up: string;
  /** The drawing is never taller than this. */
  readonly mostHeightPx?: number;
}

type Point = readonly [number, number];

/** Room for the walls' numbers beside the cut. */
const marginPx = 62;
/** Advance of a digit of the number face. */
const digitPx = 9;
const arrowPx = 13;
const footPx = 40;

/** A round length of about a quarter of the drawing. */
function barLengthMm(widthMm: number): number {
  const rough = widthMm / 4;
  const power = 10 ** Math.floor(Math.log10(rough));
  return [5, 2, 1].map((step) => step * power).find((length) => length <= rough) ?? power;
}

function pointsOf(pointsMm: Float64Array): Point[] {
  return Array.from({ length: pointsMm.length / 2 }, (_, i) => [pointsMm[2 * i]!, pointsMm[2 * i + 1]!]);
}

/** A cut through the part to scale, with dimension lines where the wall was measured, and a scale bar. */
export function SectionDrawing({ section, across, up, mostHeightPx = 320 }: SectionDrawingProps) {
  const id = useId();
  const [box, widthPx] = useWidth<HTMLElement>();
  const outlines = useMemo(
    () => section.lines.map(({ pointsMm, closed }) => ({ points: pointsOf(pointsMm), closed })),
    [section],
  );
  const all = outlines.flatMap(({ points }) => points);
  const [left, right] = extent(all, ([x]) => x);
  const [low, high] = extent(all, ([, y]) => y);
  const { axis, atMm } = section.plane;
  const title = `Cut across ${axis} at ${formatNumber(atMm, 1)} mm`;
  if (left === undefined || right === undefined || low === undefined || high === undefined) {
    return <p className="chart-note">{title}: nothing of the part is there.</p>;
  }

  const perMm = Math.min(
    Math.max(60, widthPx - 2 * marginPx) / Math.max(right - left, 1e-6),
    Math.max(60, mostHeightPx - 2 * marginPx - footPx) / Math.max(high - low, 1e-6),
  );
  const heightPx = (high - low) * perMm + 2 * marginPx + footPx;
  const startPx = (widthPx - (right - left) * perMm) / 2;
  const xPx = ([x]: Point) => startPx + (x - left) * perMm;
  const yPx = ([, y]: Point) => marginPx + (high - y) * perMm;
  const path = line<Point>().x(xPx).y(yPx);
  const filled = outlines
    .filter(({ closed }) => closed)
    .map(({ points }) => `${path(points) ?? ''}Z`)
    .join('');
  const barMm = barLengthMm(right - left);
  const barY = heightPx - 26;
  const walls = section.walls.map(({ wallMm }) => `${formatNumber(wallMm, 2)} mm`).join(', ');

  return (
    <figure ref={box} className="chart">
      <svg
        width="100%"
        height={heightPx}
        role="img"
        aria-labelledby={`${id}-title ${id}-desc`}
        className="chart-drawing"
      >
        <title id={`${id}-title`}>{title}</title>
        <desc id={`${id}-desc`}>
          {walls === '' ? 'No wall was measured along this cut.' : `Walls along the cut: ${walls}.`}
        </desc>
        <defs>
          <HatchPattern id={`${id}-cut`} hatch="slant" className="section-hatch" />
        </defs>
        <path d={filled} fillRule="evenodd" className="section-material" />
        <path d={filled} fillRule="evenodd" fill={`url(#${id}-cut)`} />
        {outlines.map(({ points, closed }, i) => (
          // A cut has no other name for its lines than their order.
          <path key={i} d={`${path(points) ?? ''}${closed ? 'Z' : ''}`} className="section-line" />
        ))}
        {section.walls.map(({ fromMm, toMm, wallMm }) => (
          <WallDimension
            key={`${fromMm.join()} ${toMm.join()}`}
            from={[xPx(fromMm), yPx(fromMm)]}
            to={[xPx(toMm), yPx(toMm)]}
            text={formatNumber(wallMm, 2)}
          />
        ))}
        <path d={`M${marginPx},${barY - 5} v5 h${barMm * perMm} v-5`} className="section-dimension" />
        <text x={marginPx + barMm * perMm + 8} y={barY} className="chart-number">
          {formatNumber(barMm, barMm < 1 ? 1 : 0)} mm
        </text>
        <text x={widthPx - 8} y={heightPx - 8} className="chart-word chart-end">
          {`${across} to the right, ${up} up; walls in mm`}
        </text>
      </svg>
    </figure>
  );
}

/** Arrows on both faces of a wall, pointing at each other, and its value on the outside. */
function WallDimension({
  from,
  to,
  text,
}: {
  readonly from: Point;
  readonly to: Point;
  readonly text: string;
}) {
  const length = Math.hypot(from[0] - to[0], from[1] - to[1]) || 1;
  const out: Point = [(from[0] - to[0]) / length, (from[1] - to[1]) / length];
  const arrow = ([x, y]: Point, sense: number) => {
    const [dx, dy] = [out[0] * sense, out[1] * sense];
    return (
      `M${x + dx * arrowPx},${y + dy * arrowPx}L${x},${y}` +
      `M${x + dx * 6 - dy * 3},${y + dy * 6 + dx * 3}L${x},${y}L${x + dx * 6 + dy * 3},${y + dy * 6 - dx * 3}`
    );
  };
  // Clear of the arrow whichever way it points: the lettering is wider than it is high.
  const textAt: Point = [
    from[0] + out[0] * (arrowPx + 4 + (text.length * digitPx) / 2),
    from[1] + out[1] * (arrowPx + 10),
  ];
  return (
    <g>
      <path d={arrow(from, 1) + arrow(to, -1)} className="section-dimension" />
      <text x={textAt[0]} y={textAt[1]} className="chart-number chart-middle section-value">
        {text}
      </text>
    </g>
  );
}
