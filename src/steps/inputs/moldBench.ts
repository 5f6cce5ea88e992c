/** Inputs of the size chain, the coats, and the drying; with the lists that are kept while the mold is worked on. */
import * as z from 'zod/mini';
import { number, optional, plain } from '../kit/inputTable';

export const sizeNumbers = {
  printScale: number('Print scale', '×', 1, [0.5, 2, 4], {
    meaning: 'Factor on the drawn size that the pattern is printed with.',
  }),
  printShrinkPercent: number('Print comes out smaller by', '%', 0, [-5, 5, 2], {
    meaning: 'Printed against asked-for length of a test bar; negative when it comes out larger.',
  }),
  stoneExpansionPerMK: number('Thermal expansion of the stone', '10⁻⁶/K', 16, [0, 60, 1], {
    meaning: 'Set gypsum is 15 to 18 (from memory); gypsum board is 16.2 (published).',
  }),
  laminateExpansionPerMK: number('Thermal expansion of the laminate', '10⁻⁶/K', 3, [-5, 60, 1], {
    meaning: 'In its plane; a woven carbon laminate is 2 to 4, 2.1 in a maker’s table.',
  }),
  sizeToleranceMm: number('Size may be off by', 'mm', 0.3, [0.01, 10, 2], {
    meaning: 'How far a finished length, or one rim from the other, may be off before it counts as wrong.',
  }),
};

/** Wanted finished lengths along the part's axes; null where the drawn length is wanted. Paths `mold.wanted.<field>`. */
export const wantedTable = {
  xMm: wanted('x'),
  yMm: wanted('y'),
  zMm: wanted('z'),
};

function wanted(axis: string) {
  return optional(`Wanted length along ${axis}`, 'mm', 100, [0.1, 10_000, 2], {
    meaning: `Finished outer length along ${axis}; left out, the drawn length is wanted.`,
  });
}

const coverage = (what: string, perLiter: number) =>
  number(`${what}, coverage`, 'm²/L', perLiter, [0.5, 200, 1], {
    meaning: 'Area that one liter covers in one coat, from the supplier’s sheet.',
  });
const coats = (what: string, usual: number) =>
  number(`${what}, coats`, '', usual, [0, 12, 0], {
    meaning:
      'Number of coats on each face, from the supplier’s sheet. Epoxy that has cured is washed and sanded with P80 to P120 before the next coat, the last one ended at P220 to P400 (published guides).',
    whole: true,
  });
const wait = (what: string, usual: number) =>
  number(`${what}, wait after each coat`, 'min', usual, [0, 2880, 0], {
    meaning: 'As the supplier gives it.',
  });

const solids = (what: string, usual: number) =>
  number(`${what}, solids`, '%', usual, [0.1, 100, 1], {
    meaning:
      'Share of its volume that stays when it has dried, from the supplier’s sheet; 100 loses nothing.',
  });

export const coatNumbers = {
  sealerCoats: coats('Sealer', 2),
  sealerM2PerL: coverage('Sealer', 8),
  sealerSolidsPercent: solids('Sealer', 40),
  sealerWaitMin: wait('Sealer', 30),
  releaseCoats: coats('Release', 3),
  releaseM2PerL: coverage('Release', 15),
  releaseSolidsPercent: solids('Release', 5),
  releaseWaitMin: wait('Release', 15),
  coatLossPercent: number('Coats lost in brush and pot', '%', 30, [0, 200, 0], {
    meaning: 'Taken on top; 20 to 50 % by brush.',
  }),
};

export const dryingNumbers = {
  dryingC: number('Drying at', '°C', 45, [5, 200, 0], {
    meaning: 'Air round the stone while it dries; a fan does more than heat.',
  }),
  dryingHours: number('Drying planned for', 'h', 24, [1, 1000, 0], {
    meaning: 'First guess; the weighings decide.',
  }),
  scaleStepG: number('Scale shows steps of', 'g', 1, [0.001, 100, 2], {
    meaning: 'Smallest step of the scale that the halves are weighed on.',
  }),
};

/** One line of the drying log; a half that was not weighed is null. Paths `mold.dryingLog.N.<field>`. */
export const weighingTable = {
  hours: number('After demolding', 'h', 0, [0, 10_000, 1], {
    meaning: 'Hours since the half came out of the box; 0 is the fresh weight.',
  }),
  negativeG: weight('negative'),
  positiveG: weight('positive'),
};

function weight(half: string) {
  return optional(`Weight of the ${half}`, 'g', 500, [0.01, 1_000_000, 1], {
    meaning: `The ${half} alone on the scale.`,
  });
}

/** One repair of the stone. Paths `mold.repairs.N.<field>`. */
export const repairTable = {
  id: plain(z.string().check(z.minLength(1)), ''),
  half: plain(z.enum(['negative', 'positive']), 'negative'),
  kind: plain(z.enum(['filled', 'scraped']), 'filled'),
  atMm: plain(z.tuple([z.number(), z.number(), z.number()]), [0, 0, 0]),
  radiusMm: number('Radius of the place', 'mm', 5, [0.1, 500, 1], {
    meaning: 'Half its width along the surface.',
  }),
  depthMm: number('Off the cast surface by', 'mm', 0, [0, 20, 2], {
    meaning: 'Stone scraped away, or filler standing proud; 0 for a bubble filled flush.',
  }),
  note: plain(z.string().check(z.maxLength(200)), ''),
};
