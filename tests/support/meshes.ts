/**
 * Meshes with known answers for tests and benches. Lengths are mm; facets are counter-clockwise from outside.
 */
import type { IndexedMesh, Vec3 } from '../../src/core/mesh/types';

const meshOf = (positions: readonly number[], facets: readonly number[]): IndexedMesh => ({
  positions: Float64Array.from(positions),
  facets: Uint32Array.from(facets),
});

/** Several meshes as one, corners not shared. */
export function joinMeshes(...meshes: readonly IndexedMesh[]): IndexedMesh {
  const positions: number[] = [];
  const facets: number[] = [];
  for (const mesh of meshes) {
    const first = positions.length / 3;
    for (const coordinate of mesh.positions) positions.push(coordinate);
    for (const vertex of mesh.facets) facets.push(first + vertex);
  }
  return meshOf(positions, facets);
}

/** Every facet turned around. */
export function insideOut(mesh: IndexedMesh): IndexedMesh {
  const facets = mesh.facets.slice();
  for (let at = 0; at < facets.length; at += 3) {
    facets[at + 1] = mesh.facets[at + 2]!;
    facets[at + 2] = mesh.facets[at + 1]!;
  }
  return { positions: mesh.positions, facets };
}

/** Every vertex sent through `move`; the facets stay. */
export function mapVertices(mesh: IndexedMesh, move: (vertex: Vec3) => Vec3): IndexedMesh {
  const positions = new Float64Array(mesh.positions.length);
  for (let at = 0; at < positions.length; at += 3) {
    positions.set(move([mesh.positions[at]!, mesh.positions[at + 1]!, mesh.positions[at + 2]!]), at);
  }
  return { positions, facets: mesh.facets };
}

/** Closed box between two corners: 12 facets. */
export function box(low: Vec3, high: Vec3): IndexedMesh {
  const [x0, y0, z0] = low;
  const [x1, y1, z1] = high;
  const positions = [
    [x0, y0, z0],
    [x1, y0, z0],
    [x1, y1, z0],
    [x0, y1, z0],
    [x0, y0, z1],
    [x1, y0, z1],
    [x1, y1, z1],
    [x0, y1, z1],
  ];
  const facets = [
    [0, 2, 1, 0, 3, 2],
    [4, 5, 6, 4, 6, 7],
    [0, 1, 5, 0, 5, 4],
    [1, 2, 6, 1, 6, 5],
    [2, 3, 7, 2, 7, 6],
    [3, 0, 4, 3, 4, 7],
  ];
  return meshOf(positions.flat(), facets.flat());
}

/** Box with a box-shaped void: wall `wallMm` all around, two bodies. */
export function hollowBox(size: Vec3, wallMm: number): IndexedMesh {
  const high: Vec3 = [size[0] - wallMm, size[1] - wallMm, size[2] - wallMm];
  return joinMeshes(box([0, 0, 0], size), insideOut(box([wallMm, wallMm, wallMm], high)));
}

/**
 * Shell open at the top (+z): floor and side walls `wallMm` thick, sides leaning out by `draftDeg`. Outside size at
 * the floor is `size`; the floor stands on z = 0 around the z axis. 28 facets, closed. With draft the wall is
 * `wallMm` measured level, `wallMm` cos(draft) measured square.
 */
export function tray(size: Vec3, wallMm: number, draftDeg = 0): IndexedMesh {
  return trayOfLevels(size, wallMm, draftDeg, []);
}

/** A tray whose sides step in by `stepMm` 2 mm under the rim: undercut there all round, seen from below. */
export function steppedTray(size: Vec3, wallMm: number, draftDeg: number, stepMm: number): IndexedMesh {
  const stepAtMm = size[2] - 2;
  return trayOfLevels(size, wallMm, draftDeg, [
    { zMm: stepAtMm, insetMm: 0 },
    { zMm: stepAtMm + 1, insetMm: stepMm },
    { zMm: size[2], insetMm: stepMm },
  ]);
}

interface Level {
  readonly zMm: number;
  readonly insetMm: number;
}

