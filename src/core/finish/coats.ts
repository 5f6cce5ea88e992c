/** Coats on the cured part: volume, film, weight. */
import { Problem } from '../problem';
import { spreadingRateM2PerL } from '../stone/coatPlan';

export interface FinishCoat {
  readonly name: string;
  /** Coats of it, one on the other. */
  readonly count: number;
  /** Dry film of one coat. */
  readonly filmUm: number;
  /** Share of the wet coat that stays, by volume; over 0, at most 1. */
  readonly solidsShare: number;
  /** Lost in pot, brush, roller or spray, share of what is mixed. */
  readonly lossShare: number;
  /** Of the dry film. */
  readonly densityGCm3: number;
  /** The next coat goes on after this, and without sanding before `recoatToH`. */
  readonly recoatFromH: number;
  /** null: no end is known. */
  readonly recoatToH: number | null;
  /** Hard enough to be sanded or handled. */
  readonly dryH: number;
}

export interface CoatAmount {
  readonly wetUm: number;
  /** One coat of it spreads so far without loss, m² per liter. */
  readonly spreadM2PerL: number;
  /** All its coats, losses included. */
  readonly mixedMl: number;
  readonly filmUm: number;
  readonly dryG: number;
}

/**
 * Volume is area times wet film; wet film is dry film over volume solids, so spreading rate in m²/L is 10 x solids in % / dry film in µm
 * (makers' sheets; `coatSpreading` in core/publishedSources).
 * @throws Problem `finish.solids`
 */
export function coatAmount(coat: FinishCoat, areaCm2: number): CoatAmount {
  const { count, filmUm, solidsShare, lossShare, densityGCm3 } = coat;
  if (!(solidsShare > 0 && solidsShare <= 1 && lossShare >= 0 && lossShare < 1))
    throw new Problem(
      'finish.solids',
      `${coat.name}: solids must be over 0 up to 100 %, losses from 0 to under 100 %. Both stand on its data sheet.`,
    );
  const wetUm = filmUm / solidsShare;
  return {
    wetUm,
    spreadM2PerL: spreadingRateM2PerL(100 * solidsShare, filmUm),
    mixedMl: (count * areaCm2 * wetUm * 1e-4) / (1 - lossShare),
    filmUm: count * filmUm,
    dryG: count * areaCm2 * filmUm * 1e-4 * densityGCm3,
  };
}
