import type { ScaleLinear } from 'd3-scale';
import type { ReactNode } from 'react';

/** Between the axes, px from the upper left of the drawing. */
export interface PlotPx {
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
}

/**
 * The plot of a drawing, with room for numbers and words at its edges; never narrower than 40 px, so that scales stay the right way
 * round.
 */
export const plotOf = (widthPx: number, heightPx: number, edges: PlotPx): PlotPx => ({
  left: edges.left,
  right: Math.max(edges.left + 40, widthPx - edges.right),
  top: edges.top,
  bottom: heightPx - edges.bottom,
});

export interface PlotProps {
  /** Of the chart; its title is `${id}-title`. */
  readonly id: string;
  readonly title: string;
  /** One sentence on what can be seen, for those who don't see it. */
  readonly description?: string;
  /** Id of such a sentence that stands beside the drawing. */
  readonly describedBy?: string;
  readonly heightPx: number;
  readonly plot: PlotPx;
  readonly x: ScaleLinear<number, number>;
  readonly y: ScaleLinear<number, number>;
  readonly xTicks: number;
  readonly yTicks: number;
  readonly xText: (tick: number) => string;
  /** What goes up, over its numbers. */
  readonly up: string;
  /** Drawn under the rules. */
  readonly behind?: ReactNode;
  /** Bars and curves: over the rules, under the axis. */
  readonly children: ReactNode;
  /** Drawn over all. */
  readonly inFront?: ReactNode;
}

/** The frame of every chart with axes: rules with their numbers, a base line with its ticks. */
export function Plot(props: PlotProps) {
  const { id, title, description, describedBy, heightPx, plot, x, y, xTicks, yTicks, xText, up } = props;
  const yText = y.tickFormat(yTicks);
  const named = [
    `${id}-title`,
    ...(description === undefined ? [] : [`${id}-desc`]),
    ...(describedBy === undefined ? [] : [describedBy]),
  ];
  return (
    <svg
      width="100%"
      height={heightPx}
      role="img"
      aria-labelledby={named.join(' ')}
      className="chart-drawing"
    >
      <title id={`${id}-title`}>{title}</title>
      {description === undefined ? null : <desc id={`${id}-desc`}>{description}</desc>}
      {props.behind}
      {y.ticks(yTicks).map((tick) => (
        <g key={tick}>
          <line x1={plot.left} x2={plot.right} y1={y(tick)} y2={y(tick)} className="chart-rule" />
          <text x={plot.left - 8} y={y(tick)} className="chart-number chart-left">
            {yText(tick)}
          </text>
        </g>
      ))}
      {props.children}
      <line x1={plot.left} x2={plot.right} y1={plot.bottom} y2={plot.bottom} className="chart-axis" />
      {x.ticks(xTicks).map((tick) => (
        <g key={tick}>
          <line x1={x(tick)} x2={x(tick)} y1={plot.bottom} y2={plot.bottom + 5} className="chart-axis" />
          <text x={x(tick)} y={plot.bottom + 20} className="chart-number chart-middle">
            {xText(tick)}
          </text>
        </g>
      ))}
      <text x={4} y={12} className="chart-word">
        {up}
      </text>
      {props.inFront}
    </svg>
  );
}
