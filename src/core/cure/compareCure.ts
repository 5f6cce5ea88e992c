/** Programs and molds side by side: what would cure this part with less stone lost, through less stone, or through drier stone. */
import { coarseVoxelMm, heatCaseOf, predictCure, type CureChoices, type OnCureProgress } from './predictCure';
import type { MoldVoxels } from './moldVoxels';
import { programOnDial } from './ovenProgram';
import { findPrograms, type ProgramFound } from './programFinder';

/** The same program in another mold. */
export interface MoldVariant {
  readonly name: string;
  /** In the order of the band. */
  readonly peaksC: readonly number[];
  /** null without a supplier's cure. */
  readonly doses: readonly (number | null)[];
  /** When the coldest place is within 5 K of the first dwell, from the start, s; null: never. */
  readonly firstDwellS: readonly (number | null)[];
}

export interface CureComparison {
  /** Empty without a supplier's cure: then no dwell can be called enough. */
  readonly programs: readonly ProgramFound[];
  readonly variants: readonly MoldVariant[];
}

/** By how much the thinner mold is thinner on every side, and the least that is left, mm. */
const thinnerByMm = 5;
const leastCoverMm = 4;

const thinner = (mm: number) => Math.min(mm, Math.max(leastCoverMm, mm - thinnerByMm));

/** The same mold with less stone on every side. */
function withThinnerCover(choices: CureChoices): CureChoices {
  const { coverMm, landWidthMm } = choices.pour;
  return {
    ...choices,
    pour: {
      ...choices.pour,
      landWidthMm: thinner(landWidthMm),
      coverMm: {
        xLowMm: thinner(coverMm.xLowMm),
        xHighMm: thinner(coverMm.xHighMm),
        yLowMm: thinner(coverMm.yLowMm),
        yHighMm: thinner(coverMm.yHighMm),
        overShowMm: thinner(coverMm.overShowMm),
        underRimMm: thinner(coverMm.underRimMm),
      },
    },
  };
}

/**
 * In coarse voxels: it ranks, the prediction itself is finer.
 * @param mostC programs over this are left out
 * @throws Problem with a code `cure.*` for choices that cannot be run
 */
export function compareCure(
  choices: CureChoices,
  voxelsOf: (choices: CureChoices, voxelMm: number) => MoldVoxels,
  mostC: number,
  onProgress: OnCureProgress = () => {},
): CureComparison {
  const doing = 'comparing programs';
  onProgress(doing, 0);
  const dry: CureChoices = { ...choices, water: { ...choices.water, heldShare: 0 } };
  const damp: CureChoices = { ...choices, water: { ...choices.water, heldShare: 1 } };
  const molds: readonly (readonly [string, CureChoices])[] = [
    ['As planned', choices],
    [`${thinnerByMm} mm less stone`, withThinnerCover(choices)],
    ['Stone quite dry', dry],
    ['Stone as demolded, wet', damp],
  ];
  const variants = molds.map(([name, changed], i): MoldVariant => {
    const { runs } = predictCure(changed, (voxelMm) => voxelsOf(changed, voxelMm), 'coarse');
    onProgress(doing, (0.3 * (i + 1)) / molds.length);
    return {
      name,
      peaksC: runs.map(({ coldest }) => coldest.peakC),
      doses: runs.map(({ coldest }) => coldest.dose?.total ?? null),
      firstDwellS: runs.map(({ coldest }) => coldest.dwells[0]?.atS ?? null),
    };
  });
  if (choices.supplier.length === 0) return { programs: [], variants };
  const voxels = voxelsOf(choices, Math.max(coarseVoxelMm, choices.voxelMm));
  const one = heatCaseOf(choices, voxels, 'vapor-held', programOnDial(choices.program).heatedS);
  const programs = findPrograms(one, choices.program, choices.oven, undefined, mostC, (share) =>
    onProgress(doing, 0.3 + 0.7 * share),
  );
  return { programs, variants };
}
