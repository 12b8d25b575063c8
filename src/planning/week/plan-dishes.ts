import type { Problem } from '../../problem.js';
import { andList, floorSafe } from '../../units/index.js';
import { say } from '../../words/index.js';
import { defaultGuide, type Guide } from '../guide.js';
import type { Household, RowPlan } from '../types.js';
import { isAmount, tidy } from '../words.js';
import { type Dish, DishBook, type LineColumn } from './dish-book.js';
import { needsOf, servesMissing } from './needs.js';
import { lotsOf, ShelfCopy } from './shelf-copy.js';
import type { DishFigures, DishLine, ShelfLine } from './types.js';
import { unbridged } from './unbridged.js';
import { needWords } from './words.js';

/** Columns of Dishes at which a problem may stand: planning columns and kept ones. */
export type DishColumn = keyof DishFigures | LineColumn;

/** A row of Dishes as planned. Problems of kept columns stand beside those of planning columns. */
export interface DishRowPlan extends RowPlan<DishFigures> {
  readonly kept?: Partial<Record<LineColumn, Problem>>;
}

/**
 * On hand of a food in a measure. Containers that do not meet it are left out: a dish that takes whichever way
 * takes what it can. Null where nothing that stands there meets it, for zero would be a false answer.
 */
export function onHandIn(
  shelf: ShelfCopy,
  food: string,
  way: DishLine['way'],
  measure: string,
): number | null {
  const measures = shelf.measures(food);
  let sum = 0;
  let met = 0;
  const lots = shelf.of(food, way);
  for (const lot of lots) {
    const factor = measures.factorOrNull(lot.container, measure);
    if (factor === null) continue;
    met += 1;
    sum += shelf.left(lot.id) * factor;
  }
  return met === 0 && lots.length > 0 ? null : tidy(sum);
}

const notOnShelf = (name: string, way: string | null): Problem => ({
  code: 'food-not-on-shelf',
  message: say`${name.slice(0, 60)}${way === null ? '' : `, ${way},`} is neither on the Shelf nor a row of Foods: it goes on the shopping list.`,
  mend: say`Say that it is bought, write the food as the Shelf does, or add it there.`,
});

/**
 * Plans every row of Dishes: on hand and enough for, line by line, and at the first row of a dish what it
 * costs the shelf. Lines that cannot be reckoned with say why at their place; the others work.
 */
export function planDishes(
  lines: readonly DishLine[],
  shelfLines: Iterable<ShelfLine>,
  household: Household,
  guide: Guide = defaultGuide,
): Map<string, DishRowPlan> {
  const known = [...shelfLines];
  const book = new DishBook(lines, known);
  const named = new Set(lines.map(({ food }) => food));
  const used = known.filter(({ input }) => named.has(input.food));
  const shelf = new ShelfCopy(lotsOf(used, household.asOf), guide);
  const plans = new Map<string, DishRowPlan>();
  for (const line of lines) plans.set(line.id, lineRow(book, shelf, line, household));
  return plans;
}

const BLANK: DishFigures = { on_hand: null, enough_for: null, makes: null, costs_shelf: null };

function lineRow(book: DishBook, shelf: ShelfCopy, line: DishLine, household: Household): DishRowPlan {
  const dish = line.dish === null ? undefined : book.dishes.get(line.dish);
  const kept: Partial<Record<LineColumn, Problem>> = {};
  const problems: Partial<Record<keyof DishFigures, Problem>> = {};
  const placed = book.placedProblem(line);
  if (placed) kept[placed.column] = placed.problem;
  let figures = BLANK;
  if (dish && dish.lines[0] === line) {
    if (dish.serves === null) kept.serves ??= servesMissing(dish.name);
    else figures = { ...figures, ...firstRow(book, shelf, dish, household) };
  } else if (dish && isAmount(line.serves) && dish.serves !== null && line.serves !== dish.serves) {
    kept.serves ??= {
      code: 'serves-differ',
      message: say`${dish.name.slice(0, 60)} serves ${dish.serves} in one row and ${line.serves} here: the first counts.`,
      mend: say`Clear it here, or write the same number.`,
    };
  }
  const measure = book.measureOf(line);
  const units: Partial<Record<keyof DishFigures, string>> = {};
  const isFood = line.food !== null && !placed && !book.dishWithin(line) && line.from !== 'bought';
  if (isFood && line.food !== null && measure !== null) {
    const amount = onHandIn(shelf, line.food, line.way, measure);
    const problem = unbridged(shelf, { ...line, food: line.food }, measure);
    units.on_hand = measure;
    if (problem) problems.on_hand = problem;
    if (!isKept(book, line)) kept.food ??= notOnShelf(line.foodName, line.way);
    figures = { ...figures, on_hand: amount };
    const wanted = dish?.serves && line.amount ? (line.amount * household.shares) / dish.serves : 0;
    // An amount next to nothing would be enough for more times than there are numbers.
    const times = amount === null || wanted <= 0 ? Number.NaN : amount / wanted;
    if (Number.isFinite(times)) figures = { ...figures, enough_for: tidy(times) };
  }
  return {
    figures,
    ...(Object.keys(units).length > 0 ? { units } : {}),
    ...(Object.keys(problems).length > 0 ? { problems } : {}),
    ...(Object.keys(kept).length > 0 ? { kept } : {}),
  };
}

/** True where the food, kept this way, has a lot or a row of Foods. */
function isKept(book: DishBook, line: DishLine): boolean {
  const known = line.food === null ? undefined : book.foods.get(line.food);
  return known !== undefined && (line.way === null || known.ways.has(line.way));
}

function firstRow(
  book: DishBook,
  shelf: ShelfCopy,
  dish: Dish,
  household: Household,
): Pick<DishFigures, 'makes' | 'costs_shelf'> {
  const { needs } = needsOf(book, dish, household.shares);
  const fromShelf = needs.filter((need) => need.from === 'shelf' && need.amount > 0);
  if (fromShelf.length === 0) return { makes: null, costs_shelf: null };
  return {
    makes: cookings(shelf, fromShelf),
    costs_shelf: andList(
      fromShelf.map((need) => needWords(need.amount, need.measure, need.foodName, need.way)),
    ),
  };
}

/** Most cookings tried out on the copy of the shelf; more are told by the scarcest line alone. */
const MOST_TRIED = 60;

/** Whole cookings that the shelf can give. Each is tried out on a copy, since lines may share a food. */
function cookings(
  shelf: ShelfCopy,
  needs: readonly { food: string; way: DishLine['way']; amount: number; measure: string }[],
): number | null {
  let most = Number.POSITIVE_INFINITY;
  for (const need of needs) {
    const amount = onHandIn(shelf, need.food, need.way, need.measure);
    if (amount === null) return null;
    most = Math.min(most, floorSafe(amount / need.amount));
  }
  if (new Set(needs.map(({ food }) => food)).size === needs.length)
    return Number.isFinite(most) ? most : null;
  const copy = new ShelfCopy(
    needs.flatMap(({ food }, i) =>
      needs.findIndex((each) => each.food === food) === i ? shelf.of(food) : [],
    ),
    shelf.guide,
  );
  const narrowFirst = [...needs].sort((a, b) => Number(a.way === null) - Number(b.way === null));
  for (let times = 0; times < Math.min(most, MOST_TRIED); times++) {
    for (const need of narrowFirst) {
      if (copy.take(need.food, need.way, need.amount, need.measure, null).short > 0) return times;
    }
  }
  return Math.min(most, MOST_TRIED);
}
