import type { Problem } from '../../problem.js';
import { say } from '../../words/index.js';
import { isAmount, tidy } from '../words.js';
import type { Dish, DishBook } from './dish-book.js';
import type { DishLine } from './types.js';

/** So much of a food for one cooking, from a line of the dish or of a dish within it. */
export interface Need {
  /** Compared form of the food's name, and the name as written. */
  readonly food: string;
  readonly foodName: string;
  readonly way: DishLine['way'];
  /** 0 or more, in `measure`. */
  readonly amount: number;
  readonly measure: string;
  readonly from: 'shelf' | 'bought';
  readonly line: DishLine;
}

/** What a cooking takes, and what stands in the way of lines that are left out of it. */
export interface DishNeeds {
  readonly needs: readonly Need[];
  /** Every line that takes part, those without an amount included: their prep still counts. */
  readonly lines: readonly DishLine[];
  readonly problems: readonly { readonly line: DishLine | null; readonly problem: Problem }[];
}

/** `shares` of a dish, `times` over; dishes within it in proportion. Lines that cannot be reckoned are left out. */
export function needsOf(book: DishBook, dish: Dish, shares: number, times = 1): DishNeeds {
  const needs: Need[] = [];
  const lines: DishLine[] = [];
  const problems: { line: DishLine | null; problem: Problem }[] = [];
  let steps = 0;
  const add = (of: Dish, wanted: number, factor: number): void => {
    if (of.serves === null) {
      problems.push({ line: of.lines[0] ?? null, problem: servesMissing(of.name) });
      return;
    }
    const scale = (wanted / of.serves) * factor;
    for (const line of of.lines) {
      steps += 1;
      if (steps === MOST_LINES) problems.push({ line: null, problem: tooManyLines(dish.name) });
      if (steps >= MOST_LINES) return;
      const problem = book.problemAt(line);
      if (problem) {
        problems.push({ line, problem });
        continue;
      }
      lines.push(line);
      const within = book.dishWithin(line);
      if (within) {
        add(within, line.amount ?? of.serves, scale);
        continue;
      }
      const measure = book.measureOf(line);
      if (line.food === null || line.amount === null || measure === null) continue;
      const from = line.from === 'bought' ? 'bought' : 'shelf';
      const amount = tidy(line.amount * scale);
      if (!isAmount(amount)) {
        problems.push({ line, problem: tooMuch(line.foodName) });
        continue;
      }
      needs.push({ food: line.food, foodName: line.foodName, way: line.way, amount, measure, from, line });
    }
  };
  add(dish, shares, times);
  return { needs, lines, problems };
}

/** Lines that one cooking may come to, dishes within dishes counted each time. */
const MOST_LINES = 2000;

const tooMuch = (food: string): Problem => ({
  code: 'bad-amount',
  message: say`The amount of ${food.slice(0, 60)} comes to more than a thousand million.`,
  mend: say`Check the amount, the shares and how many the dish serves.`,
});

const tooManyLines = (name: string): Problem => ({
  code: 'dish-too-large',
  message: say`“${name.slice(0, 60)}” comes to more than ${MOST_LINES} lines through the dishes within it.`,
  mend: say`Write its foods as its own lines.`,
});

export const servesMissing = (name: string): Problem => ({
  code: 'serves-missing',
  message: say`How many shares “${name.slice(0, 60)}” serves is not written, so it cannot be scaled to the table.`,
  mend: say`Write the shares at its first row: 6 where the amounts feed six grown appetites.`,
});
