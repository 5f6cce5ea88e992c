import type { SlotTask, WallsBench, WallSlice } from '../pipeline/wallsBench';
import { createSilenceWatch, helperSilenceMs, type SilenceWatch } from './silenceWatch';

/** Slices get smaller toward the end, so that neither thread waits long for the other; bounds in slots. */
const sliceBounds = { least: 2048, most: 16_384 };
/** Slices that lie with the helper at a time, so that it goes on while this thread is busy. */
const slicesAhead = 4;

/** Measures a slice of the same part elsewhere; rejects when it can't. */
export type SliceHelper = (from: number, to: number, task: SlotTask) => Promise<WallSlice>;

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

export interface Sharing {
  /** Work of this thread's own, done while the helper takes the part. */
  readonly first: () => void;
  /** The helper was not heard of for `silenceMs`; what it had is measured here. */
  readonly onSilence: () => void;
  readonly silenceMs: number;
  readonly slices: typeof sliceBounds;
}
const usualSharing: Sharing = {
  first: () => {},
  onSilence: () => {},
  silenceMs: helperSilenceMs,
  slices: sliceBounds,
};

/**
 * Does the task on all slots of `own`, sharing slices with the helper as each gets done. Who measures a slice makes no
 * difference to its values. A helper that fails or falls silent is left out and its slices measured here.
 * @param helper once it has taken the part, which goes on only while this thread is free; null when it can't
 */
export async function measureTogether(
  own: WallsBench,
  helper: Promise<SliceHelper | null>,
  task: SlotTask,
  onShare: (share: number) => void,
  sharing: Partial<Sharing> = {},
): Promise<void> {
  const { first, onSilence, silenceMs, slices } = { ...usualSharing, ...sharing };
  const { least, most } = slices;
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
      own.measure(slice.from, slice.to, task);
      finish(slice);
      await letIn();
    }
  };
  const lent = new Set<Slice>();
  let watch: SilenceWatch | null = null;
  const workThere = async () => {
    const measure = await helper.catch(() => null);
    if (measure === null) return;
    for (let slice = take(); slice !== null; slice = take()) {
      lent.add(slice);
      try {
        const measured = await measure(slice.from, slice.to, task);
        // One that was taken back meanwhile is measured here.
        if (!lent.delete(slice)) return;
        own.accept(measured);
      } catch {
        if (lent.delete(slice)) returned.push(slice);
        return;
      }
      finish(slice);
      watch?.heard();
    }
  };
  const channel = new MessageChannel();
  try {
    const there = Array.from({ length: slicesAhead }, workThere);
    first();
    await workHere(() => lettingMessagesIn(channel));
    // Only now: while this thread was busy the helper could not be heard.
    const fellSilent = await new Promise<boolean>((resolve) => {
      const listening = createSilenceWatch(resolve, silenceMs);
      watch = listening;
      listening.heard();
      void Promise.all(there).then(() => {
        listening.rest();
        resolve(false);
      });
    });
    if (fellSilent) {
      returned.push(...lent);
      lent.clear();
      onSilence();
    }
    // What the helper did not measure, after this thread had run out of slices.
    await workHere(() => Promise.resolve());
  } finally {
    channel.port1.close();
    channel.port2.close();
  }
}
