/** The stack as a laminate of the theory: layers at the angles they lie at, what cooling does to it, and the bands. */
import { contentAfterBleed } from '../../core/laminate/bleedAndVoids';
import { typicalEpoxyCoat, withCoat } from '../../core/laminate/coat';
import { laminateOf, type Laminate } from '../../core/laminate/lamination';
import { thermalResponse } from '../../core/laminate/thermalResponse';
import { vector3, type Vector3 } from '../../core/numeric/matrix3';
import { Problem } from '../../core/problem';
import type { StepContext } from '../shared/context';
import { laminateInMold } from '../closedMold/laminateInMold';
import { processOf, type Process } from '../shared/process';
import type { PliesInputs } from '../inputs/plies';
import { allBandEnds, plyConstants, type BandEnds, type PlyConstants } from './plyConstants';
import { laidAngleDeg, type PartHalf } from '../inputs/ply';
import { resolveStack, type KnownStack } from '../shared/stack';

/** One laminate with what is read from it. */
export interface LaminateState {
  /** Without the coat. */
  readonly laminate: Laminate;
  /** At the temperature in use, coat included. */
  readonly curvaturePerM: Vector3;
  /** The same counted from the far end of where it may be free of stress. */
  readonly farCurvaturePerM: Vector3;
  readonly warps: boolean;
}

export interface KnownLaminate extends LaminateState {
  readonly known: true;
  readonly stack: KnownStack;
  /** The half of the part where mirrored pairs lie at the mirrored angle; null when both halves are alike. */
  readonly secondHalf: LaminateState | null;
  readonly constants: readonly PlyConstants[];
  /** Some constant of a ply in the plane is typical, from memory. */
  readonly typical: boolean;
  /** What bends it has constants from memory: of a ply, or of the coat. */
  readonly warpTypical: boolean;
  /** The laminate with constants from memory at all ends of their bands; empty when there are none. */
  readonly ends: readonly LaminateState[];
  /** Mean over the thickness. */
  readonly expansionThroughPerK: number;
  readonly expansionThroughBand: readonly [number, number];
}

export type LaminateAnswer =
  KnownLaminate | { readonly known: false; readonly reason: string; readonly stackKnown: boolean };

const answers = new WeakMap<StepContext, LaminateAnswer>();

/** Worked out once per context. */
export function stackLaminate(context: StepContext): LaminateAnswer {
  const kept = answers.get(context);
  if (kept !== undefined) return kept;
  const answer = workedOut(context);
  answers.set(context, answer);
  return answer;
}

function workedOut(context: StepContext): LaminateAnswer {
  const stack = resolveStack(context.inputs.plies);
  if (!stack.known) return { known: false, reason: stack.reason, stackKnown: false };
  try {
    return knownLaminate(context, stack);
  } catch (error) {
    if (!(error instanceof Problem)) throw error;
    return { known: false, reason: error.message, stackKnown: true };
  }
}

function knownLaminate(context: StepContext, stack: KnownStack): KnownLaminate {
  const inputs = context.inputs.plies;
  const process = processOf(context.inputs);
  const { resinLostShare, voidFraction } = laminateInMold(context, stack).content;
  const layers = stack.plies.map(({ ply, card }) => {
    const { thicknessMm, fiberVolumeFraction } = contentAfterBleed([card], resinLostShare, voidFraction);
    return { ply, thicknessMm, constants: plyConstants(card, fiberVolumeFraction) };
  });
  const stateOf = (half: PartHalf, ends: BandEnds | null): LaminateState => {
    const placed = layers.map(({ ply, thicknessMm, constants }) => ({
      elastic: ends === null ? constants.elastic : constants.atEnds(ends),
      angleDeg: laidAngleDeg(ply, half),
      thicknessMm,
    }));
    const laminate = laminateOf(placed);
    const near = curvatureInUse(laminate, inputs, process, process.stressFree.valueC, ends);
    const far = curvatureInUse(laminate, inputs, process, process.stressFreeFarC, ends);
    return {
      laminate,
      curvaturePerM: near.curvaturePerM,
      farCurvaturePerM: far.curvaturePerM,
      warps: near.warps || far.warps,
    };
  };
  const constants = layers.map((layer) => layer.constants);
  const typical = constants.some((one) => one.typical);
  const warpTypical = typical || inputs.coatFace !== 'none';
  const meanThrough = (of: (one: PlyConstants) => number) =>
    layers.reduce((sum, layer) => sum + of(layer.constants) * layer.thicknessMm, 0) /
    layers.reduce((sum, layer) => sum + layer.thicknessMm, 0);
  const halvesDiffer = stack.plies.some(({ ply }) => laidAngleDeg(ply) !== laidAngleDeg(ply, 'second'));
  return {
    known: true,
    stack,
    ...stateOf('first', null),
    secondHalf: halvesDiffer ? stateOf('second', null) : null,
    constants,
    typical,
    warpTypical,
    ends: warpTypical ? allBandEnds.map((ends) => stateOf('first', ends)) : [],
    expansionThroughPerK: meanThrough((one) => one.expansion3PerK),
    expansionThroughBand: [
      meanThrough((one) => one.expansion3Band[0]),
      meanThrough((one) => one.expansion3Band[1]),
    ],
  };
}

/** Plausible constants of an epoxy coat at room temperature, from memory. */
const coatBand = { eGPa: [2, 4], expansionPerK: [45e-6, 75e-6] } as const;

/**
 * The bare laminate cools from where it is free of stress to where the coat set, and the coated one from there to its use: strains
 * add up, and a coat pulls only from its own setting on.
 */
function curvatureInUse(
  laminate: Laminate,
  { coatFace, coatThicknessMm }: PliesInputs,
  { inUse, coatSet }: Process,
  stressFreeC: number,
  ends: BandEnds | null,
): Pick<LaminateState, 'curvaturePerM' | 'warps'> {
  if (coatFace === 'none') {
    const { curvaturePerM, warps } = thermalResponse(laminate, inUse.valueC - stressFreeC);
    return { curvaturePerM, warps };
  }
  const bare = thermalResponse(laminate, coatSet.valueC - stressFreeC);
  const coat = {
    ...typicalEpoxyCoat,
    ...(ends === null
      ? {}
      : { eGPa: coatBand.eGPa[ends.moduli], expansionPerK: coatBand.expansionPerK[ends.expansion1] }),
    thicknessMm: coatThicknessMm,
  };
  const coated = thermalResponse(
    laminateOf(withCoat(laminate.layers, coat, coatFace)),
    inUse.valueC - coatSet.valueC,
  );
  return {
    curvaturePerM: vector3((r) => bare.curvaturePerM[r] + coated.curvaturePerM[r]),
    warps: bare.warps || coated.warps,
  };
}

/** Lowest and highest of a number over the laminate and its band ends; null when nothing is typical. */
export function bandOf(
  answer: KnownLaminate,
  of: (state: LaminateState) => number,
): readonly [number, number] | null {
  if (answer.ends.length === 0) return null;
  const values = [of(answer), ...answer.ends.map(of)];
  return [Math.min(...values), Math.max(...values)];
}
