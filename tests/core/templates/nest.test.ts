import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { nestPieces, type FabricRoll, type NestChoices } from '../../../src/core/templates/nest';
import { boundsOf, posed, signedAreaMm2 } from '../../../src/core/templates/outline';
import type { Outline, PlyPiece, Point2 } from '../../../src/core/templates/piece';
import {
  areaOutsideMm2,
  areaWithinGapMm2,
  pathOf,
  placedPath,
  sharedAreaMm2,
} from '../../support/clearances';
import { codeOf } from '../../support/codeOf';
import {
  angleShape,
  crossed,
  flatPiece,
  onTheBias,
  oval,
  rectangle,
  tenPieces,
} from '../../support/flatPieces';
import { propertySeed } from '../../support/propertySeed';

const roll: FabricRoll = {
  fabric: 'twill 200 g',
  widthMm: 500,
  remnantsMm: [],
  arealWeightGsm: 340,
  pricePerM2: 60,
};
const choices: NestChoices = { gapMm: 4, fiberToleranceDeg: 0, halfTurns: true, seed: 1 };
const nestOf = (
  pieces: readonly PlyPiece[],
  one: Partial<FabricRoll> = {},
  other: Partial<NestChoices> = {},
) => nestPieces(pieces, [{ ...roll, ...one }], { ...choices, ...other })[0]!;

/** Areas of less than a hundredth of a square millimeter are rounding of the library. */
const traceMm2 = 0.01;

/** Pieces several times shorter than the nest: on a wide roll the longest one alone sets its length. */
const widthMm = 300;
const narrow = { widthMm };

describe('the nest of ten pieces', () => {
  const nest = nestOf(tenPieces, narrow);
  const areaMm2 = tenPieces.reduce((sum, { outlineMm }) => sum + signedAreaMm2(outlineMm), 0);

  it('is within 1.35 of the length that the area alone would need', () => {
    expect(nest.rollLengthMm / (areaMm2 / widthMm)).toBeLessThan(1.35);
  });

  it('holds each piece once, none over another, none nearer than the gap, all on the roll', () => {
    expect(nest.placements.map(({ piece }) => piece.name).sort()).toEqual(
      tenPieces.map(({ name }) => name).sort(),
    );
    const paths = nest.placements.map(placedPath);
    const cloth = pathOf(rectangle(nest.rollLengthMm, widthMm));
    paths.forEach((path, i) => {
      expect(areaOutsideMm2(path, cloth)).toBeLessThan(traceMm2);
      for (const other of paths.slice(i + 1)) expect(areaWithinGapMm2(path, other, 4)).toBeLessThan(traceMm2);
    });
  });

  it('says waste, mass and cost of what is taken from the roll', () => {
    const takenM2 = (nest.rollLengthMm * widthMm) / 1e6;
    expect(nest.wasteShare).toBeCloseTo(1 - areaMm2 / 1e6 / takenM2, 10);
    expect(nest.clothMassG).toBeCloseTo(takenM2 * 340, 8);
    expect(nest.piecesMassG).toBeCloseTo((areaMm2 / 1e6) * 340, 8);
    expect(nest.cost).toBeCloseTo(takenM2 * 60, 8);
    expect(nestOf(tenPieces, { ...narrow, pricePerM2: null }).cost).toBeNull();
  });

  it('is cut along the roll from its loose end', () => {
    const starts = nest.placements.map(
      (placement) => boundsOf(placement.piece.outlineMm.map((point) => posed(point, placement))).lowXMm,
    );
    expect(nest.placements.map(({ cutOrder }) => cutOrder)).toEqual(starts.map((_, i) => i + 1));
    starts.slice(1).forEach((start, i) => expect(start).toBeGreaterThanOrEqual(starts[i]! - 1e-6));
  });

  it('is the same for the same seed', () => {
    expect(nestOf(tenPieces, narrow).placements).toEqual(nest.placements);
  });
});

