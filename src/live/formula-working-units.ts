import { unitsOfCall } from '../formulas/function-units.js';
import { functionNamed } from '../formulas/index.js';
import {
  DATE,
  divided,
  isDate,
  isMeasured,
  isPlain,
  likeness,
  multiplied,
  PLAIN,
  type Quantity,
  quantityOf,
  raised,
} from '../formulas/quantity.js';
import { quantityInWords, readQuantity } from '../formulas/quantity-words.js';
import { unitTold } from '../planning/unit-told.js';
import type { Problem } from '../problem.js';
import { say } from '../words/index.js';
import { type UnitInColumn, unitLookedUp } from './formula-lookup-units.js';
import type { FormulaPart } from './formula-working-tree.js';

/** What the units of a formula are looked up in: the unit of a cell, or of a column of cells, where it has one. */
export interface UnitsOfBook {
  unitAt(part: Extract<FormulaPart, { is: 'cell' | 'cells' }>): Quantity | undefined;
  /** Two units of a range whose cells are in several; undefined where they are all in one, or it is not known. */
  mixedIn(part: Extract<FormulaPart, { is: 'cells' }>): readonly [Quantity, Quantity] | undefined;
  /** The unit of one column of a range. */
  readonly unitIn: UnitInColumn;
  /** A part of the formula in words, for messages. */
  words(part: FormulaPart): string;
}

/** Standard functions whose answer is in the unit of their first argument, and want all of them in one. */
const ALIKE = new Set('SUM AVERAGE MIN MAX MEDIAN'.split(' '));
/** Whose answer is in the unit of their first argument. */
const OF_FIRST = new Set(
  'ROUND ROUNDUP ROUNDDOWN CEILING FLOOR MROUND INT TRUNC ABS LARGE SMALL PERCENTILE STDEV EVEN ODD'.split(
    ' ',
  ),
);
const COUNTS = new Set(
  'COUNT COUNTA COUNTBLANK COUNTIF COUNTIFS LEN YEAR MONTH DAY WEEKDAY ISOWEEKNUM'.split(' '),
);
const DATES = new Set('TODAY DATE EDATE EOMONTH'.split(' '));

/** What a formula does with two amounts, in words: `where` names them. */
type Doing = (one: string, other: string, where: string) => string;

const ADDS: Doing = (one, other, where) => say`adds ${one} to ${other}: ${where}`;
const TAKES: Doing = (one, other, where) => say`takes ${one} from ${other}: ${where}`;
const COMPARES: Doing = (one, other, where) => say`compares ${one} with ${other}: ${where}`;

/**
 * The unit of every part of a formula, worked out from those of its cells and functions, and what does not go
 * together. Unknown units are not held against anybody. Multiplying and dividing carry units through.
 */
export class FormulaUnits {
  readonly problems: Problem[] = [];
  readonly #units = new Map<FormulaPart, Quantity | undefined>();
  readonly #book: UnitsOfBook;

  constructor(formula: FormulaPart, book: UnitsOfBook) {
    this.#book = book;
    this.of(formula);
  }

  of(part: FormulaPart): Quantity | undefined {
    if (this.#units.has(part)) return this.#units.get(part);
    const found = this.#find(part);
    this.#units.set(part, found);
    return found;
  }

  #find(part: FormulaPart): Quantity | undefined {
    switch (part.is) {
      case 'number':
        return PLAIN;
      case 'cell':
      case 'cells':
        return this.#book.unitAt(part);
      case 'call':
        return this.#call(part);
      case 'operator':
        return this.#operator(part);
      default:
        return undefined;
    }
  }