/** @param levels of the sides above the floor up to the rim; without any they are straight */
function trayOfLevels(size: Vec3, wallMm: number, draftDeg: number, levels: readonly Level[]): IndexedMesh {
  const [lengthMm, widthMm, heightMm] = size;
  const lean = Math.tan((draftDeg * Math.PI) / 180);
  const ring = (insetMm: number, zMm: number) => {
    const x = lengthMm / 2 + lean * zMm - insetMm;
    const y = widthMm / 2 + lean * zMm - insetMm;
    return [-x, -y, zMm, x, -y, zMm, x, y, zMm, -x, y, zMm];
  };
  const up = levels.length > 0 ? levels : [{ zMm: heightMm, insetMm: 0 }];
  const rings = [
    ring(0, 0),
    ...up.map(({ zMm, insetMm }) => ring(insetMm, zMm)),
    ...up.toReversed().map(({ zMm, insetMm }) => ring(insetMm + wallMm, zMm)),
    ring(wallMm, wallMm),
  ];
  const top = 4 * (rings.length - 1);
  const facets = [0, 2, 1, 0, 3, 2, top, top + 1, top + 2, top, top + 2, top + 3];
  for (let upper = 4; upper <= top; upper += 4) {
    const lower = upper - 4;
    for (let i = 0; i < 4; i++) {
      const j = (i + 1) % 4;
      facets.push(lower + i, lower + j, upper + j, lower + i, upper + j, upper + i);
    }
  }
  return meshOf(rings.flat(), facets);
}

/** Volume of `tray` without draft, mm3. */
export const trayVolumeMm3 = (size: Vec3, wallMm: number) =>
  size[0] * size[1] * size[2] - (size[0] - 2 * wallMm) * (size[1] - 2 * wallMm) * (size[2] - wallMm);

function unit(v: readonly number[]): number[] {
  const length = Math.hypot(...v);
  return v.map((coordinate) => coordinate / length);
}

/** Regular icosahedron, each facet split in four `subdivisions` times, corners pushed to the sphere. */
export function icosphere(radiusMm: number, subdivisions: number): IndexedMesh {
  const golden = (1 + Math.sqrt(5)) / 2;
  const vertices = [
    [-1, golden, 0],
    [1, golden, 0],
    [-1, -golden, 0],
    [1, -golden, 0],
    [0, -1, golden],
    [0, 1, golden],
    [0, -1, -golden],
    [0, 1, -golden],
    [golden, 0, -1],
    [golden, 0, 1],
    [-golden, 0, -1],
    [-golden, 0, 1],
  ].map((vertex) => unit(vertex));
  let facets = [
    [0, 11, 5, 0, 5, 1, 0, 1, 7, 0, 7, 10, 0, 10, 11],
    [1, 5, 9, 5, 11, 4, 11, 10, 2, 10, 7, 6, 7, 1, 8],
    [3, 9, 4, 3, 4, 2, 3, 2, 6, 3, 6, 8, 3, 8, 9],
    [4, 9, 5, 2, 4, 11, 6, 2, 10, 8, 6, 7, 9, 8, 1],
  ].flat();
  for (let round = 0; round < subdivisions; round++) {
    const middles = new Map<number, number>();
    const middle = (a: number, b: number) => {
      const key = Math.min(a, b) * 2 ** 26 + Math.max(a, b);
      const known = middles.get(key);
      if (known !== undefined) return known;
      const [va, vb] = [vertices[a]!, vertices[b]!];
      vertices.push(unit([0, 1, 2].map((axis) => va[axis]! + vb[axis]!)));
      middles.set(key, vertices.length - 1);
      return vertices.length - 1;
    };
    const finer: number[] = [];
    for (let at = 0; at < facets.length; at += 3) {
      const [a, b, c] = [facets[at]!, facets[at + 1]!, facets[at + 2]!];
      const [ab, bc, ca] = [middle(a, b), middle(b, c), middle(c, a)];
      finer.push(a, ab, ca, b, bc, ab, c, ca, bc, ab, bc, ca);
    }
    facets = finer;
  }
  return meshOf(
    vertices.flat().map((coordinate) => radiusMm * coordinate),
    facets,
  );
}

/** Sphere with a concentric void, two bodies; the wall is the difference of the radii up to faceting. */
export function hollowSphere(outerMm: number, innerMm: number, subdivisions: number): IndexedMesh {
  return joinMeshes(icosphere(outerMm, subdivisions), insideOut(icosphere(innerMm, subdivisions)));
}

