/** What must only ever go one way, whatever else the inputs are: found without knowing the right number. */
import type { StepReport } from '../../../src/core/figure';
import type { StepContext } from '../../../src/steps/shared/context';
import type { ProjectInputs } from '../../../src/steps/inputs/project';
import { stepReports } from '../../../src/steps/registry';
import { arbitraryProject } from '../../workbook/arbitraryProject';
import type { Chance } from '../chance';
import { Finding, type FuzzTarget } from '../fuzzTarget';
import { fuzzParts, ovenRun, plainInputs } from '../parts';
import { sampleOf } from './saved';

type Reports = ReadonlyMap<string, StepReport>;

function value(reports: Reports, id: string): number | null {
  const figure = reports.get(id.split('.')[0]!)?.figures.find((one) => one.id === id);
  if (figure === undefined) throw new Error(`there is no figure ${id}`);
  return typeof figure.value === 'number' ? figure.value : null;
}

/** `share`: of the value, by which it may fall for the rounding of its sums. */
function neverLess(ids: readonly string[], before: Reports, after: Reports, share: number, of: string): void {
  for (const id of ids) {
    const [less, more] = [value(before, id), value(after, id)];
    if (less === null || more === null) continue;
    if (more < less - share * Math.abs(less)) throw new Finding(`${id}: ${less}, with ${of} ${more}`);
  }
}

/** Inputs by chance on which a stack can be worked out: its plies are of cards that there are. */
function withStack(chance: Chance, inputs: ProjectInputs): ProjectInputs {
  const { materials } = inputs.plies;
  const cards = materials.length > 0 ? materials : plainInputs.plies.materials;
  const stack = Array.from({ length: 1 + chance.below(6) }, (_, at) => ({
    id: `ply${at}`,
    materialId: chance.pick(cards).id,
    angleDeg: chance.pick([0, 45, 90, -45]),
    faceDown: chance.below(2) === 0,
    mirroredPair: false,
  }));
  return { ...inputs, plies: { ...inputs.plies, materials: cards, stack } };
}

const asked = (context: StepContext, inputs: ProjectInputs) => stepReports({ ...context, inputs });

export const morePlies: FuzzTarget = {
  name: 'more plies',
  run(chance) {
    const { context } = chance.pick(fuzzParts);
    const given = withStack(chance, sampleOf(chance, arbitraryProject).inputs);
    // A cured plate on the scale is one of the very stack: with one ply more it is of another.
    const noPlate = { plateMassG: null, plateAreaCm2: null, plateThicknessMm: null };
    const inputs = { ...given, plies: { ...given.plies, ...noPlate } };
    const { stack } = inputs.plies;
    const one = { ...chance.pick(stack), id: 'one more' };
    const at = chance.below(stack.length + 1);
    const thicker = {
      ...inputs,
      plies: { ...inputs.plies, stack: [...stack.slice(0, at), one, ...stack.slice(at)] },
    };
    const ids = [
      'plies.laidThicknessMm',
      'plies.curedThicknessMm',
      'plies.arealMassGsm',
      'plies.prepregMassG',
    ];
    neverLess(ids, asked(context, inputs), asked(context, thicker), 1e-9, 'one ply more');
  },
};

export const moreClamps: FuzzTarget = {
  name: 'more clamps',
  run(chance) {
    const { context } = chance.pick(fuzzParts);
    const { closing } = plainInputs;
    const count = 1 + chance.below(12);
    const forceN = 20 + chance.below(800);
    const inputs = withStack(chance, plainInputs);
    const clamped = (clamps: number): ProjectInputs => ({
      ...inputs,
      closing: { ...closing, clamps: [{ ...closing.clamps[0]!, count: clamps, forceN }] },
    });
    const [before, after] = [
      asked(context, clamped(count)),
      asked(context, clamped(count + 1 + chance.below(4))),
    ];
    neverLess(['closing.clampForceN', 'closing.laminateForceN'], before, after, 1e-3, 'more clamps');
  },
};

const covered = (mm: number): ProjectInputs => ({
  ...plainInputs,
  cure: { ...plainInputs.cure, voxelMm: 4 },
  mold: {
    ...plainInputs.mold,
    landWidthMm: mm,
    coverXLowMm: mm,
    coverXHighMm: mm,
    coverYLowMm: mm,
    coverYHighMm: mm,
    coverOverShowMm: mm,
    coverUnderRimMm: mm,
  },
});

/** Bricks are few here, so a lag is good to a tenth; a cover that is larger by 6 mm outweighs that. */
export const moreCover: FuzzTarget = {
  name: 'more cover',
  run(chance) {
    const { mesh, context } = fuzzParts[0]!;
    const coverMm = 4 + 12 * chance.share();
    const lagged = (mm: number) => {
      const inputs = covered(mm);
      return stepReports({ ...context, inputs, cure: ovenRun(mesh, inputs) });
    };
    const more = coverMm + 6 + 8 * chance.share();
    neverLess(
      ['cure.coldest.lagS'],
      lagged(coverMm),
      lagged(more),
      0,
      `${more} mm of cover for ${coverMm} mm`,
    );
  },
};
