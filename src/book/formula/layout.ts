/**
 * Where things stand now: what turns an address into a position and back. Rows and columns count from 0 in
 * the book's own order; sorting, filtering, moving and hiding are views and do not show here.
 */
export interface Layout {
  sheetByTitle(title: string): string | undefined;
  titleOf(sheet: string): string | undefined;
  rowIndex(sheet: string, row: string): number;
  columnIndex(sheet: string, column: string): number;
  rowAt(sheet: string, index: number): string | undefined;
  columnAt(sheet: string, index: number): string | undefined;
  /** The column whose formula name this is, whatever its case. */
  columnByName(sheet: string, name: string): string | undefined;
  /** The name that stands for a whole column in formulas, as in `=Left*2`. */
  nameOf(sheet: string, column: string): string | undefined;
}

/** `0` → `A`, `26` → `AA`. */
export function columnLetters(index: number): string {
  let letters = '';
  for (let n = index + 1; n > 0; n = Math.floor((n - 1) / 26))
    letters = String.fromCharCode(65 + ((n - 1) % 26)) + letters;
  return letters;
}

const CELL_LIKE = /^[A-Za-z]{1,3}[0-9]+$|^R[0-9]*C[0-9]*$|^[RC]$|^(TRUE|FALSE)$/i;

/** Names for the columns of one sheet, from their titles: unique, and never mistaken for a cell. */
export function columnNames(titles: Iterable<readonly [id: string, title: string]>): Map<string, string> {
  const names = new Map<string, string>();
  const taken = new Set<string>();
  for (const [id, title] of titles) {
    const plain = title
      .normalize('NFC')
      .replace(/[^\p{L}\p{N}]+/gu, '_')
      .replace(/^_+|_+$/g, '');
    const base =
      plain === ''
        ? 'column'
        : CELL_LIKE.test(plain) || /^\p{N}/u.test(plain)
          ? `${plain}_`.replace(/^(\p{N})/u, '_$1')
          : plain;
    let name = base;
    for (let n = 2; taken.has(name.toLowerCase()); n++) name = `${base}_${n}`;
    taken.add(name.toLowerCase());
    names.set(id, name);
  }
  return names;
}
