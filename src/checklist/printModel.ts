/**
 * The checklist as plain data: header, quantities, and tick-box lines in the order of the bench work. The page, the
 * saved HTML file and the terminal draw the same model.
 */
import { worstWord, type Figure, type StepReport } from '../core/figure';
import { formatBand, formatFigure } from '../core/units/formatFigure';
import type { StepContext } from '../steps/shared/context';
import { stepReports, steps } from '../steps/registry';
import { decide, headline, stamps } from '../steps/shared/decision';
import { benchSections } from './benchSections';
import { incompleteReasons } from './incomplete';
import type { ChecklistFacts, ChecklistModel, ChecklistRecord, LabeledText, LineRecord } from './model';

export type * from './model';

/** Figures that stand under "materials and quantities". */
const quantityIds = [
  'part.boxMm',
  'part.volumeMm3',
  'plies.plyCount',
  'plies.laidThicknessMm',
  'plies.curedThicknessMm',
  'plies.fiberVolumeFraction',
  'plies.arealMassGsm',
  'plies.partMassG',
  'plies.prepregAreaCm2',
  'plies.prepregMassG',
  'plies.prepregBuyCm2',
  'walls.bandLowMm',
  'walls.bandHighMm',
  'mold.boxMm',
  'mold.powderKg',
  'mold.counterweightG',
  'mold.sealerMl',
  'mold.releaseMl',
  'closing.clampForceN',
  'closing.standOffMm',
] as const;

const untouched: LineRecord = { done: false, measured: '', initials: '' };

export function checklistModel(
  facts: ChecklistFacts,
  context: StepContext,
  record: ChecklistRecord = {},
  reports: ReadonlyMap<string, StepReport> = stepReports(context),
): ChecklistModel {
  const figures = new Map<string, Figure>();
  for (const report of reports.values()) for (const one of report.figures) figures.set(one.id, one);
  const sections = benchSections(context, reports, figures).map((section) => ({
    ...section,
    lines: section.lines.map((line) => ({ ...line, record: record[line.id] ?? untouched })),
  }));
  const stepWords = steps
    .filter(({ id }) => id !== 'checklist')
    .map(({ id, title }) => ({ title, word: worstWord(reports.get(id)?.verdicts ?? []) }));
  return {
    title: `${facts.project}: ${facts.part}`,
    incomplete: incompleteReasons(context),
    header: headerOf(facts, context, reports),
    ready: { word: worstWord(reports.get('checklist')?.verdicts ?? []), steps: stepWords },
    quantities: [...materialsOf(context), ...quantityIds.flatMap((id) => quantity(figures.get(id)))],
    sections,
  };
}

const plain = (label: string, value: string): LabeledText => ({ label, value, status: '' });

function headerOf(
  facts: ChecklistFacts,
  { pattern }: StepContext,
  reports: ReadonlyMap<string, StepReport>,
): readonly LabeledText[] {
  const decision = decide(reports);
  return [
    plain('May the stone be poured', `${stamps[decision.word].toUpperCase()}: ${headline(decision)}`),
    plain('Project', facts.project),
    plain('Part', facts.part),
    plain('Pattern file', pattern?.fileName ?? 'none imported'),
    plain('Hash of the file (SHA-256, first 12)', pattern?.sha256.slice(0, 12) ?? '–'),
    plain('Date', facts.date),
    plain('Workbook version', `${facts.appVersion}, format ${facts.formatNumber}`),
  ];
}

/** One line for each prepreg that the stack really uses. */
function materialsOf({ inputs }: StepContext): readonly LabeledText[] {
  return inputs.plies.materials.flatMap((card) => {
    const plies = inputs.plies.stack.filter(({ materialId }) => materialId === card.id).length;
    if (plies === 0) return [];
    return [
      {
        label: 'Prepreg',
        value: `${card.name}: ${plies} ${plies === 1 ? 'ply' : 'plies'}`,
        status: 'your entry',
      },
    ];
  });
}

function quantity(one: Figure | undefined): readonly LabeledText[] {
  if (one === undefined || one.value === null) return [];
  const band = formatBand(one);
  return [
    {
      label: one.label,
      value: band === '' ? formatFigure(one) : `${formatFigure(one)} (${band})`,
      status: one.status,
    },
  ];
}
