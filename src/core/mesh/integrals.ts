import { RunningSum } from './runningSum';
import type { IndexedMesh, Vec3 } from './types';

/** What a surface encloses. Lengths, areas and volumes are in the units of the mesh. */
export interface MeshIntegrals {
  /** Signed: negative for a body that is inside out. Meaningful for a closed surface only. */
  readonly volume: number;
  readonly area: number;
  /** Of the enclosed volume; null when the volume is zero. Meaningful for a closed surface only. */
  readonly centroid: Vec3 | null;
  /** Of the surface itself; null when the area is zero. */
  readonly surfaceCentroid: Vec3 | null;
  /** Of the facets looked at; all zero when there are none. */
  readonly boxMin: Vec3;
  readonly boxMax: Vec3;
  /** Integrals of x*x, y*y, z*z, x*y, y*z, z*x over the enclosed volume, about the origin of the mesh. */
  readonly secondMoments: {
    readonly xx: number;
    readonly yy: number;
    readonly zz: number;
    readonly xy: number;
    readonly yz: number;
    readonly zx: number;
  };
}

/** Volume, area, 3 first moments, 3 of the surface, 6 second moments. */
const termsPerFacet = 14;
const facetsPerBlock = 64;

interface Box {
  readonly min: Vec3;
  readonly max: Vec3;
}

const noBox: Box = { min: [0, 0, 0], max: [0, 0, 0] };

/** Boxes of whole meshes, which are asked for again and again; nothing is ever written into a mesh. */
const wholeBoxes = new WeakMap<IndexedMesh, Box>();

/** Box around the facets looked at (all when no subset is given); zero-sized at the origin when there are none. */
export function facetBox(mesh: IndexedMesh, facetSubset?: Uint32Array): Box {
  if (facetSubset) return boxOfCorners(mesh, facetSubset);
  const known = wholeBoxes.get(mesh) ?? boxOfCorners(mesh);
  wholeBoxes.set(mesh, known);
  return known;
}

function boxOfCorners({ positions, facets }: IndexedMesh, facetSubset?: Uint32Array): Box {
  const count = facetSubset?.length ?? facets.length / 3;
  if (count === 0) return noBox;
  let [minX, minY, minZ, maxX, maxY, maxZ] = [Infinity, Infinity, Infinity, -Infinity, -Infinity, -Infinity];
  for (let i = 0; i < count; i++) {
    const facet = facetSubset ? facetSubset[i]! : i;
    for (let corner = 3 * facet; corner < 3 * facet + 3; corner++) {
      const at = 3 * facets[corner]!;
      const x = positions[at]!;
      const y = positions[at + 1]!;
      const z = positions[at + 2]!;
      if (x < minX) minX = x;
      if (x > maxX) maxX = x;
      if (y < minY) minY = y;
      if (y > maxY) maxY = y;
      if (z < minZ) minZ = z;
      if (z > maxZ) maxZ = z;
    }
  }
  return { min: [minX, minY, minZ], max: [maxX, maxY, maxZ] };
}

/**
 * Volume, area, centroids and second moments by the divergence theorem: every facet spans a tetrahedron with the
 * center of the box, V = a . (b x c) / 6, and the integral of x_i x_j over it is V/20 times
 * (s_i s_j + a_i a_j + b_i b_j + c_i c_j) with s = a + b + c. Taking the box center keeps a part that lies far
 * from its origin accurate; the moments are moved back to the origin at the end (parallel axes).
 */
