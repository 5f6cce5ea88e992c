/** The headless command and the copies of cards that a project file carries. */
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, expect, it } from 'vitest';
import { runReport } from '../../src/report/runReport';
import { withCardPicked } from '../../src/workbook/cardPicks';
import { newProject } from '../../src/workbook/project';
import { writeProjectFile } from '../../src/workbook/projectFile';
import type { ShelfCard } from '../../src/workbook/shelfCards';
import { done } from '../workbook/support';

const folder = mkdtempSync(join(tmpdir(), 'cards-'));
afterAll(() => rmSync(folder, { recursive: true }));

const at = '2026-01-05T08:00:00.000Z';
const stone: ShelfCard = {
  id: 'stone-1',
  kind: 'stone',
  name: 'Stone A',
  note: '',
  changedAt: at,
  values: {
    'mold.bag.demoldMin': { value: 45, origin: 'supplier' },
    'mold.measured.settingExpansionPercent': { value: 0.21, origin: 'measured' },
  },
  log: [],
};

it('uses what the copies say, with where it is from; what is set beside them is the maker’s own', async () => {
  const empty = newProject({ id: 'a', enclosure: 'Lamp', name: 'Lid', at });
  const { inputs, cards } = done(withCardPicked(empty, stone, null, at));
  const file = join(folder, 'lid.workbook.json');
  writeFileSync(file, writeProjectFile({ ...empty, inputs, cards }, null));
  const figures = async (...words: readonly string[]) => {
    const { output } = await runReport(['--project', file, '--json', ...words], {
      appVersion: '0',
      date: '2026-01-05',
      onProgress: () => undefined,
    });
    const { steps } = JSON.parse(output) as {
      readonly steps: {
        readonly mold: { readonly figures: readonly { id: string; value: number; status: string }[] };
      };
    };
    return (id: string) => steps.mold.figures.find((figure) => figure.id === id);
  };
  const asTaken = await figures();
  expect(asTaken('mold.demoldMin')).toMatchObject({ value: 45, status: 'supplier’s sheet' });
  expect(asTaken('mold.settingExpansionPercent')).toMatchObject({ value: 0.21, status: 'measured' });
  expect(asTaken('mold.demoldMin')).not.toHaveProperty('entries');
  const withOwn = await figures('--set', 'mold.bag.demoldMin=50');
  expect(withOwn('mold.demoldMin')).toMatchObject({ value: 50, status: 'your entry' });
});
