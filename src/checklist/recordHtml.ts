/** The full record as one HTML file that needs nothing else: what was done and read, and every figure with its working. */
import type { Figure, StepReport } from '../core/figure';
import { formatBand, formatFigure } from '../core/units/formatFigure';
import { expectedWords } from '../steps/bench/written';
import { steps } from '../steps/registry';
import type { Action, ChecklistModel, PhasePage, PrintedBlank } from './model';
import { recordStyle } from './recordStyle';

const entities: Readonly<Record<string, string>> = {
  '&': '&amp;',
  '<': '&lt;',
  '>': '&gt;',
  '"': '&quot;',
  "'": '&#39;',
};

/** Text safe inside elements and quoted attributes. */
export function escapeHtml(text: string): string {
  return text.replace(/[&<>"']/gu, (sign) => entities[sign] ?? sign);
}

type Cells = readonly string[];

function table(caption: string, heads: Cells, rows: readonly Cells[]): string {
  const row = (cells: Cells, tag: 'th' | 'td') =>
    `<tr>${cells.map((cell) => `<${tag}>${escapeHtml(cell)}</${tag}>`).join('')}</tr>`;
  return `<table><caption>${escapeHtml(caption)}</caption><thead>${row(heads, 'th')}</thead><tbody>${rows.map((cells) => row(cells, 'td')).join('\n')}</tbody></table>`;
}

const blankRow = (blank: PrintedBlank): Cells => [
  blank.number,
  `${blank.label}, ${blank.unit}`,
  expectedWords(blank),
  blank.written,
];

const actionHtml = ({ id, text, done }: Action): string =>
  `<li id="${escapeHtml(id)}"><span role="img" aria-label="${done ? 'done' : 'not done'}">${done ? '☑' : '☐'}</span> ${escapeHtml(text)}</li>`;

function phaseHtml({ id, title, stops, caution, table: facts, actions, signedBy, note }: PhasePage): string {
  return [
    `<section aria-labelledby="phase-${id}"><h2 id="phase-${id}">${escapeHtml(title)}</h2>`,
    ...stops.map((reason) => `<p class="warning"><strong>STOP</strong> ${escapeHtml(reason)}</p>`),
    `<p class="caution"><strong>CAUTION</strong> ${escapeHtml(caution)}</p>`,
    facts === null ? '' : table(facts.caption, facts.columns, facts.rows),
    `<ul class="actions">${actions.map(actionHtml).join('\n')}</ul>`,
    note === '' ? '' : `<p>Note: ${escapeHtml(note)}</p>`,
    `<p>Done by: ${signedBy === '' ? '____' : escapeHtml(signedBy)}</p></section>`,
  ].join('\n');
}

function figureRow(one: Figure): Cells {
  const band = formatBand(one);
  return [
    one.label,
    band === '' ? formatFigure(one) : `${formatFigure(one)} (${band})`,
    one.status,
    one.working.join(' · '),
  ];
}

function stepHtml(title: string, { figures, verdicts, cautions }: StepReport): string {
  return [
    `<section><h2>${escapeHtml(title)}</h2>`,
    ...verdicts.map(
      ({ word, reason, fix }) =>
        `<p><strong>${escapeHtml(word)}:</strong> ${escapeHtml(reason)} ${escapeHtml(fix)}</p>`,
    ),
    ...cautions.map(({ text }) => `<p class="caution"><strong>CAUTION</strong> ${escapeHtml(text)}</p>`),
    figures.length === 0
      ? ''
      : table('Figures', ['Figure', 'Value', 'Known how', 'Working'], figures.map(figureRow)),
    '</section>',
  ].join('\n');
}

/** The stamp stands on every page, its reasons on the first. */
function incompleteHtml(reasons: readonly string[]): string {
  if (reasons.length === 0) return '';
  return `<div class="stamp" aria-hidden="true">INCOMPLETE</div>
<p class="warning"><strong>Incomplete.</strong> Do not work from this sheet. ${escapeHtml(reasons.join(' '))}</p>`;
}

export function recordHtml(
  { title, incomplete, card, phases, earlier, blanks }: ChecklistModel,
  reports: ReadonlyMap<string, StepReport>,
): string {
  return `<!doctype html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta name="viewport" content="width=device-width, initial-scale=1">
<meta http-equiv="Content-Security-Policy" content="default-src 'none'; style-src 'unsafe-inline'">
<title>${escapeHtml(title)}</title>
<style>
${recordStyle}
</style>
</head>
<body>
<main>
<h1>${escapeHtml(title)}</h1>
<p>Full record · ${escapeHtml(card.of)}</p>
${incompleteHtml(incomplete)}
<p class="verdict"><strong>${escapeHtml(card.stamp)}</strong> ${escapeHtml(card.headline)}</p>
<p class="caution"><strong>CAUTION</strong> ${escapeHtml(card.safety)}</p>
<p>${escapeHtml(card.footer)}</p>
${table(
  'Planned',
  ['What', 'Number'],
  card.numbers.map(({ label, value, after }) => [label, `${value} ${after}`.trim()]),
)}
${table('Read at the bench', ['No.', 'What', 'Expected', 'Read'], blanks.map(blankRow))}
${phases.map(phaseHtml).join('\n')}
${
  earlier.length === 0
    ? ''
    : table(
        'Noted on earlier paper',
        ['Line', 'Noted'],
        earlier.map(({ id, told }) => [id, told]),
      )
}
${steps.map(({ id, title: step }) => stepHtml(step, reports.get(id) ?? { figures: [], verdicts: [], cautions: [] })).join('\n')}
</main>
</body>
</html>
`;
}
