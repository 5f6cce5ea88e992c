import type { Bin } from './binRows';

/** Bins with the most scattered one on top. */
export class BinHeap {
  private readonly bins: Bin[];

  constructor(first: Bin) {
    this.bins = [first];
  }

  get size(): number {
    return this.bins.length;
  }

  all(): readonly Bin[] {
    return this.bins;
  }

  put(bin: Bin): void {
    const { bins } = this;
    let at = bins.push(bin) - 1;
    while (at > 0) {
      const parent = (at - 1) >> 1;
      if (bins[parent]!.scatter >= bin.scatter) break;
      bins[at] = bins[parent]!;
      at = parent;
    }
    bins[at] = bin;
  }

  take(): Bin | null {
    const { bins } = this;
    const top = bins[0];
    const last = bins.pop();
    if (top === undefined || last === undefined) return null;
    if (bins.length === 0) return top;
    let at = 0;
    for (;;) {
      let child = 2 * at + 1;
      if (child >= bins.length) break;
      if (child + 1 < bins.length && bins[child + 1]!.scatter > bins[child]!.scatter) child++;
      if (bins[child]!.scatter <= last.scatter) break;
      bins[at] = bins[child]!;
      at = child;
    }
    bins[at] = last;
    return top;
  }
}
