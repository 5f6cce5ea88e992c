import {
  boxBytes,
  boxes,
  children,
  childrenBytes,
  coneBytes,
  cones,
  leafBytes,
  leafSlots,
  leaves,
  nodeCount,
  slotCount,
} from './surface';
import { leafNormal } from './leaves';

/**
 * Facets turned from the ball's own facet by no more than this are its own skin and don't limit the ball. Without it
 * a ball on a curved skin feels the dihedral angles of the facets beside it: on a finely faceted rod, two thirds of
 * the true diameter at facet centers. 30 degrees spans the steps of round bosses down to twelve sides.
 */
export const ownSkinRad: f64 = (30.1 * Math.PI) / 180;
/** Float32 rounds the cosine of two directions by less than this. */
export const cosineMargin: f64 = 1e-6;
/** An angle between float32 directions, taken from its cosine near 1, may be too small by this. */
const angleMarginRad: f64 = 1e-3;
/** No cosine is as large: the child holds facets that look too far apart to be anyone's own skin together. */
const nobody: f32 = 2;

function hasChild(node: i32, child: i32): bool {
  return load<f32>(boxes + boxBytes * <usize>node + 48 + 4 * <usize>child) > -f32.MAX_VALUE;
}

function angleOf(cosine: f64): f64 {
  return Math.acos(min(1.0, max(-1.0, cosine))) + angleMarginRad;
}

/**
 * Cones about the normals of all facets under each child of each node: axis x of the four children, axis y, axis z, and the
 * cosine that a direction must keep to the axis to have all of them for its own skin. Joined upward: the axis along the
 * sum of the axes below, as wide as the farthest cone below needs.
 * @param spreads scratch room: 1 float64 per child of each node, then 4 per node
 */
export function prepareCones(spreads: usize): void {
  const overNodes = spreads + 32 * <usize>nodeCount;
  for (let node = nodeCount - 1; node >= 0; node--) {
    let sumX: f64 = 0;
    let sumY: f64 = 0;
    let sumZ: f64 = 0;
    const nodeCones = cones + coneBytes * <usize>node;
    for (let child: i32 = 0; child < 4; child++) {
      if (!hasChild(node, child)) continue;
      const link = load<i32>(children + childrenBytes * <usize>node + 4 * <usize>child);
      let x: f64 = 0;
      let y: f64 = 0;
      let z: f64 = 0;
      let spreadRad: f64 = 0;
      if (link >= 0) {
        const below = overNodes + 32 * <usize>link;
        x = load<f64>(below);
        y = load<f64>(below, 8);
        z = load<f64>(below, 16);
        spreadRad = load<f64>(below, 24);
      } else {
        const leaf = leaves + leafBytes * <usize>(~link / leafSlots) + leafNormal;
        const count = min<i32>(leafSlots, slotCount - ~link);
        for (let member: usize = 0; member < <usize>count; member++) {
          x += <f64>load<f32>(leaf + 4 * member);
          y += <f64>load<f32>(leaf + 4 * member, 16);
          z += <f64>load<f32>(leaf + 4 * member, 32);
        }
        const length = sqrt<f64>(x * x + y * y + z * z);
        if (length > 0) {
          x /= length;
          y /= length;
          z /= length;
        }
        let least: f64 = 1;
        for (let member: usize = 0; member < <usize>count; member++) {
          const nx = <f64>load<f32>(leaf + 4 * member);
          const ny = <f64>load<f32>(leaf + 4 * member, 16);
          const nz = <f64>load<f32>(leaf + 4 * member, 32);
          least = min(least, x * nx + y * ny + z * nz);
        }
        spreadRad = angleOf(least);
      }
      const at = nodeCones + 4 * <usize>child;
      store<f32>(at, <f32>x);
      store<f32>(at + 16, <f32>y);
      store<f32>(at + 32, <f32>z);
      store<f32>(
        at + 48,
        spreadRad < ownSkinRad ? <f32>(Math.cos(ownSkinRad - spreadRad) + cosineMargin) : nobody,
      );
      store<f64>(spreads + 32 * <usize>node + 8 * <usize>child, spreadRad);
      sumX += x;
      sumY += y;
      sumZ += z;
    }
    const length = sqrt<f64>(sumX * sumX + sumY * sumY + sumZ * sumZ);
    if (length > 0) {
      sumX /= length;
      sumY /= length;
      sumZ /= length;
    }
    let widestRad: f64 = 0;
    for (let child: i32 = 0; child < 4; child++) {
      if (!hasChild(node, child)) continue;
      const at = nodeCones + 4 * <usize>child;
      const cosine =
        sumX * <f64>load<f32>(at) + sumY * <f64>load<f32>(at, 16) + sumZ * <f64>load<f32>(at, 32);
      const spreadRad = load<f64>(spreads + 32 * <usize>node + 8 * <usize>child);
      widestRad = max(widestRad, angleOf(cosine) + spreadRad);
    }
    const over = overNodes + 32 * <usize>node;
    store<f64>(over, sumX);
    store<f64>(over, sumY, 8);
    store<f64>(over, sumZ, 16);
    store<f64>(over, min(Math.PI, widestRad), 24);
  }
}
