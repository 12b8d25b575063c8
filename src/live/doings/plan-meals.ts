import { type Command, type NewRow, newId } from '../../book/index.js';
import { toIsoDay } from '../../planning/dates.js';
import type { DayNumber } from '../../planning/types.js';
import {
  type AtTable,
  type CopyOptions,
  copyLastWeek,
  guestsAndAway,
  type NewMeal,
  openMeals,
  repeatWeeks,
  type Suggestions,
  suggestDishes,
} from '../../planning/week/index.js';
import { ok, type Result, refuse } from '../../problem.js';
import { say } from '../../words/index.js';
import type { BookReading } from '../book-reading.js';

const noWeek = () => refuse('no-week', say`The book has no Week.`, say`Open it with this version first.`);

const asRow = ({ date, meal, dishName, shares, times, busy }: NewMeal): NewRow => ({
  id: newId('r'),
  cells: { date: toIsoDay(date), meal, dish: dishName, shares, times, busy: busy || null },
});

function inserting(live: BookReading, made: readonly NewMeal[], nothing: string): Result<Command> {
  const sheet = live.sheetOfKind('week');
  if (!sheet) return noWeek();
  if (made.length === 0)
    return refuse('nothing-to-add', nothing, say`Meals that stand there already are left as they are.`, {
      sheet,
    });
  return ok({ do: 'insert rows', sheet, before: null, rows: made.map(asRow) });
}

/** Rows for the meals of a span that have none yet, to be filled in. */
export const openMealsCommand = (
  live: BookReading,
  from: DayNumber,
  to: DayNumber,
  which?: readonly string[],
): Result<Command> =>
  inserting(
    live,
    openMeals(live.typedRows('week'), from, to, which),
    say`Every meal of those days has a row already.`,
  );

/** The week before that of `to`, again. */
export const copyWeekCommand = (live: BookReading, to: DayNumber, options?: CopyOptions): Result<Command> =>
  inserting(
    live,
    copyLastWeek(live.typedRows('week'), to, options),
    say`The week before has no meals, or all of them stand there already.`,
  );

/** A plan of some weeks, repeated. */
export const rotateCommand = (
  live: BookReading,
  plan: Parameters<typeof repeatWeeks>[1],
  options?: CopyOptions,
): Result<Command> =>
  inserting(live, repeatWeeks(live.typedRows('week'), plan, options), say`There is nothing to repeat.`);

/** Guests and days away, by meal. */
export function atTableCommand(live: BookReading, at: AtTable): Result<Command> {
  const sheet = live.sheetOfKind('week');
  if (!sheet) return noWeek();
  const edits = guestsAndAway(live.typedRows('week'), live.household.shares, at);
  if (edits.length === 0)
    return refuse('no-such-meals', say`No meal of those days is still open.`, say`Write the meals first.`, {
      sheet,
    });
  return ok({
    do: 'set cells',
    sheet,
    cells: edits.map(({ meal, column, value }) => ({ row: meal, column, typed: value })),
  });
}

/** Dishes for the open meals, and the command that writes those chosen. Loads the solver only when asked. */
export async function dishesToSuggest(
  live: BookReading,
  span: {
    readonly from: DayNumber;
    readonly to: DayNumber;
    readonly repeats?: number;
    /** Longest time to look for something better; 2000 unless told. */
    readonly milliseconds?: number;
  },
): Promise<Result<{ suggestions: Suggestions; command: (meals: ReadonlySet<string>) => Command }>> {
  const sheet = live.sheetOfKind('week');
  const { weekPlans } = live;
  if (!sheet || !weekPlans) return noWeek();
  const suggestions = await suggestDishes(weekPlans.week, live.foodLines, span);
  const command = (meals: ReadonlySet<string>): Command => ({
    do: 'set cells',
    sheet,
    cells: suggestions.suggestions
      .filter(({ meal }) => meals.has(meal))
      .map(({ meal, dishName }) => ({ row: meal, column: 'dish', typed: dishName })),
  });
  return ok({ suggestions, command });
}