describe('hand cases', () => {
  it('lays a piece as wide as the roll at its start', () => {
    const nest = nestOf([flatPiece('1A', rectangle(300, 500))]);
    expect(nest.rollLengthMm).toBeCloseTo(300, 9);
    expect(nest.wasteShare).toBeCloseTo(0, 9);
  });

  it('lays two halves of the width beside each other when they need no gap, and behind each other when they do', () => {
    const pair = [flatPiece('1A', rectangle(200, 250)), flatPiece('1B', rectangle(200, 250))];
    expect(nestOf(pair, {}, { gapMm: 0 }).rollLengthMm).toBeCloseTo(200, 9);
    expect(nestOf(pair).rollLengthMm).toBeCloseTo(404, 3);
  });

  it('turns one of two angle pieces only where the weave allows it', () => {
    const pair = [flatPiece('1A', angleShape(200, 200, 60)), flatPiece('1B', angleShape(200, 200, 60))];
    const tight = { widthMm: 270 };
    const [free, kept] = [nestOf(pair, tight), nestOf(pair, tight, { halfTurns: false })];
    expect(free.placements.map(({ turnDeg }) => turnDeg).toSorted((a, b) => a - b)).toEqual([0, 180]);
    expect(kept.placements.map(({ turnDeg }) => turnDeg)).toEqual([0, 0]);
    expect(free.rollLengthMm).toBeLessThan(kept.rollLengthMm);
  });

  it('cuts up the remnant before the roll, and counts all of it as taken', () => {
    const remnant: Outline = [
      [10, 20],
      [230, 20],
      [230, 120],
      [10, 140],
    ];
    const nest = nestOf([flatPiece('1A', rectangle(200, 100)), flatPiece('2A', rectangle(200, 100))], {
      remnantsMm: [remnant],
    });
    expect(nest.placements.map((placement) => placement.remnant)).toEqual([0, null]);
    expect(areaOutsideMm2(placedPath(nest.placements[0]!), pathOf(remnant))).toBeLessThan(traceMm2);
    expect(nest.takenMm2).toBeCloseTo(signedAreaMm2(remnant) + 200 * 500, 3);
  });

  it('takes a remnant that the piece just fits', () => {
    const nest = nestOf([flatPiece('1A', rectangle(200, 103))], {
      widthMm: null,
      remnantsMm: [rectangle(200, 103)],
    });
    expect(nest.rollLengthMm).toBe(0);
    expect(nest.wasteShare).toBeCloseTo(0, 9);
  });

  it('keeps each fabric on its own roll', () => {
    const plain = { ...roll, fabric: 'plain 160 g', widthMm: 300 };
    const nests = nestPieces(
      [flatPiece('1A', rectangle(90, 90)), flatPiece('2A', rectangle(90, 90), { fabric: 'plain 160 g' })],
      [roll, plain, { ...roll, fabric: 'not used' }],
      choices,
    );
    expect(
      nests.map(({ roll: { fabric }, placements }) => [fabric, placements.map(({ piece }) => piece.name)]),
    ).toEqual([
      ['twill 200 g', ['1A']],
      ['plain 160 g', ['2A']],
    ]);
  });
});

const said = (work: () => unknown): string => {
  try {
    work();
  } catch (error) {
    return (error as Error).message;
  }
  return '';
};

describe('what cannot be nested is said', () => {
  it('a roll narrower than a piece: which, and that a seam mends it', () => {
    const wide = [...tenPieces, flatPiece('11A', rectangle(100, 640))];
    expect(codeOf(() => nestOf(wide))).toBe('nest.rollTooNarrow');
    expect(said(() => nestOf(wide))).toMatch(
      /Piece 11A is 640 mm .* 500 mm wide\. Divide ply 11 with a seam/,
    );
  });

  it('a piece larger than the remnants', () => {
    const only = { widthMm: null, remnantsMm: [rectangle(150, 150)] };
    expect(codeOf(() => nestOf([flatPiece('1A', rectangle(160, 100))], only))).toBe('nest.noRoom');
    expect(said(() => nestOf([flatPiece('1A', rectangle(160, 100))], only))).toMatch(
      /1A \(160 x 100 mm\).*seam/,
    );
  });

  const one = [flatPiece('1A', rectangle(50, 50))];
  it.each<[string, () => unknown]>([
    ['nest.pieces', () => nestOf([])],
    ['nest.pieces', () => nestOf(Array.from({ length: 501 }, () => one[0]!))],
    ['nest.outline', () => nestOf([flatPiece('1A', rectangle(50, 50).toReversed())])],
    [
      'nest.outline',
      () =>
        nestOf([
          flatPiece('1A', [
            [0, 0],
            [Number.NaN, 0],
            [5, 5],
          ]),
        ]),
    ],
    ['nest.noRoll', () => nestPieces(one, [], choices)],
    ['nest.roll', () => nestOf(one, { widthMm: 0 })],
    ['nest.roll', () => nestOf(one, { widthMm: Infinity })],
    ['nest.roll', () => nestOf(one, { widthMm: null })],
    ['nest.roll', () => nestOf(one, { arealWeightGsm: 0 })],
    ['nest.roll', () => nestOf(one, { pricePerM2: -1 })],
    [
      'nest.roll',
      () =>
        nestOf(one, {
          remnantsMm: [
            [
              [0, 0],
              [1, 1],
            ],
          ],
        }),
    ],
    ['nest.choices', () => nestOf(one, {}, { gapMm: -1 })],
    ['nest.choices', () => nestOf(one, {}, { gapMm: Number.NaN })],
    ['nest.choices', () => nestOf(one, {}, { fiberToleranceDeg: 45 })],
    ['nest.choices', () => nestOf(one, {}, { seed: Number.NaN })],
  ])('%s', (code, work) => {
    expect(codeOf(work)).toBe(code);
  });
});

