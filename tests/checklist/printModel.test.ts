import { describe, expect, test } from 'vitest';
import { checklistText } from '../../src/checklist/checklistText';
import { checklistModel, type ChecklistFacts } from '../../src/checklist/printModel';
import { escapeHtml, recordHtml } from '../../src/checklist/recordHtml';
import { phaseCautions } from '../../src/checklist/safety';
import { defaultClamp } from '../../src/steps/inputs/clamp';
import { defaultMaterial } from '../../src/steps/inputs/material';
import { stepReports } from '../../src/steps/registry';
import type { StepContext } from '../../src/steps/shared/context';
import { emptyContext, lockPatch, plyAt, thickPatch, trayContext, walls } from '../steps/contexts';

const facts: ChecklistFacts = {
  project: 'Wind meter',
  part: 'Upper half',
  date: '2031-05-06',
  appVersion: '9.8.7',
  formatNumber: 42,
};

const faulty = trayContext({
  measured: { patches: [lockPatch, thickPatch] },
  summary: { showWall: walls([0.67, 8800], [1.6, 1200]) },
});

const modelOf = (context: StepContext, record = {}) => checklistModel(facts, context, record);
const actionsOf = (context: StepContext) => modelOf(context).phases.flatMap(({ actions }) => actions);
const textOf = (context: StepContext, id: string) => actionsOf(context).find((one) => one.id === id)?.text;

describe('the bench card', () => {
  test('says whether to pour, of which file, in twelve numbers', () => {
    const { card, title } = modelOf(faulty);
    expect(title).toBe('Wind meter: Upper half');
    expect(card.stamp).toBe('DO NOT POUR YET');
    expect(card.of).toBe('2031-05-06 · tray.stl · 0123456789ab · workbook 9.8.7, format 42');
    expect(card.numbers).toHaveLength(12);
    expect(card.footer).toBe('Data sheets, local rules and licensed trades overrule this sheet.');
  });

  test('under a stop no mix, weight or program stands there to be used', () => {
    const text = checklistText(modelOf(faulty)).replaceAll(/\s+/gu, ' ');
    const cleared = checklistText(modelOf(trayContext())).replaceAll(/\s+/gu, ' ');
    for (const recipe of [
      /g \+ [\d\s]+g water/u,
      /spread over the rim/u,
      /Oven on: /u,
      /Powder of each, g/u,
    ]) {
      expect(cleared).toMatch(recipe);
      expect(text).not.toMatch(recipe);
    }
    expect(text).toContain('held back: a check says stop');
    // Nothing to work toward either: no target, no time, no expected reading.
    expect(text).not.toMatch(/______ \S+, expected/u);
    expect(cleared).toMatch(/______ \S+, expected/u);
    const numbers = new Map(modelOf(faulty).card.numbers.map(({ label, after }) => [label, after]));
    for (const label of ['Negative', 'Dry at, neg. / pos.', 'Oven', 'Coldest laminate', 'Open after'])
      expect(numbers.get(label)).toBe('not before cleared');
  });

  test('a pattern that the checks stop is not printed as it is', () => {
    expect(textOf(faulty, 'print.file')).toMatch(/^Not printed like this \(.*\): held back/u);
    expect(textOf(trayContext(), 'print.file')).toMatch(/^Print tray\.stl at scale/u);
  });

  test('what is expected of a reading lies in its band', () => {
    for (const patternSoftensC of [25, 40, 55, 98])
      for (const { id, expected, band } of modelOf(trayContext({ moldInputs: { patternSoftensC } })).blanks)
        if (expected !== null && band !== null)
          expect([id, expected >= band[0] && expected <= band[1]]).toEqual([id, true]);
  });

  test('has the cut and the plan to scale', () => {
    const [cut, plan] = modelOf(trayContext()).card.drawings.map(({ drawing }) => drawing);
    expect(cut?.scale).toBe(2);
    expect(cut?.told).toContain('Box 140.0 mm long, negative 28.0 mm and positive 20.0 mm high');
    expect(plan?.marks.filter(({ kind }) => kind === 'disc')).toHaveLength(8);
  });
});

