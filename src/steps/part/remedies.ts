/** Other pulls, where something locks or drags along the present one. */
import type { Vec3 } from '../../core/mesh/types';
import { formatNumber } from '../../core/units/formatNumber';
import { changeCosts, isTroubled, type ProposeRemedies } from '../shared/remedy';

/** Directions closer than this are the same. */
const sameCosine = Math.cos((0.5 * Math.PI) / 180);

function cosineBetween(a: Vec3, b: Vec3): number {
  const dot = a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
  return dot / (Math.hypot(...a) * Math.hypot(...b) || 1);
}

export const partRemedies: ProposeRemedies = (facts) => {
  if (!isTroubled(facts, 'part.pull', 'walls.locks', 'walls.draft', 'mold.locking')) return [];
  const { pull: present } = facts.context.inputs.part;
  return facts.pulls
    .filter((pull) => cosineBetween(pull, present) < sameCosine)
    .map((pull) => ({
      id: 'part.pull',
      what: `Pull along (${pull.map((one) => formatNumber(one, 3)).join(', ')}).`,
      patch: { 'part.pull': pull },
      cost: changeCosts.setting,
    }));
};
