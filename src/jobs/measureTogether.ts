import type { Vec3 } from '../core/mesh/types';
import type { WallsHelper } from './startWallsHelper';
import type { WallsBench } from './wallsBench';

/** Slots handed out at a time: small enough to share evenly and to report progress, large against a message. */
const sliceSlots = 32_768;

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
 */
export async function measureTogether(
  own: WallsBench,
  helper: Promise<WallsHelper> | null,
  pull: Vec3,
  withWalls: boolean,
  onShare: (share: number) => void,
  slotsAtATime = sliceSlots,
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
    next = Math.min(facetCount, from + slotsAtATime);
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
    await workHere(() => Promise.resolve());
    return;
  }
  const workThere = async () => {
    let slice: Slice | null = null;
    try {
      const ready = await helper;
      for (slice = take(); slice !== null; slice = take()) {
        own.accept(await ready.measure(slice.from, slice.to, pull, withWalls));
        finish(slice);
      }
    } catch {
      if (slice !== null) returned.push(slice);
    }
  };
  const channel = new MessageChannel();
  try {
    await Promise.all([workHere(() => lettingMessagesIn(channel)), workThere()]);
    // What a failed helper gave back after this thread had run out of slices.
    await workHere(() => Promise.resolve());
  } finally {
    channel.port1.close();
    channel.port2.close();
  }
}
