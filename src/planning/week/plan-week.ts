import type { Problem } from '../../problem.js';
import { isDay } from '../dates.js';
import { defaultGuide, type Guide } from '../guide.js';
import { isOpened } from '../stock.js';
import type { DayNumber, Household, RowPlan } from '../types.js';
import { isAmount } from '../words.js';
import { dishCautions, OPENED, pastBestCaution, type WeekCaution } from './cautions.js';
import { type Dish, DishBook } from './dish-book.js';
import { bad, NO_DATE, NOT_POSTED, neverMarked, noSuchDish } from './meal-problems.js';
import { type Need, needsOf } from './needs.js';
import { openedOn } from './open-now.js';
import { lotsOf, type Piece, ShelfCopy } from './shelf-copy.js';
import { type DishLine, MEALS, type Meal, type ShelfLine, type WeekFigures } from './types.js';
import { unbridged } from './unbridged.js';
import { mealRow } from './week-row.js';
import { isClosed, perishesOpened } from './words.js';

/** A need of a meal and what the shelf gives of it. */
export interface MetNeed extends Need {
  /** Nothing for a bought line, or a meal that does not draw. */
  readonly pieces: readonly Piece[];
  /** In the need's measure. */
  readonly short: number;
  /** Why lots of this food could not be used, where they are counted in a measure that does not meet. */
  readonly unbridged: Problem | null;
}

/** How a meal stands: only a planned one draws on the copy of the shelf. */
export type MealState = 'open' | 'planned' | 'done' | 'skipped' | 'undated' | 'long past';

export interface OpenContainer {
  readonly lot: Piece['lot'];
  /** Part of a container that stands opened, more than 0 and less than 1. */
  readonly part: number;
  /** The name that a dish gave the food, or the food itself. */
  readonly name: string;
  /** Day of the meal that opened it; null where it stood opened before. */
  readonly since: DayNumber | null;
}

/** A meal with all that was worked out for it. */
export interface MealPlan {
  readonly meal: Meal;
  readonly dish: Dish | null;
  readonly state: MealState;
  readonly shares: number;
  readonly needs: readonly MetNeed[];
  readonly lines: readonly DishLine[];
  readonly openAfter: readonly OpenContainer[];
  readonly cautions: readonly WeekCaution[];
  readonly problems: readonly { readonly column: MealColumn; readonly problem: Problem }[];
}

export type MealColumn = 'date' | 'dish' | 'shares' | 'times' | 'done';

export interface WeekPlan {
  /** By the meal's row id. Problems of kept columns stand under `kept`. */
  readonly rows: ReadonlyMap<string, MealRowPlan>;
  /** In the order in which they are eaten. */
  readonly meals: readonly MealPlan[];
  readonly book: DishBook;
  /** The shelf after every planned meal. */
  readonly after: ShelfCopy;
  readonly household: Household;
  /** Meals whose draws are in the ledger. */
  readonly posted: ReadonlySet<string>;
}

export interface MealRowPlan extends RowPlan<WeekFigures> {
  readonly kept?: Partial<Record<MealColumn, Problem>>;
}

/** Meals that have gone by draw on the copy for so many days, in case they only wait to be marked. */
export const DAYS_TO_MARK = 28;

const rankOf = (meal: string): number => {
  const at = (MEALS as readonly string[]).indexOf(meal);
  return at < 0 ? 1.5 : at;
};

/** Meals in the order in which they are eaten: by date, then meal of the day, then row. */
export function inOrder(meals: readonly Meal[]): Meal[] {
  const day = (meal: Meal) => meal.date ?? Number.POSITIVE_INFINITY;
  return [...meals].sort((a, b) => (day(a) === day(b) ? rankOf(a.meal) - rankOf(b.meal) : day(a) - day(b)));
}

/** The day on which a meal's food leaves the shelf: its own, and for a meal to come, today. */
export const drawDay = (date: DayNumber, asOf: DayNumber): DayNumber => Math.min(date, asOf);

/**
 * Plans the Week: every meal draws on a copy of the shelf in the order of eating, so that what one opens the
 * next ones use. `posted` are the ids of meals whose draws are in the ledger (`postedMeals`): their food has
 * left the shelf already. Meals more than 28 days past and never marked do not draw.
 */
export function planWeek(
  meals: readonly Meal[],
  dishLines: readonly DishLine[],
  shelfLines: Iterable<ShelfLine>,
  household: Household,
  posted: ReadonlySet<string> = new Set(),
  guide: Guide = defaultGuide,
): WeekPlan {
  const known = [...shelfLines];
  const book = new DishBook(dishLines, known);
  const shelf = new ShelfCopy(lotsOf(known, household.asOf), guide);
  const openedBy = openedBefore(known, dishLines);
  // Lots that a planned meal has taken from: what else stands opened is not the week's doing.
  const touched = new Set<string>();
  const rows = new Map<string, MealRowPlan>();
  const plans: MealPlan[] = [];
  for (const meal of inOrder(meals)) {
    const plan = planMeal(meal, book, shelf, household, posted, openedBy, touched);
    plans.push(plan);
    rows.set(meal.id, mealRow(plan));
  }
  return { rows, meals: plans, book, after: shelf, household, posted };
}

type Opened = { readonly name: string; readonly since: DayNumber | null };

