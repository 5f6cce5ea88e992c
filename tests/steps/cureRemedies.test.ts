/** Whole oven programs within the limits of stone, clamps, coats and supplier. */
import { describe, expect, it } from 'vitest';
import type { CureInputs } from '../../src/steps/inputs/cure';
import type { MoldInputs } from '../../src/steps/inputs/mold';
import { cureRemedies } from '../../src/steps/cure/remedies';
import { trayContext } from './contexts';

const supplierCures = [
  { hours: 12, temperatureC: 70 },
  { hours: 6, temperatureC: 80 },
  { hours: 1.5, temperatureC: 110 },
];

function programsFor(cure: Partial<CureInputs>, moldInputs: Partial<MoldInputs> = {}) {
  const context = trayContext({ cure: { supplierCures, ...cure }, moldInputs });
  const cold = { id: 'cure.cures', word: 'stop', reason: '', fix: '' } as const;
  return cureRemedies({ context, verdicts: new Map([[cold.id, cold]]), pulls: [] }).flatMap(({ patch }) =>
    'cure.stages' in patch ? [patch['cure.stages'] as CureInputs['stages']] : [],
  );
}
const tops = (programs: readonly CureInputs['stages'][]) =>
  programs.filter(({ length }) => length === 1).map(([stage]) => stage!.targetC);

describe('coats that do not bear the oven', () => {
  const tooHot = { id: 'cure.coats', word: 'stop', reason: '', fix: '' } as const;
  const coatsFor = (moldInputs: Partial<MoldInputs>) =>
    cureRemedies({
      context: trayContext({ moldInputs }),
      verdicts: new Map([[tooHot.id, tooHot]]),
      pulls: [],
    }).filter(({ id }) => id === 'mold.coats');

  it('give way to kinds that bear more, both at once', () => {
    const [coats] = coatsFor({ sealer: 'shellac', release: 'wax' });
    expect(coats?.what).toBe('Take epoxy for heat, post-cured as sealer and PTFE dry film as release.');
    expect(coats?.patch).toEqual({ 'mold.sealer': 'post-cured epoxy', 'mold.release': 'PTFE' });
  });

  it('stay where nothing bears more, or where the limit is read off the can', () => {
    expect(coatsFor({ sealer: 'post-cured epoxy', release: 'semi-permanent' })).toEqual([]);
    expect(
      coatsFor({ sealer: 'shellac', release: 'PTFE', coatSheet: { sealerLimitC: 60, releaseLimitC: null } }),
    ).toEqual([]);
  });
});

describe('whole programs for a laminate that does not cure', () => {
  it('hold as long as the supplier asks at that heat, with the lag of the stone on top', () => {
    const programs = programsFor({}).filter(({ length }) => length === 1);
    expect(programs.length).toBeGreaterThan(2);
    for (const [stage] of programs) {
      expect(stage!.dwellHours).toBeLessThanOrEqual(24);
      if (stage!.targetC === 80) expect(stage!.dwellHours).toBeGreaterThanOrEqual(9);
    }
    // What keeps the stone comes first.
    expect(tops(programs)[0]).toBeLessThanOrEqual(80);
  });

  it('stay under what clamps and coats bear, and ramp no faster than the supplier allows', () => {
    const bound = programsFor({ clampLimitC: 95, supplierRampKPerMin: 0.5 });
    expect(Math.max(...tops(bound))).toBeLessThanOrEqual(95);
    for (const [stage] of bound.filter(({ length }) => length === 1))
      expect(stage!.rampKPerMin).toBeLessThanOrEqual(0.5);
    const waxed = programsFor({}, { release: 'wax' });
    expect(Math.max(...tops(waxed))).toBeLessThan(75);
  });

  it('are none without the supplier’s cures', () => {
    expect(tops(programsFor({ supplierCures: [] }))).toEqual([]);
  });
});
