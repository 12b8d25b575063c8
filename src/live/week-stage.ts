import { fromIsoDay } from '../planning/dates.js';
import type { Guide } from '../planning/guide.js';
import type { Household, LineInput, RowPlan } from '../planning/types.js';
import {
  type DishLine,
  type DishRowPlan,
  planDishes,
  planWeek,
  postedMeals,
  type WeekAverage,
  type WeekPlan,
  weekAverages,
} from '../planning/week/index.js';
import type { PlannedLine } from './lines.js';
import type { ReadKind, TypedRows } from './typed-rows.js';

export const WEEK_KINDS = ['dishes', 'week'] as const satisfies readonly ReadKind[];
export type WeekKind = (typeof WEEK_KINDS)[number];

/** What the planners of the week's table answered last. */
export interface WeekPlans {
  readonly week: WeekPlan;
  readonly dishLines: readonly DishLine[];
  readonly dishes: ReadonlyMap<string, DishRowPlan>;
}

const NO_AVERAGES: ReadonlyMap<string, WeekAverage> = new Map();

/** Plans dishes and meals over the food lines; before that, says what the week plan would use of each. */
export class WeekStage {
  readonly #rows: TypedRows;
  #plans: WeekPlans | null = null;

  constructor(rows: TypedRows) {
    this.#rows = rows;
  }

  get plans(): WeekPlans | null {
    return this.#plans;
  }

  /** Use per week by the week plan, by line key. It reads no stock, so the plan does not hang on itself. */
  averages(
    inputs: () => Iterable<LineInput>,
    household: Household,
    guide: Guide,
  ): ReadonlyMap<string, WeekAverage> {
    const meals = this.#rows.inOrder('week');
    if (meals.length === 0) return NO_AVERAGES;
    return weekAverages(meals, this.#rows.inOrder('dishes'), inputs(), household, guide);
  }

  finish(
    lines: readonly PlannedLine[],
    drawIds: Iterable<string>,
    household: Household,
    guide: Guide,
  ): Map<WeekKind, ReadonlyMap<string, RowPlan<object>>> {
    const dishLines = this.#rows.inOrder('dishes');
    const meals = this.#rows.inOrder('week');
    const posted = postedMeals(
      drawIds,
      meals.map(({ id }) => id),
    );
    const dishes = planDishes(dishLines, lines, household, guide);
    const week = planWeek(meals, dishLines, lines, household, posted, guide);
    this.#plans = { week, dishLines, dishes };
    return new Map<WeekKind, ReadonlyMap<string, RowPlan<object>>>([
      ['dishes', dishes],
      ['week', week.rows],
    ]);
  }
}

/** A day of a list or a span, from its ISO text; null when it is none. */
export const dayOf = (iso: string): number | null => {
  const day = fromIsoDay(iso);
  return day.ok ? day.value : null;
};
