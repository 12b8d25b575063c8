import type { Problem } from '../../problem.js';
import { counted, phrase, say } from '../../words/index.js';
import { isDay, toIsoDay } from '../dates.js';
import type { Allotment, DayNumber } from '../types.js';
import { tidy } from '../words.js';
import type { Need } from './needs.js';
import { drawDay, type MealPlan, type WeekPlan } from './plan-week.js';
import { drawIdOf } from './post-id.js';
import { ShelfCopy } from './shelf-copy.js';
import { needWords } from './words.js';

/** A row to insert into Draws, with the lots that it is allotted to. */
export interface MealDraw {
  readonly id: string;
  /** Kept cells of Draws, by column id. */
  readonly cells: {
    readonly date: string;
    readonly food: string;
    readonly way: string;
    readonly amount: number;
    readonly container: string;
    readonly purpose: 'dish';
    readonly note: string;
  };
  /** By lot id, in each lot's own containers. */
  readonly allotted: Allotment;
}

export interface MarkedMeal {
  readonly meal: string;
  readonly draws: readonly MealDraw[];
  /** Short of the shelf, in words: not posted, since it did not stand there. */
  readonly short: readonly string[];
}

/** What marking done comes to: one command, all of it or none. */
export interface MarkDone {
  /** Rows of Draws to insert. */
  readonly draws: readonly MealDraw[];
  /** Meals whose done tick is to be set. */
  readonly tick: readonly string[];
  readonly meals: readonly MarkedMeal[];
  /** Meals left as they are, and why. */
  readonly left: readonly { readonly meal: string; readonly problem: Problem }[];
  /** For the status line: '3 meals marked done, 7 draws posted.' */
  readonly said: string;
}

/** Which meals: by row id, or all from one day to another, both included. */
export type WhichMeals =
  | { readonly meals: readonly string[] }
  | { readonly from: DayNumber; readonly to: DayNumber };

/**
 * The draws that marking these meals done posts, oldest lots first, as the plan has taken them. Amounts, dishes
 * and skips are as they stand on the Week sheet, corrections included. A meal whose draws are in the ledger
 * (`drawIds`, or that the plan was told are posted) posts nothing again; only its tick is set. A meal to come takes its food off the shelf today.
 * Only the meals marked are counted, so that no younger lot is drawn while an older one still stands there.
 */
export function markDone(week: WeekPlan, which: WhichMeals, drawIds: ReadonlySet<string>): MarkDone {
  const chosen = week.meals.filter(({ meal }) =>
    'meals' in which
      ? which.meals.includes(meal.id)
      : meal.date !== null && meal.date >= which.from && meal.date <= which.to,
  );
  const shelf = new ShelfCopy(week.after.lots, week.after.guide);
  const meals: MarkedMeal[] = [];
  const tick: string[] = [];
  const left: { meal: string; problem: Problem }[] = [];
  for (const plan of chosen) {
    const problem = standsInTheWay(plan);
    if (problem) {
      if (plan.state !== 'open' && plan.state !== 'skipped') left.push({ meal: plan.meal.id, problem });
      continue;
    }
    if (!plan.meal.done) tick.push(plan.meal.id);
    if (week.posted.has(plan.meal.id)) continue;
    const taken = drawsOf(plan, shelf, week.household.asOf);
    meals.push({ ...taken, draws: taken.draws.filter(({ id }) => !drawIds.has(id)) });
  }
  const draws = meals.flatMap((each) => each.draws);
  return { draws, tick, meals, left, said: said(tick.length, draws.length) };
}

const said = (ticked: number, posted: number): string =>
  ticked === 0 && posted === 0
    ? say`Nothing to mark: these meals are done already, skipped or have no dish.`
    : say`${counted(ticked, String(ticked), 'meal')} marked done, ${counted(posted, String(posted), 'draw')} posted.`;

function standsInTheWay({ state, dish, meal }: MealPlan): Problem | null {
  if (state === 'skipped' || state === 'open') return NOTHING_TO_MARK;
  if (!isDay(meal.date)) {
    return {
      code: 'missing',
      message: say`The date of this meal is missing, so it cannot be marked done.`,
      mend: say`Write the day on which it was eaten.`,
    };
  }
  if (dish === null) {
    return {
      code: 'dish-not-there',
      message: say`There is no dish called “${meal.dishName.slice(0, 60)}”, so nothing is known of what it took.`,
      mend: say`Choose the dish that was cooked, or tick the meal as skipped.`,
    };
  }
  return null;
}

const NOTHING_TO_MARK: Problem = {
  code: 'nothing-to-mark',
  message: phrase('This meal is skipped or has no dish.'),
  mend: phrase('Choose a dish, or clear the skipped tick.'),
};

/** One draw for each food line and measure of a meal. */
function drawsOf(plan: MealPlan, shelf: ShelfCopy, asOf: DayNumber): MarkedMeal {
  const { meal, dish } = plan;
  const day = drawDay(meal.date!, asOf);
  const note = meal.meal === '' ? dish!.name : `${dish!.name}, ${meal.meal}`;
  const heaps = new Map<string, Heap>();
  const short: string[] = [];
  for (const need of plan.needs) {
    if (need.from === 'bought') continue;
    const taken = shelf.take(need.food, need.way, need.amount, need.measure, day);
    if (taken.short > 0) short.push(needWords(taken.short, need.measure, need.foodName, need.way));
    for (const { lot, amount, covers } of taken.pieces) {
      const key = `${need.food}|${lot.way}|${need.measure}`;
      const heap = heaps.get(key) ?? { need, way: lot.way, amount: 0, allotted: {} };
      heaps.set(key, heap);
      heap.amount += covers;
      heap.allotted[lot.id] = (heap.allotted[lot.id] ?? 0) + amount;
    }
  }
  const draws = [...heaps].map(
    ([key, { need, way, amount, allotted }]): MealDraw => ({
      id: drawIdOf(meal.id, key),
      cells: {
        date: toIsoDay(day),
        food: need.foodName,
        way,
        amount: tidy(amount),
        container: need.measure,
        purpose: 'dish',
        note,
      },
      allotted,
    }),
  );
  return { meal: meal.id, draws, short };
}

interface Heap {
  readonly need: Need;
  readonly way: string;
  amount: number;
  readonly allotted: Record<string, number>;
}
