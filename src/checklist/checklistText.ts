/** Bench card and phase pages for a terminal or a plain text file, 78 columns. */
import { expectedWords } from '../steps/bench/written';
import type { Action, BenchCard, ChecklistModel, FactTable, PhasePage, PrintedBlank } from './model';

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

function blankText(blank: PrintedBlank): string {
  const { number, label, unit, written } = blank;
  const expected = expectedWords(blank);
  return wrap(
    `${number} ${label}: ${written === '' ? '______' : written} ${unit}${expected === '' ? '' : `, expected ${expected}`}`,
    '      ',
  );
}

const actionText = ({ text, blanks, done }: Action): string =>
  [wrap(text, done ? '[x] ' : '[ ] '), ...blanks.map(blankText)].join('\n');

/** Columns in line where they fit; a row that is too long is wrapped. */
function tableText({ caption, columns: heads, rows }: FactTable): string {
  const widths = heads.map((head, at) =>
    Math.max(head.length, ...rows.map((cells) => cells[at]?.length ?? 0)),
  );
  const fits = widths.reduce((sum, width) => sum + 2 + width, 0) <= columns;
  const row = (cells: readonly string[]) =>
    fits
      ? `  ${cells.map((cell, at) => cell.padEnd(widths[at] ?? 0)).join('  ')}`.trimEnd()
      : wrap(cells.join(', '), '  ');
  return [wrap(caption, '  '), row(heads), ...rows.map(row)].join('\n');
}

const headed = (title: string, sign: string) => [title, sign.repeat(Math.min(columns, title.length))];

function cardText({ of, stamp, headline, numbers, drawings, safety, footer }: BenchCard): readonly string[] {
  return [
    wrap(`${stamp}: ${headline}`),
    wrap(of),
    '',
    ...numbers.map(({ label, value, after }) =>
      wrap(`${label}: ${value}${after === '' ? '' : ` ${after}`}`, '  '),
    ),
    '',
    ...drawings.map(({ drawing }) => wrap(`${drawing.title}: ${drawing.told}`, '  ')),
    '',
    wrap(`CAUTION: ${safety}`),
    wrap(footer),
  ];
}

function phaseText({ title, stops, caution, table, actions, signedBy, note }: PhasePage): string {
  return [
    ...headed(title, '-'),
    ...stops.map((reason) => wrap(`STOP: ${reason}`, '  > ')),
    wrap(`CAUTION: ${caution}`, '  ! '),
    ...(table === null ? [] : [tableText(table)]),
    ...actions.map(actionText),
    ...(note === '' ? [] : [wrap(`Note: ${note}`, '  ')]),
    `  Done by: ${signedBy === '' ? '____' : signedBy}`,
  ].join('\n');
}

export function checklistText({ title, incomplete, card, phases, earlier }: ChecklistModel): string {
  return [
    ...headed(title, '='),
    ...(incomplete.length === 0
      ? []
      : [wrap(`INCOMPLETE. Do not work from this sheet. ${incomplete.join(' ')}`)]),
    ...cardText(card),
    '',
    ...phases.map((phase) => `${phaseText(phase)}\n`),
    ...(earlier.length === 0 ? [] : headed('Noted on earlier paper', '-')),
    ...earlier.map(({ id, told }) => wrap(`${id}: ${told}`, '  ')),
  ].join('\n');
}
