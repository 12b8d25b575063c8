import { phrase, say } from '../../words/index.js';
import { defaultGuide, type Guide } from '../guide.js';
import { measureName } from '../measure.js';
import type { Household, Working } from '../types.js';
import { amount, type Explained, input, n, some, working } from '../working/parts.js';
import { dishCautions } from './cautions.js';
import { DishBook } from './dish-book.js';
import { needsOf } from './needs.js';
import type { DishRowPlan } from './plan-dishes.js';
import { lotsOf, ShelfCopy } from './shelf-copy.js';
import type { DishFigures, DishLine, ShelfLine } from './types.js';
import { amountWords, foodWords, isCount, lotWords, needWords } from './words.js';

const TITLES: Readonly<Record<keyof DishFigures, string>> = {
  on_hand: phrase('On hand'),
  enough_for: phrase('Enough for'),
  makes: phrase('Can be cooked'),
  costs_shelf: phrase('Takes from the shelf'),
};

const UNITS: Readonly<Record<keyof DishFigures, string>> = {
  on_hand: '',
  enough_for: 'times',
  makes: 'times',
  costs_shelf: '',
};

/**
 * The working of a planning figure of Dishes, made when asked for. `plan` is the row's own, from the same
 * input. Undefined for a row or column that is not there.
 */
export function explainDish(
  lines: readonly DishLine[],
  shelfLines: Iterable<ShelfLine>,
  household: Household,
  plan: DishRowPlan,
  rowId: string,
  column: keyof DishFigures,
  guide: Guide = defaultGuide,
): Working | undefined {
  const line = lines.find(({ id }) => id === rowId);
  if (!line || !Object.hasOwn(plan.figures, column)) return undefined;
  const known = [...shelfLines];
  const book = new DishBook(lines, known);
  const shelf = new ShelfCopy(lotsOf(known, household.asOf), guide);
  const measure = book.measureOf(line);
  const unit = column === 'on_hand' && measure !== null ? measureName(measure) : UNITS[column];
  const said =
    column === 'on_hand' || column === 'enough_for'
      ? ofLine(book, shelf, line, plan, household, column)
      : ofDish(book, line, household, column);
  return working(TITLES[column], plan.figures[column], unit, said);
}

function blankBecause(book: DishBook, line: DishLine, plan: DishRowPlan): string {
  const problem = book.problemAt(line) ?? plan.problems?.on_hand;
  if (problem) return `${problem.message} ${problem.mend}`;
  if (line.food === null) return say`Write a food.`;
  if (book.dishWithin(line)) return say`This line is a dish: what it needs is told at its own rows.`;
  if (line.from === 'bought') return say`This line is bought, so the shelf does not bear on it.`;
  if ((line.amount ?? 0) === 0) return say`Write how much goes into the dish.`;
  return say`Write how many shares the dish serves.`;
}

function ofLine(
  book: DishBook,
  shelf: ShelfCopy,
  line: DishLine,
  plan: DishRowPlan,
  household: Household,
  column: 'on_hand' | 'enough_for',
): Explained {
  const measure = book.measureOf(line);
  const lots = line.food === null ? [] : shelf.of(line.food, line.way);
  const missing = blankBecause(book, line, plan);
  if (column === 'on_hand') {
    return {
      rule: say`All that is left of this food on the shelf, in the measure of the line; of one way of keeping where the line says which.`,
      inputs: lots
        .slice(0, 40)
        .map((lot) =>
          input(
            lotWords(lot, foodWords(line.foodName, lot.way)),
            shelf.left(lot.id),
            measureName(lot.container),
            'computed',
          ),
        ),
      steps:
        typeof plan.figures.on_hand !== 'number' || measure === null
          ? []
          : [
              say`what is left in ${lots.length} ${lots.length === 1 ? 'lot' : 'lots'} = ${amountWords(plan.figures.on_hand, measure)}`,
            ],
      missing,
    };
  }
  const dish = line.dish === null ? undefined : book.dishes.get(line.dish);
  const onHand = plan.figures.on_hand;
  const ofIt = (value: number): string =>
    measure === null || isCount(measure) ? `${n(value)} ${line.foodName}` : amount(value, measure);
  return {
    rule: say`On hand ÷ what one cooking for the whole table takes: the amount × the shares at the table ÷ the shares that the dish serves.`,
    inputs: [
      input(phrase('On hand'), onHand, measure === null ? '' : measureName(measure), 'computed'),
      input(phrase('Amount'), line.amount, measure === null ? '' : measureName(measure), 'entered'),
      input(phrase('Serves'), dish?.serves ?? null, phrase('shares'), 'entered'),
      input(phrase('At the table'), household.shares, phrase('shares'), 'entered'),
    ],
    steps: [
      typeof onHand === 'number' &&
      line.amount !== null &&
      dish?.serves &&
      typeof plan.figures.enough_for === 'number'
        ? say`${ofIt(onHand)} ÷ (${ofIt(line.amount)} × ${some(household.shares, 'share')} ÷ ${some(dish.serves, 'share')}) = ${n(plan.figures.enough_for)} times`
        : null,
    ],
    missing,
  };
}

function ofDish(
  book: DishBook,
  line: DishLine,
  household: Household,
  column: 'makes' | 'costs_shelf',
): Explained {
  const rule =
    column === 'makes'
      ? say`How often the dish can be cooked for the whole table before the shelf lacks one of its foods; what is bought does not count.`
      : say`What one cooking for the whole table takes from the shelf: each amount × the shares at the table ÷ the shares that the dish serves; dishes within it in proportion.`;
  const dish = line.dish === null ? undefined : book.dishes.get(line.dish);
  if (!dish) return { rule, missing: say`Write the name of the dish.` };
  if (dish.lines[0] !== line) return { rule, missing: say`It stands at the first row of the dish.` };
  const found = needsOf(book, dish, household.shares);
  return {
    rule,
    inputs: [
      input(phrase('Serves'), dish.serves, phrase('shares'), 'entered'),
      input(phrase('At the table'), household.shares, phrase('shares'), 'entered'),
    ],
    steps: found.needs
      .filter(({ from }) => from === 'shelf')
      .map(
        (need) =>
          say`${needWords(need.amount, need.measure, need.foodName, need.way)} (${amountWords(need.line.amount ?? 0, need.measure)} as written)`,
      ),
    missing:
      found.problems[0] !== undefined
        ? `${found.problems[0].problem.message} ${found.problems[0].problem.mend}`
        : say`Nothing in it comes from the shelf.`,
    cautions: dishCautions(dish, found, found.needs).map(({ text }) => text),
  };
}
