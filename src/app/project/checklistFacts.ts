import type { ChecklistFacts } from '../../checklist/printModel';
import type { Project } from '../../workbook';
import { currentFormat } from '../../workbook/migrations';

/** The facts of the printed header that no step report knows. */
export function checklistFacts(project: Project): ChecklistFacts {
  return {
    project: project.enclosure,
    part: project.name,
    date: new Date().toLocaleDateString('en-CA'),
    appVersion: workbookVersion,
    formatNumber: currentFormat,
  };
}
