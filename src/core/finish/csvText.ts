/** A table as comma-separated values (RFC 4180): lines end in CRLF; fields with a comma, a quote or a line end are quoted, quotes doubled. */
export const csvText = (rows: readonly (readonly string[])[]): string =>
  rows.map((row) => `${row.map(quoted).join(',')}\r\n`).join('');

const quoted = (field: string): string =>
  /[",\r\n]/u.test(field) ? `"${field.replaceAll('"', '""')}"` : field;
