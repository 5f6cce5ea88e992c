import type { Drawing, Mark, Point } from './card/drawing';

const path = (points: readonly Point[]) =>
  points.map(([x, y]) => `${x.toFixed(2)},${y.toFixed(2)}`).join(' ');

const discMm = 2;

function MarkView({ mark }: { readonly mark: Mark }) {
  if (mark.kind === 'face')
    return <polygon className={`draw-face draw-${mark.fill}`} points={path(mark.points)} />;
  if (mark.kind === 'line')
    return <polyline className={`draw-line draw-line-${mark.stroke}`} points={path(mark.points)} />;
  if (mark.kind === 'disc')
    return (
      <g className={mark.hollow ? 'draw-place' : 'draw-clamp'}>
        <circle cx={mark.at[0]} cy={mark.at[1]} r={discMm} />
        <text x={mark.at[0]} y={mark.at[1] + 0.95} textAnchor="middle">
          {mark.text}
        </text>
      </g>
    );
  return (
    <text className="draw-text" x={mark.at[0]} y={mark.at[1]} textAnchor={mark.anchor}>
      {mark.text}
    </text>
  );
}

/** A drawing at its size on paper, in mm. */
export function DrawingView({ drawing }: { readonly drawing: Drawing }) {
  const { widthMm, heightMm, marks, told } = drawing;
  return (
    <svg
      className="drawing"
      role="img"
      aria-label={told}
      width={`${widthMm.toFixed(2)}mm`}
      height={`${heightMm.toFixed(2)}mm`}
      viewBox={`0 0 ${widthMm.toFixed(2)} ${heightMm.toFixed(2)}`}
    >
      {marks.map((mark, at) => (
        <MarkView key={at} mark={mark} />
      ))}
    </svg>
  );
}