  #operator({ operator, parts }: Extract<FormulaPart, { is: 'operator' }>): Quantity | undefined {
    const [a, b] = parts.map((each) => this.of(each));
    const [left, right] = parts;
    if (!right) return operator === '%' ? a && PLAIN : a;
    switch (operator) {
      case '*':
        return a && b && multiplied(a, b);
      case '/':
        return a && b && divided(a, b);
      case '^':
        return a && right.is === 'number' ? raised(a, right.value) : undefined;
      case '+':
      case '-':
        return this.#added(operator, left, right, a, b);
      case '&':
        return undefined;
      default:
        if (a && b) this.#compared(left, right, a, b, COMPARES);
        return undefined;
    }
  }

  #added(
    operator: '+' | '-',
    left: FormulaPart,
    right: FormulaPart,
    a: Quantity | undefined,
    b: Quantity | undefined,
  ): Quantity | undefined {
    if (a && isDate(a)) {
      if (b && isDate(b)) {
        if (operator === '-') return quantityOf('day');
        this.#problem(
          'unlike-units',
          say`adds a date to a date: ${this.#beside(left, right)}`,
          say`Take one from the other for the days between them.`,
        );
        return undefined;
      }
      if (b && !isPlain(b) && likeness(b, quantityOf('day')) !== 'alike') this.#wrongDays(operator, right, b);
      return a;
    }
    // A number without a unit is taken to be meant in the other's.
    if (!a || isPlain(a))
      return b && isDate(b) ? b : a && b && isPlain(b) ? PLAIN : operator === '+' ? b : (b ?? a);
    if (!b || isPlain(b)) return a;
    if (isDate(b) && operator === '+') {
      if (likeness(a, quantityOf('day')) !== 'alike') this.#wrongDays(operator, left, a);
      return b;
    }
    // What is put together of two units is in neither.
    const alike =
      operator === '+' ? this.#compared(left, right, a, b, ADDS) : this.#compared(right, left, b, a, TAKES);
    return alike ? a : undefined;
  }

  #wrongDays(operator: '+' | '-', part: FormulaPart, unit: Quantity): void {
    const words = unitTold(quantityInWords(unit));
    const times = likeness(unit, quantityOf('day')) === 'convertible';
    this.#problem(
      times ? 'convert-units' : 'unlike-units',
      operator === '+'
        ? say`adds ${words} to a date, which counts in days: ${this.#book.words(part)}`
        : say`takes ${words} from a date, which counts in days: ${this.#book.words(part)}`,
      times
        ? say`Turn them into days first: weeks × 7; for months there is EDATE.`
        : say`Only days can be added to a date or taken from it.`,
    );
  }

  #compared(left: FormulaPart, right: FormulaPart, a: Quantity, b: Quantity, doing: Doing): boolean {
    if (isPlain(a) || isPlain(b)) return true;
    const like = likeness(a, b);
    if (like === 'alike') return true;
    const [one, other] = [a, b].map((each) => unitTold(quantityInWords(each))) as [string, string];
    this.#problem(
      like === 'unlike' ? 'unlike-units' : 'convert-units',
      doing(one, other, this.#beside(left, right)),
      mendOf(like, a, b),
    );
    return false;
  }

  #call(part: Extract<FormulaPart, { is: 'call' }>): Quantity | undefined {
    const { name, args } = part;
    const units = args.map((arg) => arg && this.of(arg));
    const declared = functionNamed(name);
    if (declared) {
      const given = args.map((arg, i) =>
        arg ? { quantity: units[i], text: arg.is === 'text' ? arg.value : undefined } : undefined,
      );
      const { answer, wrong } = unitsOfCall(declared, given);
      for (const { argument, wanted, given: unit, likeness: like } of wrong) {
        const at = declared.arguments.indexOf(argument);
        this.#problem(
          like === 'unlike' ? 'unlike-units' : 'convert-units',
          say`gives ${name} ${unitTold(quantityInWords(unit))} where “${argument.name}” takes ${unitTold(quantityInWords(wanted))}: ${this.#book.words(args[at]!)}`,
          mendOf(like, unit, wanted),
        );
      }
      return answer;
    }
    if (COUNTS.has(name)) return PLAIN;
    if (DATES.has(name)) return quantityOf(DATE);
    if (name === 'DAYS') return quantityOf('day');
    if (ALIKE.has(name)) {
      this.#mixed(name, args);
      return this.#alike(name, args, units);
    }
    if (OF_FIRST.has(name)) return units[0];
    if (name === 'IF') return this.#either(args.slice(1), units.slice(1));
    if (name === 'IFERROR' || name === 'IFNA') return this.#either(args, units);
    if (name === 'SUMIF' || name === 'AVERAGEIF') return units[2] ?? units[0];
    if (name === 'SUMIFS') return units[0];
    if (name === 'PRODUCT' || name === 'SUMPRODUCT') {
      return units.reduce<Quantity | undefined>((all, each) => all && each && multiplied(all, each), PLAIN);
    }
    if (name === 'CHOOSE') return this.#either(args.slice(1), units.slice(1));
    return unitLookedUp(name, args, units, this.#book.unitIn) ?? undefined;
  }

  /** The unit of the first that has one, the others checked against it. */
  #alike(
    name: string,
    args: readonly (FormulaPart | undefined)[],
    units: readonly (Quantity | undefined)[],
  ): Quantity | undefined {
    const first = units.findIndex((unit) => unit && !isPlain(unit));
    const unit = units[first];
    if (!unit) return units.every((each) => each && isPlain(each)) ? PLAIN : undefined;
    const together: Doing = (one, another, where) =>
      say`${name} puts ${one} together with ${another}: ${where}`;
    let alike = true;
    for (const [i, other] of units.entries()) {
      if (i <= first || !other) continue;
      if (!this.#compared(args[first]!, args[i]!, unit, other, together)) alike = false;
    }
    return alike ? unit : undefined;
  }

  /** Cells of one range that are in several units. */
  #mixed(name: string, args: readonly (FormulaPart | undefined)[]): void {
    for (const arg of args) {
      const mixed = arg?.is === 'cells' ? this.#book.mixedIn(arg) : undefined;
      if (!mixed) continue;
      const [a, b] = mixed;
      const like = likeness(a, b) === 'unlike' ? 'unlike' : 'convertible';
      this.#problem(
        like === 'unlike' ? 'unlike-units' : 'convert-units',
        say`puts ${unitTold(quantityInWords(a))} and ${unitTold(quantityInWords(b))} together with ${name}: ${this.#book.words(arg!)}`,
        say`Take only the rows that are in one unit, as with SUMIF, or convert each row in a column of its own first.`,
      );
    }
  }

  /** Of IF: one or the other; text in place of a number is no unit. */
  #either(
    args: readonly (FormulaPart | undefined)[],
    units: readonly (Quantity | undefined)[],
  ): Quantity | undefined {
    const known = units.filter((unit): unit is Quantity => unit !== undefined && !isPlain(unit));
    const [first] = known;
    if (!first) return units.length > 0 && units.every((unit) => unit && isPlain(unit)) ? PLAIN : undefined;
    const others = args.every((arg, i) => !arg || units[i] || arg.is === 'text');
    return others && known.every((unit) => likeness(first, unit) === 'alike') ? first : undefined;
  }

  #beside = (left: FormulaPart, right: FormulaPart): string =>
    say`${this.#book.words(left)} and ${this.#book.words(right)}`;

  #problem(code: string, what: string, mend: string): void {
    this.problems.push({ code, message: say`The formula ${what}.`, mend });
  }
}

/** How to bring two units together. */
function mendOf(like: 'convertible' | 'unlike', a: Quantity, b: Quantity): string {
  if (like === 'convertible') {
    const [from, to] = [quantityInWords(a, 1), quantityInWords(b, 1)];
    return isMeasured(a) && isMeasured(b) && a.size === 1 && b.size === 1
      ? say`Convert one of them first, as in ${`MEASURE(amount, "${from}", "${to}")`}.`
      : say`Convert one of them first, so that both are in the same unit.`;
  }
  const weighed = [a, b].every((q) => q.size === 1 && isMeasured(q));
  return weighed
    ? say`Convert one of them first: ${`MEASURE(amount, "${quantityInWords(a, 1)}", "${quantityInWords(b, 1)}", food)`} does where the food’s weight is known.`
    : say`Look at which column each of them is, or multiply by what turns one into the other.`;
}

/** A unit said in words by a column or a planner; a percentage is a plain number. */
export const readUnit = (words: string | undefined): Quantity | undefined =>
  words === undefined || words === '' ? undefined : words === '%' ? PLAIN : readQuantity(words);