export function integrate(mesh: IndexedMesh, facetSubset?: Uint32Array): MeshIntegrals {
  const { positions, facets } = mesh;
  const box = facetBox(mesh, facetSubset);
  const centerX = (box.min[0] + box.max[0]) / 2;
  const centerY = (box.min[1] + box.max[1]) / 2;
  const centerZ = (box.min[2] + box.max[2]) / 2;
  const count = facetSubset?.length ?? facets.length / 3;
  const totals = Array.from({ length: termsPerFacet }, () => new RunningSum());
  // Within a block of facets plain addition is accurate enough; keeping each rounding error of fourteen sums there made
  // this four times as slow.
  const block = new Float64Array(termsPerFacet);
  const closeBlock = () => {
    for (let term = 0; term < termsPerFacet; term++) totals[term]!.add(block[term]!);
    block.fill(0);
  };

  for (let i = 0; i < count; i++) {
    const facet = facetSubset ? facetSubset[i]! : i;
    const a = 3 * facets[3 * facet]!;
    const b = 3 * facets[3 * facet + 1]!;
    const c = 3 * facets[3 * facet + 2]!;
    const ax = positions[a]! - centerX;
    const ay = positions[a + 1]! - centerY;
    const az = positions[a + 2]! - centerZ;
    const bx = positions[b]! - centerX;
    const by = positions[b + 1]! - centerY;
    const bz = positions[b + 2]! - centerZ;
    const cx = positions[c]! - centerX;
    const cy = positions[c + 1]! - centerY;
    const cz = positions[c + 2]! - centerZ;
    const normalX = (by - ay) * (cz - az) - (bz - az) * (cy - ay);
    const normalY = (bz - az) * (cx - ax) - (bx - ax) * (cz - az);
    const normalZ = (bx - ax) * (cy - ay) - (by - ay) * (cx - ax);
    const doubleArea = Math.sqrt(normalX * normalX + normalY * normalY + normalZ * normalZ);
    // a . (b x c) equals a . ((b - a) x (c - a)), which is the more accurate of the two for small facets.
    const det = ax * normalX + ay * normalY + az * normalZ;
    const sx = ax + bx + cx;
    const sy = ay + by + cy;
    const sz = az + bz + cz;
    block[0]! += det;
    block[1]! += doubleArea;
    block[2]! += det * sx;
    block[3]! += det * sy;
    block[4]! += det * sz;
    block[5]! += doubleArea * sx;
    block[6]! += doubleArea * sy;
    block[7]! += doubleArea * sz;
    block[8]! += det * (sx * sx + ax * ax + bx * bx + cx * cx);
    block[9]! += det * (sy * sy + ay * ay + by * by + cy * cy);
    block[10]! += det * (sz * sz + az * az + bz * bz + cz * cz);
    block[11]! += det * (sx * sy + ax * ay + bx * by + cx * cy);
    block[12]! += det * (sy * sz + ay * az + by * bz + cy * cz);
    block[13]! += det * (sz * sx + az * ax + bz * bx + cz * cx);
    if (i % facetsPerBlock === 0) closeBlock();
  }
  closeBlock();

  const total = (term: number) => totals[term]!.value;
  const volume = total(0) / 6;
  const [firstX, firstY, firstZ] = [total(2) / 24, total(3) / 24, total(4) / 24];
  const moved = (term: number, p: number, q: number, firstP: number, firstQ: number) =>
    total(term) / 120 + p * firstQ + q * firstP + p * q * volume;
  const weight = 3 * total(1);
  return {
    volume,
    area: total(1) / 2,
    centroid:
      volume === 0 ? null : [centerX + firstX / volume, centerY + firstY / volume, centerZ + firstZ / volume],
    surfaceCentroid:
      weight === 0
        ? null
        : [centerX + total(5) / weight, centerY + total(6) / weight, centerZ + total(7) / weight],
    boxMin: box.min,
    boxMax: box.max,
    secondMoments: {
      xx: moved(8, centerX, centerX, firstX, firstX),
      yy: moved(9, centerY, centerY, firstY, firstY),
      zz: moved(10, centerZ, centerZ, firstZ, firstZ),
      xy: moved(11, centerX, centerY, firstX, firstY),
      yz: moved(12, centerY, centerZ, firstY, firstZ),
      zx: moved(13, centerZ, centerX, firstZ, firstX),
    },
  };
}
