/**
 * Running sum that keeps the rounding error of every step (Neumaier 1974), so that a million small facets add up
 * to the same figure in any order. Plain addition loses about one digit per ten thousand facets.
 */
export class RunningSum {
  private sum = 0;
  private lost = 0;

  add(term: number): void {
    const next = this.sum + term;
    this.lost += Math.abs(this.sum) >= Math.abs(term) ? this.sum - next + term : term - next + this.sum;
    this.sum = next;
  }

  get value(): number {
    return this.sum + this.lost;
  }
}
