import { type CellValue, isCellError } from '../../../src/book/index.js';
import type { ColumnView } from '../../../src/live/columns.js';
import type { Shown } from './line.js';

/** The value that sorting, filtering and copying work with: a number as rounded on screen, a date as ISO. */
export function plainValue(value: CellValue, { decimals }: Pick<ColumnView, 'decimals'>): Shown {
  if (isCellError(value)) return value.error;
  if (typeof value !== 'number') return value;
  if (!Number.isFinite(value)) return null;
  return decimals === undefined ? Number(value.toPrecision(12)) : Number(value.toFixed(decimals));
}
