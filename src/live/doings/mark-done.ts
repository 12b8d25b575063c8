import type { Command } from '../../book/index.js';
import {
  type MarkDone,
  type Meal,
  markDone,
  planWeek,
  type WeekPlan,
  type WhichMeals,
} from '../../planning/week/index.js';
import { ok, type Result, refuse } from '../../problem.js';
import { say } from '../../words/index.js';
import type { BookReading } from '../book-reading.js';
import { foodKey } from '../food-key.js';
import type { WeekPlans } from '../week-stage.js';

/** What marking meals done would post, and the one command that does it: all draws or none, one step of undo. */
export interface MealsToMark {
  readonly marked: MarkDone;
  readonly command: Command;
}

/** What was otherwise at a meal than its row says: written there before it is marked. Null blanks a cell. */
export interface MealCorrection {
  readonly meal: string;
  readonly dish?: string;
  readonly shares?: number | null;
  readonly times?: number | null;
  readonly skipped?: boolean;
}

/** The week as it would be planned with these corrections written. */
export function correctedWeek(
  live: BookReading,
  { week, dishLines }: WeekPlans,
  corrections: readonly MealCorrection[],
): WeekPlan {
  if (corrections.length === 0) return week;
  const by = new Map(corrections.map((each) => [each.meal, each]));
  const meals = live.typedRows('week').map((meal): Meal => {
    const { meal: _, dish, ...rest } = by.get(meal.id) ?? { meal: meal.id };
    return { ...meal, ...rest, ...(dish !== undefined && { dishName: dish, dish: foodKey(dish) || null }) };
  });
  return planWeek(meals, dishLines, live.foodLines, live.household, week.posted, week.after.guide);
}

/**
 * Marks meals done by their rows, or by a span of days, after writing what was otherwise than planned. Meals
 * marked before post nothing again.
 */
export function mealsToMark(
  live: BookReading,
  which: WhichMeals,
  corrections: readonly MealCorrection[] = [],
): Result<MealsToMark> {
  const [week, draws] = [live.sheetOfKind('week'), live.sheetOfKind('draws')];
  const { weekPlans } = live;
  if (!week || !draws || !weekPlans)
    return refuse('no-week', say`The book has no Week.`, say`Open it with this version first.`);
  const planned = correctedWeek(live, weekPlans, corrections);
  const marked = markDone(planned, which, new Set(live.rowIds(draws)));
  if (marked.draws.length === 0 && marked.tick.length === 0 && corrections.length === 0) {
    const [first] = marked.left;
    return first
      ? { ok: false, problem: { ...first.problem, where: { sheet: week, row: first.meal } } }
      : refuse('nothing-to-mark', marked.said, say`Choose a meal with a dish that is not marked yet.`, {
          sheet: week,
        });
  }
  const rows = marked.draws.map(({ id, cells }) => ({ id, cells: { ...cells } }));
  const written = corrections.flatMap(({ meal, ...cells }) =>
    Object.entries(cells).map(([column, typed]) => ({ row: meal, column, typed })),
  );
  const ticks = marked.tick.map((row) => ({ row, column: 'done', typed: true }));
  return ok({
    marked,
    command: {
      do: 'all',
      called: say`marking done`,
      of: [
        { do: 'insert rows', sheet: draws, before: null, rows },
        { do: 'set cells', sheet: week, cells: [...written, ...ticks] },
      ],
    },
  });
}
