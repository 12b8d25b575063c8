import { phrase, say } from '../../words/index.js';
import { mediumDay } from '../day-words.js';
import type { DayNumber } from '../types.js';
import type { Dish } from './dish-book.js';
import { type Need, needsOf } from './needs.js';
import type { MealPlan, WeekPlan } from './plan-week.js';
import { ShelfCopy } from './shelf-copy.js';
import { fitsBusyDay, type SuggestModel, type SuggestOptions, suggestModel } from './suggest-model.js';
import { type Counts, solveSuggestion } from './suggest-solve.js';
import type { ShelfLine } from './types.js';
import { foodWords, needWords } from './words.js';

/** A dish for an open meal, and why. */
export interface Suggestion {
  /** Row id of the meal. */
  readonly meal: string;
  /** Compared form of the dish, and its name as to be written in the cell. */
  readonly dish: string;
  readonly dishName: string;
  readonly why: string;
}

export interface Suggestions {
  readonly suggestions: readonly Suggestion[];
  /** Open meals for which none was found, and why. */
  readonly none: readonly { readonly meal: string; readonly why: string }[];
  /** Dishes that could not be reckoned with, and why. */
  readonly leftOut: readonly { readonly dish: string; readonly why: string }[];
  /** False when the time ran out first: then these are the best found so far. */
  readonly best: boolean;
  /** Quarts and pounds eaten of what is at risk (counted twice) and over, and a little for each meal. */
  readonly worth: number;
  readonly said: string;
}

/**
 * Dishes for the open meals of a span, so that they eat most of what is at risk and over: never more than the
 * stock that planned meals leave, a dish no more often than `repeats`, only for meals it suits, and on busy days
 * only what is quick or needs nothing done the day before. Nothing is written: the caller offers it.
 */
export async function suggestDishes(
  week: WeekPlan,
  shelfLines: Iterable<ShelfLine>,
  options: SuggestOptions,
): Promise<Suggestions> {
  const lines = [...shelfLines];
  const model = suggestModel(week, lines, options);
  const { counts, worth, best } = await solveSuggestion(model, options.milliseconds ?? 2000);
  const placed = placeOnDays(model, counts, week);
  const suggestions = explained(week, model, placed);
  const none = model.classes.flatMap(({ meals, candidates }) =>
    meals
      .filter(({ meal }) => !placed.some(({ plan }) => plan.meal.id === meal.id))
      .map(({ meal }) => ({ meal: meal.id, why: candidates.length === 0 ? NO_FIT : USED_UP })),
  );
  return {
    suggestions,
    none,
    leftOut: model.leftOut,
    best,
    worth,
    said: saidOf(suggestions.length, none.length, best),
  };
}

const NO_FIT = phrase(
  'No dish fits this meal: none suits it, stands in stock whole, and is quick enough if the day is busy.',
);
const USED_UP = phrase(
  'The dishes that fit are used as often as they may be, or the stock is used up by the other meals.',
);

function saidOf(found: number, none: number, best: boolean): string {
  if (found === 0)
    return none === 0 ? say`No open meals in these days.` : say`No dish was found for the open meals.`;
  const meals = found === 1 ? say`1 dish suggested` : say`${found} dishes suggested`;
  return best ? `${meals}.` : say`${meals}: the best found in the time there was.`;
}

interface Placed {
  readonly plan: MealPlan;
  readonly dish: Dish;
}

/** Spreads the chosen dishes over the days: the most pressing first, none twice on a day where that can be. */
function placeOnDays(model: SuggestModel, counts: Counts, week: WeekPlan): Placed[] {
  const slots = model.classes
    .flatMap(({ meals, candidates }, c) => meals.map((plan) => ({ plan, candidates, c })))
    .sort((a, b) => a.plan.meal.date! - b.plan.meal.date!);
  const left = counts.map((each) => [...each]);
  const spare = model.classes.map(({ meals }, c) => meals.length - counts[c]!.reduce((a, b) => a + b, 0));
  const daysOf = new Map<string, DayNumber[]>();
  const standsOn = (dish: string, day: DayNumber) => daysOf.set(dish, [...(daysOf.get(dish) ?? []), day]);
  for (const { dish, state, meal } of week.meals) {
    if (dish && state !== 'skipped' && meal.date !== null) standsOn(dish.key, meal.date);
  }
  const placed: Placed[] = [];
  for (const { plan, candidates, c } of slots) {
    const day = plan.meal.date!;
    let pick = -1;
    let pickGap = -1;
    for (const [d, { dish }] of candidates.entries()) {
      if (!(left[c]![d]! > 0)) continue;
      const gap = Math.min(1000, ...(daysOf.get(dish.key) ?? []).map((on) => Math.abs(day - on)));
      // One that has more to come must start sooner.
      const score = gap * 10 + left[c]![d]!;
      if (score > pickGap) [pick, pickGap] = [d, score];
    }
    if (pick < 0) continue;
    // Better to leave a spare meal open than to eat the same twice on a day.
    if (pickGap < 10 && spare[c]! > 0) {
      spare[c]! -= 1;
      continue;
    }
    left[c]![pick]! -= 1;
    const { dish } = candidates[pick]!;
    standsOn(dish.key, day);
    placed.push({ plan, dish });
  }
  return placed;
}

