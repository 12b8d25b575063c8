import {
  BOOK_FORMAT,
  BOOK_VERSION,
  type BookDoc,
  type ColumnDoc,
  type Raw,
  type RowDoc,
  type SheetDoc,
  type SheetKind,
} from '../../book/index.js';
import { say } from '../../words/index.js';
import { isAsked, isKept, type Needed, neededBy } from './needs.js';

/** Sheets in whose figures lots are not named by where they stand. */
const WITHOUT_PLACES: ReadonlySet<SheetKind> = new Set(['household', 'shelf', 'foods', 'beds', 'harvest']);

/** Columns that no figure of a kind of sheet is worked out from, and that may be nobody else's business. */
const personalOf = (kind: SheetKind | undefined): ReadonlySet<string> =>
  new Set(kind !== undefined && WITHOUT_PLACES.has(kind) ? ['note', 'place'] : ['note']);

/**
 * The book cut down to what the shown columns of one sheet are worked out from, for others to have: sheets,
 * own columns, notes and places that no figure needs stay at home, and people go without their names.
 *
 * @param asOf the day, as an ISO date, that the figures are for, so that they stay as they are.
 */
export function cutBook(doc: BookDoc, sheet: string, columns: readonly string[], asOf: string): BookDoc {
  const needed = neededBy(doc, sheet, columns);
  const personal = personalOf(doc.sheets[sheet]?.kind);
  const sheets: Record<string, SheetDoc> = {};
  for (const [id, found] of Object.entries(doc.sheets)) {
    if (needed.sheets.has(id)) sheets[id] = cutSheet(found, id, needed, personal);
  }
  return {
    format: BOOK_FORMAT,
    version: BOOK_VERSION,
    id: doc.id,
    title: doc.title,
    references: 'by id',
    settings: { ...doc.settings, as_of: asOf },
    sheets,
  };
}

function cutSheet(sheet: SheetDoc, id: string, needed: Needed, personal: ReadonlySet<string>): SheetDoc {
  const columns: Record<string, ColumnDoc> = {};
  for (const [column, { note: _note, marks: _marks, ...said }] of Object.entries(sheet.columns))
    if (isKept(needed, sheet, id, column)) columns[column] = said;
  const rows: Record<string, RowDoc> = {};
  for (const [i, [row, { order, cells, allotted }]] of Object.entries(sheet.rows).entries()) {
    const kept: Record<string, Raw> = {};
    for (const [column, raw] of Object.entries(cells)) {
      const asked = isAsked(needed, id, column);
      if (!isKept(needed, sheet, id, column) || (personal.has(column) && sheet.kind !== 'own' && !asked))
        continue;
      kept[column] = column === 'name' && sheet.kind === 'household' && !asked ? say`Person ${i + 1}` : raw;
    }
    rows[row] = { order, cells: kept, ...(allotted && { allotted }) };
  }
  return { kind: sheet.kind, title: sheet.title, order: sheet.order, columns, rows };
}
