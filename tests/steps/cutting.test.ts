import { describe, expect, it } from 'vitest';
import { cutPlies, type CutPlies } from '../../src/core/drape/cutPlies';
import { measurePart } from '../../src/core/mesh/measure';
import { Problem } from '../../src/core/problem';
import { cuttingChoicesOf } from '../../src/steps/cutting/choicesOf';
import { nestPieces } from '../../src/core/templates/nest';
import { cuttingReport, withCutPlies } from '../../src/steps/cutting/report';
import { fabricNames, nestAskedOf } from '../../src/steps/cutting/rolls';
import { tray } from '../support/meshes';
import { isOfConcern, notEntered } from '../../src/steps/shared/decision';
import { emptyContext, inputsWith, plyAt, trayContext } from './contexts';
import { figureOf, verdictOf } from './reportHelpers';

const part = tray([60, 40, 12], 0.7, 3);
// The tray is drawn open above.
const pull = [0, 0, -1] as const;
const measurement = measurePart(part, pull);
const inputsOf = (cutting = {}, plies = {}) =>
  inputsWith({ part: { pull: [...pull] }, cutting: { stepMm: 1.5, ...cutting }, plies });
const cutOf = (inputs: ReturnType<typeof inputsOf>) =>
  cutPlies(part, measurement, cuttingChoicesOf(inputs), () => undefined);

const nestsOf = (inputs: ReturnType<typeof inputsOf>, { pieces }: CutPlies) => {
  const { rolls, choices } = nestAskedOf(inputs, pieces);
  return nestPieces(pieces, rolls, choices);
};

describe('what is laid', () => {
  it('lies as deep as the plies under it and half of its own, from the face that is nearer', () => {
    const { plies } = cuttingChoicesOf(inputsOf());
    const [show, middle, core] = plies;
    expect(plies.map(({ face }) => face)).toEqual(['show', 'show', 'core']);
    expect(middle!.depthMm).toBeCloseTo(3 * show!.depthMm, 9);
    expect(core!.depthMm).toBeCloseTo(show!.depthMm, 9);
    expect(plies.map(({ fiberDeg }) => fiberDeg)).toEqual([0, 45, 0]);
  });

  it('takes the limits of the card, else typical ones of its kind', () => {
    const { materials } = inputsOf().plies;
    const limitsOf = (change: object) =>
      cuttingChoicesOf(inputsOf({}, { materials: [{ ...materials[0]!, ...change }] })).plies[0]!.limits;
    expect(limitsOf({})).toMatchObject({ warningDeg: 40, lockingDeg: 54, status: 'from memory' });
    expect(limitsOf({ weave: 'unidirectional' })).toMatchObject({ warningDeg: 5, lockingDeg: 15 });
    expect(limitsOf({ weave: 'non-crimp' })).toMatchObject({ warningDeg: 28, lockingDeg: 45 });
    expect(limitsOf({ shearWarningDeg: 60 })).toMatchObject({
      warningDeg: 60,
      lockingDeg: 60,
      status: 'your entry',
    });
  });

  it.each([
    ['an empty stack', {}, { stack: [] }, 'The stack has no plies'],
    ['half a start', { startAlongMm: 3 }, {}, 'needs both its places'],
  ])('refuses %s', (_what, cutting, plies, words) => {
    expect(() => cuttingChoicesOf(inputsOf(cutting, plies))).toThrow(words);
  });

  it.each([
    ['a start off the part', { startAlongMm: 80, startAcrossMm: 0 }, 'lies off the part'],
    ['a seam over the part', { seamAboveRimMm: 30 }, 'lies over the part'],
  ])('refuses %s', (_what, cutting, words) => {
    expect(() => cutOf(inputsOf(cutting))).toThrow(Problem);
    expect(() => cutOf(inputsOf(cutting))).toThrow(words);
  });
});

