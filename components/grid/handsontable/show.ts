import { type CellValue, isCellError } from '../../../src/book/index.js';
import { textShown } from '../../../src/live/choice-words.js';
import type { ColumnView } from '../../../src/live/columns.js';
import { typedText } from '../../look/typed-text.js';
import type { Shown } from './line.js';

/** The value that sorting, filtering and copying work with: a number as rounded on screen, a date as ISO. */
export function plainValue(value: CellValue, { decimals }: Pick<ColumnView, 'decimals'>): Shown {
  if (isCellError(value)) return value.error;
  if (typeof value !== 'number') return value;
  if (!Number.isFinite(value)) return null;
  return decimals === undefined ? Number(value.toPrecision(12)) : Number(value.toFixed(decimals));
}

/** Such a value with words of ours in the language spoken; numbers, days and what people wrote stay as they are. */
export const saidValue = (value: Shown, column: Pick<ColumnView, 'role' | 'declaration'>): Shown =>
  typeof value === 'string' ? plainText(value, column) : value;

/** Such a value as text, for other programs and in lists: numbers and words of ours as the language spoken writes them. */
export const plainText = (value: Shown, column: Pick<ColumnView, 'role' | 'declaration'>): string =>
  typeof value === 'string' ? textShown(value, column) : typedText(value);
