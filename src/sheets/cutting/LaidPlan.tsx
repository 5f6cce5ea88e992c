import { useState, type PointerEvent } from 'react';
import type { CutPlies, CutPly } from '../../core/drape/cutPlies';
import type { PlanPoint } from '../../core/drape/partDatum';
import { formatNumber } from '../../core/units/formatNumber';

export interface LaidPlanProps {
  readonly cut: CutPlies;
  readonly ply: CutPly;
  readonly disabled: boolean;
  readonly onStart: (start: PlanPoint) => void;
}

const marginMm = 5;
const stepMm = 0.5;

const rounded = (valueMm: number) => Math.round(valueMm / stepMm) * stepMm + 0;

/** Where the pointer is, from the middle of the part. */
function pointOf(event: PointerEvent<SVGSVGElement>): PlanPoint | null {
  const matrix = event.currentTarget.getScreenCTM();
  if (matrix === null) return null;
  const { x, y } = new DOMPoint(event.clientX, event.clientY).matrixTransform(matrix.inverse());
  return { alongMm: rounded(x), acrossMm: rounded(-y) };
}

/** The threads as they lie on the part, seen against the pull, with the start that can be dragged. */
export function LaidPlan({ cut, ply, disabled, onStart }: LaidPlanProps) {
  const [dragged, setDragged] = useState<PlanPoint | null>(null);
  const { alongMm, acrossMm } = dragged ?? cut.start;
  const [halfX, halfY] = [cut.datum.lengthMm / 2 + marginMm, cut.datum.acrossMm / 2 + marginMm];
  return (
    <figure className="cutting-view">
      <svg
        viewBox={`${-halfX} ${-halfY} ${2 * halfX} ${2 * halfY}`}
        role="img"
        aria-label={`Threads of ply ${ply.ply} on the part, laid from ${formatNumber(alongMm, 1)} mm along and ${formatNumber(acrossMm, 1)} mm across`}
        className={`laid-plan ${disabled ? '' : 'can-drag'}`}
        onPointerDown={(event) => {
          if (disabled) return;
          event.currentTarget.setPointerCapture(event.pointerId);
          setDragged(pointOf(event));
        }}
        onPointerMove={(event) => {
          if (dragged !== null) setDragged(pointOf(event));
        }}
        onPointerUp={() => {
          if (dragged !== null) onStart(dragged);
          setDragged(null);
        }}
        onPointerCancel={() => setDragged(null)}
      >
        <path className="laid-threads" d={threadsPath(cut, ply)} strokeWidth={halfX / 250} />
        <circle className="laid-start" cx={alongMm} cy={-acrossMm} r={halfX / 40} strokeWidth={halfX / 120} />
      </svg>
      <figcaption className="quiet">
        Ply {ply.ply} on the part, its length to the right. Drag the ring, or press where the cloth is to be
        put down first; then work the pieces out again.
      </figcaption>
    </figure>
  );
}

function threadsPath({ datum: { middleMm, length, across } }: CutPlies, { view }: CutPly): string {
  const { threadsMm } = view;
  const on = (way: readonly number[], at: number) =>
    way[0]! * (threadsMm[at]! - middleMm[0]) +
    way[1]! * (threadsMm[at + 1]! - middleMm[1]) +
    way[2]! * (threadsMm[at + 2]! - middleMm[2]);
  const words: string[] = [];
  for (let at = 0; at < threadsMm.length; at += 6)
    words.push(
      `M${on(length, at).toFixed(2)} ${(-on(across, at)).toFixed(2)}L${on(length, at + 3).toFixed(2)} ${(-on(across, at + 3)).toFixed(2)}`,
    );
  return words.join('');
}
