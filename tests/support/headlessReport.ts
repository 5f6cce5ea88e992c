/** Figures and verdicts of the headless report of one tray, as another program would read them. */
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { writeStlBinary } from '../../src/core/mesh/writeStl';
import { runReport } from '../../src/report/runReport';
import { tray } from './meshes';

interface ReportedFigure {
  readonly id: string;
  readonly value: unknown;
  readonly unit: string;
  readonly working: readonly string[];
}

interface ReportedVerdict {
  readonly id: string;
  readonly word: string;
  readonly reason: string;
}

type ReportedSteps = Readonly<
  Record<
    string,
    { readonly figures: readonly ReportedFigure[]; readonly verdicts: readonly ReportedVerdict[] }
  >
>;

export interface TrayReports {
  /** @param words of the command line after the model's own */
  readonly report: (...words: readonly string[]) => Promise<{
    readonly figure: (id: string) => ReportedFigure | undefined;
    readonly value: (id: string) => unknown;
    readonly verdict: (id: string) => ReportedVerdict | undefined;
  }>;
  readonly remove: () => void;
}

/** 60 × 40 × 15 mm outside, 2 mm wall, open upward: the show face looks down. */
export function trayReports(): TrayReports {
  const folder = mkdtempSync(join(tmpdir(), 'mold-report-'));
  const path = join(folder, 'tray.stl');
  writeFileSync(path, writeStlBinary(tray([60, 40, 15], 2)));
  return {
    async report(...words) {
      const { output } = await runReport(
        [
          '--stl',
          path,
          '--unit',
          'mm',
          '--pull',
          '0,0,-1',
          '--set',
          'mold.prySlotCount=0',
          ...words,
          '--json',
        ],
        { appVersion: '0', date: '2031-05-06', onProgress: () => {} },
      );
      const { steps } = JSON.parse(output) as { readonly steps: ReportedSteps };
      const stepOf = (id: string) => steps[id.split('.')[0] ?? ''];
      const figure = (id: string) => stepOf(id)?.figures.find((one) => one.id === id);
      return {
        figure,
        value: (id) => figure(id)?.value,
        verdict: (id) => stepOf(id)?.verdicts.find((one) => one.id === id),
      };
    },
    remove: () => rmSync(folder, { recursive: true }),
  };
}
