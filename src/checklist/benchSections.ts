/** The sections of the checklist in the order of the bench work, as far as the workbook knows the work. */
import type { Caution, Figure, StepReport, Verdict } from '../core/figure';
import { formatFigure } from '../core/units/formatFigure';
import { formatNumber } from '../core/units/formatNumber';
import type { StepContext } from '../steps/context';
import { resolveStack } from '../steps/plies/stack';
import type { ChecklistLine, ChecklistSection } from './model';

type SectionDraft = Omit<ChecklistSection, 'lines'> & { readonly lines: readonly LineDraft[] };
type LineDraft = Omit<ChecklistLine, 'record'>;
type Figures = ReadonlyMap<string, Figure>;
type Reports = ReadonlyMap<string, StepReport>;

/** Places to put the caliper beyond the ranked ones, when the map names none. */
const mostPlaces = 6;

export function benchSections(
  context: StepContext,
  reports: Reports,
  figures: Figures,
): readonly SectionDraft[] {
  return [
    modelSection(context, reports, figures),
    printSection(context, reports, figures),
    caliperSection(context, figures),
    prepregSection(context, reports),
    layupSection(context, reports, figures),
    laterSection(reports),
  ];
}

const line = (id: string, text: string, figures: readonly string[] = []): LineDraft => ({
  id,
  text,
  figures,
});

const measuring = (
  id: string,
  text: string,
  label: string,
  unit: string,
  figures: readonly string[] = [],
): LineDraft => ({
  id,
  text,
  figures,
  measure: { label, unit },
});

/** The figure's value with its unit, or words for a gap that the maker fills. */
function value(figures: Figures, id: string): string {
  const one = figures.get(id);
  return one === undefined ? 'not known' : formatFigure(one);
}

const known = (figures: Figures, id: string) => (figures.get(id)?.value ?? null) !== null;

function warningsOf(reports: Reports, ...stepIds: readonly string[]): SectionDraft['warnings'] {
  return stepIds
    .flatMap((id) => reports.get(id)?.verdicts ?? [])
    .filter(({ word }) => word !== 'go')
    .map(({ word, reason, fix }: Verdict) => ({ word, reason, fix }));
}

function cautionsOf(reports: Reports, ...ids: readonly string[]): readonly Caution[] {
  const all = [...reports.values()].flatMap(({ cautions }) => cautions);
  return ids.flatMap((id) => all.filter((caution) => caution.id === id));
}

function modelSection(context: StepContext, reports: Reports, figures: Figures): SectionDraft {
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

function printSection(context: StepContext, reports: Reports, figures: Figures): SectionDraft {
  const { part, plies } = context.inputs;
  const lines: LineDraft[] = [
    line(
      'print.lines',
      part.nominalWall === 'print'
        ? `Print the wall as ${part.printLines} lines of ${formatNumber(plies.lineWidthMm, 2)} mm: ${value(figures, 'part.nominalWallMm')}; open face ${part.openFace === 'againstPull' ? 'away from the pull' : `toward ${part.openFace}`}.`
        : `Print with lines of ${formatNumber(plies.lineWidthMm, 2)} mm; the wall is as drawn in the model.`,
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
          `${what} at ${patch.place} (${formatNumber(patch.areaMm2, 0)} mm², near ${place(patch.worstAtMm)}).`,
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

function caliperSection(context: StepContext, figures: Figures): SectionDraft {
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

function prepregSection({ inputs }: StepContext, reports: Reports): SectionDraft {
  const used = inputs.plies.materials.filter(({ id }) =>
    inputs.plies.stack.some(({ materialId }) => materialId === id),
  );
  return {
    id: 'prepreg',
    title: 'Take out the prepreg',
    warnings: [],
    cautions: cautionsOf(reports, 'plies.resinSkin'),
    lines: [
      ...used.map((card) =>
        line(
          `prepreg.${card.id}.roll`,
          `${card.name}: label read, within shelf life and out-time of the supplier.`,
        ),
      ),
      line(
        'prepreg.thaw',
        'Thawed in the closed bag until no water forms on it; time out of the freezer written down.',
      ),
      ...used.map((card) =>
        measuring(
          `prepreg.${card.id}.laid`,
          `${card.name}: three plies laid on each other, caliper reading divided by three${card.laidThicknessMm === null ? '' : `; the card says ${formatNumber(card.laidThicknessMm, 3)} mm`}.`,
          'one ply as laid',
          'mm',
          ['plies.laidPlyMm'],
        ),
      ),
    ],
  };
}

function layupSection({ inputs }: StepContext, reports: Reports, figures: Figures): SectionDraft {
  const stack = resolveStack(inputs.plies);
  const lines: LineDraft[] = stack.known
    ? [
        line(
          'layup.cut',
          `${value(figures, 'plies.plyCount')} plies cut, about ${value(figures, 'plies.prepregAreaCm2')} in all; each one marked with its number and fiber direction.`,
          ['plies.plyCount', 'plies.prepregAreaCm2'],
        ),
        ...stack.plies.map(({ ply, card }, index) =>
          line(
            `layup.ply.${index + 1}`,
            `Ply ${index + 1}${index === 0 ? ' (show face)' : index === stack.plies.length - 1 ? ' (core face)' : ''}: ${card.name}, ${formatNumber(ply.angleDeg, 0)}°.`,
          ),
        ),
        measuring(
          'layup.stack',
          `Offcuts laid as a stack of all plies; expected ${value(figures, 'plies.laidThicknessMm')} as laid, ${value(figures, 'plies.curedThicknessMm')} cured.`,
          'stack as laid',
          'mm',
          ['plies.laidThicknessMm', 'plies.curedThicknessMm'],
        ),
      ]
    : [line('layup.cut', stack.fix)];
  return {
    id: 'layup',
    title: 'Cut the plies',
    warnings: warningsOf(reports, 'plies'),
    cautions: cautionsOf(reports, 'plies.blades', 'plies.carbonDust'),
    lines,
  };
}

function laterSection(reports: Reports): SectionDraft {
  return {
    id: 'later',
    title: 'Before the work goes on',
    warnings: [],
    cautions: cautionsOf(reports, 'checklist.laterStages'),
    lines: [line('later.read', 'Safety data sheets of resin, stone and release agent read and at hand.')],
  };
}
