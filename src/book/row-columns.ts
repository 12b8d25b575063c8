import { colourField, noteField } from './own-column.js';
import type { Json, RowDoc } from './types.js';

/** The column about whose cell a field of a row says something; undefined for other fields. */
export const columnOfField = (field: string): string | undefined => /^(?:note|colour):(.+)$/.exec(field)?.[1];

/** Whether a row holds an entry, a note or a colour in a column. */
export const holdsIn = (row: RowDoc, column: string): boolean =>
  Object.hasOwn(row.cells, column) ||
  Object.hasOwn(row, noteField(column)) ||
  Object.hasOwn(row, colourField(column));

/** Columns in which a row holds something. */
export const columnsHeld = (row: RowDoc): ReadonlySet<string> =>
  new Set([...Object.keys(row.cells), ...Object.keys(row).flatMap((field) => columnOfField(field) ?? [])]);

/** A row without what it holds in columns that go; the row itself where it holds nothing there. */
export function withoutColumns(row: RowDoc, goes: (column: string) => boolean): RowDoc {
  if (![...columnsHeld(row)].some(goes)) return row;
  const kept: Record<string, Json | undefined> = {};
  for (const [field, value] of Object.entries(row)) {
    const column = columnOfField(field);
    if (column === undefined || !goes(column)) kept[field] = value;
  }
  const cells = Object.fromEntries(Object.entries(row.cells).filter(([column]) => !goes(column)));
  return { ...kept, order: row.order, cells };
}
