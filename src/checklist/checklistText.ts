/** The checklist for a terminal or a plain text file, 78 columns. */
import type {
  ChecklistFactTable,
  ChecklistLine,
  ChecklistModel,
  ChecklistSection,
  LabeledText,
} from './model';

const columns = 78;

/** Breaks at spaces; `first` stands before the first line, the rest is indented to match. */
function wrap(text: string, first = ''): string {
  const indent = ' '.repeat(first.length);
  const rows: string[] = [];
  let row = first;
  for (const word of text.split(' ')) {
    const fits = row.length + word.length + 1 <= columns || row.trim() === '' || row === first;
    if (fits) row += row === first || row === indent ? word : ` ${word}`;
    else {
      rows.push(row);
      row = indent + word;
    }
  }
  rows.push(row);
  return rows.join('\n');
}

function labeled({ label, value, status }: LabeledText): string {
  return wrap(`${label}: ${value}${status === '' ? '' : ` [${status}]`}`, '  ');
}

function lineText({ text, measure, record }: ChecklistLine): string {
  const initials = `initials: ${record.initials === '' ? '____' : record.initials}`;
  const entry = record.measured === '' ? '________' : record.measured;
  const measured = measure === undefined ? '' : `${measure.label}: ${entry} ${measure.unit}   `;
  return `${wrap(text, record.done ? '[x] ' : '[ ] ')}\n      ${measured}${initials}`;
}

/** Columns in line where they fit; a row that is too long is wrapped. */
function tableText({ caption, columns: heads, rows }: ChecklistFactTable): string {
  const widths = heads.map((head, at) =>
    Math.max(head.length, ...rows.map((cells) => cells[at]?.length ?? 0)),
  );
  const fits = widths.reduce((sum, width) => sum + 2 + width, 0) <= columns;
  const row = (cells: readonly string[]) =>
    fits
      ? `  ${cells.map((cell, at) => cell.padEnd(widths[at] ?? 0)).join('  ')}`.trimEnd()
      : wrap(cells.join(', '), '  ');
  return [`  ${caption}`, row(heads), ...rows.map(row)].join('\n');
}

function sectionText(section: ChecklistSection, number: number): string {
  const title = `${number}. ${section.title}`;
  return [
    title,
    '-'.repeat(title.length),
    ...section.warnings.map(({ word, reason, fix }) =>
      wrap(`${word.toUpperCase()}: ${reason}${fix === '' ? '' : ` ${fix}`}`, '  > '),
    ),
    ...section.cautions.map(({ text }) => wrap(`CAUTION: ${text}`, '  ! ')),
    ...(section.table === undefined ? [] : [tableText(section.table)]),
    ...section.lines.map(lineText),
  ].join('\n');
}

export function checklistText(model: ChecklistModel): string {
  const { title, incomplete, header, ready, quantities, sections } = model;
  return [
    title,
    '='.repeat(Math.min(columns, title.length)),
    ...(incomplete.length === 0
      ? []
      : [wrap(`INCOMPLETE. Do not work from this sheet. ${incomplete.join(' ')}`)]),
    ...header.map(labeled),
    '',
    `Verdict: ${ready.word.toUpperCase()}`,
    ...ready.steps.map((step) => `  ${step.title}: ${step.word}`),
    '',
    'Materials and quantities',
    ...quantities.map(labeled),
    '',
    ...sections.map((section, index) => `${sectionText(section, index + 1)}\n`),
  ].join('\n');
}
