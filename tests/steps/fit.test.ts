/** Fit and Finish as steps: what they say without entries, with them, and with bad ones. */
import { describe, expect, it } from 'vitest';
import type { FitFindings } from '../../src/core/fit/findings';
import { fitFindings } from '../../src/core/fit/findings';
import { fitChoicesOf } from '../../src/steps/fit/choicesOf';
import { calendarText, figuresCsv } from '../../src/steps/finish/texts';
import { contentTable, transmitterTable, type Content } from '../../src/steps/inputs/fit';
import { finishCoatTable } from '../../src/steps/inputs/finish';
import { startOf } from '../../src/steps/kit/inputTable';
import { decide } from '../../src/steps/shared/decision';
import { stepReports } from '../../src/steps/registry';
import type { ProjectInputs } from '../../src/steps/inputs/project';
import { boxShell } from '../core/fit/shells';
import { inputsWith, trayContext } from './contexts';
import { verdictOf } from './reportHelpers';

const content = (more: Partial<Content>): Content => ({ ...startOf(contentTable), id: 'one', ...more });
const shell = boxShell(100, 50, 20, 1);
const found = (
  fit: Partial<ProjectInputs['fit']>,
  mate: Parameters<typeof fitFindings>[1] = null,
): FitFindings =>
  fitFindings(shell, mate, fitChoicesOf(inputsWith({ fit, part: { pull: [0, 0, 1] } }), null));
const reportsWith = (fit: Partial<ProjectInputs['fit']>, answer: FitFindings | null = null) =>
  stepReports({ ...trayContext({ fit }), fit: answer });
const valueOf = (reports: ReturnType<typeof stepReports>, id: string) =>
  [...reports.values()].flatMap(({ figures }) => figures).find((figure) => figure.id === id)!.value;

describe('without entries', () => {
  it('fit and finish are not yet known, and the decision is as without them', () => {
    const reports = stepReports(trayContext());
    expect(verdictOf(reports.get('fit')!, 'fit.entered')?.word).toBe('not yet known');
    expect(verdictOf(reports.get('finish')!, 'finish.entered')?.word).toBe('not yet known');
    const without = new Map([...reports].filter(([id]) => id !== 'fit' && id !== 'finish'));
    expect(decide(reports)).toEqual(decide(without));
  });
});

describe('contents', () => {
  it('that fit say go, with their clearance, scale and posts', () => {
    const fit = { contents: [content({ lengthMm: 60, widthMm: 30, heightMm: 4, zMm: 8 })] };
    const reports = reportsWith(fit, found(fit));
    expect(verdictOf(reports.get('fit')!, 'fit.contents')?.word).toBe('go');
    // Roof of 1 mm under 20: 19 - 10, a little more as cast.
    expect(valueOf(reports, 'fit.leastClearanceMm')).toBeCloseTo(9, 1);
    expect(Number(valueOf(reports, 'fit.scaleThatFits'))).toBeLessThan(1);
    expect(valueOf(reports, 'fit.posts')).toBe(4);
    expect(reports.get('fit')!.cautions.map(({ id }) => id)).toContain('fit.conducts');
  });

  it('that run into the wall stop, and the shift that was tried is told', () => {
    const fit = {
      contents: [content({ what: 'cell', lengthMm: 60, widthMm: 30, heightMm: 4, xMm: 25, zMm: 8 })],
    };
    const reports = reportsWith(fit, found(fit));
    const verdict = verdictOf(reports.get('fit')!, 'fit.contents');
    expect(verdict?.word).toBe('stop');
    expect(verdict?.fix).toMatch(/^Tried: shift all contents by −6\.\d+/u);
    expect(reports.get('fit')!.cautions.map(({ id }) => id)).toContain('fit.lithium');
  });

  it('outside are refused by their name', () => {
    const fit = { contents: [content({ name: 'Screen', zMm: 80 })] };
    expect(verdictOf(reportsWith(fit, found(fit)).get('fit')!, 'fit.contents')).toMatchObject({
      word: 'stop',
      reason: expect.stringMatching(/^Screen is outside of this half/u) as string,
    });
  });
});

const below = (heightMm: number, lengthMm = 100) => {
  const mesh = boxShell(lengthMm, 50, heightMm, 1);
  return {
    positions: mesh.positions.map((one, at) => (at % 3 === 2 ? -one : one)),
    facets: mesh.facets.map((_, corner, all) => all[corner - (corner % 3) + 2 - (corner % 3)]!),
  };
};

