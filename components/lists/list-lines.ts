import { cautionsFor } from '../../src/facts/index.js';
import type { LiveBook } from '../../src/live/live-book.js';
import { shortDay, shortWeekday } from '../../src/planning/day-words.js';
import type { DayNumber } from '../../src/planning/types.js';
import {
  type BringUp,
  listsFor,
  type MealPlan,
  type ToBuy,
  type WeekCaution,
  type WeekLists,
} from '../../src/planning/week/index.js';
import { phrase, say, spoken } from '../../src/words/index.js';
import { inWords } from '../look/problems.js';
import type { Tickable } from './ticks.js';

/** One line of a list, ready to be shown and ticked. */
export interface ListLine extends Tickable {
  readonly text: string;
  /** What stands small beneath it. */
  readonly notes: readonly string[];
  /** Short words of caution that bear on this line. */
  readonly care: readonly string[];
}

export interface ListGroup {
  readonly title: string;
  readonly lines: readonly ListLine[];
}

/** Something that is opened already, to be used first: nothing to fetch, so nothing to tick. */
export interface OpenLine {
  readonly text: string;
  readonly notes: readonly string[];
  readonly care: readonly string[];
}

export interface ListedDay {
  readonly day: DayNumber;
  readonly words: string;
  readonly meals: readonly {
    readonly meal: string;
    readonly dish: string;
    readonly short: string;
    readonly care: readonly string[];
  }[];
}

/** The lists of a week as they are shown. */
export interface ShownLists {
  readonly lists: WeekLists;
  readonly bringUp: readonly ListGroup[];
  readonly open: readonly OpenLine[];
  readonly shopping: readonly ListGroup[];
  readonly prep: readonly ListGroup[];
  readonly days: readonly ListedDay[];
}

/** In a few words at its line; the whole text stands under the lists. */
const SHORT: Readonly<Record<string, string>> = {
  opened: phrase('Once open: refrigerate, use within days.'),
  'past-best': phrase('Past best quality: check, eat or clear out.'),
  'raw-egg': phrase('Raw egg: not for infants, pregnant women, the old or the ill.'),
};
const LOW_ACID = phrase('Low-acid jar: check the seal; in doubt, do not eat from it.');

const shortly = (cautions: readonly WeekCaution[]): string[] =>
  cautions.flatMap(({ id }) => (SHORT[id] ? spoken(SHORT[id]) : []));

/** The lists for the seven days from a Monday; null while the book has no plan of its week. */
export function shownLists(live: LiveBook, monday: DayNumber): ShownLists | null {
  const plan = live.weekPlans?.week;
  if (!plan) return null;
  const lists = listsFor(plan, monday, monday + 6);
  const names = new Map(
    plan.meals.map(({ meal }) => [
      meal.id,
      meal.date === null ? spoken(meal.meal) : `${shortWeekday(meal.date)} ${spoken(meal.meal)}`.trim(),
    ]),
  );
  const mealsIn = (ids: readonly string[]): string => namesOf(ids.map((id) => names.get(id) ?? ''));
  const plans = new Map(plan.meals.map((each) => [each.meal.id, each]));
  const careOf = new Map(plan.meals.map(({ meal, cautions }) => [meal.id, cautions]));
  return {
    lists,
    bringUp: lists.bringUp.places.map(({ place, items }) => ({
      title: place || say`No place written`,
      lines: items.map((item) => fetchLine(item, mealsIn(item.meals))),
    })),
    open: lists.bringUp.open.map(({ food, lot, uses, leavesOver, meals, cautions }) => ({
      text: say`${uses} of ${food}`,
      notes: [lot.place, leavesOver ? say`leaves ${leavesOver}` : '', mealsIn(meals)].filter(Boolean),
      care: [...shortly(cautions), ...lowAcid(food, lot.way)],
    })),
    shopping: shoppingGroups(lists.shopping, mealsIn),
    prep: lists.prep.map(({ words, items }) => ({
      title: words,
      lines: items.map(({ id, text, what, late }) => ({
        key: `do ${id}`,
        amount: 1,
        measure: text,
        text: text.charAt(0).toUpperCase() + text.slice(1),
        notes: [what, late ? say`should have begun before this week` : ''].filter(Boolean),
        care: [],
      })),
    })),
    days: daysOf(lists, plans, (meal) =>
      shortly((careOf.get(meal) ?? []).filter(({ id }) => id === 'raw-egg')),
    ),
  };
}

function fetchLine(
  { lot, amount, measure, words, which, leavesOver, food, cautions }: BringUp,
  meals: string,
): ListLine {
  return {
    key: `up ${lot.id}`,
    amount,
    measure,
    text: words,
    notes: [which, leavesOver ? say`leaves ${leavesOver}` : '', meals].filter(Boolean),
    care: [...shortly(cautions), ...lowAcid(food, lot.way)],
  };
}

const lowAcid = (food: string, way: string): string[] =>
  way === 'canned' && cautionsFor(food.replace(/ \(.*\)$/, ''), 'canned').some(({ id }) => id === 'doubt')
    ? [spoken(LOW_ACID)]
    : [];

/** What the shelf was to give and lacks stands apart from what is always bought. */
function shoppingGroups(all: readonly ToBuy[], mealsIn: (ids: readonly string[]) => string): ListGroup[] {
  const line = ({ id, amount, measure, text, exactly, words, meals, problem }: ToBuy): ListLine => ({
    key: `buy ${id}`,
    amount,
    measure,
    text,
    notes: [
      exactly === words || exactly === String(amount) ? '' : say`the meals need ${exactly}`,
      mealsIn(meals),
      problem ? inWords(problem) : '',
    ].filter(Boolean),
    care: [],
  });
  const groups: ListGroup[] = [
    { title: say`To buy`, lines: all.filter(({ short }) => !short).map(line) },
    { title: say`The shelf lacks`, lines: all.filter(({ short }) => short).map(line) },
  ];
  return groups.filter(({ lines }) => lines.length > 0);
}

function daysOf(
  lists: WeekLists,
  plans: ReadonlyMap<string, MealPlan>,
  careOf: (meal: string) => string[],
): ListedDay[] {
  const days = new Map<DayNumber, ListedDay['meals'][number][]>();
  for (const { id, day, dish, stock } of lists.meals) {
    const meals = days.get(day) ?? [];
    days.set(day, meals);
    const plan = plans.get(id);
    const short = plan?.needs.some((need) => need.short > 0) ? (stock ?? '') : '';
    meals.push({ meal: spoken(plan?.meal.meal ?? '').trim(), dish, short, care: careOf(id) });
  }
  return [...days].map(([day, meals]) => ({ day, words: shortDay(day), meals }));
}

const MOST_NAMED = 4;

/** 'Mon, Wed and Fri supper' would be read wrongly as soon as meals differ, so each is named; many are counted. */
function namesOf(names: readonly string[]): string {
  const known = [...new Set(names.filter(Boolean))];
  if (known.length <= MOST_NAMED) return known.join(', ');
  return say`${known.slice(0, MOST_NAMED - 1).join(', ')} and ${known.length - MOST_NAMED + 1} more`;
}