/** Ring around the z axis: `around` by `across` quads, two facets each. */
export function torus(majorMm: number, minorMm: number, around: number, across: number): IndexedMesh {
  const positions: number[] = [];
  const facets: number[] = [];
  for (let i = 0; i < around; i++) {
    const turn = (2 * Math.PI * i) / around;
    for (let j = 0; j < across; j++) {
      const angle = (2 * Math.PI * j) / across;
      const reach = majorMm + minorMm * Math.cos(angle);
      positions.push(reach * Math.cos(turn), reach * Math.sin(turn), minorMm * Math.sin(angle));
      const [nextI, nextJ] = [(i + 1) % around, (j + 1) % across];
      const [a, b] = [i * across + j, nextI * across + j];
      const [c, d] = [nextI * across + nextJ, i * across + nextJ];
      facets.push(a, b, c, a, c, d);
    }
  }
  return meshOf(positions, facets);
}

/** Wall of `domeShell` and `shellOfTriangles`. */
export const domeShellWallMm = 2;

/**
 * Half-sphere shell, 50 mm outside radius, open below, with a flat rim; closed. The wall is `domeShellWallMm`
 * everywhere up to faceting, unless it is told by the angle from the top. `rings` by `segments` quads on each skin.
 */
export function domeShell(
  rings: number,
  segments: number,
  wallMmAt: (tiltRad: number) => number = () => domeShellWallMm,
): IndexedMesh {
  const positions: number[] = [];
  const facets: number[] = [];
  const apex: number[] = [];
  const ringStart: number[] = [];
  for (const radiusAt of [() => 50, (tiltRad: number) => 50 - wallMmAt(tiltRad)]) {
    apex.push(positions.length / 3);
    positions.push(0, 0, radiusAt(0));
    ringStart.push(positions.length / 3);
    for (let i = 1; i <= rings; i++) {
      const tilt = (Math.PI / 2) * (i / rings);
      const radius = radiusAt(tilt);
      for (let j = 0; j < segments; j++) {
        const turn = (2 * Math.PI * j) / segments;
        const level = i === rings ? 0 : radius * Math.cos(tilt);
        positions.push(
          radius * Math.sin(tilt) * Math.cos(turn),
          radius * Math.sin(tilt) * Math.sin(turn),
          level,
        );
      }
    }
  }
  const at = (skin: number, ring: number, segment: number) =>
    ringStart[skin]! + (ring - 1) * segments + (segment % segments);
  for (const skin of [0, 1]) {
    const put = (a: number, b: number, c: number) =>
      skin === 0 ? facets.push(a, b, c) : facets.push(a, c, b);
    for (let j = 0; j < segments; j++) put(apex[skin]!, at(skin, 1, j), at(skin, 1, j + 1));
    for (let i = 1; i < rings; i++) {
      for (let j = 0; j < segments; j++) {
        put(at(skin, i, j), at(skin, i + 1, j), at(skin, i + 1, j + 1));
        put(at(skin, i, j), at(skin, i + 1, j + 1), at(skin, i, j + 1));
      }
    }
  }
  for (let j = 0; j < segments; j++) {
    const [outer, outerNext] = [at(0, rings, j), at(0, rings, j + 1)];
    const [inner, innerNext] = [at(1, rings, j), at(1, rings, j + 1)];
    facets.push(outer, inner, innerNext, outer, innerNext, outerNext);
  }
  return meshOf(positions, facets);
}

/** `domeShell` with close to `targetTriangles` facets, for benches (50,000, 300,000, 1,000,000). */
export function shellOfTriangles(targetTriangles: number): IndexedMesh {
  // Twice (segments + 2 segments (rings - 1)) + 2 segments = 4 segments rings, at four segments per ring.
  const rings = Math.max(2, Math.round(Math.sqrt(targetTriangles) / 4));
  return domeShell(rings, Math.max(3, Math.round(targetTriangles / (4 * rings))));
}

/** The corners of a mesh as a file would give them: 9 numbers per facet. */
export function cornersOf(mesh: IndexedMesh): Float64Array {
  const corners = new Float64Array(3 * mesh.facets.length);
  mesh.facets.forEach((vertex, corner) => {
    corners.set(mesh.positions.subarray(3 * vertex, 3 * vertex + 3), 3 * corner);
  });
  return corners;
}
