import { FacetStand } from './facetStand';
import { facetOf, inBatches, type SurfaceIndex } from './surfaceIndex';
import { leafSlots } from './surfaceIndexTree';
import { shrinkToFacet, type TouchingBall } from './touchingBall';

/** Facets that rise above the tangent plane by less than this share of the box diagonal don't limit a ball. */
const tangentShare = 1e-9;

/**
 * A ball in a thin wall meets some 20 to 60 leaves; one in a round solid touches all of its surface. After each
 * `patienceLeaves` leaves without shrinking the ball is let off cuts shallower than a share of its radius, first `firstSlack`, then
 * four times as much, so that a solid sphere of 300k facets takes under a minute, not half an hour.
 */
const patienceLeaves = 100;
const firstSlack = 0.002;

/**
 * Shrinks the ball against every facet of the surface but `ownSlot`. `waiting` is scratch room for the nodes still to
 * visit: three per level of the tree.
 */
function shrinkToSurface(
  index: SurfaceIndex,
  ownSlot: number,
  tangentMm: number,
  ball: TouchingBall,
  waiting: Int32Array,
): void {
  const { root, boxes, children } = index.tree;
  const { pointX, pointY, pointZ, inwardX, inwardY, inwardZ } = ball;
  const slotCount = index.facetCount;
  let diameter = ball.diameterMm;
  let x = pointX + (diameter / 2) * inwardX;
  let y = pointY + (diameter / 2) * inwardY;
  let z = pointZ + (diameter / 2) * inwardZ;
  let reach = diameter * diameter;
  let slack = 0;
  let leavesLeft = patienceLeaves;
  let waitingCount = 1;
  waiting[0] = root;
  while (waitingCount > 0) {
    const node = waiting[--waitingCount]!;
    if (node >= 0) {
      for (let child = 4 * node, at = 24 * node; child < 4 * node + 4; child++, at++) {
        // How far the center lies outside the box along each axis; gap + |gap| is twice that, or 0 inside.
        const gapX = Math.abs(x - boxes[at]!) - boxes[at + 12]!;
        const gapY = Math.abs(y - boxes[at + 4]!) - boxes[at + 16]!;
        const gapZ = Math.abs(z - boxes[at + 8]!) - boxes[at + 20]!;
        const outX = gapX + Math.abs(gapX);
        const outY = gapY + Math.abs(gapY);
        const outZ = gapZ + Math.abs(gapZ);
        // Written before it is known whether it counts: a branch here would be guessed wrong too often.
        waiting[waitingCount] = children[child]!;
        waitingCount += outX * outX + outY * outY + outZ * outZ < reach ? 1 : 0;
      }
      continue;
    }
    const endSlot = Math.min(~node + leafSlots, slotCount);
    for (let slot = ~node; slot < endSlot; slot++) {
      if (slot !== ownSlot) shrinkToFacet(index, slot, tangentMm, ball);
    }
    if (ball.diameterMm < 0.99 * diameter) leavesLeft = patienceLeaves; // still finding its size
    if (--leavesLeft === 0) {
      leavesLeft = patienceLeaves;
      slack = slack === 0 ? firstSlack : Math.min(0.5, 4 * slack);
    }
    diameter = ball.diameterMm;
    reach = (diameter * (1 - slack)) ** 2;
    x = pointX + (diameter / 2) * inwardX;
    y = pointY + (diameter / 2) * inwardY;
    z = pointZ + (diameter / 2) * inwardZ;
  }
}

/**
 * Ball wall of the facets in the listed slots: diameter of the largest ball inside the material that touches the
 * surface at the facet center, its center along the inward normal; exact against whole facets to 1e-9 of itself, and
 * to a few percent in round solids where it touches hundreds of facets at once. It starts from the ray wall, which it can't exceed. Not counted as limits: facets turned from this one by no more than
 * 30 degrees (the same skin, curved or noisy) and facets within 1e-9 box diagonals of the tangent plane. Near a rim or
 * a sharp edge the ball measures the distance to that edge. Stored as float32 mm, indexed by facet; NaN where the
 * facet has no area or no ball up to two box diagonals meets anything.
 */
export function measureBallWalls(
  index: SurfaceIndex,
  slots: Uint32Array,
  rayWallMm: Float32Array,
  ballWallMm: Float32Array,
): void {
  const tangentMm = tangentShare * index.diagonalMm;
  const { kernel } = index;
  if (kernel !== null) {
    inBatches(kernel, slots, (batch) => {
      const rays = new Float32Array(batch.length);
      for (let at = 0; at < batch.length; at++) rays[at] = rayWallMm[facetOf(index, batch[at]!)]!;
      const ballMm = kernel.ballWalls(batch, tangentMm, rays);
      for (let at = 0; at < batch.length; at++) ballWallMm[facetOf(index, batch[at]!)] = ballMm[at]!;
    });
    return;
  }
  const unboundedMm = 2 * index.diagonalMm;
  const stand = new FacetStand();
  const ball: TouchingBall = {
    pointX: 0,
    pointY: 0,
    pointZ: 0,
    inwardX: 0,
    inwardY: 0,
    inwardZ: 0,
    diameterMm: 0,
  };
  const waiting = new Int32Array(64);
  for (const slot of slots) {
    const facet = facetOf(index, slot);
    ballWallMm[facet] = NaN;
    if (!stand.moveTo(index, slot)) continue;
    ball.pointX = stand.x;
    ball.pointY = stand.y;
    ball.pointZ = stand.z;
    ball.inwardX = -stand.normalX;
    ball.inwardY = -stand.normalY;
    ball.inwardZ = -stand.normalZ;
    const rayWall = rayWallMm[facet]!;
    // A float32 ray wall may be rounded down: start a little above and let the surface itself decide.
    ball.diameterMm = rayWall > 0 ? rayWall * (1 + 1e-6) : unboundedMm;
    shrinkToSurface(index, slot, tangentMm, ball, waiting);
    if (ball.diameterMm < unboundedMm) ballWallMm[facet] = ball.diameterMm;
  }
}
