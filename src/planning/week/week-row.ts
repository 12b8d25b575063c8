import type { Problem } from '../../problem.js';
import { andList } from '../../units/index.js';
import { say } from '../../words/index.js';
import type { MealColumn, MealPlan, MealRowPlan, OpenContainer } from './plan-week.js';
import type { WeekFigures } from './types.js';
import { foodWords, leftoverWords, lotWords, needWords } from './words.js';

/** '2 cups of tomatoes, canned, open 3 days'. */
export function openWords({ lot, part, name, since }: OpenContainer, on: number | null): string {
  const what = say`${leftoverWords(part, lot.container)} of ${foodWords(name, lot.way)}`;
  if (since === null || on === null || on === since) return what;
  return say`${what}, opened ${on - since} ${on - since === 1 ? 'day' : 'days'} before`;
}

/** The oldest lot among the pieces: opened or not, by best-by, then the day it was put up. */
function oldest(plan: MealPlan): string | null {
  const pieces = plan.needs.flatMap((need) => need.pieces.map((piece) => ({ piece, name: need.foodName })));
  const age = ({ piece }: (typeof pieces)[number]) => piece.lot.putUpOn ?? Number.POSITIVE_INFINITY;
  const first = pieces.sort((a, b) => age(a) - age(b))[0];
  if (!first) return null;
  const { lot } = first.piece;
  return lotWords(lot, foodWords(first.name, lot.way));
}

function usesUp(plan: MealPlan): string | null {
  const words: string[] = [];
  for (const need of plan.needs) {
    for (const { lot, after } of need.pieces) {
      if (after === 0) words.push(say`the last of ${lotWords(lot, foodWords(need.foodName, lot.way))}`);
    }
  }
  return words.length > 0 ? words.join('; ') : null;
}

/** 'in stock', or what is short. */
export function stockWords(plan: MealPlan): string | null {
  switch (plan.state) {
    case 'done':
      return say`marked done`;
    case 'skipped':
      return say`skipped`;
    case 'open':
      return say`no dish yet`;
    case 'undated':
    case 'long past':
      return null;
  }
  if (plan.dish === null || plan.needs.every(({ from }) => from === 'bought')) return null;
  const short = plan.needs.filter((need) => need.short > 0);
  if (short.length === 0) return say`in stock`;
  return say`short: ${andList(short.map((need) => needWords(need.short, need.measure, need.foodName, need.way)))}`;
}

/** The planning columns of one meal. */
export function mealRow(plan: MealPlan): MealRowPlan {
  const shelf = plan.needs.filter(({ from, amount }) => from === 'shelf' && amount > 0);
  const figures: WeekFigures = {
    needs:
      plan.state === 'skipped' || shelf.length === 0
        ? null
        : andList(shelf.map((need) => needWords(need.amount, need.measure, need.foodName, need.way))),
    stock: stockWords(plan),
    oldest_lot: oldest(plan),
    uses_up: usesUp(plan),
    open_after:
      plan.openAfter.length === 0
        ? null
        : plan.openAfter.map((each) => openWords(each, plan.meal.date)).join('; '),
  };
  const kept: Partial<Record<MealColumn, Problem>> = {};
  for (const { column, problem } of plan.problems) kept[column] ??= problem;
  return { figures, ...(Object.keys(kept).length > 0 ? { kept } : {}) };
}
