import type { Vec3 } from '../core/mesh/types';
import type { WallsBench, WallSlice } from './wallsBench';

/** Slices get smaller toward the end, so that neither thread waits long for the other; bounds in slots. */
const sliceBounds = { least: 2048, most: 16_384 };
/** Slices that lie with the helper at a time, so that it goes on while this thread is busy. */
const slicesAhead = 4;

/** Measures a slice of the same part elsewhere; rejects when it can't, or could not take the part. */
export type SliceHelper = (from: number, to: number, pull: Vec3, withWalls: boolean) => Promise<WallSlice>;

interface Slice {
  readonly from: number;
  readonly to: number;
}

/** Lets messages in: the helper's slice, before this thread takes the next one. */
function lettingMessagesIn(channel: MessageChannel): Promise<void> {
  return new Promise((resolve) => {
    channel.port1.addEventListener('message', () => resolve(), { once: true });
    channel.port1.start();
    channel.port2.postMessage(null);
  });
}

/**
 * Measures all facets on `own`, sharing slices with the helper as each gets done. Who measures a slice makes no
 * difference to its values. A helper that fails is left out and its slice measured here.
 * @param first work of this thread's own, done once the helper has its first slices
 */
export async function measureTogether(
  own: WallsBench,
  helper: SliceHelper | null,
  pull: Vec3,
  withWalls: boolean,
  onShare: (share: number) => void,
  first: () => void = () => {},
  { least, most } = sliceBounds,
): Promise<void> {
  const { facetCount } = own.index;
  const returned: Slice[] = [];
  let next = 0;
  let done = 0;
  const take = (): Slice | null => {
    const again = returned.pop();
    if (again !== undefined) return again;
    if (next >= facetCount) return null;
    const from = next;
    const share = Math.ceil((facetCount - from) / (2 * slicesAhead));
    next = Math.min(facetCount, from + Math.min(most, Math.max(least, share)));
    return { from, to: next };
  };
  const finish = ({ from, to }: Slice) => {
    done += to - from;
    onShare(done / facetCount);
  };
  const workHere = async (letIn: () => Promise<void>) => {
    for (let slice = take(); slice !== null; slice = take()) {
      own.measure(slice.from, slice.to, pull, withWalls);
      finish(slice);
      await letIn();
    }
  };
  if (helper === null) {
    first();
    await workHere(() => Promise.resolve());
    return;
  }
  const workThere = async () => {
    let slice: Slice | null = null;
    try {
      for (slice = take(); slice !== null; slice = take()) {
        own.accept(await helper(slice.from, slice.to, pull, withWalls));
        finish(slice);
      }
    } catch {
      if (slice !== null) returned.push(slice);
    }
  };
  const channel = new MessageChannel();
  try {
    const there = Array.from({ length: slicesAhead }, workThere);
    first();
    await Promise.all([workHere(() => lettingMessagesIn(channel)), ...there]);
    // What a failed helper gave back after this thread had run out of slices.
    await workHere(() => Promise.resolve());
  } finally {
    channel.port1.close();
    channel.port2.close();
  }
}
