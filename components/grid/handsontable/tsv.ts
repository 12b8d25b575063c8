/**
 * Reads text from the clipboard as rows of fields separated by tabs. A field in double quotes may hold
 * tabs, line breaks and doubled quotes; a quote anywhere else is just a character (`6" pot`). One line
 * break at the end ends the last row rather than beginning another.
 */
export function readTsv(text: string): string[][] {
  const rows: string[][] = [[]];
  let at = 0;
  const separatorAt = (index: number): boolean => index >= text.length || /[\t\r\n]/.test(text[index]!);

  const quotedEnd = (start: number): number => {
    for (let i = start + 1; i < text.length; i++) {
      if (text[i] !== '"') continue;
      if (text[i + 1] === '"') i++;
      else return separatorAt(i + 1) ? i : -1;
    }
    return -1;
  };

  for (;;) {
    const end = text[at] === '"' ? quotedEnd(at) : -1;
    let field: string;
    if (end >= 0) {
      field = text
        .slice(at + 1, end)
        .replaceAll('""', '"')
        .replaceAll(/\r\n?/g, '\n');
      at = end + 1;
    } else {
      const start = at;
      while (!separatorAt(at)) at++;
      field = text.slice(start, at);
    }
    rows.at(-1)!.push(field);
    if (at >= text.length) break;
    const separator = text[at]!;
    at += separator === '\r' && text[at + 1] === '\n' ? 2 : 1;
    if (separator === '\t') continue;
    if (at >= text.length) break;
    rows.push([]);
  }
  return rows;
}

const QUOTED = /[\t\r\n]|^"/;

/** Rows of fields as text for the clipboard, quoted where a field would be misread otherwise. */
export const writeTsv = (rows: readonly (readonly string[])[]): string =>
  rows
    .map((row) =>
      row.map((field) => (QUOTED.test(field) ? `"${field.replaceAll('"', '""')}"` : field)).join('\t'),
    )
    .join('\n');
