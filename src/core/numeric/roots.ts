/** Roots of a function of one number between two brackets. */
import { Problem } from '../problem';

/**
 * Where `of` changes sign between `low` and `high`, by bisection: slow and sure, for smooth or broken functions.
 * Ends when the bracket is down to rounding.
 * @throws Problem `numeric.noRoot` when both ends have the same sign
 */
export function bracketedRoot(of: (x: number) => number, low: number, high: number): number {
  let [left, right] = [low, high];
  const atLeft = of(left);
  if (atLeft === 0) return left;
  const atRight = of(right);
  if (atRight === 0) return right;
  if (!(Math.sign(atLeft) * Math.sign(atRight) < 0))
    throw new Problem('numeric.noRoot', 'There is no crossing between these two ends.');
  for (let i = 0; i < 200; i++) {
    const middle = left + (right - left) / 2;
    if (middle === left || middle === right) break;
    const atMiddle = of(middle);
    if (atMiddle === 0) return middle;
    if (Math.sign(atMiddle) === Math.sign(atLeft)) left = middle;
    else right = middle;
  }
  return left + (right - left) / 2;
}
