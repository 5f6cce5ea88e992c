import { describe, expect, test } from 'vitest';
import { beforeClosingSection, closingSection } from '../../src/checklist/closingSection';
import type { Figures } from '../../src/checklist/lineDrafts';
import { stepReports } from '../../src/steps/registry';
import { defaultClamp } from '../../src/steps/inputs/clamp';
import type { StepContext } from '../../src/steps/shared/context';
import { emptyContext, plyAt, trayContext } from '../steps/contexts';

function sectionsOf(context: StepContext) {
  const reports = stepReports(context);
  const figures: Figures = new Map(
    [...reports.values()].flatMap((report) => report.figures).map((figure) => [figure.id, figure]),
  );
  return {
    before: beforeClosingSection(context, reports),
    closing: closingSection(context, reports, figures),
  };
}

const stack = ['a', 'b', 'c', 'd', 'e', 'f'].map((id) => plyAt(id));
const clamps = [
  { ...defaultClamp, id: 'one', count: 4, forceN: 200 },
  { ...defaultClamp, id: 'two', count: 2, forceN: 90, placed: 'at a place', xMm: 10, yMm: -5 } as const,
];
const texts = ({ lines }: { readonly lines: readonly { readonly text: string }[] }) =>
  lines.map(({ text }) => text);

describe('clamps on paper', () => {
  const { before, closing } = sectionsOf(trayContext({ plies: { stack }, closing: { clamps } }));

  test('stand in a table with their marks, forces and places', () => {
    expect(before.table?.rows).toEqual([
      ['A', '4', '200 N', 'evenly round the rim'],
      ['B', '2', '90 N', 'x 10 mm, y −5 mm from the middle'],
    ]);
  });

  test('are weighed kind by kind, and each place is told, equal ones together', () => {
    expect(before.lines.filter(({ measure }) => measure?.unit === 'N').map(({ id }) => id)).toEqual([
      'beforeClosing.one',
      'beforeClosing.two',
    ]);
    expect(texts(before).find((text) => text.startsWith('Places'))).toContain('(10, −5) × 2; together');
  });

  test('say what to expect, and leave room for the stand-off at four corners', () => {
    expect(texts(closing).find((text) => text.startsWith('The mold'))).toMatch(
      /warm it stands off by \d\.\d\d\u202fmm in the middle, \d+\u202fN in the laminate \(resin \d+\u202fkPa\)/u,
    );
    expect(closing.lines.filter(({ id }) => id.startsWith('closing.corner.'))).toHaveLength(4);
    expect(texts(closing).find((text) => text.startsWith('Closed and clamped cold'))).toContain(
      'feeler gauge',
    );
    expect(closing.cautions.map(({ id }) => id)).toEqual([
      'closing.fingers',
      'closing.springs',
      'closing.stoneBreaks',
    ]);
  });
});

test('shims and a sealed rim change what is checked before closing', () => {
  const { before } = sectionsOf(trayContext({ closing: { shimMm: 0.3, resin: 'trapped' } }));
  expect(texts(before)).toContain('Shims of 0.30 mm on the lands, all round.');
  expect(texts(before)).toContain(
    'Released dam land whole all round, vent for the air open, overflow behind it: resin is to stay in.',
  );
});

test('a mold that tips has nothing to expect', () => {
  const tipping = [{ ...defaultClamp, placed: 'at a place', xMm: 500 } as const];
  const { before, closing } = sectionsOf(trayContext({ plies: { stack }, closing: { clamps: tipping } }));
  expect(before.warnings[0]?.reason).toContain('the mold tips');
  expect(texts(closing).some((text) => text.includes('expected'))).toBe(false);
});

test('without a pattern there are still clamps to weigh', () => {
  const { before, closing } = sectionsOf(emptyContext());
  expect(before.table?.rows).toHaveLength(1);
  expect(texts(closing).length).toBeGreaterThan(1);
});
