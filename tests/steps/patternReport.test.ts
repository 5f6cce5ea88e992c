import { describe, expect, it } from 'vitest';
import type { PatternSummary } from '../../src/core/pattern/makePattern';
import { worstWord } from '../../src/core/figure';
import { patternReport, withMadePattern } from '../../src/steps/pattern/report';
import { patternChoicesOf } from '../../src/steps/pattern/choicesOf';
import { madeSummary } from '../support/madeSummary';
import { emptyContext, trayContext } from './contexts';

const choices = patternChoicesOf(trayContext().inputs);

const cautionsOf = (summary: PatternSummary) =>
  withMadePattern(patternReport(trayContext()), choices, summary, 0.2).cautions.map(({ id }) => id);

describe('the pattern step', () => {
  it('holds nothing up while no pattern is made: the import is what is printed', () => {
    const report = patternReport(trayContext());
    const measured = report.figures.filter(({ id }) => !id.startsWith('pattern.bead'));
    expect(measured.map(({ value }) => value)).toEqual(measured.map(() => null));
    expect(report.figures[0]!.working).toEqual(['Make the pattern, and this is measured on it.']);
    expect(worstWord(report.verdicts)).toBe('go');
    expect(report.verdicts[0]!.reason).toContain('tray.stl is what you print');
  });

  it('sends the maker to Part while there is no model', () => {
    expect(patternReport(emptyContext()).verdicts).toMatchObject([
      { word: 'not yet known', fix: 'Import a model at Part.' },
    ]);
  });

  it('has the same figures and the same verdict once a pattern is made', () => {
    const before = patternReport(trayContext());
    const made = withMadePattern(before, choices, madeSummary, 0.2);
    expect(made.figures.map(({ id }) => id)).toEqual(before.figures.map(({ id }) => id));
    expect(made.figures.every(({ value }) => value !== null)).toBe(true);
    expect(made.verdicts).toEqual(before.verdicts);
    expect(made.cautions.map(({ id }) => id)).toEqual(['pattern.cuttingHoles']);
  });

  it('says how many beads make the wall exactly, at the print scale', () => {
    const context = trayContext();
    const inputs = {
      ...context.inputs,
      pattern: { ...context.inputs.pattern, wallMm: 0.8 },
      mold: { ...context.inputs.mold, printScale: 1.01 },
    };
    const value = (id: string) =>
      patternReport({ ...context, inputs }).figures.find((one) => one.id === id)!.value;
    expect(value('pattern.beads')).toBe(2);
    expect(value('pattern.beadWidthMm')).toBeCloseTo(0.404, 9);
  });

  it('says when wall and inside radius leave out more than edges', () => {
    const round = { ...choices, insideRadiusMm: 19 };
    const made = withMadePattern(
      patternReport(trayContext()),
      round,
      { ...madeSummary, takenMaxMm: 7.2 },
      0.2,
    );
    expect(worstWord(made.verdicts)).toBe('look again');
    expect(made.verdicts.at(-1)).toMatchObject({
      id: 'pattern.drawnIn',
      fix: 'Enter a smaller inside radius, or keep the outer edges sharp, and make it again.',
    });
    expect(made.verdicts.at(-1)!.reason).toContain('7.20 mm');
  });

  it('cautions where holes are to be cut, and only there', () => {
    expect(cautionsOf(madeSummary)).toEqual(['pattern.cuttingHoles']);
    const holes = madeSummary.holes.map((hole) => ({ ...hole, plugged: false }));
    expect(cautionsOf({ ...madeSummary, holes })).toEqual([]);
  });
});
