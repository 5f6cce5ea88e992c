/**
 * Whether a mesh that was put on a grid still gives the same figures: volume, area, and the area by draft along the
 * six axis pulls. Works on file coordinates and on whole grid counts alike.
 */

/** Limits; the figures of a saved mesh must not differ from the file's by more. */
export const fidelityLimits = {
  /** Of volume and area, relative. */
  sum: 2e-6,
  /** Of each area share by draft, absolute. */
  draftShare: 0.0005,
} as const;

/** Draft angles that the figures class by, for pulls along and against each axis, ascending. */
const classBordersDeg = [-3, -1, -0.01, 0.01, 1, 3] as const;
const borders = classBordersDeg.map((deg) => Math.sin((deg * Math.PI) / 180));
const classes = borders.length + 1;

export interface ShapeFigures {
  /** Signed sum over the facets, whether the surface is closed or not; file units cubed. */
  readonly volume: number;
  /** File units squared. */
  readonly area: number;
  /** Facets that have two corners in one point. */
  readonly collapsedFacets: number;
  /** Area by draft class, 7 classes for each of x, y and z; file units squared. */
  readonly draftArea: Float64Array;
}

/** Sums over all facets of `coordinates / perUnit`. Taken about the first corner, so that a far-off mesh stays exact. */
export function shapeFigures(
  coordinates: Float64Array | Int32Array,
  facets: Uint32Array,
  perUnit: number,
): ShapeFigures {
  const draftArea = new Float64Array(3 * classes);
  const first = 3 * (facets[0] as number);
  const originX = coordinates[first] as number;
  const originY = coordinates[first + 1] as number;
  const originZ = coordinates[first + 2] as number;
  let sixVolumes = 0;
  let twoAreas = 0;
  let collapsedFacets = 0;
  for (let f = 0; f < facets.length; f += 3) {
    const a = 3 * (facets[f] as number);
    const b = 3 * (facets[f + 1] as number);
    const c = 3 * (facets[f + 2] as number);
    const ax = coordinates[a] as number;
    const ay = coordinates[a + 1] as number;
    const az = coordinates[a + 2] as number;
    const ux = (coordinates[b] as number) - ax;
    const uy = (coordinates[b + 1] as number) - ay;
    const uz = (coordinates[b + 2] as number) - az;
    const vx = (coordinates[c] as number) - ax;
    const vy = (coordinates[c + 1] as number) - ay;
    const vz = (coordinates[c + 2] as number) - az;
    const nx = uy * vz - uz * vy;
    const ny = uz * vx - ux * vz;
    const nz = ux * vy - uy * vx;
    sixVolumes += (ax - originX) * nx + (ay - originY) * ny + (az - originZ) * nz;
    const length = Math.sqrt(nx * nx + ny * ny + nz * nz);
    twoAreas += length;
    if (length === 0) {
      if (isPoint(ux, uy, uz) || isPoint(vx, vy, vz) || isPoint(ux - vx, uy - vy, uz - vz)) collapsedFacets++;
      continue;
    }
    const classX = draftClass(nx / length);
    const classY = classes + draftClass(ny / length);
    const classZ = 2 * classes + draftClass(nz / length);
    draftArea[classX] = (draftArea[classX] as number) + length;
    draftArea[classY] = (draftArea[classY] as number) + length;
    draftArea[classZ] = (draftArea[classZ] as number) + length;
  }
  const areaScale = 1 / (2 * perUnit * perUnit);
  return {
    volume: sixVolumes / (6 * perUnit ** 3),
    area: twoAreas * areaScale,
    collapsedFacets,
    draftArea: draftArea.map((area) => area * areaScale),
  };
}

/** Whether `reached` stays within the limits of `wanted`, for a mesh whose longest side is `longest`. */
export function figuresAgree(wanted: ShapeFigures, reached: ShapeFigures, longest: number): boolean {
  // The signed sum of an open surface can be near zero by chance; a tenth of a thin wall's volume is then the measure.
  const volumeScale = Math.max(Math.abs(wanted.volume), wanted.area * longest * 5e-4);
  if (Math.abs(reached.volume - wanted.volume) > fidelityLimits.sum * volumeScale) return false;
  if (Math.abs(reached.area - wanted.area) > fidelityLimits.sum * wanted.area) return false;
  if (reached.collapsedFacets > wanted.collapsedFacets) return false;
  const areaLimit = fidelityLimits.draftShare * wanted.area;
  for (let axis = 0; axis < 3; axis++) {
    // Shares under a border and shares over it are both sums from one end of the classes.
    let difference = 0;
    for (let i = axis * classes; i < (axis + 1) * classes; i++) {
      difference += (reached.draftArea[i] as number) - (wanted.draftArea[i] as number);
      if (Math.abs(difference) > areaLimit) return false;
    }
  }
  return true;
}

function isPoint(x: number, y: number, z: number): boolean {
  return x === 0 && y === 0 && z === 0;
}

const [minus3, minus1, justUnder, justOver, plus1, plus3] = borders as [
  number,
  number,
  number,
  number,
  number,
  number,
];

function draftClass(sine: number): number {
  if (sine < justUnder) return sine < minus3 ? 0 : sine < minus1 ? 1 : 2;
  if (sine < justOver) return 3;
  return sine < plus1 ? 4 : sine < plus3 ? 5 : 6;
}
