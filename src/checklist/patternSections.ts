/** The checklist up to a pattern that is printed, mended and measured. */
import { formatNumber } from '../core/units/formatNumber';
import type { StepContext } from '../steps/shared/context';
import {
  cautionsOf,
  known,
  line,
  measuring,
  value,
  warningsOf,
  type Figures,
  type LineDraft,
  type Reports,
  type SectionDraft,
} from './lineDrafts';

/** Ranked places that are sent to the bench at most; the sheet on screen has them all. */
const mostPlaces = 6;

export function modelSection(context: StepContext, reports: Reports, figures: Figures): SectionDraft {
  const lines: LineDraft[] = [
    line(
      'model.file',
      context.pattern === null
        ? 'Import the model of the pattern; this sheet has no pattern yet.'
        : `The pattern on the printer is ${context.pattern.fileName}, hash ${context.pattern.sha256.slice(0, 12)}.`,
    ),
  ];
  if (known(figures, 'part.boxMm'))
    lines.push(
      line(
        'model.size',
        `Size is ${value(figures, 'part.boxMm')} at scale ${value(figures, 'part.scale')}.`,
        ['part.boxMm', 'part.scale'],
      ),
    );
  return {
    id: 'model',
    title: 'Check the model',
    warnings: warningsOf(reports, 'part'),
    cautions: [],
    lines,
  };
}

export function printSection(context: StepContext, reports: Reports, figures: Figures): SectionDraft {
  const { part, plies } = context.inputs;
  const lines: LineDraft[] = [
    line(
      'print.lines',
      part.nominalWall === 'print'
        ? `Print the wall as ${part.printLines} beads of ${formatNumber(plies.lineWidthMm, 3)} mm: ${value(figures, 'part.nominalWallMm')}; open face ${part.openFace === 'againstPull' ? 'away from the pull' : `toward ${part.openFace}`}.`
        : `Print with beads of ${formatNumber(plies.lineWidthMm, 3)} mm; the wall is as drawn in the model.`,
      ['part.nominalWallMm'],
    ),
    line(
      'print.pull',
      `Mark the pull on the pattern: the negative leaves along (${part.pull.map((one) => formatNumber(one, 3)).join(', ')}) in the file's axes.`,
    ),
  ];
  const inBand = figures.get('walls.inBandPercent')?.value;
  const mostlyInBand = typeof inBand === 'number' && inBand >= 50;
  for (const [index, patch] of (context.measured?.patches ?? []).slice(0, mostPlaces).entries()) {
    const what = fixOf(patch.finding, mostlyInBand);
    if (what !== null)
      lines.push(
        line(
          `print.fix.${index + 1}`,
          `${what} at ${patch.place.replace(/^undercut, /u, '')} (${formatNumber(patch.areaMm2, 0)} mm², near ${place(patch.worstAtMm)}).`,
        ),
      );
  }
  lines.push(line('print.clean', 'Layer steps and seams sanded, surface sealed, no loose strings inside.'));
  return {
    id: 'print',
    title: 'Print and mend the pattern',
    warnings: warningsOf(reports, 'walls'),
    cautions: cautionsOf(reports, 'part.patternDust', 'walls.fillerDust'),
    lines,
  };
}

const place = (point: readonly [number, number, number]) =>
  `x ${formatNumber(point[0], 1)}, y ${formatNumber(point[1], 1)}, z ${formatNumber(point[2], 1)} mm`;

/** A wall that is wrong all over is a question of stack or print, told by the verdict, not of single places. */
function fixOf(finding: string, mostlyInBand: boolean): string | null {
  if (finding === 'locks') return 'Undercut filled or drawn away';
  if (finding === 'thick' && mostlyInBand) return 'Wall that was too thick mended';
  if (finding === 'thin' && mostlyInBand) return 'Wall that was too thin mended';
  return null;
}

export function caliperSection(context: StepContext, figures: Figures): SectionDraft {
  const accepted = known(figures, 'walls.bandLowMm')
    ? `, accepted ${value(figures, 'walls.bandLowMm')} to ${value(figures, 'walls.bandHighMm')}`
    : '';
  const band = ['walls.bandLowMm', 'walls.bandHighMm'];
  const patches = (context.measured?.patches ?? []).filter(
    ({ finding }) => finding === 'thick' || finding === 'thin',
  );
  const median = known(figures, 'part.nominalWallMm') ? 'part.nominalWallMm' : 'walls.rayMedianMm';
  const lines = [
    measuring(
      'caliper.typical',
      `Wall at a typical place of the show face; the model says ${value(figures, median)}${accepted}.`,
      'wall',
      'mm',
      [median, ...band],
    ),
    ...patches
      .slice(0, mostPlaces)
      .map((patch, index) =>
        measuring(
          `caliper.place.${index + 1}`,
          `Wall at ${patch.place}, near ${place(patch.worstAtMm)}; the model says ${formatNumber(patch.worst, 2)} mm${accepted}.`,
          'wall',
          'mm',
          band,
        ),
      ),
    measuring(
      'caliper.size',
      `Longest side of the print; the model says ${value(figures, 'part.boxMm')}.`,
      'length',
      'mm',
      ['part.boxMm'],
    ),
  ];
  return {
    id: 'caliper',
    title: 'Measure the printed wall with a caliper',
    warnings: [],
    cautions: [],
    lines,
  };
}
