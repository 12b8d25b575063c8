import { isCellError, type SheetKind } from '../book/index.js';
import { say } from '../words/index.js';
import type { BookReading } from './book-reading.js';
import { choiceShown } from './choice-words.js';
import { withShownDays } from './shown.js';

/** Kept columns that say what a row is, by kind. */
export const NAMING: Readonly<Partial<Record<SheetKind, readonly string[]>>> = {
  household: ['name'],
  shelf: ['food', 'way', 'container', 'put_up_on', 'place'],
  draws: ['date', 'food', 'amount', 'container'],
  foods: ['food', 'way'],
  week: ['date', 'meal', 'dish'],
  dishes: ['dish', 'food', 'prep'],
  beds: ['crop', 'variety', 'sown_on'],
  harvest: ['date', 'crop', 'planting'],
  batches: ['date', 'food', 'way'],
  supplies: ['item'],
  facts: ['figure', 'season'],
};

/** A row by what it is: its food, lot or date; else its first entries, else its number. */
export function rowName(live: BookReading, sheet: string, row: string): string {
  const kind = live.sheets().find(({ id }) => id === sheet)?.kind as SheetKind | undefined;
  const columns = live.columns(sheet);
  const named = (kind && NAMING[kind])?.filter((id) => columns.some((column) => column.id === id)) ?? [];
  const naming =
    named.length > 0 ? named : columns.filter(({ role }) => role !== 'planning').map(({ id }) => id);
  const words: string[] = [];
  for (const id of naming) {
    const declaration = columns.find((column) => column.id === id)?.declaration;
    const value = live.value(sheet, row, id);
    if (value === null || value === '' || typeof value === 'boolean' || isCellError(value)) continue;
    words.push(withShownDays(choiceShown(String(value), declaration)));
    if (named.length === 0 && words.length === 3) break;
  }
  return words.length > 0 ? words.join(', ') : say`row ${live.rowIds(sheet).indexOf(row) + 1}`;
}
