/** One closed solid of a whole enclosure, parted by a plane across the pull into the two halves. */
import type { IndexedMesh, Vec3 } from '../mesh/types';
import { lengthOf, times } from '../numeric/vectors';
import { Problem } from '../problem';
import { meshOfSolid, SolidBin } from '../stone/pours/solids';

export interface SplitHalves {
  /** What lies along the pull from the parting plane, and what against it. */
  readonly along: IndexedMesh;
  readonly against: IndexedMesh;
  readonly alongMm3: number;
  readonly againstMm3: number;
}

/**
 * Half-space cuts of an exact solid library, in its float32: corners move by no more than a ten-millionth of the size. `prepareSolids()`
 * has been awaited before.
 * @param heightMm of the parting plane over the lowest point along the pull
 * @throws Problem `split.notSolid`, `split.misses`
 */
export function splitSolid(mesh: IndexedMesh, pull: Vec3, heightMm: number): SplitHalves {
  const unit = times(pull, 1 / lengthOf(pull));
  let [low, high] = [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY];
  for (const vertex of mesh.facets) {
    const at = 3 * vertex;
    const along =
      unit[0] * mesh.positions[at]! + unit[1] * mesh.positions[at + 1]! + unit[2] * mesh.positions[at + 2]!;
    low = Math.min(low, along);
    high = Math.max(high, along);
  }
  if (!(heightMm > 0 && heightMm < high - low))
    throw new Problem(
      'split.misses',
      `A parting plane ${heightMm.toFixed(1)} mm over the lowest point misses the solid, which is ${(high - low).toFixed(1)} mm high along the pull. Enter a height between 0 and that.`,
    );
  const bin = new SolidBin();
  try {
    const { solid } = bin.of(mesh);
    if (!(solid.volume() > 0)) throw notSolid();
    const [along, against] = bin.splitAcross(solid, unit, low + heightMm);
    return {
      along: meshOfSolid(along).mesh,
      against: meshOfSolid(against).mesh,
      alongMm3: along.volume(),
      againstMm3: against.volume(),
    };
  } catch (error) {
    throw error instanceof Problem && error.code === 'pours.notSolid' ? notSolid() : error;
  } finally {
    bin.empty();
  }
}

const notSolid = () =>
  new Problem(
    'split.notSolid',
    'This model is no closed solid, so there is nothing whole to split: facets are missing, doubled or turned round. Part shows where. Repair it in the program that it comes from, export it as one closed body, and import it again.',
  );
