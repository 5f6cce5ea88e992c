import { describe, expect, it } from 'vitest';
import { cutPlies } from '../../src/core/drape/cutPlies';
import { measurePart } from '../../src/core/mesh/measure';
import { Problem } from '../../src/core/problem';
import { cuttingChoicesOf } from '../../src/steps/cutting/choicesOf';
import { cuttingReport, withCutPlies } from '../../src/steps/cutting/report';
import { tray } from '../support/meshes';
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

describe('the report', () => {
  it('holds up no pour while nothing is cut, and sends the maker to what is missing', () => {
    expect(verdictOf(cuttingReport(trayContext()), 'cutting.shear').word).toBe('go');
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
    const before = cuttingReport(trayContext());
    const report = withCutPlies(before, inputs, cut);
    expect(report.figures.map(({ id }) => id)).toEqual(before.figures.map(({ id }) => id));
    const number = (id: string) => figureOf(report, `cutting.${id}`).value as number;
    expect(number('coveredShare')).toBeGreaterThan(0.97);
    expect(number('coveredShare')).toBeLessThan(1.005);
    expect(number('largestShearDeg')).toBeLessThanOrEqual(54);
    expect(number('pieces')).toBe(3);
    // 200 g/m² of fiber in 42 % of resin.
    const areaCm2 = number('clothAreaCm2');
    expect(number('clothMassG')).toBeCloseTo((areaCm2 / 1e4) * (200 / 0.58), 6);
    expect(figureOf(report, 'cutting.rollLengthMm').value).toBeNull();
    expect(verdictOf(report, 'cutting.covered').word).toBe('go');
    expect(report.cautions.map(({ id }) => id)).toEqual(['cutting.blades']);
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