describe('the other half', () => {
  it('that meets says go, and that its ends cannot be told', () => {
    const fit = { mate: { projectId: 'lower', name: 'Lower half' } };
    const reports = reportsWith(fit, found(fit, below(12)));
    expect(verdictOf(reports.get('fit')!, 'fit.rims')?.word).toBe('go');
    expect(verdictOf(reports.get('fit')!, 'fit.ends')?.word).toBe('look again');
    expect(Number(valueOf(reports, 'fit.rimStepMaxMm'))).toBeLessThan(0.02);
  });

  it('that is none, or has no ring, is a sentence', () => {
    const fit = { mate: { projectId: 'lid', name: 'Lid' } };
    for (const mate of [below(12, 60), { positions: shell.positions, facets: shell.facets.slice(0, 12) }]) {
      const verdict = verdictOf(reportsWith(fit, found(fit, mate)).get('fit')!, 'fit.rims');
      expect(verdict?.word).toBe('stop');
      expect(verdict?.reason).toMatch(/not mates|No rim is found/u);
    }
  });
});

describe('radio', () => {
  it('is blocked at 2450 MHz, said to be weak, and a window is proposed', () => {
    const reports = reportsWith({ transmitters: [{ ...startOf(transmitterTable), id: 'r' }] });
    const verdict = verdictOf(reports.get('fit')!, 'fit.radio');
    expect(verdict?.word).toBe('look again');
    expect(verdict?.reason).toContain('range test');
    expect(verdict?.fix).toContain('61 mm across');
    expect(reports.get('fit')!.cautions.map(({ id }) => id)).toContain('fit.approval');
  });
});

const coat = { ...startOf(finishCoatTable), id: 'c' };
const withFinish = (finish: Partial<ProjectInputs['finish']>) => trayContext({ finish });
const ids = (kind: 'clear' | 'two-part spray') =>
  stepReports(withFinish({ coats: [{ ...coat, kind }] }))
    .get('finish')!
    .cautions.map(({ id }) => id);

describe('finish', () => {
  it('110 cm² twice 50 µm with 35 % lost are 16.9 mL; 100 µm leave too little over the fiber, and how many coats more do', () => {
    const reports = stepReports(withFinish({ coats: [coat] }));
    expect(valueOf(reports, 'finish.coatMl')).toBeCloseTo((110 * 0.01) / 0.65, 6);
    expect(valueOf(reports, 'finish.filmUm')).toBe(100);
    expect(valueOf(reports, 'finish.marginUm')).toBeCloseTo(100 - 30 - 175.5, 9);
    expect(verdictOf(reports.get('finish')!, 'finish.margin')?.fix).toContain('3 coats');
    expect(Number(valueOf(reports, 'finish.days'))).toBeGreaterThan(3);
  });

  it('a window that closes over the weekend is told; a start that is no day, and hours that are none, too', () => {
    const late = stepReports(withFinish({ coats: [{ ...coat, recoatFromH: 10, recoatToH: 12 }] }));
    expect(verdictOf(late.get('finish')!, 'finish.calendar')?.word).toBe('look again');
    const none = stepReports(withFinish({ coats: [coat], startDate: '2026-02-30' }));
    expect(verdictOf(none.get('finish')!, 'finish.calendar')).toMatchObject({ word: 'stop' });
    const hours = stepReports(withFinish({ coats: [coat], dayFromH: 17, dayToH: 9 }));
    expect(verdictOf(hours.get('finish')!, 'finish.calendar')?.reason).toContain('No working hours');
  });

  it('two-part sprays have their own caution', () => {
    expect(ids('clear')).not.toContain('finish.twoPartSpray');
    expect(ids('two-part spray')).toContain('finish.twoPartSpray');
  });

  it('saves its calendar once a day is given, and all figures as a table', () => {
    expect(calendarText(inputsWith({}), [], 'Lamp')).toBeNull();
    const text = calendarText(inputsWith({ finish: { startDate: '2026-05-04' } }), [], 'Lamp');
    expect(text).toContain('DTSTART:20260504T090000');
    const csv = figuresCsv([...stepReports(trayContext()).values()]);
    expect(csv.split('\r\n')[0]).toBe('id,label,value,unit,status');
    expect(csv).toContain('\r\nfinish.areaCm2,Area to coat,110,cm²,computed\r\n');
  });
});
