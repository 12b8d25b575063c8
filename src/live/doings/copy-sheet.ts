import {
  type ColumnLook,
  type Command,
  isFormula,
  type NewColumn,
  type NewRow,
  newId,
  readEntry,
  type SheetState,
  type Typed,
  toShown,
} from '../../book/index.js';
import { toIsoDay } from '../../planning/dates.js';
import { ok, type Result, refuse } from '../../problem.js';
import { say } from '../../words/index.js';
import type { BookLooks } from '../book-looks.js';
import type { BookReading } from '../book-reading.js';
import type { ColumnView } from '../columns.js';
import { NAME_COLUMN } from '../taken-kinds.js';
import { asOwn, isTakeable, lookOf, shownEntry } from './copied-columns.js';
import { copiedMarks } from './copied-marks.js';
import { namedRows } from './named-rows.js';
import { pointingHome } from './pointing-home.js';

/** A copied column: how it is made, and what its cells say. */
interface Copied {
  readonly column: NewColumn;
  /** The title that it gets at last; formulas are read while it has its first one. */
  readonly finally?: string;
  readonly cell: (row: string) => Typed;
}

/**
 * A copy of a sheet as a sheet of one's own, in one command: all that a person entered, with types, formulas,
 * colours and notes. References into the sheet point into the copy. Planning columns of a kind are taken by the
 * names of their rows; those that cannot be stand as values of the day, and their titles say so.
 */
export function copySheet(live: BookLooks, sheet: string, title: string): Result<Command> {
  const from = live.inside.state.sheets.get(sheet);
  if (!from) return refuse('gone', say`That sheet is not in the book any more.`, say`Choose another sheet.`);
  const to = newId('s');
  const columnIds = new Map(live.columns(sheet).map(({ id }) => [id, newId('c')] as const));
  const rowIds = new Map(live.rowIds(sheet).map((row) => [row, newId('r')] as const));
  const copied = from.kind === 'own' ? ownColumns(live, from, columnIds) : kindColumns(live, from, columnIds);
  const rows: NewRow[] = [...rowIds].map(([row, id]) => ({
    id,
    cells: Object.fromEntries(
      copied.flatMap(({ column, cell }) => {
        const typed = cell(row);
        return typed === null || typed === '' ? [] : [[column.id, typed]];
      }),
    ),
  }));
  const group = live.groupOf(sheet);
  const by = group === undefined ? undefined : columnIds.get(group);
  const of: Command[] = [
    { do: 'add sheet', sheet: to, title, columns: copied.map(({ column }) => column), rows },
    ...copied.flatMap(({ column, finally: last }): Command[] =>
      last === undefined
        ? []
        : [{ do: 'describe column', sheet: to, column: column.id, as: { title: last } }],
    ),
    ...copiedMarks(from, to, columnIds, rowIds),
    ...(by === undefined ? [] : [{ do: 'group rows', sheet: to, by } as const]),
  ];
  return ok({ do: 'all', of, called: say`copy of “${from.title}”` });
}

/** A formula as it is to be typed into the copy, in which everything stands where it stood. */
const shown = (live: BookReading, from: SheetState, stored: string): string =>
  toShown(pointingHome(stored, from.id), from.id, live.inside.layout);

const formulaOf = (live: BookReading, from: SheetState, column: string): ColumnLook => {
  const formula = from.columns.get(column)?.formula;
  return formula === undefined ? {} : { formula: shown(live, from, formula) };
};

/** What a cell of one's own stores, as it is to be typed so that it is stored the same again. */
function typedOf(live: BookReading, from: SheetState, row: string, { id, type }: ColumnView): Typed {
  const cells = from.rows.get(row)?.cells;
  const raw = cells && Object.hasOwn(cells, id) ? cells[id]! : null;
  if (isFormula(raw)) return shown(live, from, raw);
  const isOther = typeof raw === 'string' && type === 'any' && readEntry(raw, 'any') !== raw;
  return isOther ? `'${raw}` : raw;
}

function ownColumns(live: BookReading, from: SheetState, ids: ReadonlyMap<string, string>): Copied[] {
  return live.columns(from.id).map((column): Copied => {
    const { id, title, taken } = column;
    const by = taken && ids.get(taken.by);
    const as: ColumnLook = taken
      ? { ...lookOf(column), ...(by !== undefined && { plan: { ...taken, by } }) }
      : { ...ownLook(column), ...formulaOf(live, from, id) };
    return {
      column: { id: ids.get(id)!, title, as },
      cell: (row) => (taken ? null : typedOf(live, from, row, column)),
    };
  });
}

function kindColumns(live: BookReading, from: SheetState, ids: ReadonlyMap<string, string>): Copied[] {
  const { kind } = from;
  const views = live.columns(from.id);
  const isTaken = (column: ColumnView): boolean => column.role === 'planning' && isTakeable(kind, column.id);
  const named = views.some(isTaken) ? namedRows(live, kind, live.rowIds(from.id)) : undefined;
  const nameId = named?.sameAsColumn ? ids.get(NAME_COLUMN[named.kind])! : newId('c');
  const day = toIsoDay(live.household.asOf);
  const copied = views.map((column): Copied => {
    const { id, title, role } = column;
    const make = (as: ColumnLook): NewColumn => ({ id: ids.get(id)!, title, as });
    if (role === 'own')
      return {
        column: make({ ...ownLook(column), ...formulaOf(live, from, id) }),
        cell: (row) => typedOf(live, from, row, column),
      };
    if (role === 'kept')
      return {
        column: make(asOwn(live, from.id, column)),
        cell: (row) => shownEntry(live, from.id, row, column),
      };
    if (named && isTaken(column))
      return {
        column: make({ ...lookOf(column), plan: { kind: named.kind, column: id, by: nameId } }),
        cell: () => null,
      };
    return {
      // Among figures there are words, such as 'no use'.
      column: make({ ...asOwn(live, from.id, column), type: 'any' }),
      finally: say`${title} on ${day}`,
      cell: (row) => shownEntry(live, from.id, row, column),
    };
  });
  if (!named || named.sameAsColumn) return copied;
  // Several rows share the usual name: one more column says which is meant.
  const called: NewColumn = { id: nameId, title: say`Row`, as: { type: 'text', width: 220 } };
  return [...copied, { column: called, cell: (row) => named.names.get(row) ?? null }];
}

const ownLook = (column: ColumnView): ColumnLook => {
  const { type, measure, listed, decimals } = column;
  return {
    ...lookOf(column),
    ...(type !== 'any' && type !== 'month-day' && { type }),
    ...(measure !== undefined && { measure }),
    ...(listed.length > 0 && { choices: listed }),
    ...(decimals !== undefined && { decimals }),
  };
};
