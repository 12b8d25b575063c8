import type { CellValue, Raw } from '../../src/book/index.js';
import { isCellError } from '../../src/book/index.js';
import type { ColumnView } from '../../src/live/columns.js';
import type { FigureDifference } from '../../src/live/doings/compare-books.js';
import { say } from '../../src/words/index.js';
import { shownDay, shownNumber, unitWord } from '../sheet/shown.js';

const isDay = (text: string): boolean => /^\d{4}-\d{2}-\d{2}$/.test(text);

/** A value in words; `blank` where there is none. */
export function valueWords(value: CellValue | Raw | undefined, decimals?: number): string {
  if (value === null || value === undefined || value === '') return say`blank`;
  if (typeof value === 'object') return isCellError(value) ? value.error : String(value);
  if (typeof value === 'number') return shownNumber(value, decimals);
  if (typeof value === 'boolean') return value ? say`yes` : say`no`;
  return isDay(value) ? shownDay(value) : value;
}

/** A figure of a comparison, with its unit. */
function figureWords(value: CellValue, unit: string | undefined, { decimals }: ColumnView): string {
  const words = valueWords(value, decimals);
  return typeof value === 'number' && unit ? `${words} ${unitWord(unit, value)}` : words;
}

/** What a figure was and is; the unit once where both have it. */
export function figurePair({
  column,
  was,
  is,
  wasUnit,
  isUnit,
}: FigureDifference): readonly [string, string] {
  const once = wasUnit === isUnit && typeof was === 'number' && typeof is === 'number';
  return [figureWords(was, once ? undefined : wasUnit, column), figureWords(is, isUnit, column)];
}
