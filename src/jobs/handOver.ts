import { bytesPerPiece, type KernelPiece } from '../core/mesh/kernel/wallKernel';
import { surfaceData, type SurfaceData, type SurfaceIndex } from '../core/mesh/surfaceIndex';
import { transferred } from './transferred';

/** Who takes a part, in the order of what is sent: first its data, then its pieces. */
export interface PartTaker {
  load(part: number, data: SurfaceData): Promise<void>;
  /** Gives the array back, for the next piece. */
  take(part: number, piece: KernelPiece, bytes: Uint8Array<ArrayBuffer>): Promise<Uint8Array<ArrayBuffer>>;
}

/** Pieces on their way at a time: enough that a kernel of 300,000 facets goes in one go. */
const usualCarriers = 18;

/**
 * Hands a part to another thread. Pieces travel in the same few arrays to and fro. With an array for each the whole of a
 * large kernel would be there once more: they lie about until the collector comes by, which large arrays don't hurry.
 * Resolves when all is on its way: the taker has it before whatever it is asked next. Rejects when the taker was found to
 * fail by then; one that fails later fails again at what it is asked.
 */
export async function handOver(
  taker: PartTaker,
  part: number,
  index: SurfaceIndex,
  carriers = usualCarriers,
): Promise<void> {
  const { kernel } = index;
  const load = taker.load(part, transferred(surfaceData(index)));
  load.catch(() => undefined);
  let next = 0;
  const carry = async () => {
    let carrier = Promise.resolve(new Uint8Array(bytesPerPiece));
    for (let piece = kernel.pieces[next++]; piece !== undefined; piece = kernel.pieces[next++]) {
      const bytes = await carrier;
      kernel.give(piece, bytes);
      carrier = taker.take(part, piece, transferred(bytes));
      carrier.catch(() => undefined);
    }
  };
  await Promise.all(Array.from({ length: carriers }, carry));
}
