import { isDay } from '../dates.js';
import type { DayNumber } from '../types.js';
import { isAmount, tidy } from '../words.js';
import { inOrder } from './plan-week.js';
import type { Meal } from './types.js';

/** A row to insert into Week: what was planned, without what came of it. */
export interface NewMeal {
  readonly date: DayNumber;
  readonly meal: string;
  /** As written; '' leaves the meal open. */
  readonly dishName: string;
  readonly shares: number | null;
  readonly times: number | null;
  readonly busy: boolean;
}

export interface CopyOptions {
  /** Saturdays and Sundays are copied without a dish, to be decided then. */
  readonly looseWeekends?: boolean;
  /** Guests and days away are of one week only: shares are left blank (the whole table) unless this is ticked. */
  readonly keepShares?: boolean;
}

/** Monday on or before a day. Day 0 was a Thursday. */
export const mondayOf = (day: DayNumber): DayNumber => day - ((((day + 3) % 7) + 7) % 7);

const isWeekend = (day: DayNumber): boolean => day - mondayOf(day) >= 5;

const slot = (day: DayNumber, meal: string): string => `${day}|${meal}`;

/**
 * A rotating plan: the meals of the `weeks` weeks from the Monday of `from` on, repeated for `times` rounds from
 * the Monday of `to` on. Meals that stand there already are left as they are. `weeks: 1, times: 1` copies a week.
 * Skipped meals come along: they were skipped once.
 */
export function repeatWeeks(
  meals: readonly Meal[],
  plan: { readonly from: DayNumber; readonly weeks: number; readonly to: DayNumber; readonly times: number },
  options: CopyOptions = {},
): NewMeal[] {
  const first = mondayOf(plan.from);
  const target = mondayOf(plan.to);
  const days = Math.max(1, Math.min(26, Math.floor(plan.weeks))) * 7;
  const rounds = Math.max(0, Math.min(60, Math.floor(plan.times)));
  const taken = new Set(meals.flatMap(({ date, meal }) => (date === null ? [] : [slot(date, meal)])));
  const pattern = inOrder(meals).filter(({ date }) => isDay(date) && date >= first && date < first + days);
  const made: NewMeal[] = [];
  for (let round = 0; round < rounds; round++) {
    for (const meal of pattern) {
      const date = target + round * days + (meal.date! - first);
      if (!isDay(date) || taken.has(slot(date, meal.meal))) continue;
      const loose = options.looseWeekends === true && isWeekend(date);
      made.push({
        date,
        meal: meal.meal,
        dishName: loose ? '' : meal.dishName,
        shares: options.keepShares === true ? meal.shares : null,
        times: meal.times,
        busy: meal.busy,
      });
    }
  }
  return made;
}

/** Last week's meals for the week of `to`. */
export const copyLastWeek = (meals: readonly Meal[], to: DayNumber, options: CopyOptions = {}): NewMeal[] =>
  repeatWeeks(meals, { from: mondayOf(to) - 7, weeks: 1, to, times: 1 }, options);

/** Empty rows for the meals of a span that have no row yet: something to fill in. */
export function openMeals(
  meals: readonly Meal[],
  from: DayNumber,
  to: DayNumber,
  which: readonly string[] = ['supper'],
): NewMeal[] {
  const taken = new Set(meals.flatMap(({ date, meal }) => (date === null ? [] : [slot(date, meal)])));
  const made: NewMeal[] = [];
  for (let date = from; date <= Math.min(to, from + 400); date++) {
    for (const meal of which) {
      if (!isDay(date) || taken.has(slot(date, meal))) continue;
      made.push({ date, meal, dishName: '', shares: null, times: null, busy: false });
    }
  }
  return made;
}

/** A change of who is at the table for the meals of a span. */
export interface AtTable {
  readonly from: DayNumber;
  readonly to: DayNumber;
  /** Meals it is for; all when absent. */
  readonly meals?: readonly string[];
  /** Shares more (guests) or fewer (days away); or everybody away. */
  readonly change: number | 'all away';
}

/** A kept cell of Week to be written. */
export interface MealEdit {
  readonly meal: string;
  readonly column: 'shares' | 'skipped';
  readonly value: number | boolean;
}

/** Cells to write for guests and days away. Meals done or skipped are left as they are; no one left is a skip. */
export function guestsAndAway(meals: readonly Meal[], tableShares: number, at: AtTable): MealEdit[] {
  const edits: MealEdit[] = [];
  for (const meal of inOrder(meals)) {
    if (meal.done || meal.skipped || meal.date === null || meal.date < at.from || meal.date > at.to) continue;
    if (at.meals && !at.meals.includes(meal.meal)) continue;
    const now = meal.shares ?? tableShares;
    const next = at.change === 'all away' ? 0 : tidy(Math.max(0, now + at.change));
    if (!isAmount(next)) continue;
    edits.push(
      next === 0
        ? { meal: meal.id, column: 'skipped', value: true }
        : { meal: meal.id, column: 'shares', value: next },
    );
  }
  return edits;
}
