import type { FacetGeometry } from './facetGeometry';
import type { Vec3 } from './types';

/** Directions spread over half a sphere, about 8 degrees apart. */
const spreadCount = 300;
/** So many of the directions that most area looks along. */
const dominantCount = 24;
/** Normals are put together in steps of this size per coordinate. */
const normalStep = 0.02;
const sameCosine = Math.cos((0.05 * Math.PI) / 180);

/**
 * Directions worth trying as a straight pull, each standing for itself and its opposite: first the three axes, then
 * the normals that most area carries (a modeled part is mostly drawn along one of them), then directions spread
 * evenly over half a sphere (Fibonacci spiral). Always the same for the same part.
 */
export function pullCandidates(geometry: FacetGeometry): Vec3[] {
  const candidates = dominantDirections(geometry);
  const offer = offerTo(candidates);
  const goldenAngle = Math.PI * (3 - Math.sqrt(5));
  for (let i = 0; i < spreadCount; i++) {
    const z = (i + 0.5) / spreadCount;
    const radius = Math.sqrt(1 - z * z);
    offer([radius * Math.cos(i * goldenAngle), radius * Math.sin(i * goldenAngle), z]);
  }
  return candidates;
}

/** The three axes and the normals that most area carries, each standing for itself and its opposite. */
export function dominantDirections({ areaMm2, normal }: FacetGeometry): Vec3[] {
  const candidates: Vec3[] = [
    [0, 0, 1],
    [0, 1, 0],
    [1, 0, 0],
  ];
  const offer = offerTo(candidates);
  for (const candidate of dominantNormals(areaMm2, normal)) offer(candidate);
  return candidates;
}

/** Adds what is not among them yet. */
const offerTo = (candidates: Vec3[]) => (candidate: Vec3) => {
  const isKnown = candidates.some(
    (known) =>
      Math.abs(known[0] * candidate[0] + known[1] * candidate[1] + known[2] * candidate[2]) > sameCosine,
  );
  if (!isKnown) candidates.push(candidate);
};

function dominantNormals(areaMm2: Float32Array, normal: Float32Array): Vec3[] {
  const sums = new Map<number, [number, number, number]>();
  const steps = Math.round(1 / normalStep);
  const width = 2 * steps + 1;
  for (let facet = 0; facet < areaMm2.length; facet++) {
    const area = areaMm2[facet]!;
    if (!(area > 0)) continue;
    let x = normal[3 * facet]!;
    let y = normal[3 * facet + 1]!;
    let z = normal[3 * facet + 2]!;
    // Opposite normals stand for the same pull.
    if (z < 0 || (z === 0 && (y < 0 || (y === 0 && x < 0)))) [x, y, z] = [-x, -y, -z];
    const key =
      ((Math.round(z * steps) + steps) * width + Math.round(y * steps) + steps) * width +
      Math.round(x * steps) +
      steps;
    const sum = sums.get(key);
    if (sum) {
      sum[0] += area * x;
      sum[1] += area * y;
      sum[2] += area * z;
    } else sums.set(key, [area * x, area * y, area * z]);
  }
  return [...sums.values()]
    .map((sum) => ({ sum, length: Math.hypot(...sum) }))
    .filter(({ length }) => length > 0)
    .sort((one, other) => other.length - one.length)
    .slice(0, dominantCount)
    .map(({ sum, length }): Vec3 => [sum[0] / length, sum[1] / length, sum[2] / length]);
}
