import { say, spoken } from '../../words/index.js';
import { shortDay, weekdayInWords } from '../day-words.js';
import { defaultGuide, type Guide } from '../guide.js';
import type { DayNumber } from '../types.js';
import { type BringUpList, bringUp } from './bring-up.js';
import type { WeekCaution } from './cautions.js';
import type { MealPlan, WeekPlan } from './plan-week.js';
import { shopping, type ToBuy } from './shopping.js';

/** One step of the prep list. */
export interface PrepItem {
  /** Made from the meal, the line and the step: stays the same, so that a tick stays at its line. */
  readonly id: string;
  readonly text: string;
  /** What it is for: 'Chili, Wednesday supper'. */
  readonly what: string;
  readonly meal: string;
  /** True when the day for it lies before the first day of the list: it is late. */
  readonly late: boolean;
}

export interface PrepDay {
  readonly day: DayNumber;
  /** 'Wed, Nov 25'. */
  readonly words: string;
  readonly items: readonly PrepItem[];
}

/** A meal as the head of the lists names it. */
export interface ListedMeal {
  readonly id: string;
  readonly day: DayNumber;
  readonly words: string;
  readonly dish: string;
  readonly stock: string | null;
}

/** The three lists of a span of days: plain data, to be shown, ticked and printed. */
export interface WeekLists {
  readonly from: DayNumber;
  readonly to: DayNumber;
  readonly meals: readonly ListedMeal[];
  readonly bringUp: BringUpList;
  readonly shopping: readonly ToBuy[];
  readonly prep: readonly PrepDay[];
  readonly cautions: readonly WeekCaution[];
  /** What an empty list says; null when there is a meal. */
  readonly empty: string | null;
}

/** 'Wednesday supper'. */
export const mealWords = (day: DayNumber, meal: string): string =>
  `${weekdayInWords(day)} ${spoken(meal)}`.trim();

/**
 * The lists for the meals from `from` to `to`, both included, that are planned and not yet done. The prep list
 * holds every step whose day falls in the span, also for meals after it, and late ones of meals within it.
 */
export function listsFor(
  week: WeekPlan,
  from: DayNumber,
  to: DayNumber,
  guide: Guide = defaultGuide,
): WeekLists {
  const planned = week.meals.filter(({ state, dish }) => state === 'planned' && dish !== null);
  const within = planned.filter(({ meal }) => meal.date! >= from && meal.date! <= to);
  const cautions = new Map<string, WeekCaution>();
  for (const plan of within) for (const each of plan.cautions) cautions.set(each.id, each);
  return {
    from,
    to,
    meals: within.map((plan) => ({
      id: plan.meal.id,
      day: plan.meal.date!,
      words: mealWords(plan.meal.date!, plan.meal.meal),
      dish: plan.dish!.name,
      stock: (week.rows.get(plan.meal.id)?.figures.stock as string | null) ?? null,
    })),
    bringUp: bringUp(within),
    shopping: shopping(within, week.household, guide),
    prep: prepDays(planned, from, to),
    cautions: [...cautions.values()],
    empty: within.length > 0 ? null : emptyWords(week.meals, from, to),
  };
}

function emptyWords(meals: readonly MealPlan[], from: DayNumber, to: DayNumber): string {
  const here = meals.filter(({ meal }) => meal.date !== null && meal.date >= from && meal.date <= to);
  if (here.some(({ state }) => state === 'done')) {
    return say`Every meal of these days is marked done or skipped: there is nothing to fetch, buy or do ahead.`;
  }
  return here.length > 0
    ? say`None of these meals has a dish yet. Choose a dish on the Week sheet, or ask for suggestions.`
    : say`No meals are planned for these days. Write a meal on the Week sheet: its date, which meal, and a dish.`;
}

function prepDays(planned: readonly MealPlan[], from: DayNumber, to: DayNumber): PrepDay[] {
  const days = new Map<DayNumber, PrepItem[]>();
  for (const { meal, dish, lines } of planned) {
    const date = meal.date!;
    lines.forEach((line, at) => {
      line.prep.forEach((step, i) => {
        const due = date - step.leadDays;
        const late = due < from && date >= from && date <= to;
        const day = late ? from : due;
        if (day < from || day > to) return;
        const items = days.get(day) ?? [];
        days.set(day, items);
        items.push({
          id: `${meal.id}|${line.id}|${at}|${i}`,
          text:
            line.foodName === '' || step.text.toLowerCase().includes(line.foodName.toLowerCase())
              ? step.text
              : `${line.foodName}: ${step.text}`,
          what: `${dish!.name}, ${mealWords(date, meal.meal)}`,
          meal: meal.id,
          late,
        });
      });
    });
  }
  return [...days].sort(([a], [b]) => a - b).map(([day, items]) => ({ day, words: shortDay(day), items }));
}
