import { likeliest } from '../../likeliest.js';
import type { Problem } from '../../problem.js';
import { say } from '../../words/index.js';
import { isAmount } from '../words.js';
import type { DishBook, LineColumn } from './dish-book.js';
import type { DishLine } from './types.js';

type Placed = { readonly column: LineColumn; readonly problem: Problem };

const at = (column: LineColumn, code: string, message: string, mend: string): Placed => ({
  column,
  problem: { code, message, mend },
});

const short = (text: string): string => text.slice(0, 60);

/** What keeps a line from being reckoned with, its place in a ring of dishes aside; undefined when nothing does. */
export function problemsOfLine(book: DishBook, line: DishLine): Placed | undefined {
  if (line.dish === null) {
    return line.food === null
      ? undefined
      : at(
          'dish',
          'missing',
          say`The dish that this line belongs to is missing.`,
          say`Write its name on each of its rows.`,
        );
  }
  if (line.amount !== null && !isAmount(line.amount)) {
    return at(
      'amount',
      'bad-amount',
      say`The amount is not a number from 0 up.`,
      say`Write how much, as in 2 or 1 1/2.`,
    );
  }
  if (line.food === null) return undefined;
  if (book.dishWithin(line)) return dishMeasure(line);
  if (line.from === 'dish') {
    const known = [...book.dishes.values()].map(({ key, name }) => [key, name] as const);
    const meant = likeliest(line.food, known);
    return at(
      'food',
      'dish-not-there',
      say`There is no dish called “${short(line.foodName)}”${meant === undefined ? '.' : say`: did you mean ${meant}?`}`,
      say`Choose a dish of this sheet, or say that it comes from the shelf or is bought.`,
    );
  }
  if (line.amount === null) {
    return at(
      'amount',
      'amount-missing',
      say`How much ${short(line.foodName)} goes into it is not written, so it is on no list.`,
      say`Write the amount for as many shares as the dish serves.`,
    );
  }
  if (book.measureOf(line) === null) return measureMissing(book, line);
  return undefined;
}

function dishMeasure(line: DishLine): Placed | undefined {
  if (line.measure === null) return undefined;
  return at(
    'measure',
    'dish-in-measure',
    say`${short(line.foodName)} is a dish: a dish within a dish is counted in shares.`,
    say`Clear the measure, and write the shares of it as the amount.`,
  );
}

function measureMissing(book: DishBook, line: DishLine): Placed {
  const known = line.food === null ? undefined : book.foods.get(line.food);
  return at(
    'measure',
    'measure-missing',
    known && known.countedIn.size > 1
      ? say`${short(line.foodName)} is kept in several ways, each counted in something else, so the amount needs a measure.`
      : say`The measure of ${short(line.foodName)} is missing.`,
    say`Write cups, pounds, quart jars…, or choose the way it is kept.`,
  );
}

/** Set where following a line leads back to its own dish. */
export function ringProblem(book: DishBook, line: DishLine): Placed | undefined {
  if (line.dish === null) return undefined;
  const start = book.dishWithin(line);
  if (!start) return undefined;
  const seen = new Set<string>();
  const ways: { readonly key: string; readonly path: readonly string[] }[] = [
    { key: start.key, path: [start.name] },
  ];
  for (let next = ways.shift(); next !== undefined; next = ways.shift()) {
    if (next.key === line.dish) {
      const round = [line.dishName, ...next.path].join(' → ');
      return at(
        'food',
        'dish-needs-itself',
        say`${short(line.dishName)} needs itself: ${round.slice(0, 200)}.`,
        say`Take one of these lines out; until then this line is left out of every list.`,
      );
    }
    if (seen.has(next.key)) continue;
    seen.add(next.key);
    for (const other of book.dishes.get(next.key)?.lines ?? []) {
      const within = book.dishWithin(other);
      if (within) ways.push({ key: within.key, path: [...next.path, within.name] });
    }
  }
  return undefined;
}
