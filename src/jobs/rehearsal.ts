import type { IndexedMesh } from '../core/mesh/types';
import { writeStlBinary } from '../core/mesh/writeStl';
import { BenchSession } from './benchSession';
import type { MeasuredShape, PartShape } from './protocol';
import type { WallsHelper } from './startWallsHelper';

const ignore = () => undefined;
/**
 * Cells per side of the shells, one after the other. First small ones: a browser compiles a loop while it is in it, and
 * throws the code away on coming to what it has never seen behind it. Then of 26,000 facets, which it takes notice of, as
 * often as it takes to have all compiled for speed for good. About two seconds in all.
 */
const shells = [30, 30, 30, 80, 80, 80, 80, 80, 80, 80, 80] as const;

/**
 * Reads and measures made-up shells on sessions of its own. A browser compiles code that has run a while; after this the
 * maker's own file is measured in about half the time. For a moment when nothing else is asked.
 * @param isWanted looked at before each shell and between reading and measuring it; false ends the rehearsal
 * @returns the last shell as measured; null when it was ended before
 */
export async function rehearse(
  helper: () => WallsHelper,
  isWanted: () => boolean = () => true,
): Promise<MeasuredShape | null> {
  let last: MeasuredShape | null = null;
  for (const cellsPerSide of shells) {
    if (!isWanted()) break;
    last = await measureOnce(helper, writeStlBinary(curvedPlate(cellsPerSide)), isWanted);
  }
  return last;
}

async function measureOnce(
  helper: () => WallsHelper,
  bytes: Uint8Array,
  isWanted: () => boolean,
): Promise<MeasuredShape | null> {
  const session = new BenchSession(helper, { over: 0 });
  await session.importFile(new Blob([bytes.slice()]), 'rehearsal.stl', ignore);
  if (!isWanted()) return null;
  let shape: PartShape | null = null;
  const reply = await session.measure(
    {
      unit: 'mm',
      declaredUnit: null,
      body: 0,
      scale: 1,
      pull: [0, 0, 1],
      winding: 'asFile',
    },
    ignore,
    (told) => (shape = told),
  );
  return shape && { ...reply, shape };
}

/** A closed plate, 60 x 40 mm and 1.5 mm thick straight up; bowed, a little uneven, and with folds that overhang: what a shell may have. */
export function curvedPlate(cells: number): IndexedMesh {
  const side = cells + 1;
  const positions = new Float64Array(6 * side * side);
  for (let row = 0; row < side; row++) {
    for (let column = 0; column < side; column++) {
      const across = (column / cells) * 60 - 30;
      const y = (row / cells) * 40 - 20;
      const fold = Math.sin(across * 0.42) * (1 - (across / 30) ** 2) * (1 - (y / 20) ** 2);
      const x = across + 4 * fold;
      const height = 12 - x * x * 0.008 - y * y * 0.012 + 0.2 * Math.sin(x) * Math.cos(y) + 2.5 * fold;
      const at = 3 * (row * side + column);
      positions.set([x, y, height], at);
      positions.set([x, y, height - 1.5], at + 3 * side * side);
    }
  }
  const facets: number[] = [];
  const below = side * side;
  for (let row = 0; row < cells; row++) {
    for (let column = 0; column < cells; column++) {
      const a = row * side + column;
      const [b, c, d] = [a + 1, a + side + 1, a + side];
      facets.push(a, b, c, a, c, d);
      facets.push(below + a, below + c, below + b, below + a, below + d, below + c);
    }
  }
  // The rim: around the border once, each step a quad from the upper face down to the lower.
  const step = (from: number, to: number) =>
    facets.push(from, below + from, below + to, from, below + to, to);
  for (let along = 0; along < cells; along++) {
    step(along, along + 1);
    step(along * side + cells, (along + 1) * side + cells);
    step(cells * side + along + 1, cells * side + along);
    step((along + 1) * side, along * side);
  }
  return { positions, facets: Uint32Array.from(facets) };
}
