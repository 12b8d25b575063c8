import { type Command, KINDS, SHEET_KINDS } from '../../src/book/index.js';
import { copySheet } from '../../src/live/doings/copy-sheet.js';
import { mealsToMark } from '../../src/live/doings/mark-done.js';
import { postBatchCommand } from '../../src/live/doings/post-batch.js';
import type { LiveBook } from '../../src/live/live-book.js';
import { FormulaShift } from '../../src/live/shift-formula.js';
import { bringIn } from './bring-in.js';
import type { Edit } from './edits.js';
import { setCells } from './set-cells.js';

const MOST_COLUMNS = 40;
const MOST_SHEETS = 18;

const at = <T>(list: readonly T[], n: number): T | undefined =>
  list.length === 0 ? undefined : list[n % list.length];

type Kind<E extends Edit['edit']> = Extract<Edit, { edit: E }>;

/** Gives ids that are new to the book. */
export type NewId = () => string;

/** The rows as they stand once sorted by a column: a view of the sheet, which moves nothing. */
export function sortedRows(live: LiveBook, sheet: string, column: string): string[] {
  const key = (row: string): string => JSON.stringify(live.value(sheet, row, column));
  return [...live.rowIds(sheet)].sort((a, b) => (key(a) < key(b) ? -1 : 1));
}

/**
 * What an edit comes to in this book; undefined when it finds nothing to work on, or when a sheet would have
 * more rows than `mostRows`.
 */
export function asCommand(live: LiveBook, edit: Edit, newId: NewId, mostRows: number): Command | undefined {
  switch (edit.edit) {
    case 'setting':
      return { do: 'set setting', setting: edit.setting, typed: edit.typed };
    case 'rename book':
      return { do: 'rename book', title: edit.title };
    case 'draw':
      return draw(live, edit, newId, mostRows);
    case 'mark done': {
      const meal = at(live.rowIds(live.sheetOfKind('week') ?? ''), edit.row);
      const marked = meal === undefined ? undefined : mealsToMark(live, { meals: [meal] });
      return marked?.ok ? marked.value.command : undefined;
    }
    case 'post batch': {
      const batch = at(live.rowIds(live.sheetOfKind('batches') ?? ''), edit.row);
      const posted = batch === undefined ? undefined : postBatchCommand(live, batch);
      return posted?.ok ? posted.value : undefined;
    }
    case 'add sheet': {
      if (live.sheets().length >= MOST_SHEETS) return undefined;
      const columns = edit.columns.map((title) => ({ id: newId(), title }));
      const rows = edit.cells.map((cells) => ({
        id: newId(),
        cells: Object.fromEntries(columns.map(({ id }, i) => [id, cells[i] ?? null])),
      }));
      return { do: 'add sheet', sheet: newId(), title: edit.title, columns, rows };
    }
    case 'bring in':
      return bringIn(live, edit, { rows: mostRows, sheets: MOST_SHEETS });
    case 'several': {
      const of = edit.of
        .map((each) => asCommand(live, each, newId, mostRows))
        .filter((each) => each !== undefined);
      return { do: 'all', of };
    }
    default: {
      const sheet = at(live.sheets(), edit.sheet)!.id;
      const rows = live.rowIds(sheet);
      const columns = live.columns(sheet).map(({ id }) => id);
      return onSheet(live, edit, sheet, rows, columns, newId, mostRows);
    }
  }
}

type OnSheet = Exclude<
  Edit,
  Kind<'setting' | 'rename book' | 'draw' | 'mark done' | 'post batch' | 'add sheet' | 'bring in' | 'several'>
>;

