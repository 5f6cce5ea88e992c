/**
 * Exact solutions of heat conduction, for checks: slabs, cylinders, their products, half spaces. Series and functions as in
 * Carslaw and Jaeger, Conduction of Heat in Solids, and Incropera and DeWitt, Fundamentals of Heat and Mass Transfer, ch. 5.
 */
import { bracketedRoot } from '../../src/core/numeric/roots';

const terms = 300;
const memo = new Map<string, readonly number[]>();

function remembered(key: string, make: () => readonly number[]): readonly number[] {
  const known = memo.get(key) ?? make();
  memo.set(key, known);
  return known;
}

/** Roots of z tan z = Bi; root n lies from n pi to n pi + pi/2. */
export function slabRoots(biot: number, count = terms): readonly number[] {
  return remembered(`slab ${biot} ${count}`, () =>
    Array.from({ length: count }, (_, n) =>
      // z sin z − Bi cos z has the same roots and no poles.
      bracketedRoot((z) => z * Math.sin(z) - biot * Math.cos(z), n * Math.PI, (n + 0.5) * Math.PI),
    ),
  );
}

export const slabCoefficient = (z: number) => (4 * Math.sin(z)) / (2 * z + Math.sin(2 * z));

/** (T − Tf)/(Ti − Tf) at x/L from the middle of a slab of half thickness L. */
export function slabTheta(biot: number, fourier: number, xOverL: number): number {
  return slabRoots(biot).reduce(
    (sum, z) => sum + slabCoefficient(z) * Math.exp(-z * z * fourier) * Math.cos(z * xOverL),
    0,
  );
}

export function slabMean(biot: number, fourier: number): number {
  return slabRoots(biot).reduce(
    (sum, z) => sum + (slabCoefficient(z) * Math.exp(-z * z * fourier) * Math.sin(z)) / z,
    0,
  );
}

/** Bessel function of the first kind, by the trapezoid rule on its integral: exact to rounding for smooth periodic functions. */
export function besselJ(order: 0 | 1, x: number): number {
  const points = 64 + 2 * Math.ceil(Math.abs(x));
  let sum = 0;
  for (let i = 0; i < points; i++) {
    const angle = (2 * Math.PI * i) / points;
    sum += Math.cos(order * angle - x * Math.sin(angle));
  }
  return sum / points;
}

/** Roots of z J1(z) = Bi J0(z). */
export function cylinderRoots(biot: number, count: number): readonly number[] {
  const of = (z: number) => z * besselJ(1, z) - biot * besselJ(0, z);
  return remembered(`cylinder ${biot} ${count}`, () => {
    const roots: number[] = [];
    for (let z = 1e-9; roots.length < count; z += 0.05)
      if (of(z) * of(z + 0.05) < 0) roots.push(bracketedRoot(of, z, z + 0.05));
    return roots;
  });
}

export const cylinderCoefficient = (z: number) =>
  ((2 / z) * besselJ(1, z)) / (besselJ(0, z) ** 2 + besselJ(1, z) ** 2);

export function cylinderTheta(biot: number, fourier: number, rOverR: number): number {
  return cylinderRoots(biot, 12).reduce(
    (sum, z) => sum + cylinderCoefficient(z) * Math.exp(-z * z * fourier) * besselJ(0, z * rOverR),
    0,
  );
}

/** exp(x²) erfc(x): series below 2, continued fraction above. */
function scaledErfc(x: number): number {
  if (x < 2) return Math.exp(x * x) * (1 - erf(x));
  let fraction = 0;
  for (let n = 60; n > 0; n--) fraction = n / 2 / (x + fraction);
  return 1 / (Math.sqrt(Math.PI) * (x + fraction));
}

export const erfc = (x: number) => scaledErfc(x) * Math.exp(-x * x);

export function erf(x: number): number {
  if (x > 3) return 1 - erfc(x);
  let term = x;
  let sum = x;
  for (let n = 1; n < 80; n++) {
    term *= (-x * x) / n;
    sum += term / (2 * n + 1);
  }
  return (2 / Math.sqrt(Math.PI)) * sum;
}

/** (T − Ti)/(Tf − Ti) in a half space with an air film. */
export function halfSpaceRise(
  xM: number,
  timeS: number,
  diffusivity: number,
  k: number,
  film: number,
): number {
  const a = xM / (2 * Math.sqrt(diffusivity * timeS));
  const b = (film * Math.sqrt(diffusivity * timeS)) / k;
  // exp(h x/k + b²) erfc(a + b) without leaving the numbers.
  return erfc(a) - Math.exp(-a * a) * scaledErfc(a + b);
}

/** Slab 0 to L at 0, held at 0 on one face and at A sin(pi t/p) on the other. */
export function slabUnderSine(
  xM: number,
  timeS: number,
  lengthM: number,
  diffusivity: number,
  amplitude: number,
  p: number,
) {
  const omega = Math.PI / p;
  let value = (xM / lengthM) * amplitude * Math.sin(omega * timeS);
  for (let n = 1; n <= 2000; n++) {
    const rate = diffusivity * ((n * Math.PI) / lengthM) ** 2;
    const share = (2 * (n % 2 === 0 ? -1 : 1)) / (n * Math.PI);
    const lag =
      (rate * Math.cos(omega * timeS) + omega * Math.sin(omega * timeS) - rate * Math.exp(-rate * timeS)) /
      (rate * rate + omega * omega);
    value -= share * amplitude * omega * lag * Math.sin((n * Math.PI * xM) / lengthM);
  }
  return value;
}

export interface UniformBlock {
  readonly sizeM: readonly number[];
  readonly k: number;
  readonly density: number;
  readonly heat: number;
  readonly film: number;
}

/** (T − Tf)/(Ti − Tf) in a block, `fromMiddleM` from its middle along each axis. */
export function blockTheta(
  { sizeM, k, density, heat, film }: UniformBlock,
  timeS: number,
  fromMiddleM: readonly number[],
): number {
  return sizeM.reduce((product, size, axis) => {
    const half = size / 2;
    const fourier = ((k / (density * heat)) * timeS) / (half * half);
    return product * slabTheta((film * half) / k, fourier, Math.abs(fromMiddleM[axis]!) / half);
  }, 1);
}

export function blockMean({ sizeM, k, density, heat, film }: UniformBlock, timeS: number): number {
  return sizeM.reduce((product, size) => {
    const half = size / 2;
    return product * slabMean((film * half) / k, ((k / (density * heat)) * timeS) / (half * half));
  }, 1);
}
