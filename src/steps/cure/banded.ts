/** A figure of the run in which the stone's own vapor holds its water back, with the band of all three runs. */
import type { CurePrediction, PredictedRun } from '../../core/cure/predictCure';
import type { Figure } from '../../core/figure';
import { formatNumber } from '../../core/units/formatNumber';
import { figure, type FigureSpec } from '../kit/figures';
import { perRun } from './say';

/** The middle run's value with the span of all three. */
export function banded(
  spec: FigureSpec,
  { runs, voxelMm, stage }: CurePrediction,
  value: (run: PredictedRun) => number | null,
  words: (run: PredictedRun) => string,
): Figure {
  const middle = runs.find(({ treatment }) => treatment === 'vapor-held');
  const values = runs.map(value);
  const known = values.filter((one): one is number => one !== null);
  const how = `Bricks of ${formatNumber(voxelMm, 1)} mm${stage === 'coarse' ? ', a first coarse answer' : ''}.`;
  const one = figure(spec, middle === undefined ? null : value(middle), ...perRun(runs, words), how);
  const [low, high] = [Math.min(...known), Math.max(...known)];
  return one.value === null || known.length < values.length || high - low < 10 ** -spec.decimals / 2
    ? one
    : { ...one, band: [low, high] };
}