function onSheet(
  live: LiveBook,
  edit: OnSheet,
  sheet: string,
  rows: readonly string[],
  columns: readonly string[],
  newId: NewId,
  mostRows: number,
): Command | undefined {
  const column = 'column' in edit ? at(columns, edit.column) : undefined;
  switch (edit.edit) {
    case 'type': {
      const row = at(rows, edit.row);
      return row && column
        ? { do: 'set cells', sheet, cells: [{ row, column, typed: edit.typed }] }
        : undefined;
    }
    case 'paste': {
      const by = edit.sorted === null ? undefined : at(columns, edit.sorted);
      const seen = by === undefined ? rows : sortedRows(live, sheet, by);
      return setCells(sheet, seen, columns, edit.row % (rows.length || 1), edit.column, edit.block);
    }
    case 'paste over everything':
      return setCells(
        sheet,
        rows,
        columns,
        0,
        0,
        rows.map(() => columns.map(() => edit.typed)),
      );
    case 'fill': {
      const from = rows.length === 0 ? 0 : edit.row % rows.length;
      if (rows.length === 0 || !column) return undefined;
      const filled = live.typed(sheet, rows[from]!, column);
      const isFormula = live.isFormula(sheet, rows[from]!, column);
      const shift = new FormulaShift(live, sheet);
      const cells = rows.slice(from + 1, from + 1 + edit.count).map((row, i) => ({
        row,
        column,
        typed: isFormula && typeof filled === 'string' ? shift.to(filled, i + 1, 0) : filled,
      }));
      return cells.length > 0 ? { do: 'set cells', sheet, cells } : undefined;
    }
    case 'insert': {
      if (rows.length + edit.cells.length > mostRows) return undefined;
      const made = edit.cells.map((cells) => ({
        id: newId(),
        cells: Object.fromEntries(cells.slice(0, columns.length).map((typed, i) => [columns[i]!, typed])),
      }));
      return { do: 'insert rows', sheet, before: at(rows, edit.row) ?? null, rows: made };
    }
    case 'remove': {
      const from = edit.row % (rows.length || 1);
      return { do: 'remove rows', sheet, rows: rows.slice(from, from + edit.count) };
    }
    case 'move': {
      const from = edit.row % (rows.length || 1);
      return {
        do: 'move rows',
        sheet,
        rows: rows.slice(from, from + edit.count),
        before: at(rows, edit.to) ?? null,
      };
    }
    case 'add column':
      if (columns.length >= MOST_COLUMNS) return undefined;
      return {
        do: 'add column',
        sheet,
        column: newId(),
        before: at(columns, edit.before) ?? null,
        title: edit.title,
        ...(edit.formula !== null && { formula: edit.formula }),
        as: edit.as,
      };
    case 'take column': {
      const own = at(
        live.sheets().filter(({ kind }) => kind === 'own'),
        edit.sheet,
      );
      const kind = at(
        SHEET_KINDS.filter((each) => each !== 'own'),
        edit.kind,
      )!;
      const planning = at(
        KINDS[kind].columns.filter(({ role }) => role === 'planning'),
        edit.column,
      );
      const by = own && at(live.columns(own.id), edit.by)?.id;
      if (!own || !planning || by === undefined || live.columns(own.id).length >= MOST_COLUMNS)
        return undefined;
      const plan = { kind, column: planning.id, by };
      const over = edit.over === null ? undefined : at(live.columns(own.id), edit.over)?.id;
      if (over !== undefined) return { do: 'describe column', sheet: own.id, column: over, as: { plan } };
      return {
        do: 'add column',
        sheet: own.id,
        column: newId(),
        before: null,
        title: planning.title,
        as: { plan },
      };
    }
    case 'remove column':
      return column ? { do: 'remove columns', sheet, columns: [column] } : undefined;
    case 'move column':
      return column
        ? { do: 'move columns', sheet, columns: [column], before: at(columns, edit.to) ?? null }
        : undefined;
    case 'describe':
      return column ? { do: 'describe column', sheet, column, as: edit.as } : undefined;
    case 'mark': {
      const row = at(rows, edit.row);
      const { colour, note } = edit;
      return row && column
        ? {
            do: 'mark cells',
            sheet,
            cells: [{ row, column }],
            ...(colour !== undefined && { colour }),
            ...(note !== undefined && { note }),
          }
        : undefined;
    }
    case 'group':
      return { do: 'group rows', sheet, by: edit.by === null ? null : (at(columns, edit.by) ?? null) };
    case 'move sheet':
      return { do: 'move sheet', sheet, before: at(live.sheets(), edit.to)?.id ?? null };
    case 'copy sheet': {
      if (live.sheets().length >= MOST_SHEETS) return undefined;
      const copied = copySheet(live, sheet, edit.title);
      return copied.ok ? copied.value : undefined;
    }
    case 'remove sheet':
      return { do: 'remove sheet', sheet };
    case 'rename sheet':
      return { do: 'rename sheet', sheet, title: edit.title };
  }
}

function draw(live: LiveBook, edit: Kind<'draw'>, newId: NewId, mostRows: number): Command | undefined {
  const sheet = live.sheetOfKind('draws');
  if (sheet === undefined || live.rowIds(sheet).length >= mostRows) return undefined;
  const { food, amount, container, day, purpose } = edit;
  const date = `2026-01-${String(day).padStart(2, '0')}`;
  return {
    do: 'insert rows',
    sheet,
    before: null,
    rows: [{ id: newId(), cells: { date, food, amount, container, purpose } }],
  };
}
