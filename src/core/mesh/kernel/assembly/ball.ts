import {
  boxBytes,
  boxes,
  children,
  childrenBytes,
  coneBytes,
  cones,
  coordinateMarginMm,
  leafBytes,
  leafMarginMm,
  leafSlots,
  leaves,
  middleX,
  middleY,
  middleZ,
} from './surface';
import { cosineMargin, ownSkinRad } from './cones';
import { leafNormal, leafPlane } from './leaves';
import { diameterMm, inwardX, inwardY, inwardZ, pointX, pointY, pointZ, shrinkToFacet } from './touchingBall';

/**
 * A ball in a thin wall meets some 20 to 60 leaves; one in a round solid touches all of its surface. After each
 * `patienceLeaves` leaves without shrinking the ball is let off cuts shallower than a share of its radius, first `firstSlack`, then
 * four times as much, so that a solid sphere of 300k facets takes under a minute, not half an hour.
 */
const patienceLeaves: i32 = 100;
const firstSlack: f64 = 0.002;
const ownSkinLimit: f32 = <f32>(Math.cos(ownSkinRad) + cosineMargin);

/** Nodes still to visit: three per level of the tree. */
const waiting: usize = memory.data(4 * 64);

/** Past edge p to q of its facet, by more than the circle's radius, in each lane. */
function besideEdge(leaf: usize, p: usize, q: usize, x: v128, y: v128, z: v128, circle: v128): v128 {
  const px = v128.load(leaf + p);
  const py = v128.load(leaf + p, 16);
  const pz = v128.load(leaf + p, 32);
  const ex = f32x4.sub(v128.load(leaf + q), px);
  const ey = f32x4.sub(v128.load(leaf + q, 16), py);
  const ez = f32x4.sub(v128.load(leaf + q, 32), pz);
  const nx = v128.load(leaf + leafNormal);
  const ny = v128.load(leaf + leafNormal, 16);
  const nz = v128.load(leaf + leafNormal, 32);
  // The edge turned outward in the plane of its facet.
  const mx = f32x4.sub(f32x4.mul(ey, nz), f32x4.mul(ez, ny));
  const my = f32x4.sub(f32x4.mul(ez, nx), f32x4.mul(ex, nz));
  const mz = f32x4.sub(f32x4.mul(ex, ny), f32x4.mul(ey, nx));
  const out = f32x4.add(
    f32x4.add(f32x4.mul(f32x4.sub(x, px), mx), f32x4.mul(f32x4.sub(y, py), my)),
    f32x4.mul(f32x4.sub(z, pz), mz),
  );
  const square = f32x4.add(f32x4.add(f32x4.mul(ex, ex), f32x4.mul(ey, ey)), f32x4.mul(ez, ez));
  return v128.and(f32x4.gt(out, f32x4.splat(0)), f32x4.gt(f32x4.mul(out, out), f32x4.mul(circle, square)));
}

/** Bit per facet of the leaf that may cut the ball: its plane does, it is not the ball's own skin, and the circle reaches it. */
function facetsToTry(
  leaf: usize,
  x: v128,
  y: v128,
  z: v128,
  outX: v128,
  outY: v128,
  outZ: v128,
  radius: f32,
): i32 {
  const nx = v128.load(leaf + leafNormal);
  const ny = v128.load(leaf + leafNormal, 16);
  const nz = v128.load(leaf + leafNormal, 32);
  const along = f32x4.add(f32x4.add(f32x4.mul(nx, outX), f32x4.mul(ny, outY)), f32x4.mul(nz, outZ));
  const height = f32x4.abs(
    f32x4.sub(
      f32x4.add(f32x4.add(f32x4.mul(nx, x), f32x4.mul(ny, y)), f32x4.mul(nz, z)),
      v128.load(leaf + leafPlane),
    ),
  );
  const margin: f32 = 4.0 * leafMarginMm;
  const reach: f32 = radius * <f32>(1 + 1e-6) + margin;
  let cut = v128.and(f32x4.le(height, f32x4.splat(reach)), f32x4.le(along, f32x4.splat(ownSkinLimit)));
  if (!v128.any_true(cut)) return 0;
  const least = f32x4.pmax(f32x4.sub(height, f32x4.splat(margin)), f32x4.splat(0));
  const circle = f32x4.sub(f32x4.splat(reach * reach * <f32>(1 + 1e-6)), f32x4.mul(least, least));
  cut = v128.andnot(cut, besideEdge(leaf, 0, 48, x, y, z, circle));
  cut = v128.andnot(cut, besideEdge(leaf, 48, 96, x, y, z, circle));
  cut = v128.andnot(cut, besideEdge(leaf, 96, 0, x, y, z, circle));
  return i32x4.bitmask(cut);
}

