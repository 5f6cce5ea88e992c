/** The last page of the paper: what stands there once coats, seam and transmitters are entered. */
import { describe, expect, test } from 'vitest';
import { fitFindings } from '../../src/core/fit/findings';
import { checklistModel } from '../../src/checklist/printModel';
import { fitChoicesOf } from '../../src/steps/fit/choicesOf';
import { finishCoatTable } from '../../src/steps/inputs/finish';
import { contentTable, transmitterTable } from '../../src/steps/inputs/fit';
import type { ProjectInputs } from '../../src/steps/inputs/project';
import { startOf } from '../../src/steps/kit/inputTable';
import { boxShell } from '../core/fit/shells';
import { inputsWith, trayContext } from '../steps/contexts';

const facts = { project: 'Lamp', part: 'Lid', date: '2031-05-06', appVersion: '1', formatNumber: 7 };
const coat = { ...startOf(finishCoatTable), id: 'c', filmUm: 200, recoatToH: 24 };
const fit: Partial<ProjectInputs['fit']> = {
  contents: [{ ...startOf(contentTable), id: 'a', what: 'cell', zMm: 8 }],
  transmitters: [{ ...startOf(transmitterTable), id: 't' }],
  seam: 'bead',
};
function finishOf(finish: Partial<ProjectInputs['finish']>, withFit = false) {
  const inputs = withFit ? { fit, finish } : { finish };
  const choices = fitChoicesOf(inputsWith({ ...inputs, part: { pull: [0, 0, 1] } }), null);
  const found = withFit ? fitFindings(boxShell(100, 50, 20, 1), null, choices) : null;
  return checklistModel(facts, { ...trayContext(inputs), fit: found }).phases.at(-1)!;
}
const textOf = (phase: ReturnType<typeof finishOf>, id: string) =>
  phase.actions.find((one) => one.id === id)?.text.replaceAll('\u202f', ' ');

describe('the finish page', () => {
  test('without entries has no line of them, and the allowance to be trimmed', () => {
    const phase = finishOf({});
    expect(phase.actions.map(({ id }) => id).filter((id) => /coat|sand|seam|range|mix/u.test(id))).toEqual(
      [],
    );
    expect(phase.table).toBeNull();
    expect(textOf(phase, 'finish.trim')).toContain('the 2 mm of allowance at the rim');
    expect(textOf(finishOf({ trimAllowanceMm: 0 }), 'finish.trim')).not.toContain('allowance');
  });

  test('says each coat with its window, and where the papers stop', () => {
    const phase = finishOf({ coats: [coat] });
    // 110 cm² twice 200 µm with 35 % lost.
    expect(textOf(phase, 'finish.mix')).toContain('6.8 mL');
    expect(textOf(phase, 'finish.coat.1')).toBe(
      'Clear coat: 2 × 200 µm dry; next coat after 4 h and within 24 h; sanded after 24 h.',
    );
    expect(textOf(phase, 'finish.sand')).toMatch(
      /^Sanded P240, .*P400 wet; \d+ µm off in all\. STOP where fiber shows/u,
    );
  });

  test('has the calendar once a day is given', () => {
    const { table } = finishOf({ coats: [coat], startDate: '2026-05-04' });
    expect(table?.rows[0]).toEqual(['Print the pattern', '2026-05-04 09:00', '2026-05-04 21:30']);
    expect(table?.rows.at(-1)?.[0]).toMatch(/^Sand, P240/u);
  });

  test('asks for the range before the seam, and the seam leaves the way to cells open', () => {
    const phase = finishOf({}, true);
    const ids = phase.actions.map(({ id }) => id);
    expect(ids.indexOf('finish.range')).toBeLessThan(ids.indexOf('finish.seam'));
    expect(textOf(phase, 'finish.range')).toContain('Radio');
    expect(textOf(phase, 'finish.dryFit')).toContain('the way to the cells left open');
    expect(textOf(phase, 'finish.seam')).toMatch(/^Seam: bead of \d\.\d\d mL along 3\d\d\.\d mm of rim\.$/u);
  });
});