const dartsOf = (angles: readonly number[]) => {
  const inputs = inputsOf({}, { stack: angles.map((angle, at) => plyAt(`${at}`, angle)) });
  const given = { cut: cutOf(inputs), nests: '', noPaper: '' };
  const report = withCutPlies(cuttingReport(trayContext()), inputs, given);
  return {
    share: figureOf(report, 'cutting.dartsTogetherShare').value as number,
    verdict: verdictOf(report, 'cutting.darts'),
  };
};

describe('the report', () => {
  it('holds up no pour while nothing is cut, and sends the maker to what is missing', () => {
    const asked = verdictOf(cuttingReport(trayContext()), notEntered.cutting);
    expect(asked.word).toBe('not yet known');
    expect(isOfConcern(asked)).toBe(false);
    expect(verdictOf(cuttingReport(emptyContext()), 'cutting.shear')).toMatchObject({
      word: 'not yet known',
      fix: 'Import a model at Part.',
    });
    const noPlies = trayContext({ plies: { stack: [] } });
    expect(verdictOf(cuttingReport(noPlies), 'cutting.shear').reason).toContain('no plies');
  });

  it('tells of the pieces of a tray: nearly all covered, darts in its corners, mass by area', () => {
    const inputs = inputsOf();
    const cut = cutOf(inputs);
    const nests = nestsOf(inputs, cut);
    const before = cuttingReport(trayContext());
    const report = withCutPlies(before, inputs, { cut, nests, noPaper: '' });
    expect(report.figures.map(({ id }) => id)).toEqual(before.figures.map(({ id }) => id));
    const number = (id: string) => figureOf(report, `cutting.${id}`).value as number;
    expect(number('coveredShare')).toBeGreaterThan(0.97);
    expect(number('coveredShare')).toBeLessThan(1.005);
    expect(number('largestShearDeg')).toBeLessThanOrEqual(54);
    expect(number('pieces')).toBe(3);
    // 200 g/m² of fiber in 42 % of resin.
    const areaCm2 = number('clothAreaCm2');
    const gsm = 200 / 0.58;
    expect(number('piecesMassG')).toBeCloseTo((areaCm2 / 1e4) * gsm, 6);
    // A roll whose card tells no width is 1 m wide.
    expect(figureOf(report, 'cutting.rollLengthMm').working.join()).toContain('common practice');
    expect(number('clothMassG')).toBeCloseTo((number('rollLengthMm') / 1e3) * gsm, 6);
    expect(number('wasteShare')).toBeCloseTo(1 - number('piecesMassG') / number('clothMassG'), 6);
    expect(verdictOf(report, 'cutting.roll').word).toBe('go');
    expect(verdictOf(report, 'cutting.covered').word).toBe('go');
    expect(report.cautions.map(({ id }) => id)).toEqual(['cutting.blades']);
  });

  it('tells where darts of neighboring plies lie on each other', () => {
    // Warp along or across the length: cloth is notched at the same box corners.
    const same = dartsOf([0, 0]);
    expect(same.share).toBeGreaterThan(0.9);
    expect(same.verdict).toMatchObject({
      word: 'look again',
      reason: expect.stringContaining('ply 2 lie on those of ply 1') as string,
    });
    const turned = dartsOf([0, 45, 0]);
    expect(turned.share).toBeLessThan(0.75);
    expect(turned.verdict.word).toBe('go');
  });

  it('names pieces by ply, and marks darts on both sides', () => {
    const { pieces } = cutOf(inputsOf());
    expect(pieces.map(({ name }) => name)).toEqual(['1A', '2A', '3A']);
    for (const { marks, registrationMm } of pieces) {
      expect(registrationMm).toHaveLength(2);
      const labels = marks.map(({ label }) => label);
      expect(labels).toEqual(expect.arrayContaining(['L+', 'L-', 'W+', 'W-']));
      const dart = labels.filter((label) => /^\d/u.test(label));
      expect(dart.length).toBeGreaterThanOrEqual(8);
      for (const label of dart) expect(dart.filter((one) => one === label)).toHaveLength(2);
    }
  });

  it('cuts a mirrored pair as two halves, and a seam as top and sides', () => {
    const pair = cutOf(inputsOf({}, { stack: [plyAt('a', 45, { mirroredPair: true })] })).pieces;
    expect(pair.map(({ fiberDeg, mirrored }) => [fiberDeg, mirrored])).toEqual([
      [45, false],
      [-45, true],
    ]);
    const seam = cutOf(inputsOf({ seamAboveRimMm: 8 }, { stack: [plyAt('a', 0)] })).pieces;
    expect(seam.length).toBe(5);
  });

  it('turns the template of a ply that lies face down', () => {
    const [up] = cutOf(inputsOf({}, { stack: [plyAt('a', 30)] })).pieces;
    const [down] = cutOf(inputsOf({}, { stack: [plyAt('a', -30, { faceDown: true })] })).pieces;
    expect(down!.upGoesToMold).toBe(false);
    expect(down!.fiberDeg).toBe(30);
    expect(down!.outlineMm.toReversed().map(([x, y]) => [x, -y])).toEqual(up!.outlineMm);
  });
});

