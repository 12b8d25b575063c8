import type { CellValue } from '../book/index.js';
import { dishes } from '../book/kinds/dishes.js';
import { week } from '../book/kinds/week.js';
import { WAYS_KEPT } from '../planning/types.js';
import { readPrep } from '../planning/week/prep.js';
import { type DishLine, LINE_SOURCES, type Meal } from '../planning/week/types.js';
import { say } from '../words/index.js';
import { CellReader } from './cell-reader.js';
import { foodKey } from './food-key.js';
import type { ReadRow } from './read-rows.js';

type Cells = (column: string) => CellValue;
const key = (text: string): string | null => (text === '' ? null : foodKey(text) || null);

/** 'supper, midday' as a list, in lower case. */
const mealsIn = (text: string): string[] =>
  text
    .toLowerCase()
    .split(/[,;\n]| and /)
    .map((each) => each.trim())
    .filter((each) => each !== '' && each !== 'any');

/** A row of Dishes. What cannot be read counts as blank, with a problem at its column. */
export function readDishLine(id: string, cells: Cells): ReadRow<DishLine> {
  const r = new CellReader(dishes, cells);
  const dishName = r.text('dish');
  const foodName = r.text('food');
  const amount = r.number('amount');
  const typed: DishLine = {
    id,
    dish: key(dishName),
    dishName,
    serves: r.number('serves'),
    food: key(foodName),
    foodName,
    way: r.choice('way', WAYS_KEPT),
    amount,
    measure: r.measure('measure'),
    from: r.choice('from', LINE_SOURCES),
    prep: readPrep(r.text('prep')),
    suits: mealsIn(r.text('suits')),
    quick: r.tick('quick'),
    note: r.text('note'),
  };
  if (amount !== null && typed.food === null) {
    r.note('food', {
      code: 'missing',
      message: say`The food of this line is missing.`,
      mend: say`Write what the amount is of; until then the line is on no list.`,
    });
  }
  return { typed, problems: r.problems };
}

/** A row of Week. */
export function readMeal(id: string, cells: Cells): ReadRow<Meal> {
  const r = new CellReader(week, cells);
  const dishName = r.text('dish');
  const typed: Meal = {
    id,
    date: r.day('date'),
    meal: r.text('meal').toLowerCase(),
    dish: key(dishName),
    dishName,
    shares: r.number('shares'),
    times: r.number('times'),
    busy: r.tick('busy'),
    done: r.tick('done'),
    skipped: r.tick('skipped'),
  };
  return { typed, problems: r.problems };
}