/** What stands opened before any meal, under the name that a dish gives the food. */
function openedBefore(lines: readonly ShelfLine[], dishLines: readonly DishLine[]): Map<string, Opened> {
  const names = new Map(dishLines.map(({ food, foodName }) => [food, foodName]));
  const opened = new Map<string, Opened>();
  for (const line of lines) {
    for (const lot of line.input.lots) {
      const left = line.plan.lots.get(lot.id)?.figures.left;
      if (typeof left !== 'number' || left <= 0 || !isOpened(left)) continue;
      const name = names.get(line.input.food) ?? line.input.food;
      opened.set(lot.id, { name, since: openedOn(line, lot, left) });
    }
  }
  return opened;
}

function stateOf(meal: Meal, posted: ReadonlySet<string>, asOf: DayNumber): MealState {
  if (posted.has(meal.id) || meal.done) return 'done';
  if (meal.skipped) return 'skipped';
  if (meal.dish === null) return 'open';
  if (!isDay(meal.date)) return 'undated';
  return meal.date < asOf - DAYS_TO_MARK ? 'long past' : 'planned';
}

function planMeal(
  meal: Meal,
  book: DishBook,
  shelf: ShelfCopy,
  household: Household,
  posted: ReadonlySet<string>,
  openedBy: Map<string, Opened>,
  touched: Set<string>,
): MealPlan {
  const problems: { column: MealColumn; problem: Problem }[] = [];
  const state = stateOf(meal, posted, household.asOf);
  const shares = meal.shares ?? household.shares;
  const times = meal.times ?? 1;
  const dish = meal.dish === null ? null : (book.dishes.get(meal.dish) ?? null);
  if (meal.dish !== null && !dish) problems.push({ column: 'dish', problem: noSuchDish(meal.dishName) });
  if (meal.dish !== null && !isDay(meal.date)) problems.push({ column: 'date', problem: NO_DATE });
  if (!isAmount(shares)) problems.push({ column: 'shares', problem: bad('shares') });
  if (!isAmount(times)) problems.push({ column: 'times', problem: bad('amount to multiply by') });
  if (state === 'long past') problems.push({ column: 'done', problem: neverMarked(DAYS_TO_MARK) });
  const canReckon = dish && isAmount(shares) && isAmount(times);
  const found = canReckon ? needsOf(book, dish, shares, times) : { needs: [], lines: [], problems: [] };
  for (const { line, problem } of found.problems) {
    // What is only on no list, for want of an amount, is said at the dish's line and need not follow it here.
    if (line !== null && problem.code === 'amount-missing') continue;
    problems.push({ column: 'dish', problem });
  }
  if (state === 'done' && !posted.has(meal.id) && found.needs.some((need) => isThere(shelf, need))) {
    problems.push({ column: 'done', problem: NOT_POSTED });
  }
  const draws = state === 'planned' && isDay(meal.date);
  const day = isDay(meal.date) ? drawDay(meal.date, household.asOf) : null;
  const met = found.needs.map((need): MetNeed => {
    if (!draws || need.from === 'bought') return { ...need, pieces: [], short: 0, unbridged: null };
    const taken = shelf.take(need.food, need.way, need.amount, need.measure, day);
    for (const { lot, before, after } of taken.pieces) {
      touched.add(lot.id);
      // A lot that is down to whole containers again has none open; the next one is opened another day.
      if (!isOpened(after)) openedBy.delete(lot.id);
      else if (isOpened(before) && Math.floor(before) === Math.floor(after)) continue;
      else openedBy.set(lot.id, { name: need.foodName, since: meal.date });
    }
    return { ...need, ...taken, unbridged: taken.short > 0 ? unbridged(shelf, need, need.measure) : null };
  });
  for (const { unbridged: problem } of met) if (problem) problems.push({ column: 'dish', problem });
  const openAfter = draws ? openOf(shelf, openedBy, touched) : [];
  const pieces = met.flatMap((need) => need.pieces);
  const used = met.flatMap((need) =>
    need.pieces.length > 0
      ? need.pieces.map(({ lot }) => ({ foodName: need.foodName, way: lot.way }))
      : [{ foodName: need.foodName, way: need.way }],
  );
  const cautions: WeekCaution[] = dish ? dishCautions(dish, found, used) : [];
  if (pieces.some(({ lot }) => lot.past)) cautions.push(pastBestCaution());
  if (openAfter.some(({ lot }) => perishesOpened(lot.way))) cautions.push(OPENED);
  return { meal, dish, state, shares, needs: met, lines: found.lines, openAfter, cautions, problems };
}

const isThere = (shelf: ShelfCopy, { from, food, way }: Need): boolean =>
  from === 'shelf' && shelf.of(food, way).some((lot) => shelf.left(lot.id) > 0);

function openOf(
  shelf: ShelfCopy,
  openedBy: ReadonlyMap<string, Opened>,
  touched: ReadonlySet<string>,
): OpenContainer[] {
  return shelf
    .opened()
    .filter((lot) => isClosed(lot.container) && touched.has(lot.id))
    .map((lot) => {
      const left = shelf.left(lot.id);
      const by = openedBy.get(lot.id);
      return { lot, part: left - Math.floor(left), name: by?.name ?? lot.food, since: by?.since ?? null };
    });
}
