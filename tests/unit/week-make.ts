import { emptyGuide, type Guide, planLine } from '../../src/planning/index.js';
import type { FoodRow, Household, Lot } from '../../src/planning/types.js';
import type { DishLine, Meal, ShelfLine } from '../../src/planning/week/index.js';
import { readPrep } from '../../src/planning/week/index.js';
import { day, household } from './planning-make.js';

export const AS_OF = '2026-01-05'; // a Monday
export const at = (more: Partial<Household> = {}): Household => household(AS_OF, { shares: 6, ...more });

/** A line of a dish that serves 6: food and dish keys are their names in lower case. */
export const dishLine = (id: string, dish: string, food: string, more: Partial<DishLine> = {}): DishLine => ({
  id,
  dish: dish.toLowerCase(),
  dishName: dish,
  serves: 6,
  food: food === '' ? null : food.toLowerCase(),
  foodName: food,
  way: null,
  amount: 1,
  measure: 'quart jar',
  from: null,
  prep: [],
  suits: [],
  quick: false,
  note: '',
  ...more,
});

export const prep = readPrep;

export const meal = (id: string, iso: string | null, dish: string, more: Partial<Meal> = {}): Meal => ({
  id,
  date: iso === null ? null : day(iso),
  meal: 'supper',
  dish: dish === '' ? null : dish.toLowerCase(),
  dishName: dish,
  shares: null,
  times: null,
  busy: false,
  done: false,
  skipped: false,
  ...more,
});

/** Shelf lines of these lots, one for each food and way, planned as the book plans them. */
export function shelfOf(
  lots: readonly Lot[],
  rows: readonly FoodRow[] = [],
  house: Household = at(),
  guide: Guide = emptyGuide,
  draws: readonly import('../../src/planning/types.js').Draw[] = [],
): ShelfLine[] {
  const keys = new Set([...lots, ...rows, ...draws].map(({ food, way }) => `${food}|${way}`));
  return [...keys].map((key) => {
    const [food, way] = key.split('|') as [string, Lot['way'] & string];
    const of = <T extends { food: string | null; way: string | null }>(all: readonly T[]) =>
      all.filter((each) => each.food === food && each.way === way);
    const input = { food, way, row: of(rows)[0] ?? null, lots: of(lots), draws: of(draws) };
    return { input, plan: planLine(input, house, guide) };
  });
}
