import type { DayNumber } from '../types.js';
import type { Dish } from './dish-book.js';
import { needsOf } from './needs.js';
import type { MealPlan, WeekPlan } from './plan-week.js';
import { type Resource, Resources } from './suggest-stock.js';
import type { ShelfLine } from './types.js';

/** What to suggest for, and how. */
export interface SuggestOptions {
  readonly from: DayNumber;
  readonly to: DayNumber;
  /** How often one dish may stand in the span, planned meals included. 2 unless told. */
  readonly repeats?: number;
  /** Longest time to look for something better, in milliseconds. 2000 unless told. */
  readonly milliseconds?: number;
}

/** A use of a resource: of one way only, or (null) of whichever. In the resource's base measure. */
export interface Use {
  readonly resource: Resource;
  readonly way: string | null;
  readonly amount: number;
}

/** A dish for the meals of a class. */
export interface Candidate {
  readonly dish: Dish;
  readonly uses: readonly Use[];
}

/** Open meals that are alike: as many shares, and the same dishes fit. */
export interface MealClass {
  readonly meals: readonly MealPlan[];
  readonly candidates: readonly Candidate[];
}

export interface SuggestModel {
  readonly classes: readonly MealClass[];
  /** How often each dish may still be suggested, by key. */
  readonly room: ReadonlyMap<string, number>;
  readonly resources: readonly Resource[];
  /** Dishes that could not be reckoned with, and why. */
  readonly leftOut: readonly { readonly dish: string; readonly why: string }[];
}

/** What one more meal with a dish counts, beside a quart or pound eaten of what is over: enough to fill a table. */
export const FILLED = 0.01;
/** What eating a quart or pound at risk counts, beside one that is over. */
export const AT_RISK = 2;
export const OVER = 1;

/** True for a dish without anything to do on an earlier day, or one marked quick. */
export const fitsBusyDay = (
  dish: Dish,
  lines: readonly { readonly prep: readonly { readonly leadDays: number }[] }[],
) => dish.quick || lines.every(({ prep }) => prep.every(({ leadDays }) => leadDays === 0));

const suitsMeal = (dish: Dish, meal: string): boolean =>
  dish.suits.length === 0 || meal === '' || dish.suits.includes(meal);

/** The open meals of the span, the dishes that fit each, and the stock that is not spoken for. */
export function suggestModel(
  week: WeekPlan,
  shelfLines: Iterable<ShelfLine>,
  options: SuggestOptions,
): SuggestModel {
  const { from, to } = options;
  const repeats = Math.max(0, Math.floor(options.repeats ?? 2));
  const resources = new Resources(week, shelfLines);
  const within = (plan: MealPlan) =>
    plan.meal.date !== null && plan.meal.date >= from && plan.meal.date <= to;
  const open = week.meals.filter(
    (plan) => plan.state === 'open' && within(plan) && plan.meal.date! >= week.household.asOf,
  );
  const room = new Map<string, number>();
  for (const dish of week.book.dishes.keys()) room.set(dish, repeats);
  for (const plan of week.meals) {
    if (!within(plan) || plan.dish === null || plan.state === 'skipped') continue;
    room.set(plan.dish.key, Math.max(0, room.get(plan.dish.key)! - 1));
  }

  const leftOut: { dish: string; why: string }[] = [];
  const usable: Dish[] = [];
  for (const dish of week.book.dishes.values()) {
    const problem = needsOf(week.book, dish, 1).problems.find(
      (each) => each.line === null || each.problem.code !== 'amount-missing',
    );
    if (problem) leftOut.push({ dish: dish.name, why: problem.problem.message });
    else usable.push(dish);
  }

  const alike = new Map<string, { meals: MealPlan[]; candidates: readonly Candidate[] }>();
  for (const plan of open) {
    const times = plan.meal.times ?? 1;
    const fitting = usable.filter((dish) => {
      const { lines } = needsOf(week.book, dish, 1);
      return suitsMeal(dish, plan.meal.meal) && (!plan.meal.busy || fitsBusyDay(dish, lines));
    });
    const key = JSON.stringify([plan.shares, times, fitting.map((dish) => dish.key)]);
    const known = alike.get(key);
    if (known) {
      known.meals.push(plan);
      continue;
    }
    const candidates = fitting.flatMap((dish): Candidate[] => {
      if (!(room.get(dish.key)! > 0)) return [];
      const { needs } = needsOf(week.book, dish, plan.shares, times);
      const uses = resources.usesOf(needs);
      return uses && resources.hold(uses) ? [{ dish, uses }] : [];
    });
    alike.set(key, { meals: [plan], candidates });
  }
  return { classes: [...alike.values()], room, resources: resources.all, leftOut };
}
