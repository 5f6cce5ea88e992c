/** What is laid and cut, from the stack and the inputs of the project. */
import type { CuttingChoices, PlyToCut } from '../../core/drape/cutPlies';
import { shearLimits } from '../../core/drape/weaveLimits';
import { curedThicknessMm } from '../../core/laminate/plyThickness';
import { Problem } from '../../core/problem';
import { laidAngleDeg } from '../inputs/ply';
import type { ProjectInputs } from '../inputs/project';
import { resolveStack } from '../shared/stack';
import { fabricNames } from './rolls';

/**
 * Each ply lies with its middle as deep as the plies under it and half of its own fill; the face that it is nearer to is moved there.
 * @throws Problem `cutting.noStack`, `cutting.start`
 */
export function cuttingChoicesOf({ part, plies, cutting }: ProjectInputs): CuttingChoices {
  const stack = resolveStack(plies);
  if (!stack.known) throw new Problem('cutting.noStack', `${stack.reason} ${stack.fix}`);
  const { startAlongMm, startAcrossMm, rimAllowanceMm, overlapMm, seamAboveRimMm, stepMm } = cutting;
  if ((startAlongMm === null) !== (startAcrossMm === null))
    throw new Problem(
      'cutting.start',
      'The start of the cloth needs both its places: along the length and across. Enter both, or leave both empty.',
    );
  const names = fabricNames(plies.materials);
  const thicknesses = stack.plies.map(({ card }) => curedThicknessMm(card));
  const wholeMm = thicknesses.reduce((sum, one) => sum + one, 0);
  let underMm = 0;
  const laid = stack.plies.map(({ ply, card }, index): PlyToCut => {
    const middleMm = underMm + thicknesses[index]! / 2;
    underMm += thicknesses[index]!;
    const isNearShow = middleMm <= wholeMm / 2;
    return {
      ply: index + 1,
      fabric: names.get(card.id)!,
      fiberDeg: laidAngleDeg(ply),
      secondHalfDeg: ply.mirroredPair ? laidAngleDeg(ply, 'second') : null,
      faceDown: ply.faceDown,
      face: isNearShow ? 'show' : 'core',
      depthMm: isNearShow ? middleMm : wholeMm - middleMm,
      limits: shearLimits(card.weave, {
        warningDeg: card.shearWarningDeg,
        lockingDeg: card.shearLockingDeg,
      }),
    };
  });
  return {
    pull: part.pull,
    plies: laid,
    stepMm,
    start:
      startAlongMm === null || startAcrossMm === null
        ? null
        : { alongMm: startAlongMm, acrossMm: startAcrossMm },
    allowanceMm: rimAllowanceMm,
    overlapMm,
    seamMm: seamAboveRimMm,
  };
}
