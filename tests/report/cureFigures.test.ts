/** The oven run from the command line: every stable figure, what moves it and which way, and words where there is none. */
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { inputsList } from '../../src/report/inputsList';
import { trayReports } from '../support/headlessReport';

const stableIds = [
  'cure.coldest.peakC',
  'cure.hottest.peakC',
  'cure.coldest.lagS',
  'cure.coldest.timeAtDwellS',
  'cure.coldest.dose',
  'cure.coldest.degreeOfCure',
  'cure.coldest.tgC',
  'cure.neededDwellS',
  'cure.stoneTurnedMm',
  'cure.waterLeftG',
  'cure.resinPressureNeededKPa',
  'cure.demoldAfterS',
] as const;
type StableId = (typeof stableIds)[number];

const sets = (values: Readonly<Record<string, unknown>>): string[] =>
  Object.entries(values).flatMap(([path, value]) => ['--set', `cure.${path}=${JSON.stringify(value)}`]);

const stages = (lastC: number, lastHours: number) => [
  { targetC: 70, rampKPerMin: 1, dwellHours: 3 },
  { targetC: lastC, rampKPerMin: 1, dwellHours: lastHours },
];

/** An invented resin; 16 h at 70 °C or 25 min at 120 °C. */
const known = {
  voxelMm: 5,
  supplierCures: [
    { hours: 16, temperatureC: 70 },
    { hours: 25 / 60, temperatureC: 120 },
  ],
  kineticsForm: 'autocatalytic',
  'kinetics.k2PerS': 2e6,
  'kinetics.k2EnergyKJPerMol': 70,
  'kinetics.m': 1,
  'kinetics.n': 1.5,
  'kinetics.startCure': 0.02,
  'kinetics.tgUncuredC': -5,
  'kinetics.tgCuredC': 140,
  'kinetics.lambda': 0.6,
};

const { report, remove } = trayReports();
afterAll(remove);

const cured = (change: Readonly<Record<string, unknown>> = {}) => report(...sets({ ...known, ...change }));

describe('cure figures of the headless report', { timeout: 120_000 }, () => {
  let usual: Awaited<ReturnType<typeof cured>>;
  beforeAll(async () => {
    usual = await cured();
  }, 120_000);
  const number = (from: typeof usual, id: StableId) => from.value(id) as number;
  const change = (to: typeof usual, id: StableId) => number(to, id) - number(usual, id);

  test.each(stableIds)('%s is a number, with its working', (id) => {
    expect(Number.isFinite(usual.value(id)), `${id}: ${usual.figure(id)?.working.join(' ')}`).toBe(true);
    expect(usual.figure(id)?.working.length).toBeGreaterThan(0);
  });

  test('stand in the order that physics gives them', () => {
    expect(number(usual, 'cure.hottest.peakC')).toBeGreaterThanOrEqual(number(usual, 'cure.coldest.peakC'));
    expect(number(usual, 'cure.coldest.peakC')).toBeLessThanOrEqual(123.5);
    expect(number(usual, 'cure.coldest.lagS')).toBeGreaterThan(0);
    expect(number(usual, 'cure.coldest.degreeOfCure')).toBeGreaterThan(0.02);
    expect(number(usual, 'cure.coldest.degreeOfCure')).toBeLessThan(1);
    expect(number(usual, 'cure.coldest.tgC')).toBeLessThan(140);
  });

  test('a longer last dwell: more dose, cure, Tg and turned stone, and the dwell needed stays', async () => {
    const longer = await cured({ stages: stages(120, 4) });
    for (const id of [
      'cure.coldest.dose',
      'cure.coldest.degreeOfCure',
      'cure.coldest.tgC',
      'cure.stoneTurnedMm',
    ] as const)
      expect(change(longer, id), id).toBeGreaterThan(0);
    expect(change(longer, 'cure.neededDwellS')).toBeCloseTo(0, 6);
  });

  test('a cooler last stage: lower peaks, a longer dwell needed, no stone turned, time at it grows with it', async () => {
    const [cooler, longer] = [
      await cured({ stages: stages(95, 1.5) }),
      await cured({ stages: stages(95, 4) }),
    ];
    expect(change(cooler, 'cure.coldest.peakC')).toBeLessThan(-5);
    expect(change(cooler, 'cure.hottest.peakC')).toBeLessThan(-5);
    expect(change(cooler, 'cure.neededDwellS')).toBeGreaterThan(1800);
    expect(number(cooler, 'cure.stoneTurnedMm')).toBeLessThan(0.05);
    const more = number(longer, 'cure.coldest.timeAtDwellS') - number(cooler, 'cure.coldest.timeAtDwellS');
    // Two and a half hours more, all of them at the dwell.
    expect(more).toBeGreaterThan(0.99 * 9000);
    expect(more).toBeLessThan(1.01 * 9000);
  });

  test('still air: the laminate is later', async () => {
    expect(change(await cured({ air: 'still' }), 'cure.coldest.lagS')).toBeGreaterThan(300);
  });

  test('wetter stone: water left after a quarter of an hour, a cooler laminate, and pressure needed against voids', async () => {
    const short = { stages: [{ targetC: 70, rampKPerMin: null, dwellHours: 0.25 }] };
    const [dry, wet] = [
      await cured({ ...short, freeWaterLeftPercent: 2 }),
      await cured({ ...short, freeWaterLeftPercent: 100 }),
    ];
    expect(number(wet, 'cure.waterLeftG')).toBeGreaterThan(number(dry, 'cure.waterLeftG') + 1);
    expect(number(wet, 'cure.coldest.peakC')).toBeLessThan(number(dry, 'cure.coldest.peakC'));
    const steaming = await cured({ freeWaterLeftPercent: 12 });
    expect(number(steaming, 'cure.resinPressureNeededKPa')).toBeGreaterThan(20);
    expect(change(steaming, 'cure.resinPressureNeededKPa')).toBeGreaterThan(0);
  });

  test('opened cooler: a longer wait', async () => {
    expect(change(await cured({ demoldC: 40 }), 'cure.demoldAfterS')).toBeGreaterThan(60);
  });

  test('without cures and kinetics: no numbers, but reasons', async () => {
    const bare = await report(...sets({ voxelMm: 5 }));
    for (const [id, word] of [
      ['cure.coldest.dose', 'data sheet'],
      ['cure.neededDwellS', "supplier's cures"],
      ['cure.coldest.degreeOfCure', 'kinetics'],
      ['cure.coldest.tgC', 'Tg'],
    ] as const) {
      expect(bare.value(id)).toBeNull();
      expect(bare.figure(id)?.working.join(' ')).toContain(word);
    }
    for (const id of ['cure.coldest.peakC', 'cure.demoldAfterS'] as const)
      expect(Number.isFinite(bare.value(id))).toBe(true);
  });

  test('a program that never heats: every figure says why it has no number', async () => {
    const cold = await report(...sets({ ...known, stages: [] }));
    for (const id of stableIds) {
      expect(cold.value(id), id).toBeNull();
      expect(cold.figure(id)?.working.join(' ').length, id).toBeGreaterThan(20);
    }
  });
});

test('--inputs lists what the oven run asks for', () => {
  const listed = inputsList();
  for (const path of Object.keys(known)) expect(listed).toContain(`cure.${path}`);
  for (const path of ['stages', 'demoldC', 'freeWaterLeftPercent', 'air', 'support', 'startC'])
    expect(listed).toContain(`cure.${path}`);
});
