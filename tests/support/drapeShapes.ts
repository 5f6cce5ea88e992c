/** Faces with closed forms to lay cloth on. */
import type { IndexedMesh } from '../../src/core/mesh/types';

/** A grid over two parameters, wound so that u, v, and the outside are right-handed. */
export function gridFace(
  countU: number,
  countV: number,
  at: (u: number, v: number) => readonly [number, number, number],
  keep: (u: number, v: number) => boolean = () => true,
): IndexedMesh {
  const positions = new Float64Array(3 * (countU + 1) * (countV + 1));
  for (let j = 0; j <= countV; j++)
    for (let i = 0; i <= countU; i++) positions.set(at(i / countU, j / countV), 3 * (j * (countU + 1) + i));
  const facets: number[] = [];
  for (let j = 0; j < countV; j++)
    for (let i = 0; i < countU; i++) {
      if (!keep((i + 0.5) / countU, (j + 0.5) / countV)) continue;
      const a = j * (countU + 1) + i;
      const [b, c, d] = [a + 1, a + countU + 2, a + countU + 1];
      if ((i + j) % 2 === 0) facets.push(a, b, c, a, c, d);
      else facets.push(a, b, d, b, c, d);
    }
  return compacted(positions, facets);
}

function compacted(positions: Float64Array, facets: readonly number[]): IndexedMesh {
  const own = new Map<number, number>();
  const points: number[] = [];
  const corners = facets.map((vertex) => {
    let at = own.get(vertex);
    if (at === undefined) {
      at = own.size;
      own.set(vertex, at);
      points.push(positions[3 * vertex]!, positions[3 * vertex + 1]!, positions[3 * vertex + 2]!);
    }
    return at;
  });
  return { positions: Float64Array.from(points), facets: Uint32Array.from(corners) };
}

/** A cap of a sphere about +z, from a square grid, so that no vertex is crowded. */
export function sphereCap(radiusMm: number, polarDeg: number, count: number): IndexedMesh {
  const most = (polarDeg * Math.PI) / 180;
  return gridFace(count, count, (u, v) => {
    const [x, y] = [2 * u - 1, 2 * v - 1];
    // Square to disk by rings: the side of the square that a point is on tells its polar angle.
    const ring = Math.max(Math.abs(x), Math.abs(y));
    const size = Math.hypot(x, y) || 1;
    const polar = most * ring;
    const out = Math.sin(polar) / size;
    return [radiusMm * out * x, radiusMm * out * y, radiusMm * Math.cos(polar)];
  });
}

/** A box of five faces, open below, with sharp edges: its top corner has a curvature of a quarter turn less draft. */
export function openBox(
  [lengthMm, widthMm, heightMm]: readonly [number, number, number],
  draftDeg: number,
  stepMm: number,
): IndexedMesh {
  const out = heightMm * Math.tan((draftDeg * Math.PI) / 180);
  const positions: number[] = [];
  const facets: number[] = [];
  const vertexAt = new Map<string, number>();
  const vertex = (x: number, y: number, z: number): number => {
    const key = [x, y, z].map((value) => value.toFixed(6)).join(' ');
    let at = vertexAt.get(key);
    if (at === undefined) {
      at = vertexAt.size;
      vertexAt.set(key, at);
      positions.push(x, y, z);
    }
    return at;
  };
  const patch = (
    countU: number,
    countV: number,
    at: (u: number, v: number) => readonly [number, number, number],
  ) => {
    for (let j = 0; j < countV; j++)
      for (let i = 0; i < countU; i++) {
        const [a, b, c, d] = (
          [
            [i, j],
            [i + 1, j],
            [i + 1, j + 1],
            [i, j + 1],
          ] as const
        ).map(([p, q]) => vertex(...at(p / countU, q / countV)));
        facets.push(a!, b!, c!, a!, c!, d!);
      }
  };
  const [nx, ny, nz] = [lengthMm, widthMm, heightMm].map((size) => Math.round(size / stepMm)) as [
    number,
    number,
    number,
  ];
  const [x, y] = [lengthMm / 2, widthMm / 2];
  patch(nx, ny, (u, v) => [x * (2 * u - 1), y * (2 * v - 1), 0]);
  const side = (way: 0 | 1 | 2 | 3, count: number) =>
    patch(count, nz, (u, v) => {
      // u along the side, counter-clockwise seen from above; v up.
      const down = 1 - v;
      const [hx, hy] = [x + down * out, y + down * out];
      const along = 2 * u - 1;
      const plan = [
        [along * hx, -hy],
        [hx, along * hy],
        [-along * hx, hy],
        [-hx, -along * hy],
      ][way]!;
      return [plan[0]!, plan[1]!, -down * heightMm];
    });
  side(0, nx);
  side(1, ny);
  side(2, nx);
  side(3, ny);
  return { positions: Float64Array.from(positions), facets: Uint32Array.from(facets) };
}