describe('the rolls', () => {
  const [card] = inputsOf().plies.materials as [ReturnType<typeof inputsOf>['plies']['materials'][number]];

  it('are told apart where two cards have one name', () => {
    const names = fabricNames([card, { ...card, id: 'b' }, { ...card, id: 'c', name: `${card.name} (2)` }]);
    expect([...names.values()]).toEqual([card.name, `${card.name} (2)`, `${card.name} (2) (2)`]);
    const materials = [card, { ...card, id: 'b', rollWidthMm: 300 }];
    const stack = [plyAt('a', 0), plyAt('b', 0, { materialId: 'b' })];
    const inputs = inputsOf({}, { materials, stack });
    const cut = cutOf(inputs);
    const nests = nestsOf(inputs, cut);
    expect(
      nests.map(({ roll, placements }) => [roll.widthMm, placements.map(({ piece }) => piece.name)]),
    ).toEqual([
      [1000, ['1A']],
      [300, ['2A']],
    ]);
  });

  it('are cut up after a remnant, and cost what their card says', () => {
    const materials = [{ ...card, remnantLengthMm: 120, remnantWidthMm: 90, pricePerM2: 50 }];
    const inputs = inputsOf({}, { materials });
    const [nest] = nestsOf(inputs, cutOf(inputs));
    expect(nest!.placements[0]!.remnant).toBe(0);
    expect(nest!.cost).toBeCloseTo((50 * nest!.takenMm2) / 1e6, 9);
  });

  it('name the piece that they are too narrow for, and the report says so', () => {
    const inputs = inputsOf({}, { materials: [{ ...card, rollWidthMm: 40 }] });
    const cut = cutOf(inputs);
    expect(() => nestsOf(inputs, cut)).toThrow(
      /Piece \dA is \d+ mm across the warp.*40 mm wide. Divide ply \d with a seam/u,
    );
    const report = withCutPlies(cuttingReport(trayContext()), inputs, {
      cut,
      nests: 'too narrow',
      noPaper: 'many',
    });
    expect(verdictOf(report, 'cutting.roll')).toMatchObject({ word: 'look again', reason: 'too narrow' });
    expect(verdictOf(report, 'cutting.paper')).toMatchObject({ word: 'look again', reason: 'many' });
    expect(figureOf(report, 'cutting.rollLengthMm')).toMatchObject({ value: null, working: ['too narrow'] });
  });

  it('take gap, fibers and turns of the inputs', () => {
    const inputs = inputsOf({ gapMm: 7, fiberToleranceDeg: 2, halfTurns: 'none' });
    expect(nestAskedOf(inputs, []).choices).toMatchObject({
      gapMm: 7,
      fiberToleranceDeg: 2,
      halfTurns: false,
    });
  });
});
