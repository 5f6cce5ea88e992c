/** Least squares over a few bounded parameters, by Levenberg and Marquardt's damped steps with slopes by differences. */

export interface BoundedParameter {
  readonly start: number;
  readonly low: number;
  readonly high: number;
  /** Change with which its slope is taken. */
  readonly probe: number;
}

export interface LeastSquaresFit {
  readonly values: readonly number[];
  /** Root of the mean squared residual. */
  readonly rms: number;
  /** Whether the last step changed next to nothing. */
  readonly settled: boolean;
}

const mostTurns = 25;
/** A fit that improves by less than this share has settled. */
const settledShare = 1e-4;

const dot = (a: readonly number[], b: readonly number[]) => a.reduce((sum, one, i) => sum + one * b[i]!, 0);
const sumOfSquares = (values: readonly number[]) => values.reduce((sum, one) => sum + one * one, 0);

/** `residualsOf` gives the same number of residuals for any parameters inside the bounds. */
export function boundedLeastSquares(
  residualsOf: (values: readonly number[]) => readonly number[],
  parameters: readonly BoundedParameter[],
): LeastSquaresFit {
  const inside = (values: readonly number[]) =>
    values.map((value, i) => Math.min(parameters[i]!.high, Math.max(parameters[i]!.low, value)));
  let values = inside(parameters.map(({ start }) => start));
  let residuals = residualsOf(values);
  let misfit = sumOfSquares(residuals);
  let damping = 1e-2;
  let settled = misfit === 0;
  for (let turn = 0; turn < mostTurns && !settled; turn++) {
    const slopes = parameters.map(({ probe, high }, i) => {
      const step = values[i]! + probe > high ? -probe : probe;
      const moved = residualsOf(values.map((value, j) => (j === i ? value + step : value)));
      return moved.map((one, r) => (one - residuals[r]!) / step);
    });
    let improved = false;
    while (!improved && damping < 1e8) {
      const tried = inside(values.map((value, i) => value + dampedStep(slopes, residuals, damping)[i]!));
      const triedResiduals = residualsOf(tried);
      const triedMisfit = sumOfSquares(triedResiduals);
      improved = triedMisfit < misfit;
      if (improved) {
        settled = misfit - triedMisfit < settledShare * misfit;
        [values, residuals, misfit] = [tried, triedResiduals, triedMisfit];
        damping = Math.max(1e-6, damping / 5);
      } else damping *= 8;
    }
    if (!improved) settled = true;
  }
  return { values, rms: Math.sqrt(misfit / residuals.length), settled };
}

/** Solves (JᵀJ + damping · diag) step = −Jᵀ r by elimination; the system is as small as the parameters are few. */
function dampedStep(
  slopes: readonly (readonly number[])[],
  residuals: readonly number[],
  damping: number,
): number[] {
  const n = slopes.length;
  const rows = slopes.map((slope, i) => {
    const row = slopes.map((other, j) => dot(slope, other) * (i === j ? 1 + damping : 1));
    row[i]! += 1e-12;
    return [...row, -dot(slope, residuals)];
  });
  for (let i = 0; i < n; i++)
    for (let below = i + 1; below < n; below++) {
      const share = rows[below]![i]! / rows[i]![i]!;
      for (let j = i; j <= n; j++) rows[below]![j]! -= share * rows[i]![j]!;
    }
  const step: number[] = Array.from({ length: n }, () => 0);
  for (let i = n - 1; i >= 0; i--) {
    let rest = rows[i]![n]!;
    for (let j = i + 1; j < n; j++) rest -= rows[i]![j]! * step[j]!;
    step[i] = rest / rows[i]![i]!;
  }
  return step;
}
