import { useEffect, useMemo, useRef } from 'react';
import type { Section } from '../../core/mesh/types';
import { formatNumber } from '../../core/units/formatNumber';
import type { StepContext } from '../../steps/shared/context';
import { SectionHead } from '../../ui/SectionHead';
import { useKeyedState } from '../../ui/useKeyedState';
import type { MeasuringDesk } from '../measuring/measuringDesk';
import { cutPlane, moldCutOf, type MoldCut } from './moldCutOf';

export interface MoldCutDrawingProps {
  readonly context: StepContext;
  /** What is shown of the part; another one is cut anew. */
  readonly measuredAs: object | null;
  readonly desk: Pick<MeasuringDesk, 'ask'>;
}

/** Cut through the closed mold, to scale: pattern, negative and positive in their box, with its dimensions. */
export function MoldCutDrawing({ context, measuredAs, desk }: MoldCutDrawingProps) {
  const { measured, mold, inputs } = context;
  const { pull } = inputs.part;
  const [section, setSection] = useKeyedState<Section | null>(measuredAs, () => null);
  const plane = useMemo(
    () => (measured === null ? null : cutPlane(pull, measured.summary.boxMinMm, measured.summary.boxMaxMm)),
    [measured, pull],
  );
  const show = useRef(setSection);
  useEffect(() => {
    show.current = setSection;
  });
  useEffect(() => {
    if (plane === null || measuredAs === null) return undefined;
    let wanted = true;
    void desk.ask('cut', plane).then((cut) => {
      if (wanted && cut !== null) show.current(cut);
    });
    return () => {
      wanted = false;
    };
  }, [desk, plane, measuredAs]);
  if (measured === null || mold === null || section === null) return null;
  const { boxMinMm, boxMaxMm } = measured.summary;
  const cut = moldCutOf(section, pull, boxMinMm, boxMaxMm, mold.box, inputs.mold);
  if (cut === null) return null;
  return (
    <section aria-label="Cut through the closed mold">
      <SectionHead title="Cut through the closed mold, to scale" />
      <CutFigure cut={cut} />
    </section>
  );
}

/** Room for the dimensions, in the millimeters of the drawing: lettering keeps its share of the width. */
function CutFigure({ cut: { outlines, box, partingMm } }: { readonly cut: MoldCut }) {
  const width = box.right - box.left;
  const height = box.high - box.low;
  const unit = Math.max(width, height) / 30;
  const up = (mm: number) => box.high - mm;
  const along = (mm: number) => mm - box.left;
  const path = outlines
    .map((points) => `M${points.map(([x, y]) => `${along(x).toFixed(3)},${up(y).toFixed(3)}`).join('L')}Z`)
    .join('');
  const widthText = `${formatNumber(width, 1)} mm`;
  const heightText = `${formatNumber(height, 1)} mm`;
  const line = { stroke: 'var(--ink)', strokeWidth: unit / 16, fill: 'none' };
  return (
    <svg
      className="mold-cut"
      role="img"
      aria-label={`Box ${widthText} wide and ${heightText} high, the negative above the positive`}
      viewBox={`${-unit} ${-unit} ${width + 7 * unit} ${height + 4 * unit}`}
    >
      <rect className="mold-cut-negative" x={0} y={0} width={width} height={up(partingMm)} />
      <rect
        className="mold-cut-positive"
        x={0}
        y={up(partingMm)}
        width={width}
        height={height - up(partingMm)}
      />
      <path d={path} fill="var(--ink)" fillRule="evenodd" />
      <rect {...line} x={0} y={0} width={width} height={height} />
      <path {...line} d={`M0,${up(partingMm)}H${width}`} strokeDasharray={`${unit / 2} ${unit / 4}`} />
      <g fontSize={unit} fill="var(--ink)">
        <text x={unit / 2} y={1.3 * unit}>
          negative
        </text>
        <text x={unit / 2} y={height - unit / 2}>
          positive
        </text>
        <path
          {...line}
          d={`M0,${height + unit}H${width}M0,${height + unit / 2}v${unit}M${width},${height + unit / 2}v${unit}`}
        />
        <text x={width / 2} y={height + 2.4 * unit} textAnchor="middle" className="number">
          {widthText}
        </text>
        <path
          {...line}
          d={`M${width + unit},0V${height}M${width + unit / 2},0h${unit}M${width + unit / 2},${height}h${unit}`}
        />
        <text x={width + 1.6 * unit} y={height / 2} className="number">
          {heightText}
        </text>
      </g>
    </svg>
  );
}
