/** A text of separated values cut into cells, whatever parts them. */

const partings = ['\t', ';', ',', '|'] as const;

export interface LogCells {
  readonly parting: string;
  readonly rows: readonly (readonly string[])[];
}

/** Cuts a line at a parting that does not stand between quotes. */
function cut(line: string, parting: string): string[] {
  const cells: string[] = [];
  let cell = '';
  let quoted = false;
  for (const letter of line) {
    if (letter === '"') quoted = !quoted;
    else if (letter === parting && !quoted) {
      cells.push(cell.trim());
      cell = '';
    } else cell += letter;
  }
  return [...cells, cell.trim()];
}

/** The parting under which most lines have the same number of cells, and more than one; ',' when none does. */
export function logCells(text: string): LogCells {
  const lines = text
    .replace(/^\uFEFF/u, '')
    .split(/\r\n|\n|\r/u)
    .filter((line) => line.trim() !== '');
  const ranked = partings.map((parting) => {
    const counts = new Map<number, number>();
    for (const line of lines.slice(0, 200)) {
      const width = cut(line, parting).length;
      if (width > 1) counts.set(width, (counts.get(width) ?? 0) + 1);
    }
    return { parting, alike: Math.max(0, ...counts.values()) };
  });
  // On a draw the earlier wins: a semicolon parts cells whose decimals are commas.
  const best = ranked.reduce((a, b) => (b.alike > a.alike ? b : a));
  const parting = best.alike > 0 ? best.parting : ',';
  return { parting, rows: lines.map((line) => cut(line, parting)) };
}

/** A number with a decimal point or, where commas part no cells, a decimal comma; null for anything else. */
export function cellNumber(cell: string, parting: string): number | null {
  const bare = cell.replace(/−/gu, '-').replace(/\s*(?:°\s*[CF]|[CFK]|s|min|h)$/u, '');
  // A comma inside a quoted cell is a decimal comma too.
  const text = parting === ',' && !/^-?\d+,\d+$/u.test(bare) ? bare : bare.replace(',', '.');
  return /^[-+]?(?:\d+\.?\d*|\.\d+)(?:[eE][-+]?\d+)?$/u.test(text) ? Number(text) : null;
}