describe('the phases', () => {
  test('follow the order of the work, gates before what they guard', () => {
    const model = modelOf(trayContext());
    expect(model.phases.map(({ id }) => id)).toEqual(['print', 'pour', 'layup', 'oven', 'finish']);
    const ids = model.phases.flatMap(({ actions }) => actions.map(({ id }) => id));
    expect(ids[0]).toBe('print.sheets');
    const inOrder = (...order: string[]) => {
      const places = order.map((id) => ids.indexOf(id));
      expect(places).not.toContain(-1);
      expect(places).toEqual(places.toSorted((a, b) => a - b));
    };
    inOrder('pour.trial', 'pour.mix', 'pour.negative', 'pour.counterweight', 'pour.demold', 'pour.fresh');
    inOrder('pour.fresh', 'drying.gate', 'seal.sealer', 'seal.weight', 'layup.gate', 'layup.lay');
    inOrder(
      'layup.cut',
      'layup.caliper',
      'layup.mold',
      'layup.lay',
      'close.clamps',
      'cure.reclamp',
      'cool.gate',
    );
    inOrder('cool.gate', 'cool.open', 'finish.size');
  });

  test('line ids are unique, and a record is kept by them', () => {
    const ids = actionsOf(faulty).map(({ id }) => id);
    expect(new Set(ids).size).toBe(ids.length);
    const done = { done: true, measured: '', initials: '' };
    const { phases } = modelOf(faulty, {
      'print.clean': done,
      'sign.print': { ...done, initials: 'kl' },
      'note.print': { ...done, measured: 'warped a little' },
    });
    expect(phases[0]?.actions.find(({ id }) => id === 'print.clean')?.done).toBe(true);
    expect(phases[0]?.signedBy).toBe('kl');
    expect(phases[0]?.note).toBe('warped a little');
  });

  test('every figure that a line cites exists', () => {
    const known = new Set(
      [...stepReports(faulty).values()].flatMap((report) => report.figures.map(({ id }) => id)),
    );
    const cited = actionsOf(faulty).flatMap(({ figures }) => figures);
    expect(cited.length).toBeGreaterThan(5);
    expect(cited.filter((id) => !known.has(id))).toEqual([]);
  });

  test('only a board is turned over, and only a pressed-in pattern is weighted after the stone', () => {
    const pressed = trayContext();
    const onBoard = trayContext({ moldInputs: { pourMethod: 'board, leaking' } });
    expect(textOf(pressed, 'pour.land')).not.toContain('Turned over');
    expect(textOf(onBoard, 'pour.land')).toContain('Turned over');
    expect(textOf(pressed, 'pour.counterweight')).toContain('Pattern pressed in');
    expect(textOf(onBoard, 'pour.counterweight')).toContain('before the stone is in');
  });

  test('say which half the plies go into', () => {
    expect(textOf(trayContext(), 'layup.lay')).toContain('Into the negative: ply 1 against the show face');
    expect(textOf(trayContext({ walls: { laidIn: 'positive' } }), 'layup.lay')).toContain(
      'Onto the positive',
    );
  });

  test('a stop stands once on the paper', () => {
    const stops = modelOf(faulty).phases.flatMap((phase) => phase.stops);
    expect(stops.length).toBeGreaterThan(0);
    expect(new Set(stops).size).toBe(stops.length);
  });

  test('cautions stand once per phase', () => {
    const text = checklistText(modelOf(faulty));
    expect(text.match(/CAUTION:/gu)).toHaveLength(1 + Object.keys(phaseCautions).length);
  });

  test('without a pattern and plies they say so and still print', () => {
    const bare = checklistText(modelOf(emptyContext({ plies: { stack: [] } })));
    expect(bare).toContain('no pattern imported');
    expect(bare).toContain('Add the plies');
    expect(bare).not.toMatch(/NaN|undefined|null/u);
  });
});

const numbersOf = (context: StepContext) =>
  new Map(modelOf(context).blanks.map(({ id, number }) => [id, number]));

const idsOf = (context: StepContext) => modelOf(context).blanks.map(({ id }) => id);

describe('the blanks', () => {
  test('have each a number of their own, in the order of the paper', () => {
    for (const context of [trayContext(), faulty, emptyContext()]) {
      const { blanks, phases } = modelOf(context);
      const numbers = blanks.map(({ number }) => Number(number.slice(1)));
      expect(numbers).toEqual([...new Set(numbers)].toSorted((a, b) => a - b));
      const printed = phases.flatMap(({ actions }) =>
        actions.flatMap((one) => one.blanks.map(({ number }) => Number(number.slice(1)))),
      );
      expect(printed).toEqual(printed.toSorted((a, b) => a - b));
    }
  });

  test('keep their numbers when a reading changes what is asked', () => {
    const before = numbersOf(trayContext());
    const after = numbersOf(trayContext({ closing: { clamps: [{ ...defaultClamp, forceN: 90 }] } }));
    for (const [id, number] of after) if (before.has(id)) expect(number).toBe(before.get(id));
  });

  test('what nobody can fill is not asked', () => {
    expect(idsOf(trayContext())).not.toContain('held');
    expect(idsOf(trayContext({ cure: { supplierCures: [{ hours: 16, temperatureC: 70 }] } }))).toContain(
      'held',
    );
    const thickAllOver = trayContext({
      measured: { patches: [thickPatch] },
      summary: { showWall: walls([1.6, 10_000]) },
    });
    expect(idsOf(thickAllOver).filter((id) => id.startsWith('wall.'))).toEqual(['wall.typical']);
  });

  test('show what was read beside what was planned', () => {
    const card = { ...defaultMaterial, caliperTotalMm: 0.9 };
    const { blanks } = modelOf(trayContext({ plies: { materials: [card] } }));
    const caliper = blanks.find(({ id }) => id.startsWith('caliper.'));
    expect(caliper?.written).toBe('0.90');
    expect(caliper?.expected).toBeCloseTo(0.75, 10);
  });
});

