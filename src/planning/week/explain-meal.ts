import { phrase, say } from '../../words/index.js';
import type { Working } from '../types.js';
import { amount, type Explained, input, iso, working } from '../working/parts.js';
import type { MealPlan, WeekPlan } from './plan-week.js';
import type { WeekFigures } from './types.js';
import { amountWords, foodWords, leftoverWords, lotWords } from './words.js';

const TITLES: Readonly<Record<keyof WeekFigures, string>> = {
  needs: phrase('Needs from the shelf'),
  stock: phrase('In stock or short'),
  oldest_lot: phrase('Oldest lot it would use'),
  uses_up: phrase('What it uses up'),
  open_after: phrase('Open after it'),
};

const RULES: Readonly<Record<keyof WeekFigures, string>> = {
  needs: phrase(
    'Each line of the dish × the shares at this meal ÷ the shares that the dish serves × the amount to multiply by. Bought lines are on the shopping list instead.',
  ),
  stock: phrase(
    'Meals draw on a copy of the shelf in the order in which they are eaten: opened containers first, then oldest. What the copy lacks at this meal is short.',
  ),
  oldest_lot: phrase('Of the lots that this meal would take from, the one that was put up first.'),
  uses_up: phrase('The lots of which this meal would take the last.'),
  open_after: phrase(
    'Jars, cans and bags that stand opened when this meal is over. The next meals use them first.',
  ),
};

/** The working of a planning figure of Week, made when asked for. Undefined for a meal or column not there. */
export function explainMeal(week: WeekPlan, mealId: string, column: keyof WeekFigures): Working | undefined {
  const plan = week.meals.find(({ meal }) => meal.id === mealId);
  const figures = week.rows.get(mealId)?.figures;
  if (!plan || !figures || !Object.hasOwn(figures, column)) return undefined;
  return working(TITLES[column], figures[column], '', said(plan, column));
}

function said(plan: MealPlan, column: keyof WeekFigures): Explained {
  const { meal, dish, shares } = plan;
  return {
    rule: RULES[column],
    inputs: [
      input(phrase('Date'), iso(meal.date), phrase('day'), 'entered'),
      input(
        phrase('Shares at this meal'),
        shares,
        phrase('shares'),
        meal.shares === null ? 'computed' : 'own',
      ),
      input(phrase('The dish serves'), dish?.serves ?? null, phrase('shares'), 'entered'),
      input(phrase('Times'), meal.times ?? 1, '', meal.times === null ? 'computed' : 'own'),
    ],
    steps: column === 'open_after' ? openSteps(plan) : needSteps(plan, column === 'needs'),
    missing: missing(plan),
    cautions: plan.cautions.map(({ text }) => text),
  };
}

function needSteps(plan: MealPlan, scaling: boolean): string[] {
  const steps: string[] = [];
  for (const need of plan.needs.filter(({ from }) => from === 'shelf')) {
    const food = foodWords(need.foodName, need.way);
    if (scaling) {
      steps.push(
        say`${food}: ${amount(need.line.amount ?? 0, need.measure)} as written → ${amount(need.amount, need.measure)}`,
      );
      continue;
    }
    for (const { lot, amount: taken, after } of need.pieces) {
      const left = after === 0 ? say`nothing left` : say`${amountWords(after, lot.container)} left`;
      steps.push(
        say`${amountWords(taken, lot.container)} from ${lotWords(lot, foodWords(need.foodName, lot.way))}: ${left}`,
      );
    }
    if (need.short > 0) steps.push(say`${food}: ${amountWords(need.short, need.measure)} short`);
  }
  return steps;
}

const openSteps = (plan: MealPlan): string[] =>
  plan.openAfter.map(
    ({ lot, part, name }) =>
      say`${leftoverWords(part, lot.container)} of ${lotWords(lot, foodWords(name, lot.way))}`,
  );

function missing(plan: MealPlan): string {
  const problem = plan.problems[0]?.problem;
  if (problem) return `${problem.message} ${problem.mend}`;
  switch (plan.state) {
    case 'open':
      return say`Choose a dish.`;
    case 'done':
      return say`The meal is done: what it took is in Draws.`;
    case 'skipped':
      return say`The meal is skipped.`;
    default:
      return say`There is nothing to show for this meal.`;
  }
}
