/**
 * What a whole stack answers to a gap: its plies lie one on the other, so all carry the same pressure and their
 * thicknesses add up. Worked out once per stack as a table over the gap, so that a balance over thousands of places
 * costs no powers.
 */
import { compensatedSum } from '../numeric/compensatedSum';
import { Problem } from '../problem';
import { bedPressurePa, bedSlopePa, fractionAtPressure, type FiberBed } from './fiberBed';

/** Plies of one kind in the stack. */
export interface BedLayer {
  readonly bed: FiberBed;
  /** Thickness that their fibers alone fill: Σ areal weight / (1000 ρf), mm. */
  readonly solidFiberMm: number;
}

/**
 * Pressure in MPa (N/mm²) over the gap in mm, from zero at `unloadedGapMm` up to `crushMPa` at `crushGapMm`; closer it
 * stays there, since the stone gives way: else a crumb of the mesh with no room for a ply would hold a mold open.
 */
export interface BedCurve {
  /** Of all layers, mm. */
  readonly solidFiberMm: number;
  readonly unloadedGapMm: number;
  readonly crushGapMm: number;
  /** Gap under which the stack is past its fiber limit, mm. */
  readonly limitGapMm: number;
  readonly stepMm: number;
  /** At `crushGapMm + i stepMm`. */
  readonly pressureMPa: Float64Array;
  /** −dp/dg at the same places, MPa/mm. */
  readonly stiffness: Float64Array;
}

/** Crushing limit of type 3 dental stone (`stoneCrushing` in core/sources). */
export const crushMPa = 20;
/** Cubic pieces; their error is below 1e-9 of the pressure. */
const pieces = 1024;

/** `stiffnessFactor` scales all pressures: 0.6 and 1.4 are the scatter between laboratories. */
export function bedCurve(layers: readonly BedLayer[], stiffnessFactor = 1): BedCurve {
  const solidFiberMm = compensatedSum(layers.map((layer) => layer.solidFiberMm));
  if (!(solidFiberMm > 0 && Number.isFinite(solidFiberMm)) || !(stiffnessFactor > 0))
    throw new Problem('closing.noFiber', 'The stack holds no fiber: give plies with an areal weight.');
  const gapAt = (pressurePa: number) =>
    compensatedSum(
      layers.map(({ bed, solidFiberMm: fiberMm }) => fiberMm / fractionAtPressure(bed, pressurePa)),
    );
  const unloadedGapMm = gapAt(0);
  const crushGapMm = gapAt((crushMPa * 1e6) / stiffnessFactor);
  const stepMm = (unloadedGapMm - crushGapMm) / pieces;
  const pressureMPa = new Float64Array(pieces + 1);
  const stiffness = new Float64Array(pieces + 1);
  let pressurePa = (crushMPa * 1e6) / stiffnessFactor;
  for (let i = 0; i <= pieces; i++) {
    pressurePa = pressureAtGap(layers, crushGapMm + i * stepMm, pressurePa, unloadedGapMm);
    pressureMPa[i] = pressurePa * stiffnessFactor * 1e-6;
    stiffness[i] = (stiffnessFactor * 1e-6) / compliance(layers, pressurePa);
  }
  return {
    solidFiberMm,
    unloadedGapMm,
    crushGapMm,
    limitGapMm: compensatedSum(layers.map(({ bed, solidFiberMm: mm }) => mm / bed.limitFraction)),
    stepMm,
    pressureMPa,
    stiffness,
  };
}

/** −dg/dp of the layers at one pressure, mm/Pa. */
function compliance(layers: readonly BedLayer[], pressurePa: number): number {
  return compensatedSum(
    layers.map(({ bed, solidFiberMm }) => {
      const fraction = fractionAtPressure(bed, pressurePa);
      return solidFiberMm / (fraction * fraction * bedSlopePa(bed, fraction));
    }),
  );
}

/** One layer is the law itself; of several the pressure is found by Newton's steps from the closer gap before. */
function pressureAtGap(
  layers: readonly BedLayer[],
  gapMm: number,
  guessPa: number,
  unloadedGapMm: number,
): number {
  const [first] = layers;
  if (gapMm >= unloadedGapMm || first === undefined) return 0;
  if (layers.length === 1) return bedPressurePa(first.bed, first.solidFiberMm / gapMm);
  // The gap is convex in the pressure: from a pressure that is too high each step stays above zero by halving.
  let pressurePa = guessPa;
  for (let step = 0; step < 60; step++) {
    const miss =
      compensatedSum(
        layers.map(({ bed, solidFiberMm }) => solidFiberMm / fractionAtPressure(bed, pressurePa)),
      ) - gapMm;
    const next = Math.max(pressurePa / 2, pressurePa + miss / compliance(layers, pressurePa));
    if (Math.abs(next - pressurePa) <= 1e-12 * pressurePa) return next;
    pressurePa = next;
  }
  return pressurePa;
}

/** Pressure that the stack carries at a gap, MPa. */
export function pressureAt(curve: BedCurve, gapMm: number): number {
  if (gapMm >= curve.unloadedGapMm) return 0;
  const { pressureMPa, stiffness, stepMm, crushGapMm } = curve;
  if (gapMm <= crushGapMm) return pressureMPa[0]!;
  const at = (gapMm - crushGapMm) / stepMm;
  const i = Math.min(pieces - 1, at | 0);
  const u = at - i;
  const v = 1 - u;
  return (
    pressureMPa[i]! * v * v * (1 + 2 * u) +
    pressureMPa[i + 1]! * u * u * (3 - 2 * u) -
    stepMm * u * v * (stiffness[i]! * v - stiffness[i + 1]! * u)
  );
}

/** −dp/dg at a gap, MPa/mm. */
export function stiffnessAt(curve: BedCurve, gapMm: number): number {
  if (gapMm >= curve.unloadedGapMm) return 0;
  const { pressureMPa, stiffness, stepMm, crushGapMm } = curve;
  if (gapMm <= crushGapMm) return 0;
  const at = (gapMm - crushGapMm) / stepMm;
  const i = Math.min(pieces - 1, at | 0);
  const u = at - i;
  const v = 1 - u;
  return (
    (6 * u * v * (pressureMPa[i]! - pressureMPa[i + 1]!)) / stepMm +
    stiffness[i]! * v * (1 - 3 * u) +
    stiffness[i + 1]! * u * (3 * u - 2)
  );
}

/** The widest gap at which the stack carries a pressure, mm; the unloaded gap for 0 and less, `crushGapMm` at most. */
export function gapAtPressure(curve: BedCurve, wantedMPa: number): number {
  if (!(wantedMPa > 0)) return curve.unloadedGapMm;
  const { pressureMPa, crushGapMm } = curve;
  if (wantedMPa >= pressureMPa[0]!) return crushGapMm;
  let low = crushGapMm;
  let high = curve.unloadedGapMm;
  for (let halving = 0; halving < 60; halving++) {
    const middle = (low + high) / 2;
    if (pressureAt(curve, middle) > wantedMPa) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}
