/**
 * What is in the laminate as it comes out of the mold: the stack's volume in the cavity that the closed mold leaves, unless
 * voids or resin were measured on the cured part. Thickness, density, mass and stiffness all go by this one content.
 */
import type { Cavity } from '../../core/closing/cavity';
import { contentOfVolume, type LaminateContent } from '../../core/laminate/bleedAndVoids';
import { compensatedSum } from '../../core/numeric/compensatedSum';
import { formatNumber } from '../../core/units/formatNumber';
import { closingState } from './state';
import type { StepContext } from '../shared/context';
import type { KnownStack } from '../shared/stack';

export interface LaminateInMold {
  readonly content: LaminateContent;
  /** null while the closed mold is not known. */
  readonly cavity: Cavity | null;
  /** How voids and bleed are known, one sentence. */
  readonly how: string;
  /** The cavity went in, so the mesh and the clamps did. */
  readonly byMold: boolean;
}

const answers = new WeakMap<StepContext, LaminateInMold>();

/** `stack`: that of the context. Worked out once per context. */
export function laminateInMold(context: StepContext, stack: KnownStack): LaminateInMold {
  const kept = answers.get(context);
  if (kept !== undefined) return kept;
  const answer = workedOut(context, stack);
  answers.set(context, answer);
  return answer;
}

/** A cavity with less room than the fibers alone is no laminate; some resin is left to speak of. */
const mostLostShare = 0.99;

function workedOut(context: StepContext, { volume }: KnownStack): LaminateInMold {
  const { voidPercent, resinLostPercent } = context.inputs.plies;
  const closing = closingState(context);
  const cavity = closing.known ? closing.cavity : null;
  const lostByMold =
    cavity === null
      ? 0
      : cavity.pressedOutMm3 / (volume.resinMm * cavity.areaMm2 || Number.POSITIVE_INFINITY);
  const lost = resinLostPercent === null ? lostByMold : resinLostPercent / 100;
  const voids = voidPercent === null ? (cavity?.voidShare ?? 0) : voidPercent / 100;
  return {
    content: contentOfVolume(volume, Math.min(lost, mostLostShare), voids),
    cavity,
    byMold: cavity !== null && (voidPercent === null || resinLostPercent === null),
    how: [
      voidPercent === null
        ? cavity === null
          ? 'no voids, as long as the closed mold is not known'
          : `${formatNumber(100 * voids, 1)} % voids in the closed mold (volume of the cavity against the stack’s)`
        : `${formatNumber(voidPercent, 1)} % voids, as measured`,
      resinLostPercent === null
        ? `${formatNumber(100 * lost, 1)} % of the resin pressed out${cavity === null ? '' : ' there'}`
        : `${formatNumber(resinLostPercent, 1)} % of the resin lost, as measured`,
    ].join('; '),
  };
}

/** Area midway through the wall: that of the closed mold's balance; of its faces where no wall is known. */
export function midSurfaceMm2({ measured }: StepContext): number | null {
  if (measured === null) return null;
  const { closing, kindAreaMm2 } = measured.summary;
  const balanced = closing.wallsKnown ? compensatedSum([...closing.areaMm2]) : 0;
  if (balanced > 0) return balanced;
  const { show, core } = kindAreaMm2;
  if (!(show > 0)) return null;
  return core > 0 ? (show + core) / 2 : show;
}
