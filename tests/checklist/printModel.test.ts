import { describe, expect, test } from 'vitest';
import { checklistHtml, escapeHtml } from '../../src/checklist/checklistHtml';
import { checklistText } from '../../src/checklist/checklistText';
import { checklistModel, type ChecklistFacts } from '../../src/checklist/printModel';
import { stepReports } from '../../src/steps/registry';
import { defaultMaterial } from '../../src/steps/inputs/material';
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
  summary: { showWall: walls([0.8, 8800], [1.6, 1200]) },
});

describe('the checklist', () => {
  const model = checklistModel(facts, faulty);

  test('carries what identifies the work', () => {
    const header = Object.fromEntries(model.header.map(({ label, value }) => [label, value]));
    expect(header).toMatchObject({
      Project: 'Wind meter',
      Part: 'Upper half',
      'Pattern file': 'tray.stl',
      Date: '2031-05-06',
      'Workbook version': '9.8.7, format 42',
    });
    expect(Object.values(header)).toContain('0123456789ab');
  });

  test('follows the order of the bench work', () => {
    expect(model.sections.map(({ id }) => id)).toEqual([
      'model',
      'print',
      'caliper',
      'box',
      'pour.negative',
      'pour.positive',
      'drying',
      'seal',
      'prepreg',
      'layup',
      'beforeClosing',
      'closing',
      'oven',
      'cure',
      'cool',
      'later',
    ]);
  });

  test('line ids are unique and stay the same when a record is added', () => {
    const ids = model.sections.flatMap(({ lines }) => lines.map(({ id }) => id));
    expect(new Set(ids).size).toBe(ids.length);
    const record = { 'layup.ply.2': { done: true, measured: '', initials: 'kl' } };
    const again = checklistModel(facts, faulty, record);
    expect(again.sections.flatMap(({ lines }) => lines.map(({ id }) => id))).toEqual(ids);
    const line = again.sections.flatMap(({ lines }) => lines).find(({ id }) => id === 'layup.ply.2');
    expect(line?.record).toEqual(record['layup.ply.2']);
    expect(line?.text).toContain('45°');
  });

  test('sends the caliper to the places that the map ranks', () => {
    const caliper = model.sections.find(({ id }) => id === 'caliper');
    const line = caliper?.lines.find(({ id }) => id === 'caliper.place.1');
    expect(line?.text).toContain('show face, −y side');
    expect(line?.text).toContain('1.60 mm');
    expect(line?.measure).toEqual({ label: 'wall', unit: 'mm' });
  });

  test('prints warnings and cautions where the work is, and every caution of the steps', () => {
    const print = model.sections.find(({ id }) => id === 'print');
    expect(print?.warnings.some(({ word }) => word === 'stop')).toBe(true);
    expect(print?.lines.some(({ text }) => text.includes('Undercut filled'))).toBe(true);
    const cautions = model.sections.flatMap(({ cautions: some }) => some.map(({ id }) => id));
    const told = [...stepReports(faulty).values()].flatMap((report) => report.cautions.map(({ id }) => id));
    expect([...new Set(cautions)].toSorted()).toEqual(told.toSorted());
  });

  test('every figure that a line cites exists', () => {
    const cited = model.sections.flatMap(({ lines }) => lines.flatMap(({ figures }) => figures));
    expect(cited.length).toBeGreaterThan(5);
    const known = new Set(
      [...stepReports(faulty).values()].flatMap((report) => report.figures.map(({ id }) => id)),
    );
    expect(cited.filter((id) => !known.has(id))).toEqual([]);
  });

  test('without a pattern and plies it says so and still prints', () => {
    const bare = checklistText(checklistModel(facts, emptyContext({ plies: { stack: [] } })));
    expect(bare).toContain('none imported');
    expect(bare).toContain('Add the plies');
    expect(bare).not.toMatch(/NaN|undefined|null/u);
  });
});