/** Bit per child of the node that the ball may have to look into: its box cuts the ball, and it is not all own skin. */
function childrenToVisit(
  node: i32,
  x: v128,
  y: v128,
  z: v128,
  outX: v128,
  outY: v128,
  outZ: v128,
  reach: v128,
): i32 {
  const box = boxes + boxBytes * <usize>node;
  const cone = cones + coneBytes * <usize>node;
  const zero = f32x4.splat(0);
  const gapX = f32x4.pmax(f32x4.sub(f32x4.abs(f32x4.sub(x, v128.load(box))), v128.load(box, 48)), zero);
  const gapY = f32x4.pmax(f32x4.sub(f32x4.abs(f32x4.sub(y, v128.load(box, 16))), v128.load(box, 64)), zero);
  const gapZ = f32x4.pmax(f32x4.sub(f32x4.abs(f32x4.sub(z, v128.load(box, 32))), v128.load(box, 80)), zero);
  const square = f32x4.add(f32x4.add(f32x4.mul(gapX, gapX), f32x4.mul(gapY, gapY)), f32x4.mul(gapZ, gapZ));
  const along = f32x4.add(
    f32x4.add(f32x4.mul(outX, v128.load(cone)), f32x4.mul(outY, v128.load(cone, 16))),
    f32x4.mul(outZ, v128.load(cone, 32)),
  );
  return i32x4.bitmask(v128.and(f32x4.lt(square, reach), f32x4.le(along, v128.load(cone, 48))));
}

/** Shrinks the ball that was put against every facet but its own. */
export function shrinkToSurface(ownSlot: i32, tangentMm: f64): void {
  const outX = f32x4.splat(<f32>-inwardX);
  const outY = f32x4.splat(<f32>-inwardY);
  const outZ = f32x4.splat(<f32>-inwardZ);
  let diameter: f64 = -1;
  let slack: f64 = 0;
  let leavesLeft = patienceLeaves;
  let x = f32x4.splat(0);
  let y = x;
  let z = x;
  let fromMiddleX = x;
  let fromMiddleY = x;
  let fromMiddleZ = x;
  let reach = x;
  let waitingEnd = waiting + 4;
  store<i32>(waiting, 0);
  while (waitingEnd > waiting) {
    if (diameter != diameterMm) {
      diameter = diameterMm;
      const radius = diameter / 2;
      const centerX = pointX + radius * inwardX;
      const centerY = pointY + radius * inwardY;
      const centerZ = pointZ + radius * inwardZ;
      x = f32x4.splat(<f32>centerX);
      y = f32x4.splat(<f32>centerY);
      z = f32x4.splat(<f32>centerZ);
      fromMiddleX = f32x4.splat(<f32>(centerX - middleX));
      fromMiddleY = f32x4.splat(<f32>(centerY - middleY));
      fromMiddleZ = f32x4.splat(<f32>(centerZ - middleZ));
    }
    const reachMm = <f32>((diameter / 2) * (1 - slack) * (1 + 1e-6)) + <f32>2 * coordinateMarginMm;
    reach = f32x4.splat(reachMm * reachMm);
    waitingEnd -= 4;
    const node = load<i32>(waitingEnd);
    if (node >= 0) {
      let visit = childrenToVisit(node, x, y, z, outX, outY, outZ, reach);
      const links = children + childrenBytes * <usize>node;
      while (visit != 0) {
        store<i32>(waitingEnd, load<i32>(links + 4 * <usize>ctz(visit)));
        waitingEnd += 4;
        visit &= visit - 1;
      }
      continue;
    }
    const firstSlot = ~node;
    const leaf = leaves + leafBytes * <usize>(firstSlot / leafSlots);
    let facets = facetsToTry(
      leaf,
      fromMiddleX,
      fromMiddleY,
      fromMiddleZ,
      outX,
      outY,
      outZ,
      <f32>(diameter / 2),
    );
    while (facets != 0) {
      const slot = firstSlot + ctz(facets);
      if (slot != ownSlot) shrinkToFacet(slot, tangentMm);
      facets &= facets - 1;
    }
    // Still finding its size.
    if (diameterMm < 0.99 * diameter) leavesLeft = patienceLeaves;
    if (--leavesLeft == 0) {
      leavesLeft = patienceLeaves;
      slack = slack == 0 ? firstSlack : min(0.5, 4 * slack);
    }
  }
}
