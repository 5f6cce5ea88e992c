import { describe, expect, test } from 'vitest';
import { inputsList } from '../../src/report/inputsList';
import { parseArguments } from '../../src/report/parseArguments';
import { setInput } from '../../src/report/setInput';
import { defaultProjectInputs, inputSpecs } from '../../src/steps/inputs/project';

describe('the command line', () => {
  test('takes every flag, apart or with an equals sign', () => {
    const words = ['--stl=a.stl', '--unit', 'in', '--body', '2', '--scale', '1.01', '--pull', '-1,0,0.5'];
    expect(parseArguments([...words, '--set', 'plies.lineWidthMm=0.4', '--json'])).toEqual({
      meshPath: 'a.stl',
      projectPath: null,
      unit: 'in',
      body: 2,
      scale: 1.01,
      pull: [-1, 0, 0.5],
      set: [{ path: 'plies.lineWidthMm', value: 0.4 }],
      outFolder: null,
      matePath: null,
      mateBody: null,
      splitMm: null,
      contentsPath: null,
      json: true,
      plan: false,
      applyPlan: false,
      listInputs: false,
      help: false,
    });
    expect(parseArguments(['--stl', 'a', '--plan'])).toMatchObject({ plan: true, applyPlan: false });
    expect(parseArguments(['--stl', 'a', '--apply-plan'])).toMatchObject({ plan: true, applyPlan: true });
    expect(parseArguments(['--stl', 'a', '--out', 'here']).outFolder).toBe('here');
    expect(parseArguments(['--stl', 'a', '--pull', 'best']).pull).toBe('best');
  });

  test.each([
    [['--json'], 'Give a model'],
    [['--stl'], 'needs a value'],
    [['--stl', 'a', '--stl', 'b'], 'given twice'],
    [['--stl', 'a', '--unit', 'ft'], 'must be one of mm, cm, m, in'],
    [['--stl', 'a', '--body', 'two'], '--body'],
    [['--stl', 'a', '--scale', '1,000'], 'two ways'],
    [['--stl', 'a', '--pull', '0,0'], 'three numbers'],
    [['--stl', 'a', '--pull', '0,0,0'], 'no length'],
    [['--stl', 'a', '--pull', '0,,1'], 'three numbers'],
    [['--stl', 'a', '--set', 'plies'], 'PATH=JSON'],
    [['--stl', 'a', '--set', 'plies.lineWidthMm=[1'], 'not JSON'],
    [['--stl', 'a', '--json=1'], 'takes no value'],
    [['--wall', '2'], 'not known here'],
    [['a.stl'], 'not known here'],
  ])('%j is refused', (words, message) => {
    expect(() => parseArguments(words)).toThrow(message);
  });
});

describe('--set', () => {
  test('changes one input and nothing else', () => {
    const changed = setInput(defaultProjectInputs, 'plies.materials.0.laidThicknessMm', 0.28);
    expect(changed.plies.materials[0]?.laidThicknessMm).toBe(0.28);
    expect(defaultProjectInputs.plies.materials[0]?.laidThicknessMm).toBe(0.25);
    expect({ ...changed, plies: defaultProjectInputs.plies }).toEqual(defaultProjectInputs);
    expect(setInput(changed, 'plies.materials.0.laidThicknessMm', null).plies.materials[0]).toMatchObject({
      laidThicknessMm: null,
    });
    expect(setInput(defaultProjectInputs, 'plies.stack', []).plies.stack).toEqual([]);
    expect(setInput(defaultProjectInputs, 'part.unit', 'cm').part.unit).toBe('cm');
  });

  test.each([
    ['plies.lineWidth', 0.4, 'no such input'],
    ['plies.materials.7.laidThicknessMm', 0.3, 'no such input'],
    ['plies.materials.length', 3, 'no such input'],
    ['__proto__.polluted', 1, 'no such input'],
    ['plies.lineWidthMm', 9, 'plies.lineWidthMm must be a number from 0.05 to 3 mm'],
    ['plies.lineWidthMm', '0.4', 'must be a number'],
    ['part.body', 1.5, 'must be a whole number from 0'],
    ['part.unit', 'ft', 'must be one of unconfirmed, mm'],
    [
      'plies.materials.0.resinMassFraction',
      42,
      'plies.materials.0.resinMassFraction must be a number from 0.05',
    ],
    ['plies.stack', [{ id: 'a', materialId: 'twill-200', angle: 0 }], 'plies.stack'],
    ['part.pull', [0, 1], 'part.pull'],
    ['walls', { toleranceMm: 0.1 }, 'walls'],
  ])('%s = %j is refused and the path is named', (path, value, message) => {
    expect(() => setInput(defaultProjectInputs, path, value)).toThrow(message);
    expect(() => setInput(defaultProjectInputs, path, value)).toThrow(path);
  });

  test.each([
    ['plies.cureTemperatureC', 135, 'It is now plies.stressFreeC.'],
    ['mold.gelC', 110, 'It is now cure.gelC.'],
    ['closing.flowTemperatureC', 80, 'It is now closing.gelTimeAtC,'],
    ['closing.cureTemperatureC', 120, 'It is now cure.stages,'],
  ])('%s has moved and is refused with its new name', (path, value, words) => {
    expect(() => setInput(defaultProjectInputs, path, value)).toThrow(`--set ${path}: ${path} has moved.`);
    expect(() => setInput(defaultProjectInputs, path, value)).toThrow(words);
  });

  test('a moved input inside a whole step is named too', () => {
    const mold = { ...defaultProjectInputs.mold, gelC: 110 };
    expect(() => setInput(defaultProjectInputs, 'mold', mold)).toThrow(
      'mold.gelC has moved. It is now cure.gelC',
    );
  });

  test('what follows from the oven program can be entered, and let go of again', () => {
    const own = setInput(defaultProjectInputs, 'cure.gelC', 95);
    expect(own.cure.gelC).toBe(95);
    expect(setInput(own, 'cure.gelC', null)).toEqual(defaultProjectInputs);
  });

  test('a ply may leave out what is usual, and a field inside a list has its own range', () => {
    const short = [{ id: 'a', materialId: 'twill-200', angleDeg: 90 }];
    expect(setInput(defaultProjectInputs, 'plies.stack', short).plies.stack).toEqual([
      { ...short[0], faceDown: false, mirroredPair: false },
    ]);
    expect(() => setInput(defaultProjectInputs, 'plies.stack.0.angleDeg', 270)).toThrow(
      'plies.stack.0.angleDeg must be a number from -180 to 180 °',
    );
  });

  test('a misspelled field inside a list is not dropped without a word', () => {
    const card = { ...defaultProjectInputs.plies.materials[0], laidThickness: 0.3 };
    expect(() => setInput(defaultProjectInputs, 'plies.materials', [card])).toThrow(
      'plies.materials.0.laidThickness',
    );
  });
});

test('--inputs lists every input with unit, default and meaning', () => {
  const text = inputsList();
  for (const [path, spec] of Object.entries(inputSpecs)) {
    expect(text).toContain(`${path}\n`);
    expect(text).toContain(spec.meaning);
  }
  expect(text).toContain('plies.materials.N.resinMassFraction');
  expect(text).toMatch(/plies\.lineWidthMm\n.*\n {4}default 0\.5 mm; 0\.05 to 3 mm/u);
});
