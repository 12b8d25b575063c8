import type { Problem } from '../../problem.js';
import { countedInOf } from '../reckon.js';
import { isAmount } from '../words.js';
import { problemsOfLine, ringProblem } from './dish-problems.js';
import type { DishLine, ShelfLine } from './types.js';

/** A dish: its lines, and what counts for all of it. */
export interface Dish {
  readonly key: string;
  readonly name: string;
  readonly serves: number | null;
  readonly suits: readonly string[];
  readonly quick: boolean;
  readonly lines: readonly DishLine[];
}

/** What the shelf knows of a food: its ways, and what each is counted in. */
export interface KnownFood {
  readonly ways: ReadonlySet<string>;
  /** Counted-in containers of its lines, each once. */
  readonly countedIn: ReadonlySet<string>;
  readonly countedByWay: ReadonlyMap<string, string>;
}

/** The dishes of a book, with what is wrong at each line. Made once for a plan. */
export class DishBook {
  readonly dishes: ReadonlyMap<string, Dish>;
  readonly foods: ReadonlyMap<string, KnownFood>;
  readonly #problems = new Map<string, { readonly column: LineColumn; readonly problem: Problem }>();

  /** `lines` in the order of their rows. */
  constructor(lines: readonly DishLine[], shelf: Iterable<ShelfLine>) {
    this.dishes = gathered(lines);
    this.foods = foodsOf(shelf);
    for (const line of lines) {
      const found = problemsOfLine(this, line) ?? ringProblem(this, line);
      if (found) this.#problems.set(line.id, found);
    }
  }

  /** The dish that a line stands for, or undefined when it is a food. */
  dishWithin(line: DishLine): Dish | undefined {
    if (line.food === null || line.from === 'shelf' || line.from === 'bought') return undefined;
    if (line.from === null && this.foods.has(line.food)) return undefined;
    return this.dishes.get(line.food);
  }

  /** The measure of a line's amount; its food's counted-in container where it is blank. Null when unknown. */
  measureOf(line: DishLine): string | null {
    if (line.measure !== null || line.food === null) return line.measure;
    const known = this.foods.get(line.food);
    if (!known) return null;
    if (line.way !== null) return known.countedByWay.get(line.way) ?? null;
    return known.countedIn.size === 1 ? [...known.countedIn][0]! : null;
  }

  /** What keeps a line from being reckoned with. */
  problemAt(line: DishLine): Problem | undefined {
    return this.#problems.get(line.id)?.problem;
  }

  /** The same, with the column where it stands. */
  placedProblem(line: DishLine): { readonly column: LineColumn; readonly problem: Problem } | undefined {
    return this.#problems.get(line.id);
  }
}

/** Kept columns of Dishes at which a problem may stand. */
export type LineColumn = 'dish' | 'serves' | 'food' | 'amount' | 'measure';

/** Less than a thousandth of a share is a slip of the key. */
const isServes = (n: number | null): boolean => isAmount(n) && n >= 0.001;

function gathered(lines: readonly DishLine[]): Map<string, Dish> {
  const rows = new Map<string, DishLine[]>();
  for (const line of lines) {
    if (line.dish === null) continue;
    const of = rows.get(line.dish);
    if (of) of.push(line);
    else rows.set(line.dish, [line]);
  }
  const dishes = new Map<string, Dish>();
  for (const [key, of] of rows) {
    dishes.set(key, {
      key,
      name: of[0]!.dishName,
      serves: of.find(({ serves }) => isServes(serves))?.serves ?? null,
      suits: of.find(({ suits }) => suits.length > 0)?.suits ?? [],
      quick: of.some(({ quick }) => quick),
      lines: of,
    });
  }
  return dishes;
}

function foodsOf(shelf: Iterable<ShelfLine>): Map<string, KnownFood> {
  const foods = new Map<
    string,
    { ways: Set<string>; countedIn: Set<string>; countedByWay: Map<string, string> }
  >();
  for (const { input } of shelf) {
    // Draws alone do not put a food on the shelf.
    if (input.row === null && input.lots.length === 0) continue;
    let known = foods.get(input.food);
    if (!known) {
      known = { ways: new Set(), countedIn: new Set(), countedByWay: new Map() };
      foods.set(input.food, known);
    }
    known.ways.add(input.way);
    const counted = countedInOf(input);
    if (counted === null) continue;
    known.countedIn.add(counted);
    known.countedByWay.set(input.way, counted);
  }
  return foods;
}
