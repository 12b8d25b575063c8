import {
  type ColumnLook,
  isNamedKind,
  MAX_CHOICES,
  type NamedKind,
  type OwnType,
  takeableColumns,
} from '../../book/index.js';
import { findMeasure } from '../../units/index.js';
import type { BookReading } from '../book-reading.js';
import type { ColumnView } from '../columns.js';

/** Choices by which cells store the id of a row: what such a cell shows is another text. */
const BY_ID: ReadonlySet<string> = new Set(['lots', 'draws', 'plantings']);

/** How a column of a kind is shown that becomes one's own: kept ones with a type, planning ones by taking them. */
export function asOwn(live: BookReading, sheet: string, column: ColumnView): ColumnLook {
  const { type, declaration } = column;
  const choices = declaration && choicesIn(live, sheet, column);
  const own: OwnType =
    type === 'choice' ? (choices ? 'choice' : 'text') : type === 'month-day' ? 'text' : type;
  const unit = column.unit === undefined ? undefined : findMeasure(column.unit);
  return {
    ...lookOf(column),
    type: own,
    ...(choices && { choices }),
    ...(own === 'number' && unit?.ok && column.unit !== undefined && { measure: column.unit }),
    ...(own === 'number' && column.decimals !== undefined && { decimals: column.decimals }),
  };
}

/** The choices of a closed list; undefined where others are fine too, or there are too many. */
function choicesIn(live: BookReading, sheet: string, column: ColumnView): string[] | undefined {
  const { declaration } = column;
  if (!declaration?.choices || declaration.open || BY_ID.has(declaration.choices)) return undefined;
  const values = live.choices(sheet, null, column.id)?.map(({ value }) => value) ?? [];
  return values.length > 0 && values.length <= MAX_CHOICES ? values : undefined;
}

/** What of a column goes along as it is. */
export const lookOf = (column: ColumnView): ColumnLook => ({
  ...(column.hidden && { hidden: true }),
  ...(column.pinned && { pinned: true }),
  ...(column.width !== undefined && { width: column.width }),
  ...(column.note !== undefined && { note: column.note }),
  ...(column.summary !== undefined && { summary: column.summary }),
  ...(column.markings.length > 0 && { marks: column.markings }),
});

/** Whether a planning column can be taken by the name of its row. */
export const isTakeable = (kind: string, column: string): kind is NamedKind =>
  isNamedKind(kind as NamedKind) && takeableColumns(kind as NamedKind).some(({ id }) => id === column);

/** What a cell of a kind's sheet says, for a column of one's own: words where it stores the id of a row. */
export function shownEntry(live: BookReading, sheet: string, row: string, column: ColumnView) {
  const value = live.value(sheet, row, column.id);
  if (value === null || typeof value === 'object') return null;
  const source = column.declaration?.choices;
  if (source === undefined || !BY_ID.has(source)) return value;
  if (source === 'lots') return live.lotLabel(String(value));
  return live.choices(sheet, row, column.id)?.find((each) => each.value === value)?.label ?? value;
}
