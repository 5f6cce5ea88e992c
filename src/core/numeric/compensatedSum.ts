/**
 * Sum whose rounding error does not grow with the number of terms (Neumaier's form of compensated summation).
 * Terms: dimension of the caller's choice; NaN in, NaN out.
 */
export function compensatedSum(terms: Iterable<number>): number {
  let sum = 0;
  let lost = 0;
  for (const term of terms) {
    const next = sum + term;
    lost += Math.abs(sum) >= Math.abs(term) ? sum - next + term : term - next + sum;
    sum = next;
  }
  return sum + lost;
}
