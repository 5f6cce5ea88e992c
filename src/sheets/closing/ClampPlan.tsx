import { useId, useMemo } from 'react';
import { bedReaction } from '../../core/closing/bedReaction';
import { lineOfActionMm } from '../../core/closing/clamps';
import { formatNumber } from '../../core/units/formatNumber';
import type { PartShape } from '../../jobs/protocol';
import { clampLetter } from '../../steps/closing/clampLetter';
import { isPlaced } from '../../steps/closing/figures';
import type { Clamp } from '../../steps/closing/inputs';
import type { ClosingState } from '../../steps/closing/state';
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

/** Every clamp of the balance with the letter of its line. */
function marksOf({ clamps: placed }: ClosingState, clamps: readonly Clamp[]) {
  const letters = clamps.flatMap(({ count, forceN }, index) =>
    Array.from({ length: forceN > 0 ? count : 0 }, () => clampLetter(index)),
  );
  return placed.map(({ planMm }, index) => ({ letter: letters[index] ?? '', planMm }));
}

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
          {marks.map(({ letter, planMm }) => `${letter} at ${placeText(planMm)}`).join('; ')}
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
        {marks.map(({ letter, planMm }, index) => {
          const [x, y] = at(planMm);
          return (
            // Equal clamps of one line have no other name than their order.
            <g key={index}>
              <circle cx={x} cy={y} r={markPx} className="plan-clamp" />
              <text x={x} y={y} className="chart-number chart-middle">
                {letter}
              </text>
            </g>
          );
        })}
        {reaction !== null && isOnDrawing(reaction) ? <ReactionMark at={at(reaction)} /> : null}
        {action !== null && isOnDrawing(action) ? <ActionMark at={at(action)} /> : null}
      </svg>
      <figcaption>
        <ul className="plan-key">
          <li>
            <svg width={22} height={22} aria-hidden>
              <ActionMark at={[11, 11]} />
            </svg>
            {action === null ? 'the clamps press nowhere' : `the clamps act at ${placeText(action)}`}
          </li>
          <li>
            <svg width={22} height={22} aria-hidden>
              <ReactionMark at={[11, 11]} />
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

/** Line of action of the clamps: a ring with a cross. */
function ActionMark({ at: [x, y] }: { readonly at: Place }) {
  return (
    <g className="plan-action">
      <circle cx={x} cy={y} r={8} />
      <path d={`M${x - 8},${y}h16M${x},${y - 8}v16`} />
    </g>
  );
}

/** Where the bed pushes: a filled diamond, seen under the ring too. */
function ReactionMark({ at: [x, y] }: { readonly at: Place }) {
  return <path d={`M${x},${y - 10}l10,10l-10,10l-10,-10z`} className="plan-reaction" />;
}
