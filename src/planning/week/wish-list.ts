import { asFraction } from '../../units/index.js';
import { counted, say } from '../../words/index.js';
import { isDay } from '../dates.js';
import { mediumDay } from '../day-words.js';
import { countedInOf } from '../reckon.js';
import type { DayNumber } from '../types.js';
import { tidy } from '../words.js';
import type { WeekPlan } from './plan-week.js';
import type { ShelfLine } from './types.js';
import { amountWords, isCount } from './words.js';

/** What a wish rests on. */
export type WishFor = 'ran out' | 'wished for' | 'stayed';

/** One line of the wish list, to be offered when the beds are planned. */
export interface Wish {
  /** Compared form of the food, and its way ('' where a dish takes whichever). */
  readonly food: string;
  readonly way: string;
  readonly what: WishFor;
  /** In `measure`; null where only the fact is known. */
  readonly amount: number | null;
  readonly measure: string | null;
  /** 'ran out on 3 February 2026; drawn 14 times before that'. */
  readonly words: string;
}

/** Food lines of which some is left, and nothing was drawn for so many days. */
const STAYED_DAYS = 182;

/** What ran out, was wished for and stayed, by the draws of the year before `asOf` and the meals of the Week. */
export function wishList(lines: Iterable<ShelfLine>, week: WeekPlan | null, asOf: DayNumber): Wish[] {
  const wishes: Wish[] = [];
  for (const line of lines) {
    const wish = ofLine(line, asOf);
    if (wish) wishes.push(wish);
    const missed = notFound(line, asOf);
    if (missed) wishes.push(missed);
  }
  if (week) wishes.push(...shortOf(week));
  const rank: Record<WishFor, number> = { 'ran out': 0, 'wished for': 1, stayed: 2 };
  return wishes.sort((a, b) => rank[a.what] - rank[b.what] || a.food.localeCompare(b.food));
}

function ofLine({ input, plan }: ShelfLine, asOf: DayNumber): Wish | null {
  const lots = input.lots.filter(({ id }) => typeof plan.lots.get(id)?.figures.left === 'number');
  if (lots.length === 0) return null;
  const left = lots.reduce((sum, { id }) => sum + Number(plan.lots.get(id)!.figures.left), 0);
  const eaten = input.draws.filter(
    ({ date, amount, purpose }) =>
      isDay(date) &&
      date <= asOf &&
      date > asOf - 365 &&
      (amount ?? 0) > 0 &&
      purpose !== 'gift' &&
      purpose !== 'spoiled',
  );
  const common = { food: input.food, way: input.way };
  if (left === 0) {
    if (eaten.length === 0) return null;
    const last = Math.max(...eaten.map(({ date }) => date!));
    const times = counted(eaten.length, String(eaten.length), 'time');
    return {
      ...common,
      what: 'ran out',
      amount: null,
      measure: null,
      words: say`ran out on ${mediumDay(last)}; drawn ${times} in the year before`,
    };
  }
  const over = plan.food?.figures.short_or_over;
  const unit = countedInOf(input);
  if (typeof over === 'number' && over > 0 && unit !== null) {
    const amount = tidy(over);
    const words = say`${amountWords(amount, unit)} will be left at the next harvest, beyond what is carried`;
    return { ...common, what: 'stayed', amount, measure: unit, words };
  }
  const seen = [...lots.map(({ putUpOn }) => putUpOn), ...input.draws.map(({ date }) => date)].filter(isDay);
  const last = Math.max(...seen.filter((day) => day <= asOf), Number.NEGATIVE_INFINITY);
  if (!isDay(last) || last > asOf - STAYED_DAYS) return null;
  return {
    ...common,
    what: 'stayed',
    amount: null,
    measure: null,
    words: say`not touched since ${mediumDay(last)}`,
  };
}

/** Draws larger than the stock: someone went down for it and it was not there. */
function notFound({ input, plan }: ShelfLine, asOf: DayNumber): Wish | null {
  let times = 0;
  for (const draw of input.draws) {
    const missed = plan.draws.get(draw.id)?.figures.not_found;
    if (typeof missed === 'number' && missed > 0 && isDay(draw.date) && draw.date > asOf - 365) times += 1;
  }
  if (times === 0) return null;
  const words = say`fetched ${times} ${times === 1 ? 'time' : 'times'} when there was not enough`;
  return { food: input.food, way: input.way, what: 'wished for', amount: null, measure: null, words };
}

/** What planned meals lack, summed where the measure is the same. */
function shortOf(week: WeekPlan): Wish[] {
  const sums = new Map<
    string,
    { food: string; way: string; measure: string; amount: number; meals: Set<string> }
  >();
  for (const { meal, needs } of week.meals) {
    for (const { food, way, measure, short } of needs) {
      if (!(short > 0)) continue;
      const key = `${food}|${way ?? ''}|${measure}`;
      const sum = sums.get(key) ?? { food, way: way ?? '', measure, amount: 0, meals: new Set<string>() };
      sum.amount += short;
      sum.meals.add(meal.id);
      sums.set(key, sum);
    }
  }
  return [...sums.values()].map(({ food, way, measure, amount, meals }) => ({
    food,
    way,
    what: 'wished for' as const,
    amount: tidy(amount),
    measure,
    words: say`${isCount(measure) ? asFraction(amount) : amountWords(amount, measure)} short for ${meals.size} ${meals.size === 1 ? 'meal' : 'meals'}`,
  }));
}
