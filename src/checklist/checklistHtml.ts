/** The checklist as one HTML file that needs nothing else: to keep, to send, to print. */
import { checklistStyle } from './checklistStyle';
import type {
  ChecklistFactTable,
  ChecklistLine,
  ChecklistModel,
  ChecklistSection,
  LabeledText,
} from './model';

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

function factList(facts: readonly LabeledText[]): string {
  const rows = facts.map(({ label, value, status }) => {
    const mark = status === '' ? '' : ` <span class="status">(${escapeHtml(status)})</span>`;
    return `<dt>${escapeHtml(label)}</dt><dd>${escapeHtml(value)}${mark}</dd>`;
  });
  return `<dl class="facts">${rows.join('\n')}</dl>`;
}

function row({ id, text, measure, record }: ChecklistLine): string {
  const box = record.done
    ? '<span role="img" aria-label="done">☑</span>'
    : '<span role="img" aria-label="not done">☐</span>';
  const entry = record.measured === '' ? '__________' : escapeHtml(record.measured);
  const measured =
    measure === undefined ? '' : `${escapeHtml(measure.label)}:<br>${entry} ${escapeHtml(measure.unit)}`;
  return `<tr id="${escapeHtml(id)}"><td class="box">${box}</td><td>${escapeHtml(text)}</td><td class="measured">${measured}</td><td class="initials">${escapeHtml(record.initials)}</td></tr>`;
}

function tableHtml({ caption, columns, rows }: ChecklistFactTable): string {
  const heads = columns.map((column) => `<th scope="col">${escapeHtml(column)}</th>`).join('');
  const body = rows.map(
    (cells) => `<tr>${cells.map((cell) => `<td>${escapeHtml(cell)}</td>`).join('')}</tr>`,
  );
  return `<table class="given"><caption>${escapeHtml(caption)}</caption><thead><tr>${heads}</tr></thead><tbody>${body.join('\n')}</tbody></table>`;
}

function sectionHtml(
  { id, title, warnings, cautions, table, lines }: ChecklistSection,
  number: number,
  sheetTitle: string,
): string {
  // The head is repeated on every page that the table runs on, so a loose page still says where it belongs.
  const running = `<tr class="running"><td colspan="4">${escapeHtml(sheetTitle)} · ${number}. ${escapeHtml(title)}</td></tr>`;
  return [
    `<section aria-labelledby="section-${escapeHtml(id)}">`,
    `<h2 id="section-${escapeHtml(id)}">${number}. ${escapeHtml(title)}</h2>`,
    ...warnings.map(
      ({ word, reason, fix }) =>
        `<p class="warning"><strong>${escapeHtml(word)}:</strong> ${escapeHtml(reason)} ${escapeHtml(fix)}</p>`,
    ),
    ...cautions.map(({ text }) => `<p class="caution"><strong>Caution:</strong> ${escapeHtml(text)}</p>`),
    table === undefined ? '' : tableHtml(table),
    `<table><thead>${running}<tr><th scope="col">Done</th><th scope="col">What</th><th scope="col">Measured</th><th scope="col">Initials</th></tr></thead><tbody>`,
    ...lines.map(row),
    '</tbody></table></section>',
  ].join('\n');
}

/** The stamp stands on every page, its reasons on the first. */
function incompleteHtml(reasons: readonly string[]): string {
  if (reasons.length === 0) return '';
  return `<div class="stamp" aria-hidden="true">INCOMPLETE</div>
<p class="warning"><strong>Incomplete.</strong> Do not work from this sheet. ${escapeHtml(reasons.join(' '))}</p>`;
}

export function checklistHtml(model: ChecklistModel): string {
  const steps = model.ready.steps.map(({ title, word }) => `${title}: ${word}`).join(' · ');
  return `<!doctype html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta name="viewport" content="width=device-width, initial-scale=1">
<meta http-equiv="Content-Security-Policy" content="default-src 'none'; style-src 'unsafe-inline'">
<title>${escapeHtml(model.title)}</title>
<style>
${checklistStyle}
</style>
</head>
<body>
<main>
<h1>${escapeHtml(model.title)}</h1>
${incompleteHtml(model.incomplete)}
${factList(model.header)}
<p class="verdict"><strong>${escapeHtml(model.ready.word)}</strong> ${escapeHtml(steps)}</p>
<h2>Materials and quantities</h2>
${factList(model.quantities)}
${model.sections.map((section, index) => sectionHtml(section, index + 1, model.title)).join('\n')}
</main>
</body>
</html>
`;
}
