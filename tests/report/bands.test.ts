/** A figure that is known from memory or by common practice says how far off it may be, or stands here with the reason. */
import { beforeAll, describe, expect, test } from 'vitest';
import type { Figure } from '../../src/core/figure';
import { shownDecimals } from '../../src/core/units/formatFigure';
import { contextOf, evaluate } from '../../src/pipeline/evaluate';
import { openPacked } from '../../src/pipeline/patternFile';
import { forThePage } from '../../src/pipeline/planWith';
import { StageMemory } from '../../src/pipeline/stageMemory';
import type { ProjectInputs } from '../../src/steps/inputs/project';
import { stepReports } from '../../src/steps/registry';
import { demoSeeds } from '../../src/workbook/demoSeeds';

const instruction = 'an amount to prepare or a plan, not an estimate of what comes';
const bound = 'a bound itself: its label says most, or at most';
const gelTime =
  'from the gel time, of which nobody says how far it scatters; the supplier’s cures tell the rest';
const zero = 'exactly none: the stack is symmetric';

/** Why each has none. */
const withoutBand: Readonly<Record<string, string>> = {
  'walls.bandLowMm': 'an end of a band itself',
  'walls.bandHighMm': 'an end of a band itself',
  'plies.curvaturePerM': zero,
  'plies.bowMm': zero,
  'closing.frictionStandOffMm': bound,
  'closing.frictionLooseShare': bound,
  'closing.coldStandOffMm': bound,
  'closing.freeStandOffMm':
    'the limiting case, with the nominal bed; bands go with the case that verdicts use',
  'closing.wantedPlies': 'a count of whole plies',
  'closing.carryingWallPlies': 'a count of whole plies',
  'mold.negative.powderG': instruction,
  'mold.negative.waterG': instruction,
  'mold.negative.slurryMl': instruction,
  'mold.negative.batches': instruction,
  'mold.negative.joinAgeMin': instruction,
  'mold.positive.powderG': instruction,
  'mold.positive.waterG': instruction,
  'mold.positive.slurryMl': instruction,
  'mold.positive.batches': instruction,
  'mold.positive.joinAgeMin': instruction,
  'mold.batches': instruction,
  'mold.powderKg': instruction,
  'mold.counterweightG': instruction,
  'mold.leakCounterweightG': instruction,
  'mold.sealerMl': instruction,
  'mold.sealerWaitMin': instruction,
  'mold.releaseMl': instruction,
  'mold.releaseWaitMin': instruction,
  'mold.coatFilmUm': bound,
  'mold.chalkySkinMm': 'none at all under the temperature at which stone turns back',
  'cure.gelC': gelTime,
  'cure.gelAfterS': gelTime,
};

/** Answers that bring other figures to light; none of them changes what was measured and cast. */
const variants: Readonly<Record<string, (inputs: ProjectInputs) => ProjectInputs>> = {
  'as it stands': (inputs) => inputs,
  'resin free to leave, stone not sealed': (inputs) => ({
    ...inputs,
    closing: { ...inputs.closing, resin: 'free' },
    mold: { ...inputs.mold, sealerCoats: 0 },
  }),
  'bagged, stone of type 3, dried hot': (inputs) => ({
    ...inputs,
    closing: { ...inputs.closing, bagged: 'bagged' },
    mold: { ...inputs.mold, stoneType: '3', dryingC: 120 },
  }),
};

const unsure = new Set(['from memory', 'common practice']);
const isNumber = (one: Figure): one is Figure & { readonly value: number } => typeof one.value === 'number';

describe('bands of the demo’s figures', () => {
  const all: (readonly [where: string, figure: Figure])[] = [];

  beforeAll(async () => {
    // The lower half has no undercut, so everything about it is known.
    const { packedMesh, pattern, inputs } = (await demoSeeds()).at(-1)!;
    const memory = new StageMemory();
    memory.openMesh('the mesh', await openPacked(packedMesh!));
    const coarse = { ...inputs, cure: { ...inputs.cure, voxelMm: 6 } };
    const question = { mesh: 'the mesh', declaredUnit: null, inputs: coarse, thermocouple: null };
    const answers = await evaluate(question, (name, asked) => memory.tell(name, asked, () => {}), forThePage);
    for (const [variant, change] of Object.entries(variants)) {
      const context = { inputs: change(coarse), pattern, ...contextOf(answers) };
      for (const { figures } of stepReports(context).values())
        for (const figure of figures) all.push([variant, figure]);
    }
  }, 240_000);

  test('from memory or by common practice: a band, or a reason why there is none', () => {
    const bare = all.filter(
      ([, figure]) =>
        unsure.has(figure.status) &&
        isNumber(figure) &&
        figure.band === undefined &&
        withoutBand[figure.id] === undefined,
    );
    expect([...new Set(bare.map(([where, { id }]) => `${id} (${where})`))]).toEqual([]);
  });

  test('no reason stands for a figure that always has a band', () => {
    const needed = new Set(all.filter(([, { band }]) => band === undefined).map(([, { id }]) => id));
    expect(Object.keys(withoutBand).filter((id) => !needed.has(id))).toEqual([]);
  });

  test('the value lies in its band, and its digits are no finer than the band', () => {
    const banded = all.filter(([, one]) => one.band !== undefined && isNumber(one));
    expect(banded.length).toBeGreaterThan(200);
    for (const [where, { id, value, band, decimals }] of banded) {
      const [low, high] = band!;
      const slack = 1e-9 * Math.max(1, Math.abs(low), Math.abs(high));
      expect(low - slack, `${id} (${where})`).toBeLessThanOrEqual(value as number);
      expect(high + slack, `${id} (${where})`).toBeGreaterThanOrEqual(value as number);
      const width = high - low;
      const shown = shownDecimals({ value, band, decimals } as Figure);
      if (shown > 0 && width > slack) expect(10 ** -shown, `${id} (${where})`).toBeGreaterThan(width / 200);
    }
  });
});
