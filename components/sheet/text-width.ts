import type { ColumnView } from '../../src/live/columns.js';
import type { LiveBook } from '../../src/live/live-book.js';

/** From this many characters on, a text is for reading rather than for looking up. */
const LONG = 60;
const ROWS_LOOKED_AT = 60;
/** Room for about sixty characters, in pixels. */
const WIDE = 420;

/** Pixels for an own column that holds long texts, unless its width was set; undefined for every other column. */
export function textWidth(live: LiveBook, sheet: string, column: ColumnView): number | undefined {
  if (column.role !== 'own' || column.width !== undefined) return undefined;
  const isLong = live
    .rowIds(sheet)
    .slice(0, ROWS_LOOKED_AT)
    .some((row) => {
      const value = live.value(sheet, row, column.id);
      return typeof value === 'string' && value.length >= LONG;
    });
  return isLong ? WIDE : undefined;
}
