import { isDay } from '../dates.js';
import { isOpened } from '../stock.js';
import type { DayNumber, Lot } from '../types.js';
import type { ShelfLine } from './types.js';
import { isClosed, leftoverWords } from './words.js';

/** A jar, can or bag that stands opened by the ledger. */
export interface OpenNow {
  readonly lot: string;
  /** Compared form of the food; the screen knows how it is written. */
  readonly food: string;
  readonly way: string;
  readonly place: string;
  /** '2 cups', exact to the teaspoon. */
  readonly words: string;
  /** Day of the draw that opened it; null where draws do not say. */
  readonly since: DayNumber | null;
}

/** The day on which the container that now stands opened was opened: when the lot went below whole ones. */
export function openedOn({ input, plan }: ShelfLine, lot: Lot, left: number): DayNumber | null {
  const draws = input.draws
    .map(({ id, date }) => ({ date, took: plan.allotments.get(id)?.[lot.id] ?? 0 }))
    .filter((each): each is { date: DayNumber; took: number } => isDay(each.date) && each.took !== 0)
    .sort((a, b) => a.date - b.date);
  let rest = lot.count ?? left;
  for (const { date, took } of draws) {
    rest -= took;
    if (rest < Math.ceil(left) - 1e-9) return date;
  }
  return null;
}

/** What stands opened now, the longest opened first: to be used by the next meals. */
export function openNow(lines: Iterable<ShelfLine>): OpenNow[] {
  const found: OpenNow[] = [];
  for (const line of lines) {
    for (const lot of line.input.lots) {
      const left = line.plan.lots.get(lot.id)?.figures.left;
      if (typeof left !== 'number' || lot.container === null || !isClosed(lot.container)) continue;
      if (left <= 0 || !isOpened(left)) continue;
      found.push({
        lot: lot.id,
        food: line.input.food,
        way: line.input.way,
        place: lot.place.trim(),
        words: leftoverWords(left - Math.floor(left), lot.container),
        since: openedOn(line, lot, left),
      });
    }
  }
  return found.sort((a, b) => (a.since ?? 0) - (b.since ?? 0));
}
