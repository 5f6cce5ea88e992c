/** The sections of the checklist in the order of the bench work, as far as the workbook knows the work. */
import type { StepContext } from '../steps/shared/context';
import type { Figures, Reports, SectionDraft } from './lineDrafts';
import { beforeClosingSection, closingSection } from './closingSection';
import { cureSections } from './cureSections';
import { layupSection } from './layupSection';
import { moldSections } from './moldSections';
import { caliperSection, modelSection, printSection } from './patternSections';
import { laterSection, prepregSection } from './plySections';

export function benchSections(
  context: StepContext,
  reports: Reports,
  figures: Figures,
): readonly SectionDraft[] {
  return [
    modelSection(context, reports, figures),
    printSection(context, reports, figures),
    caliperSection(context, figures),
    ...moldSections(context, reports, figures),
    prepregSection(context, reports),
    layupSection(context, reports, figures),
    beforeClosingSection(context, reports),
    closingSection(context, reports, figures),
    ...cureSections(context, reports, figures),
    laterSection(reports),
  ];
}