describe('the plies on paper', () => {
  const card = { ...defaultMaterial, freezerDate: '2030-01-05', hoursOutH: 12, allowedOutTimeH: 720 };
  const stack = [
    plyAt('a', 45, { mirroredPair: true, faceDown: true }),
    plyAt('b', 0),
    plyAt('c', 45, { faceDown: true }),
  ];
  const patch = {
    id: 'x',
    kind: 'doubler' as const,
    wallMm: null,
    place: 'hinge',
    materialId: 'twill-200',
    angleDeg: 30,
    faceDown: true,
    areaCm2: 6,
    afterPly: 2,
  };
  const context = trayContext({ plies: { materials: [card], stack, patches: [patch] } });
  const model = modelOf(context);

  test('stand in a table: cut angle, laid angle, way up, pieces', () => {
    expect(model.phases[2]?.table?.rows).toEqual([
      ['1', card.name, '45°', '−45° and 45°', 'face down', 'mirrored pair'],
      ['2', card.name, '0°', '0°', 'face up', 'one'],
      ['3', card.name, '45°', '−45°', 'face down', 'one'],
    ]);
  });

  test('say what is cut as a mirrored pair, where a patch goes, and how long the roll lasts', () => {
    expect(textOf(context, 'layup.bookMatched')).toContain('Mirrored pair for ply 1');
    expect(textOf(context, 'layup.patch.1')).toBe(
      `Doubler 1 at hinge: ${card.name}, 30°, face down: lies at −30°, 6.0 cm², laid on ply 2.`,
    );
    expect(textOf(context, 'prepreg.twill-200.roll')).toContain(
      '12.0 h out of 720.0 h allowed, 702.0 h left',
    );
    expect(textOf(trayContext(), 'layup.bookMatched')).toBeUndefined();
  });
});

test('the text fits 80 columns and has room to write', () => {
  const text = checklistText(modelOf(faulty));
  expect(text.split('\n').filter((row) => row.length > 80)).toEqual([]);
  expect(text).toMatch(/m1 print along x: ______ mm$/mu);
});

const htmlOf = (context: StepContext, record = {}) =>
  recordHtml(modelOf(context, record), stepReports(context));

describe('the full record', () => {
  test('needs nothing from outside and runs nothing', () => {
    const html = htmlOf(faulty);
    expect(html).not.toMatch(/<script|<link|<img|https?:|url\(/iu);
    expect(html).toContain('@page');
    expect(html).toContain("default-src 'none'");
  });

  test('holds every figure with its working, every verdict and every caution of the steps', () => {
    const html = htmlOf(faulty);
    for (const { figures, verdicts, cautions } of stepReports(faulty).values()) {
      for (const one of figures) for (const line of one.working) expect(html).toContain(escapeHtml(line));
      for (const { reason } of verdicts) expect(html).toContain(escapeHtml(reason));
      for (const { text } of cautions) expect(html).toContain(escapeHtml(text));
    }
  });

  test('text from outside cannot become markup', () => {
    const wicked = '<img src=x onerror="alert(1)">&\'';
    const context = trayContext({ pattern: { fileName: wicked } });
    const html = recordHtml(
      checklistModel({ ...facts, part: wicked }, context, {
        'note.print': { done: false, measured: wicked, initials: '' },
      }),
      stepReports(context),
    );
    expect(html).not.toContain('<img');
    expect(html.split(escapeHtml(wicked)).length).toBeGreaterThan(4);
  });
});

describe('a checklist whose results are not in', () => {
  const awaited = [{ stage: 'halves', isUnderWay: true }] as const;
  const told = 'Do not work from this sheet. The two stone halves are still being cast.';

  test('says so at its head and on every page', () => {
    const context = { ...trayContext(), awaited };
    const model = modelOf(context);
    expect(model.incomplete).toEqual(['The two stone halves are still being cast.']);
    expect(checklistText(model).replaceAll(/\s+/gu, ' ')).toContain(`INCOMPLETE. ${told}`);
    const html = recordHtml(model, stepReports(context));
    expect(html).toContain(`<strong>Incomplete.</strong> ${told}`);
    expect(html).toContain('<div class="stamp" aria-hidden="true">INCOMPLETE</div>');
    expect(model.card.word).toBe('not yet known');
  });

  test('says so where there is no pattern, and no longer once all is in', () => {
    expect(modelOf(emptyContext()).incomplete).toEqual(['No pattern is imported.']);
    expect(modelOf(trayContext()).incomplete).toEqual([]);
    expect(checklistText(modelOf(trayContext()))).not.toContain('INCOMPLETE');
  });
});
