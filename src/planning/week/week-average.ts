import { isDay } from '../dates.js';
import { defaultGuide, type Guide } from '../guide.js';
import { measuresOf } from '../measure.js';
import { countedInOf } from '../reckon.js';
import type { Household, LineInput } from '../types.js';
import { isAmount, tidy } from '../words.js';
import { DishBook } from './dish-book.js';
import { needsOf } from './needs.js';
import type { DishLine, Meal, ShelfLine } from './types.js';

/** The Week plan's average of a food line, with what it rests on. */
export interface WeekAverage {
  /** In the line's counted-in containers. */
  readonly perWeek: number;
  readonly countedIn: string;
  /** Weeks with a dish planned in them. */
  readonly weeks: number;
  /** Meals that take of it. */
  readonly meals: number;
}

/** Monday on or before a day, as a number of weeks. Day 0 was a Thursday. */
const weekOf = (day: number): number => Math.floor((day + 3) / 7);

const keyOf = (line: Pick<LineInput, 'food' | 'way'>): string => `${line.food}|${line.way}`;

/**
 * Average use per week of each food line by the Week plan, as `planLine` takes it, by `food|way`: what its meals
 * take (done, planned and to come; skipped ones left out) ÷ the weeks, Monday to Sunday, that have a dish. What
 * may come from whichever way is counted to the food's ways in equal parts. Lines that no meal takes are
 * absent. It looks at no stock, so that the plan does not depend on itself.
 */
export function weekAverages(
  meals: readonly Meal[],
  dishLines: readonly DishLine[],
  lines: Iterable<LineInput>,
  household: Pick<Household, 'shares'>,
  guide: Guide = defaultGuide,
): Map<string, WeekAverage> {
  const inputs = [...lines].filter(({ row, lots }) => row !== null || lots.length > 0);
  const book = new DishBook(dishLines, inputs.map(asShelf));
  const byFood = new Map<string, { input: LineInput; countedIn: string }[]>();
  for (const input of inputs) {
    const countedIn = countedInOf(input);
    if (countedIn === null) continue;
    const of = byFood.get(input.food) ?? [];
    of.push({ input, countedIn });
    byFood.set(input.food, of);
  }
  const weeks = new Set<number>();
  const sums = new Map<string, { total: number; countedIn: string; meals: Set<string> }>();
  for (const meal of meals) {
    const dish = meal.dish === null ? undefined : book.dishes.get(meal.dish);
    const shares = meal.shares ?? household.shares;
    const times = meal.times ?? 1;
    if (!dish || meal.skipped || !isDay(meal.date) || !isAmount(shares) || !isAmount(times)) continue;
    weeks.add(weekOf(meal.date));
    for (const need of needsOf(book, dish, shares, times).needs) {
      if (need.from === 'bought') continue;
      const measures = measuresOf(guide.bridges(need.food));
      const from = (byFood.get(need.food) ?? []).filter(
        ({ input, countedIn }) =>
          (need.way === null || input.way === need.way) &&
          measures.factorOrNull(need.measure, countedIn) !== null,
      );
      for (const { input, countedIn } of from) {
        const sum = sums.get(keyOf(input)) ?? { total: 0, countedIn, meals: new Set<string>() };
        sums.set(keyOf(input), sum);
        sum.total += (need.amount * measures.factorOrNull(need.measure, countedIn)!) / from.length;
        sum.meals.add(meal.id);
      }
    }
  }
  const averages = new Map<string, WeekAverage>();
  for (const [key, { total, countedIn, meals: of }] of sums) {
    averages.set(key, {
      perWeek: tidy(total / weeks.size),
      countedIn,
      weeks: weeks.size,
      meals: of.size,
    });
  }
  return averages;
}

const NO_PLAN: ShelfLine['plan'] = {
  lots: new Map(),
  draws: new Map(),
  food: null,
  allotments: new Map(),
  poundsByCrop: new Map(),
};

const asShelf = (input: LineInput): ShelfLine => ({ input, plan: NO_PLAN });
