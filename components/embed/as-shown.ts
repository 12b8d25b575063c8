import { type BookDoc, type ColumnDoc, KINDS, type SheetDoc, sameJson } from '../../src/book/index.js';
import { firstKeys } from '../../src/book/order.js';

/** A book whose sheet has its columns as a table shows them, and the way back. */
export interface AsShown {
  readonly book: BookDoc;
  /** The same book with its columns as they were, unless somebody has changed them since. */
  back(book: BookDoc): BookDoc;
}

/** Lets a sheet show just the columns of a table, in its order and with these widths in pixels. */
export function asShown(doc: BookDoc, id: string, widths: ReadonlyMap<string, number>): AsShown {
  const sheet = doc.sheets[id]!;
  const keys = firstKeys(widths.size);
  const columns: Record<string, ColumnDoc> = { ...sheet.columns };
  const declared = sheet.kind === 'own' ? [] : KINDS[sheet.kind].columns.map((column) => column.id);
  for (const column of new Set([...declared, ...Object.keys(sheet.columns)]))
    if (!widths.has(column)) columns[column] = { ...columns[column], hidden: true };
  for (const [i, [column, width]] of [...widths].entries())
    columns[column] = { ...columns[column], order: keys[i]!, width, hidden: false };
  const shown: BookDoc = { ...doc, sheets: { ...doc.sheets, [id]: { ...sheet, columns } } };
  return { book: shown, back: (book) => withColumns(book, id, columns, sheet) };
}

function withColumns(
  book: BookDoc,
  id: string,
  given: Readonly<Record<string, ColumnDoc>>,
  before: SheetDoc,
): BookDoc {
  const sheet = book.sheets[id];
  if (!sheet) return book;
  const columns: Record<string, ColumnDoc> = { ...sheet.columns };
  for (const [column, now] of Object.entries(columns)) {
    if (!sameJson(now as never, given[column] as never)) continue;
    const was = before.columns[column];
    if (was) columns[column] = was;
    else delete columns[column];
  }
  return { ...book, sheets: { ...book.sheets, [id]: { ...sheet, columns } } };
}
