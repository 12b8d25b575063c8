import { ok, type Result, refuse } from '../problem.js';
import { phrase, say, spoken } from '../words/index.js';
import { declaredIn } from './column-in.js';
import { isUsableId } from './ids.js';
import { declarationOf } from './kinds/index.js';
import { takenOf } from './own-column.js';
import { columnOfField, withoutColumns } from './row-columns.js';
import {
  columnSchema,
  fieldOfRowSchema,
  fieldOfSheetSchema,
  orderSchema,
  rawSchema,
  rowSchema,
  sheetSchema,
} from './schema.js';
import type { BookState, SheetState } from './state.js';
import { titleOfColumn } from './state-layout.js';
import type { ColumnDoc, Json, Raw, RowDoc, SheetDoc } from './types.js';

/** One value at one path, as the book stores it; without `to` it is removed. Paths are those of a `Change`. */
export interface StoredEdit {
  readonly path: readonly string[];
  readonly to?: Json | undefined;
}

type Read = Result<Json | undefined>;

const unreadable = (): Read =>
  refuse(
    'not-taken',
    say`Something in the other copy cannot be read and was left out.`,
    say`Look at it there.`,
  );

const NOWHERE = {
  sheet: phrase('Something belongs to a sheet that this book does not have now; it was left out.'),
  row: phrase('Something belongs to a row that this book does not have now; it was left out.'),
  column: phrase('Something belongs to a column that this book does not have now; it was left out.'),
};

const nowhere = (what: keyof typeof NOWHERE): Read =>
  refuse(
    'nowhere-to-go',
    spoken(NOWHERE[what]),
    what === 'row' ? say`Bring back the whole row to get it.` : say`Bring back the whole sheet to get it.`,
  );

/** What the same command brings. */
export interface Coming {
  /** Whether what stands at a path comes with it. */
  readonly isThere: (path: readonly string[]) => boolean;
  /** A column as it will be. */
  readonly column: (sheet: SheetState, column: string) => ColumnDoc | undefined;
  /** Whether sheets and rows become all that they were: also what stood, unseen, where figures are shown now. */
  readonly whole: boolean;
}

/** An edit as it may be written: checked as files are, without cells of planning columns. */
export function readStored({ path, to }: StoredEdit, state: BookState, coming: Coming): Read {
  const [head, id, part, item, ...below] = path;
  if (head === 'title')
    return typeof to === 'string' && to !== '' && to.length <= 200 ? ok(to) : unreadable();
  if (head === 'settings') {
    if (id === undefined || !isUsableId(id)) return unreadable();
    return to === undefined || rawSchema.safeParse(to).success ? ok(to) : unreadable();
  }
  if (head !== 'sheets' || id === undefined || !isUsableId(id)) return unreadable();
  const sheet = state.sheets.get(id);
  if (part === undefined) return wholeSheet(sheet, to);
  if (!sheet) return nowhere('sheet');
  if (part === 'rows') return inRow(sheet, item, below, to, coming);
  if (part === 'columns') return inColumn(sheet, item, below, to);
  if (part === 'kind' || item !== undefined) return unreadable();
  if (part === 'order') return orderSchema.safeParse(to).success ? ok(to) : unreadable();
  if (part === 'title')
    return typeof to === 'string' && to !== '' && to.length <= 200 ? ok(to) : unreadable();
  return ok(to);
}

/** Whether a value may stand at a path of any book: of updates that nobody has checked. */
export function isWellFormed({ path, to }: StoredEdit): boolean {
  const [head, id, part, item, field, column] = path;
  const fits = (schema: { safeParse(value: unknown): { success: boolean } }, value: unknown = to) =>
    schema.safeParse(value).success;
  if (path.slice(1).some((key) => !isUsableId(key) && !/^(note|colour):/.test(key))) return false;
  if (head === 'title') return typeof to === 'string' && to !== '' && to.length <= 200;
  if (head === 'settings') return id !== undefined && (to === undefined || fits(rawSchema));
  if (head !== 'sheets') return !['id', 'format', 'version', 'references'].includes(head ?? '');
  if (part === undefined) return to === undefined || fits(sheetSchema);
  if (part !== 'rows' && part !== 'columns')
    return !['title', 'order', 'kind'].includes(part) || fits(fieldOfSheetSchema, { [part]: to ?? null });
  if (item === undefined) return false;
  if (field === undefined) return to === undefined || fits(part === 'rows' ? rowSchema : columnSchema);
  if (part === 'columns') return to === undefined || fits(columnSchema, { [field]: to });
  if (field === 'cells') return column !== undefined && (to === undefined || fits(rawSchema));
  return to === undefined ? field !== 'order' : fits(fieldOfRowSchema, { [field]: to });
}