describe('the plies on the checklist', () => {
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
  const model = checklistModel(facts, trayContext({ plies: { materials: [card], stack, patches: [patch] } }));
  const layup = model.sections.find(({ id }) => id === 'layup');
  const textOf = (lineId: string) =>
    model.sections.flatMap(({ lines }) => lines).find(({ id }) => id === lineId)?.text;

  test('stand in a table: cut angle, laid angle, way up, pieces', () => {
    expect(layup?.table?.rows).toEqual([
      ['1', card.name, '45°', '−45° and 45°', 'face down', 'mirrored pair'],
      ['2', card.name, '0°', '0°', 'face up', 'one'],
      ['3', card.name, '45°', '−45°', 'face down', 'one'],
    ]);
    const text = checklistText(model);
    expect(text).toMatch(/Ply {2}Material {2,}Cut at {2}Lies at/u);
    expect(text.split('\n').filter((row) => row.length > 80)).toEqual([]);
    expect(checklistHtml(model)).toContain('<caption>Plies from the show face inward</caption>');
  });

  test('say when a piece is turned over or cut as a mirrored pair, and where a patch goes', () => {
    expect(textOf('layup.ply.3')).toBe(`Ply 3 (core face): ${card.name}, 45°, face down: lies at −45°.`);
    expect(textOf('layup.bookMatched')).toContain('Mirrored pair for ply 1');
    expect(textOf('layup.patch.1')).toBe(
      `Doubler 1 at hinge: ${card.name}, 30°, face down: lies at −30°, 6.0 cm², laid on ply 2.`.replace(
        ' ',
        ' ',
      ),
    );
  });

  test('carry the facts of the roll', () => {
    expect(textOf('prepreg.twill-200.roll')).toContain('freezer date 2030-01-05');
    expect(textOf('prepreg.twill-200.roll')).toContain('12.0 h out of 720.0 h allowed, 702.0 h left');
  });

  test('plain stacks have no line about mirrored pairs', () => {
    const plain = checklistModel(facts, trayContext());
    const ids = plain.sections.flatMap(({ lines }) => lines.map(({ id }) => id));
    expect(ids).not.toContain('layup.bookMatched');
    expect(ids.filter((id) => id.startsWith('layup.patch'))).toEqual([]);
  });
});

describe('as text', () => {
  const text = checklistText(checklistModel(facts, faulty));

  test('fits 80 columns and has boxes, numbers and room to write', () => {
    expect(text.split('\n').filter((row) => row.length > 80)).toEqual([]);
    expect(text).toContain('[ ] Ply 2: Twill prepreg 200 g/m², 45°.');
    expect(text).toMatch(/wall: ________ mm {3}initials: ____/u);
    expect(text).toMatch(/Stack as laid: 0\.75\smm/u);
    expect(text).toContain('Verdict: STOP');
  });

  test('shows what was entered', () => {
    const record = { 'caliper.typical': { done: true, measured: '0.81', initials: 'kl' } };
    const signed = checklistText(checklistModel(facts, faulty, record));
    expect(signed).toMatch(/\[x\] Wall at a typical place/u);
    expect(signed).toContain('wall: 0.81 mm   initials: kl');
  });
});

describe('as a file', () => {
  test('needs nothing from outside and runs nothing', () => {
    const html = checklistHtml(checklistModel(facts, faulty));
    expect(html).not.toMatch(/<script|<link|<img|https?:|url\(/iu);
    expect(html).toContain('@page');
    expect(html).toContain('<thead>');
    expect(html).toContain("default-src 'none'");
  });

  test('text from outside cannot become markup', () => {
    const wicked = '<img src=x onerror="alert(1)">&\'';
    const html = checklistHtml(
      checklistModel({ ...facts, part: wicked }, trayContext({ pattern: { fileName: wicked } }), {
        'caliper.typical': { done: false, measured: wicked, initials: wicked },
      }),
    );
    expect(html).not.toContain('<img');
    expect(html.split(escapeHtml(wicked)).length).toBeGreaterThan(5);
  });
});

describe('a checklist whose results are not in', () => {
  const awaited = [{ stage: 'halves', isUnderWay: true }] as const;
  const told = 'Do not work from this sheet. The two stone halves are still being cast.';

  test('says so at its head and on every page', () => {
    const model = checklistModel(facts, { ...trayContext(), awaited });
    expect(model.incomplete).toEqual(['The two stone halves are still being cast.']);
    expect(checklistText(model).replaceAll(/\s+/gu, ' ')).toContain(`INCOMPLETE. ${told}`);
    expect(checklistHtml(model)).toContain(`<strong>Incomplete.</strong> ${told}`);
    expect(checklistHtml(model)).toContain('<div class="stamp" aria-hidden="true">INCOMPLETE</div>');
    expect(model.ready.steps).toContainEqual({ title: 'Stone mold', word: 'not yet known' });
  });

  test('says so where there is no pattern', () => {
    expect(checklistModel(facts, emptyContext()).incomplete).toEqual(['No pattern is imported.']);
  });

  test('is stamped no longer once they are in', () => {
    const model = checklistModel(facts, trayContext());
    expect(model.incomplete).toEqual([]);
    for (const sheet of [checklistText(model), checklistHtml(model)])
      expect(sheet).not.toMatch(/INCOMPLETE|Incomplete/u);
  });
});
