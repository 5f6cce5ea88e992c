/** What is read on plies, clamps and the closed mold. */
import { closingState } from '../closedMold/state';
import { isPlaced } from '../closing/figures';
import { around, type BlankDraft, type Known } from './blank';

/** Of hand spring clamps (common practice); what is entered is what it is worked out with. */
const usualClampN = [50, 300] as const;

export function layupBlanks({ context, number, band }: Known): readonly BlankDraft[] {
  const { plies, closing } = context.inputs;
  const state = closingState(context);
  const used = new Set(plies.stack.map(({ materialId }) => materialId));
  const laidPlyMm = number('plies.laidPlyMm');
  const calipers = plies.materials.flatMap((card, at): BlankDraft[] => {
    if (!used.has(card.id)) return [];
    const one = band('plies.laidPlyMm');
    return [
      {
        id: `caliper.${card.id}`,
        phase: 'layup',
        label: `${card.caliperPlies} plies${used.size > 1 ? ` of ${card.name}` : ''}, caliper`,
        unit: 'mm',
        decimals: 2,
        path: `plies.materials.${at}.caliperTotalMm`,
        expected: laidPlyMm === null ? null : card.caliperPlies * laidPlyMm,
        band:
          one === null
            ? around(laidPlyMm === null ? null : card.caliperPlies * laidPlyMm, 0.08)
            : [card.caliperPlies * one[0], card.caliperPlies * one[1]],
        figures: ['plies.laidThicknessMm', 'plies.wantedWallMm'],
        verdicts: ['closing.slide'],
        isOnCard: true,
      },
    ];
  });
  return [
    ...calipers,
    {
      id: 'stack',
      phase: 'layup',
      label: 'whole stack, pressed, before closing',
      unit: 'mm',
      decimals: 2,
      path: 'closing.debulkedMm',
      expected: state.known ? state.laidMm : null,
      band: state.known
        ? [state.curedMm, Math.max(state.curedMm, number('plies.laidThicknessMm') ?? 0)]
        : null,
      figures: ['closing.coldStandOffMm'],
      verdicts: ['closing.slide', 'closing.closes'],
    },
    ...closing.clamps.map((clamp, at): BlankDraft => ({
      id: `clamp.${clamp.id}`,
      phase: 'layup',
      label: closing.clamps.length === 1 ? 'weakest clamp on the scale' : `weakest of clamps ${at + 1}`,
      unit: 'N',
      decimals: 0,
      path: `closing.clamps.${at}.forceN`,
      expected: null,
      band: usualClampN,
      figures: ['closing.clampForceN', 'closing.standOffMm'],
      verdicts: ['closing.closes', 'closing.resin', 'closing.load'],
      isOnCard: true,
    })),
    coldStandOff(state.known && isPlaced(state) ? state.resin.coldStandOffMm : null),
  ];
}

/** The thinnest blade of a feeler gauge is 0.03 to 0.05 mm; what should read nothing is not asked for. */
const leastFeelerMm = 0.03;

const coldStandOff = (expectedMm: number | null): BlankDraft => ({
  id: 'standOff',
  phase: 'layup',
  label: 'stand-off at the rim, clamped cold',
  unit: 'mm',
  decimals: 2,
  path: 'bench.coldStandOffMm',
  expected: expectedMm,
  band: expectedMm === null ? null : [0, expectedMm + leastFeelerMm],
  isAsked: expectedMm !== null && expectedMm >= leastFeelerMm,
  figures: [],
  verdicts: [],
});
