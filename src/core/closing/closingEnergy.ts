/** The energy whose least is the balance of the closed mold: the bed and the clamp springs. Convex, with even slopes. */
import { pressureAt, stiffnessAt, type BedCurve } from './bedCurve';
import { clampForceN, type ClampSpring } from './clamps';
import type { ClosingSamples } from './closingTypes';
import type { Triple } from './smallQuadratic';

/** What presses and what pushes back. */
export interface ClosingLoads {
  readonly samples: ClosingSamples;
  readonly curve: BedCurve;
  readonly clamps: readonly ClampSpring[];
}

/** How far the mold stands off under a clamp, mm. @param q stand-off and tilts × span, mm */
export function openingAt({ planMm }: ClampSpring, q: Triple, spanMm: number): number {
  return q[0] + (q[1] * planMm[1]) / spanMm - (q[2] * planMm[0]) / spanMm;
}

export interface Slopes {
  readonly gradient: Triple;
  readonly hessian: readonly [Triple, Triple, Triple];
}

/** First and second derivatives of the energy over (stand-off, tilts × span): N and N/mm. Without `second` zeros for those. */
export function slopes(
  { samples, curve, clamps }: ClosingLoads,
  q: Triple,
  spanMm: number,
  second: boolean,
): Slopes {
  const { areaMm2, wallMm, pullCosine, armUMm, armVMm } = samples;
  const { unloadedGapMm } = curve;
  const [s, tu, tv] = [q[0], q[1] / spanMm, q[2] / spanMm];
  let [g0, g1, g2] = [0, 0, 0];
  let [h00, h01, h02, h11, h12, h22] = [0, 0, 0, 0, 0, 0];
  for (let i = 0; i < areaMm2.length; i++) {
    const gap = wallMm[i]! + s * pullCosine[i]! + tu * armUMm[i]! + tv * armVMm[i]!;
    if (gap >= unloadedGapMm) continue;
    const area = areaMm2[i]!;
    if (area === 0) continue;
    const c = pullCosine[i]!;
    const u = armUMm[i]! / spanMm;
    const v = armVMm[i]! / spanMm;
    const force = pressureAt(curve, gap) * area;
    g0 -= force * c;
    g1 -= force * u;
    g2 -= force * v;
    if (!second) continue;
    const k = stiffnessAt(curve, gap) * area;
    h00 += k * c * c;
    h01 += k * c * u;
    h02 += k * c * v;
    h11 += k * u * u;
    h12 += k * u * v;
    h22 += k * v * v;
  }
  for (const clamp of clamps) {
    const force = clampForceN(clamp, openingAt(clamp, q, spanMm));
    const u = clamp.planMm[1] / spanMm;
    const v = -clamp.planMm[0] / spanMm;
    g0 += force;
    g1 += force * u;
    g2 += force * v;
    const k = force > 0 ? clamp.rateNPerMm : 0;
    h00 += k;
    h01 += k * u;
    h02 += k * v;
    h11 += k * u * u;
    h12 += k * u * v;
    h22 += k * v * v;
  }
  return {
    gradient: [g0, g1, g2],
    hessian: [
      [h00, h01, h02],
      [h01, h11, h12],
      [h02, h12, h22],
    ],
  };
}

/** Of the bed along the pull, N. */
export function bedPushN(loads: ClosingLoads, q: Triple, spanMm: number): number {
  return -slopes({ ...loads, clamps: [] }, q, spanMm, false).gradient[0];
}
