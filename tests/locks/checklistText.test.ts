/** Our own printed sheet, held as it is: a change here is meant, or it is a defect. */
import { expect, test } from 'vitest';
import { checklistText } from '../../src/checklist/checklistText';
import { checklistModel } from '../../src/checklist/printModel';
import { lockPatch, thickPatch, trayContext, walls } from '../steps/contexts';

test('the checklist of a tray with one thick place and one undercut', async () => {
  const context = trayContext({
    measured: { patches: [lockPatch, thickPatch] },
    summary: {
      showWall: walls([0.8, 8800], [1.6, 1200]),
      kindAreaMm2: { show: 10_000, core: 9600, rim: 1000, detail: 400, trapped: 12, unmeasured: 0 },
    },
  });
  const facts = {
    project: 'Wind meter',
    part: 'Upper half',
    date: '2031-05-06',
    appVersion: '0.1.0',
    formatNumber: 2,
  };
  await expect(checklistText(checklistModel(facts, context))).toMatchFileSnapshot('checklist.txt');
});
