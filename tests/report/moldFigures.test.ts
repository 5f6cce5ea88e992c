/** The pour bench from the command line: the halves are cast there too, and the weighing follows from them. */
import { afterAll, describe, expect, test } from 'vitest';
import { trayReports } from '../support/headlessReport';

const { report: reported, remove } = trayReports();
afterAll(remove);

describe('mold figures of the headless report', { timeout: 120_000 }, () => {
  test('by hand: a tray in a box with 10 mm of stone all round', async () => {
    const { value } = await reported('--set', 'mold.keyCount=0');
    expect(value('mold.boxMm')).toEqual([80, 60, 35].map((side) => expect.closeTo(side, 2) as number));
    // Above the parting at the rim: 80 × 60 × 25 less the tray's outside; below: 80 × 60 × 10 and the cavity.
    // The parting stands a few micrometers above the rim, so that the cut never runs along the pattern's own faces.
    const off = (id: string, volumeMl: number) => Math.abs(Number(value(id)) / volumeMl - 1);
    expect(off('mold.envelopeMl', 36)).toBeLessThan(0.001);
    expect(off('mold.cavityMl', (56 * 36 * 13) / 1000)).toBeLessThan(0.001);
    expect(value('mold.negative.volumeMl')).toBeCloseTo((80 * 60 * 25 - 60 * 40 * 15) / 1000, 1);
    expect(value('mold.positive.volumeMl')).toBeCloseTo((80 * 60 * 10 + 56 * 36 * 13) / 1000, 1);
    // 84 mL and 10 % lost at W/P 0.23.
    const mlPerG = 1 / 2.757 + 0.23 / 0.9982;
    expect(value('mold.negative.powderG')).toBeCloseTo((1.1 * 84) / mlPerG, 0);
    expect(value('mold.negative.dryTargetG')).toBeCloseTo((1.18618 * 84) / mlPerG, 0);
    expect(value('mold.floatUpForceN')).toBeCloseTo(
      ((1.23 / mlPerG) * 36 - 1.24 * (36 - 0.001 * 56 * 36 * 13)) * 0.00980665,
      2,
    );
    expect(value('mold.thinnestStoneMm')).toBeGreaterThan(5);
  });

  test('keys are told when they find room, and words when the box cannot be', async () => {
    const keyed = await reported();
    expect(keyed.value('mold.keysPlaced')).toBe(4);
    const through = await reported('--set', 'mold.prySlotCount=2', '--set', 'mold.prySlotDepthMm=40');
    expect(through.value('mold.negative.volumeMl')).toBeNull();
    expect(through.verdict('mold.box')?.reason).toContain('pry slots would reach through the land');
  });

  test('filler that stands proud makes the wall thinner for closing, and pours no other stone', async () => {
    // The floor of the tray is the show face: 2 mm of wall and 1.2 mm of filler leave 0.8 mm for three plies.
    const repair = {
      id: 'a',
      half: 'negative',
      kind: 'filled',
      atMm: [0, 0, 0],
      radiusMm: 10,
      depthMm: 1.2,
      note: '',
    };
    const asCast = await reported();
    const repaired = await reported('--set', `mold.repairs=${JSON.stringify([repair])}`);
    expect(Number(repaired.value('closing.cavityCm3'))).toBeLessThan(
      Number(asCast.value('closing.cavityCm3')) - 0.1,
    );
    expect(repaired.value('mold.repairThinnerMm')).toBe(1.2);
    expect(repaired.value('mold.negative.volumeMl')).toBe(asCast.value('mold.negative.volumeMl'));
  });
});
