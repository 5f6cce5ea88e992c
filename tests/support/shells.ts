/** Shells with known volumes for the two pours, pulled along +z, their rim on z = 0. */
import type { IndexedMesh } from '../../src/core/mesh/types';

/** Level rings of a body of revolution or of rectangles, joined from the outside's top over the rim to the inside's top. */
interface Ring {
  readonly corners: readonly (readonly [number, number])[];
  readonly zMm: number;
}

export function shellOfRings(rings: readonly Ring[], topMm: number, underMm: number): IndexedMesh {
  const count = rings[0]!.corners.length;
  const positions = rings.flatMap(({ corners, zMm }) => corners.flatMap(([x, y]) => [x, y, zMm]));
  const facets: number[] = [];
  for (let ring = 0; ring + 1 < rings.length; ring++) {
    for (let k = 0; k < count; k++) {
      const next = (k + 1) % count;
      const [a, b] = [ring * count + k, ring * count + next];
      // Rings run down the outside and up the inside.
      facets.push(a, b + count, b, a, a + count, b + count);
    }
  }
  const top = positions.length / 3;
  positions.push(0, 0, topMm, 0, 0, underMm);
  const last = (rings.length - 1) * count;
  for (let k = 0; k < count; k++) {
    const next = (k + 1) % count;
    facets.push(top, k, next, top + 1, last + next, last + k);
  }
  return { positions: Float64Array.from(positions), facets: Uint32Array.from(facets) };
}

const circle = (radiusX: number, radiusY: number, steps: number) =>
  Array.from({ length: steps }, (_, step) => {
    const angle = (2 * Math.PI * step) / steps;
    return [radiusX * Math.cos(angle), radiusY * Math.sin(angle)] as const;
  });

const rectangle = (lengthMm: number, widthMm: number) =>
  [
    [lengthMm / 2, widthMm / 2],
    [-lengthMm / 2, widthMm / 2],
    [-lengthMm / 2, -widthMm / 2],
    [lengthMm / 2, -widthMm / 2],
  ] as const;

/** Half-ellipsoid shell: outer half axes a, b, c, inner ones each smaller by the wall. */
export function halfEllipsoidShell(
  [a, b, c]: readonly [number, number, number],
  wallMm: number,
  rings: number,
  steps: number,
): IndexedMesh {
  const skin = (inMm: number) =>
    Array.from({ length: rings }, (_, k) => {
      const tilt = (Math.PI / 2) * ((k + 1) / rings);
      const zMm = k + 1 === rings ? 0 : (c - inMm) * Math.cos(tilt);
      return {
        corners: circle((a - inMm) * Math.sin(tilt), (b - inMm) * Math.sin(tilt), steps),
        zMm,
      };
    });
  return shellOfRings([...skin(0), ...skin(wallMm).toReversed()], c, c - wallMm);
}

/** Round cup, mouth down: outside radii at mouth and end, wall measured level and at the end. */
export function cupShell(
  mouthMm: number,
  endMm: number,
  heightMm: number,
  wallMm: number,
  steps: number,
): IndexedMesh {
  return shellOfRings(
    [
      { corners: circle(endMm, endMm, steps), zMm: heightMm },
      { corners: circle(mouthMm, mouthMm, steps), zMm: 0 },
      { corners: circle(mouthMm - wallMm, mouthMm - wallMm, steps), zMm: 0 },
      { corners: circle(endMm - wallMm, endMm - wallMm, steps), zMm: heightMm - wallMm },
    ],
    heightMm,
    heightMm - wallMm,
  );
}

/** Rectangular tray with one step halfway up: the upper part is narrower by `stepMm` on each side; walls upright. */
export function steppedTray(
  lengthMm: number,
  widthMm: number,
  heightMm: number,
  stepMm: number,
  wallMm: number,
): IndexedMesh {
  const ring = (inMm: number, zMm: number) => ({
    corners: rectangle(lengthMm - 2 * inMm, widthMm - 2 * inMm),
    zMm,
  });
  return shellOfRings(
    [
      ring(stepMm, heightMm),
      ring(stepMm, heightMm / 2),
      ring(0, heightMm / 2),
      ring(0, 0),
      ring(wallMm, 0),
      ring(wallMm, heightMm / 2 - wallMm),
      ring(stepMm + wallMm, heightMm / 2 - wallMm),
      ring(stepMm + wallMm, heightMm - wallMm),
    ],
    heightMm,
    heightMm - wallMm,
  );
}
