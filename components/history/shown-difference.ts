import type { CellValue, Raw } from '../../src/book/index.js';
import { isCellError } from '../../src/book/index.js';
import { choiceShown } from '../../src/live/choice-words.js';
import type { ColumnView } from '../../src/live/columns.js';
import type { FigureDifference } from '../../src/live/doings/compare-books.js';
import { say, spoken } from '../../src/words/index.js';
import { shownDay, shownNumber, unitWord, withShownDays } from '../sheet/shown.js';

const isDay = (text: string): boolean => /^\d{4}-\d{2}-\d{2}$/.test(text);

/** A value in words; `blank` where there is none. `column` is the one that it stands in, where that is known. */
export function valueWords(value: CellValue | Raw | undefined, column?: ColumnView): string {
  if (value === null || value === undefined || value === '') return say`blank`;
  if (typeof value === 'object') return isCellError(value) ? value.error : String(value);
  if (typeof value === 'number')
    return shownNumber(value, column?.role === 'planning' ? column.decimals : undefined);
  if (typeof value === 'boolean') return value ? say`yes` : say`no`;
  if (isDay(value)) return shownDay(value);
  return column?.role === 'planning' ? withShownDays(spoken(value)) : choiceShown(value, column?.declaration);
}

/** A figure of a comparison, with its unit. */
function figureWords(value: CellValue, unit: string | undefined, column: ColumnView): string {
  const words = valueWords(value, column);
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
