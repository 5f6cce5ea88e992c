import { useId, useMemo } from 'react';
import { bedReaction } from '../../core/closing/bedReaction';
import { lineOfActionMm } from '../../core/closing/clamps';
import { formatNumber } from '../../core/units/formatNumber';
import type { PartShape } from '../../pipeline/told';
import { clampLetter } from '../../steps/closing/clampLetter';
import { isPlaced } from '../../steps/closing/figures';
import type { Clamp } from '../../steps/inputs/clamp';
import type { ClosingState } from '../../steps/closedMold/state';
import { useWidth } from '../../ui/charts/useWidth';
import { pullName } from '../part/PullChoiceRow';
import { planSilhouette } from './planSilhouette';

export interface ClampPlanProps {
  readonly state: ClosingState;
  /** The lines that `state.clamps` was made of, in the same order. */
  readonly clamps: readonly Clamp[];
  /** The drawn part; null while it is not known. */
  readonly shape: Pick<PartShape, 'display'> | null;
}

type Place = readonly [number, number];

const mostHeightPx = 300;
const marginPx = 20;
const markPx = 11;

const placeText = ([x, y]: Place) => `x ${formatNumber(x, 1)}, y ${formatNumber(y, 1)} mm`;

interface ClampMark {
  readonly letter: string;
  readonly planMm: Place;
  /** Equal clamps on the same place. */
  count: number;
}

/** The clamps of the balance with the letters of their lines, those on one place together. */
function marksOf({ clamps: placed }: ClosingState, clamps: readonly Clamp[]): readonly ClampMark[] {
  const letters = clamps.flatMap(({ count, forceN }, index) =>
    Array.from({ length: forceN > 0 ? count : 0 }, () => clampLetter(index)),
  );
  const marks = new Map<string, ClampMark>();
  for (const [index, { planMm }] of placed.entries()) {
    const letter = letters[index] ?? '';
    const key = `${letter} ${planMm.join(' ')}`;
    const mark = marks.get(key);
    if (mark === undefined) marks.set(key, { letter, planMm, count: 1 });
    else mark.count++;
  }
  return [...marks.values()];
}

const markName = ({ letter, count }: ClampMark) => (count === 1 ? letter : `${letter} × ${count}`);

/** The part seen along the pull, with lands, clamps, where the clamps act and where the bed pushes. */
export function ClampPlan({ state, clamps, shape }: ClampPlanProps) {
  const id = useId();
  const [box, widthPx] = useWidth<HTMLElement>();
  const { histogram, main, lands, curve } = state;
  const { frame } = histogram;
  const silhouette = useMemo(
    () => (shape === null ? '' : planSilhouette(frame, shape.display)),
    [frame, shape],
  );
  const marks = marksOf(state, clamps);
  const action = lineOfActionMm(state.clamps, Math.max(0, main.solution.standOffMm));
  const reaction = isPlaced(state) ? (bedReaction(histogram, main.solution, curve)?.planMm ?? null) : null;

  const outline = lands?.outlineHalfMm ?? frame.halfSizeMm;
  const reach = (axis: 0 | 1) =>
    Math.max(outline[axis], 1e-6, ...marks.map(({ planMm }) => Math.abs(planMm[axis])));
  const [reachX, reachY] = [reach(0), reach(1)];
  const perMm = Math.min((widthPx / 2 - marginPx) / reachX, (mostHeightPx / 2 - marginPx) / reachY);
  const heightPx = 2 * (reachY * perMm + marginPx);
  const at = ([x, y]: Place): Place => [widthPx / 2 + x * perMm, heightPx / 2 - y * perMm];
  const isOnDrawing = ([x, y]: Place) => Math.abs(x) <= reachX && Math.abs(y) <= reachY;

  return (
    <figure ref={box} className="chart clamp-plan">
      <svg
        width="100%"
        height={heightPx}
        role="img"
        aria-labelledby={`${id}-title ${id}-desc`}
        className="chart-drawing"
      >
        <title id={`${id}-title`}>Plan of the clamps, seen along the pull</title>
        <desc id={`${id}-desc`}>
          {marks.map((mark) => `${markName(mark)} at ${placeText(mark.planMm)}`).join('; ')}
        </desc>
        <g transform={`translate(${widthPx / 2} ${heightPx / 2}) scale(${perMm} ${-perMm})`}>
          {lands === null ? null : (
            <rect
              x={-outline[0]}
              y={-outline[1]}
              width={2 * outline[0]}
              height={2 * outline[1]}
              className="plan-lands"
            />
          )}
          <path d={silhouette} className="plan-part" />
        </g>
        <path d={`M${widthPx / 2},0V${heightPx}M0,${heightPx / 2}H${widthPx}`} className="plan-axis" />
        {reaction !== null && isOnDrawing(reaction) ? <ReactionMark at={at(reaction)} /> : null}
        {action !== null && isOnDrawing(action) ? <ActionMark at={at(action)} /> : null}
        {marks.map((mark) => {
          const [x, y] = at(mark.planMm);
          return (
            <g key={`${mark.letter} ${x} ${y}`}>
              <circle cx={x} cy={y} r={markPx} className="plan-clamp" />
              <text x={x} y={y} className="chart-number chart-middle">
                {mark.letter}
              </text>
              {mark.count === 1 ? null : (
                <text x={x + 26} y={y} className="chart-number plan-count">
                  ×{mark.count}
                </text>
              )}
            </g>
          );
        })}
      </svg>
      <figcaption>
        <ul className="plan-key">
          <li>
            <svg width={28} height={28} viewBox="0 0 50 50" aria-hidden>
              <ActionMark at={[25, 25]} />
            </svg>
            {action === null ? 'the clamps press nowhere' : `the clamps act at ${placeText(action)}`}
          </li>
          <li>
            <svg width={28} height={28} viewBox="0 0 50 50" aria-hidden>
              <ReactionMark at={[25, 25]} />
            </svg>
            {reaction === null
              ? 'the laminate pushes back nowhere'
              : `the laminate pushes back at ${placeText(reaction)}`}
          </li>
        </ul>
        <p className="chart-note">
          {`x to the right is ${pullName(frame.u)} of the model, y up is ${pullName(frame.v)}, both from the middle of the part${lands === null ? '' : '; dashed: outside of the lands'}.`}
        </p>
      </figcaption>
    </figure>
  );
}

/** Line of action of the clamps: a ring with four ticks, wide enough to be seen round a clamp that stands there. */
function ActionMark({ at: [x, y] }: { readonly at: Place }) {
  return (
    <g className="plan-action">
      <circle cx={x} cy={y} r={15} />
      <path d={`M${x - 22},${y}h7M${x + 15},${y}h7M${x},${y - 22}v7M${x},${y + 15}v7`} />
    </g>
  );
}

/** Where the bed pushes: a diamond, seen round the ring too. */
function ReactionMark({ at: [x, y] }: { readonly at: Place }) {
  return <path d={`M${x},${y - 23}l23,23l-23,23l-23,-23z`} className="plan-reaction" />;
}