/** Star-shaped, so it never crosses itself; as jagged as it gets. */
const jagged = fc
  .array(fc.integer({ min: 12, max: 70 }), { minLength: 3, maxLength: 14 })
  .map((radii): Outline =>
    radii.map((radius, i): Point2 => {
      const at = (2 * Math.PI * i) / radii.length;
      return [radius * Math.cos(at), radius * Math.sin(at)];
    }),
  );
const side = fc.integer({ min: 8, max: 110 });
const anyOutline = fc.oneof(
  jagged,
  fc.tuple(side, side).map(([length, width]) => rectangle(length, width)),
  fc.tuple(side, side, fc.integer({ min: 0, max: 90 })).map(([a, b, deg]) => onTheBias(rectangle(a, b), deg)),
  fc.tuple(side, side).map(([a, b]) => crossed(a + 30, b + 30, 12)),
  fc.tuple(side, side).map(([a, b]) => oval(a, b, 24)),
);

describe(`any pieces on any roll (seed ${propertySeed})`, () => {
  it('never overlap, keep the gap and the fiber tolerance, and stay on the cloth', () => {
    fc.assert(
      fc.property(
        fc.array(anyOutline, { minLength: 1, maxLength: 7 }),
        fc.record({
          gapMm: fc.constantFrom(0, 0.5, 3, 4, 7.3),
          fiberToleranceDeg: fc.constantFrom(0, 2),
          halfTurns: fc.boolean(),
          seed: fc.integer(),
        }),
        fc.integer({ min: 160, max: 420 }),
        fc.option(jagged.map((outline) => outline.map(([x, y]): Point2 => [1.7 * x, 1.7 * y]))),
        (outlines, some, acrossMm, remnant) => {
          const nest = nestOf(
            outlines.map((outline, i) => flatPiece(`${i + 1}A`, outline)),
            { widthMm: acrossMm, remnantsMm: remnant === null ? [] : [remnant] },
            some,
          );
          expect(nest.placements).toHaveLength(outlines.length);
          const paths = nest.placements.map(placedPath);
          nest.placements.forEach((placement, i) => {
            const off = Math.min(...[0, 180].map((turn) => Math.abs(placement.turnDeg - turn)));
            expect(off).toBeLessThanOrEqual(some.fiberToleranceDeg);
            if (!some.halfTurns) expect(Math.abs(placement.turnDeg)).toBeLessThanOrEqual(2);
            const cloth = placement.remnant === null ? rectangle(nest.rollLengthMm, acrossMm) : remnant!;
            expect(areaOutsideMm2(paths[i]!, pathOf(cloth))).toBeLessThan(traceMm2);
            nest.placements.forEach((other, k) => {
              if (k <= i || other.remnant !== placement.remnant) return;
              expect(sharedAreaMm2(paths[i]!, paths[k]!)).toBeLessThan(traceMm2);
              expect(areaWithinGapMm2(paths[i]!, paths[k]!, some.gapMm)).toBeLessThan(traceMm2);
            });
          });
        },
      ),
      { numRuns: 25 },
    );
  }, 60_000);
});
