/** Models that nothing can be said about beyond Part: unanswered, closed, several at once, or turned inside out. */
import { describe, expect, it } from 'vitest';
import { noPattern, whyHeld } from '../../src/steps/shared/held';
import { decide } from '../../src/steps/shared/decision';
import { stepReports, steps } from '../../src/steps/registry';
import { trayContext, trayMeasured, traySummary } from './contexts';
import { verdictOf } from './reportHelpers';

const kinds = traySummary.kindAreaMm2;
const cases = {
  'closed all round': { summary: { kindAreaMm2: { ...kinds, trapped: 0.34 * traySummary.areaMm2 } } },
  'turned inside out': { summary: { hollowAlongPull: true } },
} as const;

describe('a model that cannot be a pattern', () => {
  it.each(Object.entries(cases))('%s: Part says stop, the others are not yet known', (_, changes) => {
    const context = trayContext(changes);
    const reports = stepReports(context);
    expect(verdictOf(reports.get('part')!, 'part.pattern').word).toBe('stop');
    for (const { id } of steps) {
      if (id === 'part' || id === 'checklist') continue;
      expect(
        reports.get(id)!.verdicts.map(({ id: verdict, word }) => [verdict, word]),
        id,
      ).toEqual([[`${id}.held`, 'not yet known']]);
    }
    const { word, stops, unknown } = decide(reports);
    expect(word).toBe('stop');
    expect(stops).toHaveLength(1);
    expect(unknown).toHaveLength(1);
  });

  it('with several parts beside each other, until one of them is chosen', () => {
    const body = { facetCount: 10, closed: true, volume: 1 };
    const bodies = [0, 100, 200].map((x) => ({
      ...body,
      boxMin: [x, 0, 0] as const,
      boxMax: [x + 50, 30, 10] as const,
    }));
    const inside = { ...body, boxMin: [10, 5, 2] as const, boxMax: [40, 25, 8] as const };
    const health = { ...trayMeasured.health, bodies };
    const held = trayContext({});
    const measured = { ...trayMeasured, health };
    expect(noPattern({ ...held, measured })?.reason).toContain('3 parts lie beside each other');
    const one = { ...measured, health: { ...health, bodies: [bodies[0]!, inside] } };
    expect(noPattern({ ...held, measured: one })).toBeNull();
    const chosen = trayContext({ part: { body: 2 } });
    expect(noPattern({ ...chosen, measured })).toBeNull();
  });
});

describe('a model whose show face is not known', () => {
  it('says so at every step, and what hangs on the pull has no figure', () => {
    const context = trayContext({ part: { rightWayUp: 'asked' } });
    expect(whyHeld(context)?.reason).toContain('Which face people see');
    const reports = stepReports(context);
    expect(verdictOf(reports.get('part')!, 'part.pull').word).toBe('not yet known');
    expect(
      reports.get('walls')!.figures.every(({ value }) => value === null || typeof value === 'string'),
    ).toBe(false);
    const draft = reports.get('walls')!.figures.find(({ id }) => /draft/iu.test(id) && id.endsWith('Share'));
    expect(draft?.value ?? null).toBeNull();
    expect(decide(reports).word).toBe('not yet known');
    expect(reports.get('part')!.figures.find(({ id }) => id === 'part.boxMm')?.value).not.toBeNull();
  });

  it('is known once the pull is given', () => {
    expect(whyHeld(trayContext({}))).toBeNull();
    expect(verdictOf(stepReports(trayContext({})).get('part')!, 'part.pull').word).toBe('go');
  });
});
