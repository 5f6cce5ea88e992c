/** How a filled area is told apart without color. */
export type Hatch = 'none' | 'slant' | 'cross' | 'dots' | 'level' | 'steep';

const strokes: Readonly<Record<Exclude<Hatch, 'none' | 'dots'>, string>> = {
  slant: 'M-2,2 l4,-4 M0,8 l8,-8 M6,10 l4,-4',
  steep: 'M-2,6 l4,4 M0,0 l8,8 M6,-2 l4,4',
  cross: 'M0,8 l8,-8 M0,0 l8,8',
  level: 'M0,4 h8',
};

/** An 8 px tile of hatching in the color of `className`, for `fill="url(#id)"` over a colored area. */
export function HatchPattern({
  id,
  hatch,
  className = 'chart-hatch',
}: {
  readonly id: string;
  readonly hatch: Exclude<Hatch, 'none'>;
  readonly className?: string;
}) {
  return (
    <pattern id={id} width={8} height={8} patternUnits="userSpaceOnUse">
      {hatch === 'dots' ? (
        <circle cx={4} cy={4} r={1.3} className={`${className} chart-hatch-dot`} />
      ) : (
        <path d={strokes[hatch]} className={className} />
      )}
    </pattern>
  );
}
