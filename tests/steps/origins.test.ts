/** Figures that show an entry of a card say where the card has it from. */
import { expect, it } from 'vitest';
import { withOrigins, type ValueOrigin } from '../../src/steps/shared/origins';
import { figure } from '../../src/steps/kit/figures';
import { stepReports } from '../../src/steps/registry';
import { defaultProjectInputs, type ProjectInputs } from '../../src/steps/inputs/project';

const spec = {
  id: 'mold.demoldMin',
  label: 'Open the box after',
  unit: 'min',
  decimals: 0,
  status: 'your entry',
} as const;
const statusWith = (entries: readonly string[] | undefined, origins: Record<string, ValueOrigin>) =>
  withOrigins(
    {
      figures: [figure(entries === undefined ? spec : { ...spec, entries }, 45)],
      verdicts: [],
      cautions: [],
    },
    new Map(Object.entries(origins)),
  ).figures[0];

it('measured before supplier before typical; an entry of no card stays the maker’s own', () => {
  expect(statusWith(['a'], { a: 'measured' })?.status).toBe('measured');
  expect(statusWith(['a'], { a: 'supplier' })?.status).toBe('supplier’s sheet');
  expect(statusWith(['a'], { a: 'typical' })?.status).toBe('common practice');
  expect(statusWith(['a'], { b: 'measured' })?.status).toBe('your entry');
  expect(statusWith(undefined, { a: 'measured' })?.status).toBe('your entry');
});

it('a figure of several entries is as sure as the least of them, and only when all are of cards', () => {
  expect(statusWith(['a', 'b'], { a: 'measured', b: 'supplier' })?.status).toBe('supplier’s sheet');
  expect(statusWith(['a', 'b'], { a: 'measured' })?.status).toBe('your entry');
});

it('nobody after the reports is told of entries', () => {
  expect(statusWith(['a'], {})).not.toHaveProperty('entries');
});

it('reaches the reports of the steps: stone, coats, clamps, print and rolls', () => {
  const inputs: ProjectInputs = structuredClone(defaultProjectInputs);
  inputs.mold.bag.demoldMin = 45;
  inputs.mold.coatSheet.sealerLimitC = 130;
  inputs.plies.materials[0]!.allowedOutTimeH = 720;
  const origins = new Map<string, ValueOrigin>([
    ['mold.bag.demoldMin', 'supplier'],
    ['mold.coatSheet.sealerLimitC', 'measured'],
    ['mold.patternSoftensC', 'supplier'],
    ['mold.releaseWaitMin', 'supplier'],
    ['plies.materials.0.laidThicknessMm', 'supplier'],
    ['plies.materials.0.hoursOutH', 'measured'],
    ['plies.materials.0.allowedOutTimeH', 'supplier'],
  ]);
  const statuses = (given: ReadonlyMap<string, ValueOrigin>) => {
    const reports = stepReports({ inputs, pattern: null, measured: null, mold: null, origins: given });
    const figures = [...reports.values()].flatMap((report) => report.figures);
    return Object.fromEntries(figures.map(({ id, status }) => [id, status]));
  };
  const [without, withCards] = [statuses(new Map()), statuses(origins)];
  const changed = Object.keys(without).filter((id) => without[id] !== withCards[id]);
  expect(Object.fromEntries(changed.map((id) => [id, withCards[id]]))).toEqual({
    'mold.demoldMin': 'supplier’s sheet',
    'mold.sealerLimitC': 'measured',
    'mold.patternSoftensC': 'supplier’s sheet',
    'mold.releaseWaitMin': 'supplier’s sheet',
    'plies.laidPlyMm': 'supplier’s sheet',
    'plies.laidThicknessMm': 'supplier’s sheet',
    'plies.outTimeLeftH': 'supplier’s sheet',
  });
});
