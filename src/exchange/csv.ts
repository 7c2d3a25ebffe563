// Tables as comma-separated values: RFC 4180.

/**
 * One line a row, ended with CR and LF; a field that holds a comma, a quote or the end of a line stands in quotes, and
 * a quote inside is doubled (RFC 4180, 2). The first line is the heading.
 */
export function csvText(heading: readonly string[], rows: readonly (readonly string[])[]): string {
  return [heading, ...rows].map(row => `${row.map(field).join(',')}\r\n`).join('');
}

function field(text: string): string {
  return /[",\r\n]/.test(text) ? `"${text.replaceAll('"', '""')}"` : text;
}
