import { foodKey, lineKey } from '../../src/live/food-key.js';
import type { LiveBook } from '../../src/live/live-book.js';

/** A food line that stands on the Shelf, as a Foods row takes it. */
export interface UnlistedLine {
  readonly key: string;
  readonly food: string;
  readonly way: string;
  readonly container: string | null;
}

/** Food lines of the Shelf without a row of Foods: each by its first lot, in the Shelf's order. */
export function unlistedLines(live: LiveBook): UnlistedLine[] {
  const shelf = live.sheetOfKind('shelf');
  if (shelf === undefined) return [];
  const foods = live.sheetOfKind('foods');
  const text = (sheet: string, row: string, column: string): string => {
    const value = live.value(sheet, row, column);
    return typeof value === 'string' ? value.trim() : '';
  };
  const keyOf = (sheet: string, row: string): string =>
    lineKey(foodKey(text(sheet, row, 'food')), text(sheet, row, 'way').toLowerCase());
  const listed = new Set((foods === undefined ? [] : live.rowIds(foods)).map((row) => keyOf(foods!, row)));
  const found = new Map<string, UnlistedLine>();
  for (const row of live.rowIds(shelf)) {
    const [food, way] = [text(shelf, row, 'food'), text(shelf, row, 'way')];
    const key = keyOf(shelf, row);
    if (food === '' || way === '' || listed.has(key)) continue;
    const container = text(shelf, row, 'container') || (found.get(key)?.container ?? null);
    if (!found.get(key)?.container)
      found.set(key, { key, food: found.get(key)?.food ?? food, way, container });
  }
  return [...found.values()];
}

/** Gives each line a row of Foods: the food, its way, and the container of its lots. All else stays blank. */
export function listInFoods(
  live: LiveBook,
  lines: readonly UnlistedLine[],
): ReturnType<LiveBook['insertRows']> {
  return live.insertRows(
    live.sheetOfKind('foods') ?? 'foods',
    lines.map(({ food, way, container }) => ({ food, way, counted_in: container })),
  );
}