/** Takes each suggested dish from a copy of what the planned meals leave, to say what it eats. */
function explained(week: WeekPlan, model: SuggestModel, placed: readonly Placed[]): Suggestion[] {
  const { book } = week;
  const eating = new Eating(week, model);
  return placed.map(({ plan, dish }) => {
    const { needs, lines } = needsOf(book, dish, plan.shares, plan.meal.times ?? 1);
    const fromShelf = needs.filter(({ from }) => from === 'shelf');
    const words = fromShelf.flatMap((need) => eating.words(need));
    if (words.length === 0)
      words.push(fromShelf.length > 0 ? say`all in stock` : say`takes nothing from the shelf`);
    if (plan.meal.busy) {
      words.push(
        fitsBusyDay(dish, lines) && !dish.quick
          ? say`nothing to do the day before, on a busy day`
          : say`marked quick, for a busy day`,
      );
    }
    const text = words.join('; ');
    return {
      meal: plan.meal.id,
      dish: dish.key,
      dishName: dish.name,
      why: `${text.charAt(0).toUpperCase()}${text.slice(1)}.`,
    };
  });
}

/** What suggested dishes eat, one after the other, of what is at risk and over. */
class Eating {
  readonly #shelf: ShelfCopy;
  /** By `food|way`: what is still at risk and over, in the resource's base. */
  readonly #left = new Map<string, { base: string; risk: number; over: number; bestBy: DayNumber | null }>();

  constructor({ after }: WeekPlan, { resources }: SuggestModel) {
    this.#shelf = new ShelfCopy(
      after.lots.map((lot) => ({ ...lot, left: after.left(lot.id) })),
      after.guide,
    );
    for (const { food, base, ways } of resources) {
      for (const { way, risk, over } of ways.values()) {
        if (risk <= 0 && over <= 0) continue;
        const days = after
          .of(food)
          .flatMap((lot) => (lot.way === way && lot.atRisk > 0 ? (lot.bestBy ?? []) : []));
        this.#left.set(`${food}|${way}`, {
          base,
          risk,
          over,
          bestBy: days.length > 0 ? Math.min(...days) : null,
        });
      }
    }
  }

  words(need: Need): string[] {
    const eaten = new Map<string, { amount: number; container: string; way: Need['way'] }>();
    const { pieces } = this.#shelf.take(need.food, need.way, need.amount, need.measure, null);
    for (const { lot, covers } of pieces) {
      const key = `${need.food}|${lot.way}`;
      const sum = eaten.get(key) ?? { amount: 0, container: lot.container, way: lot.way };
      eaten.set(key, { ...sum, amount: sum.amount + covers });
    }
    const words: string[] = [];
    for (const [key, { amount, container, way }] of eaten) {
      const left = this.#left.get(key);
      const factor = left ? this.#shelf.measures(need.food).factorOrNull(need.measure, left.base) : null;
      if (!left || factor === null) continue;
      const food = foodWords(need.foodName, way);
      const risk = Math.min(left.risk, amount * factor);
      if (risk > 1e-9) {
        left.risk -= risk;
        const inLot = this.#shelf.measures(need.food).factorOrNull(left.base, container) ?? 1;
        const by = left.bestBy === null ? '' : say`, best by ${mediumDay(left.bestBy)}`;
        const what = needWords(risk * inLot, container, need.foodName, way);
        words.push(say`eats ${what} that would not be eaten in time${by}`);
      } else if (left.over > 1e-9) {
        left.over -= Math.min(left.over, amount * factor);
        words.push(say`uses ${food}, of which more stands there than lasts to the next harvest`);
      }
    }
    return words;
  }
}
