/** Elastic and thermal constants of a card: its own where it has them, typical ones from memory where not. */
import type { PlyStrength } from '../../core/laminate/failureIndex';
import { checkPlyElastic, type PlyElastic } from '../../core/laminate/plyElastic';
import { typicalPlyElastic } from '../../core/laminate/typicalPly';
import type { Material } from '../inputs/material';

export interface PlyConstants {
  readonly elastic: PlyElastic;
  readonly expansion3PerK: number;
  /** Some in-plane constant is typical, not the card's own. */
  readonly typical: boolean;
  readonly expansion3Typical: boolean;
  readonly expansion3Band: readonly [number, number];
  /** The same ply with its typical constants at the ends of their bands. */
  readonly atEnds: (ends: BandEnds) => PlyElastic;
}

/** Which end of its band each kind of constant takes. */
export interface BandEnds {
  readonly moduli: 0 | 1;
  readonly expansion1: 0 | 1;
  readonly expansion2: 0 | 1;
}

export const allBandEnds: readonly BandEnds[] = ([0, 1] as const).flatMap((moduli) =>
  ([0, 1] as const).flatMap((expansion1) =>
    ([0, 1] as const).map((expansion2) => ({ moduli, expansion1, expansion2 })),
  ),
);

const perPpm = 1e-6;
const scaled = (ppm: number | null) => (ppm === null ? null : ppm * perPpm);

function ownConstants(card: Material): Readonly<Record<keyof PlyElastic, number | null>> {
  return {
    e1GPa: card.e1GPa,
    e2GPa: card.e2GPa,
    g12GPa: card.g12GPa,
    nu12: card.nu12,
    expansion1PerK: scaled(card.expansion1PpmPerK),
    expansion2PerK: scaled(card.expansion2PpmPerK),
  };
}

/** Throws a `Problem` when the card's constants are impossible, or typical ones are not known for its fiber content. */
export function plyConstants(card: Material, fiberVolumeFraction: number): PlyConstants {
  const own = ownConstants(card);
  const ownThroughPerK = scaled(card.expansion3PpmPerK);
  const { e1GPa, e2GPa, g12GPa, nu12, expansion1PerK, expansion2PerK } = own;
  if (
    e1GPa !== null &&
    e2GPa !== null &&
    g12GPa !== null &&
    nu12 !== null &&
    expansion1PerK !== null &&
    expansion2PerK !== null &&
    ownThroughPerK !== null
  ) {
    const elastic = { e1GPa, e2GPa, g12GPa, nu12, expansion1PerK, expansion2PerK };
    checkPlyElastic(elastic);
    return {
      elastic,
      expansion3PerK: ownThroughPerK,
      typical: false,
      expansion3Typical: false,
      expansion3Band: [ownThroughPerK, ownThroughPerK],
      atEnds: () => elastic,
    };
  }
  const typical = typicalPlyElastic(card.weave, fiberVolumeFraction);
  const withOwn = (others: PlyElastic): PlyElastic => ({
    e1GPa: e1GPa ?? others.e1GPa,
    e2GPa: e2GPa ?? others.e2GPa,
    g12GPa: g12GPa ?? others.g12GPa,
    nu12: nu12 ?? others.nu12,
    expansion1PerK: expansion1PerK ?? others.expansion1PerK,
    expansion2PerK: expansion2PerK ?? others.expansion2PerK,
  });
  const elastic = withOwn(typical.elastic);
  checkPlyElastic(elastic);
  const { bands } = typical;
  const oneWay = card.weave === 'unidirectional';
  return {
    elastic,
    expansion3PerK: ownThroughPerK ?? typical.expansion3PerK,
    typical: Object.values(own).includes(null),
    expansion3Typical: ownThroughPerK === null,
    expansion3Band: ownThroughPerK === null ? bands.expansion3PerK : [ownThroughPerK, ownThroughPerK],
    atEnds: ({ moduli, expansion1, expansion2 }) =>
      withOwn({
        e1GPa: bands.e1GPa[moduli],
        e2GPa: bands.e2GPa[moduli],
        g12GPa: bands.g12GPa[moduli],
        nu12: typical.elastic.nu12,
        expansion1PerK: bands.expansion1PerK[expansion1],
        // Warp and weft of one fabric are of one kind: what is not known of one is not known of both alike.
        expansion2PerK: bands.expansion2PerK[oneWay ? expansion2 : expansion1],
      }),
  };
}

/** The card's strengths, or null unless it has all five. */
export function plyStrength(card: Material): PlyStrength | null {
  const { tension1Mpa, compression1Mpa, tension2Mpa, compression2Mpa, shear12Mpa } = card;
  return tension1Mpa !== null &&
    compression1Mpa !== null &&
    tension2Mpa !== null &&
    compression2Mpa !== null &&
    shear12Mpa !== null
    ? { tension1Mpa, compression1Mpa, tension2Mpa, compression2Mpa, shear12Mpa }
    : null;
}