function wholeSheet(sheet: SheetState | undefined, to: Json | undefined): Read {
  if (to === undefined)
    return sheet && sheet.kind !== 'own'
      ? refuse(
          'kind-sheet',
          say`“${sheet.title}” belongs to every book, so it stays.`,
          say`Its rows can be brought back or removed.`,
        )
      : ok(undefined);
  const read = sheetSchema.safeParse(to);
  if (!read.success || (sheet && sheet.kind !== read.data.kind)) return unreadable();
  const doc = to as unknown as SheetDoc;
  const rows: Record<string, RowDoc> = {};
  for (const [rowId, row] of Object.entries(doc.rows))
    rows[rowId] = withoutCells(row, (column) => declarationOf(doc.kind, column)?.role === 'planning');
  return ok({ ...doc, rows } as unknown as Json);
}

function withoutCells(row: RowDoc, goes: (column: string) => boolean): RowDoc {
  const cells = Object.entries(row.cells).filter(([column]) => !goes(column));
  if (cells.length === Object.keys(row.cells).length) return row;
  return { ...row, cells: Object.fromEntries(cells) as Record<string, Raw> };
}

function inRow(
  sheet: SheetState,
  row: string | undefined,
  [field, column]: readonly string[],
  to: Json | undefined,
  coming: Coming,
): Read {
  if (row === undefined || !isUsableId(row)) return unreadable();
  const noColumn = (each: string) =>
    !declaredIn(sheet, each) &&
    !sheet.columns.has(each) &&
    !coming.isThere(['sheets', sheet.id, 'columns', each]);
  const isPlanning = (each: string) =>
    declarationOf(sheet.kind, each)?.role === 'planning' ||
    (sheet.kind === 'own' && !coming.whole && takenOf(coming.column(sheet, each)) !== undefined);
  if (field === undefined) {
    if (to === undefined) return ok(undefined);
    if (!rowSchema.safeParse(to).success) return unreadable();
    return ok(withoutCells(withoutColumns(to as unknown as RowDoc, noColumn), isPlanning) as Json);
  }
  if (!sheet.rows.has(row)) return nowhere('row');
  if (field !== 'cells') {
    // A note or a colour where no column is would stand there unseen.
    const said = columnOfField(field);
    if (to !== undefined && said !== undefined && noColumn(said)) return nowhere('column');
    if (field === 'order') return orderSchema.safeParse(to).success ? ok(to) : unreadable();
    return to === undefined || fieldOfRowSchema.safeParse({ [field]: to }).success ? ok(to) : unreadable();
  }
  if (column === undefined) return unreadable();
  if (isPlanning(column))
    return refuse(
      'planning-column',
      say`“${titleOfColumn(sheet, column)}” is worked out, not entered, so it was left alone.`,
      say`Bring back what it is worked out from.`,
    );
  if (to !== undefined && noColumn(column)) return nowhere('column');
  return to === undefined || rawSchema.safeParse(to).success ? ok(to) : unreadable();
}

function inColumn(
  sheet: SheetState,
  column: string | undefined,
  [field]: readonly string[],
  to: Json | undefined,
): Read {
  if (column === undefined || !isUsableId(column)) return unreadable();
  const declared = declarationOf(sheet.kind, column);
  if (field === undefined) {
    if (to === undefined) return ok(undefined);
    const read = columnSchema.safeParse(to);
    return read.success && (declared || read.data.own === true) ? ok(to) : unreadable();
  }
  const there = sheet.columns.get(column);
  if (!declared && !there) return nowhere('column');
  return columnSchema.safeParse({ ...there, [field]: to }).success ? ok(to) : unreadable();
}
