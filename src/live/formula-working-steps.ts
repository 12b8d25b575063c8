import { type CellAddress, type CellValue, isCellError } from '../book/index.js';
import { freeUnit } from '../formulas/function-units.js';
import {
  type Explained,
  functionNamed,
  type GivenValue,
  type Scalar,
  stepsOfCall,
} from '../formulas/index.js';
import type { Quantity } from '../formulas/quantity.js';
import { quantityInWords } from '../formulas/quantity-words.js';
import { told, toldOf } from '../formulas/tell.js';
import type { WorkingStep } from '../planning/types.js';
import { excerpt } from '../problem.js';
import { localNumber, quoted, say } from '../words/index.js';
import { type FormulaPart, rowAt, standingAt } from './formula-working-tree.js';
import type { FormulaUnits } from './formula-working-units.js';
import { chains, type FormulaWords, signOf } from './formula-working-words.js';

/** What the steps are worked out with: the engine's own values, and the book's. */
export interface FormulaValues {
  valueOf(cell: CellAddress): CellValue;
  /** The cells of a range, row by row; null where they are too many to be told. */
  cellsOf(part: Extract<FormulaPart, { is: 'cells' }>): readonly (readonly CellValue[])[] | null;
  evaluate(formula: string): CellValue;
  readonly context: { readonly asOf: number; readonly basis: 'lean' | 'usual' | 'good' };
}

/** A published or learned figure that one of our functions answered with. */
export interface FoundFigure {
  readonly name: string;
  readonly answer: Explained;
}

const MOST_STEPS = 40;
const DEEPEST = 6;

/** Takes a formula through its steps, in the order in which it is worked out. */
export class FormulaSteps {
  readonly steps: WorkingStep[] = [];
  readonly figures: FoundFigure[] = [];
  readonly #home: CellAddress;
  readonly #values: FormulaValues;
  readonly #units: FormulaUnits;
  readonly #words: FormulaWords;
  readonly #known = new Map<FormulaPart, CellValue>();

  constructor(home: CellAddress, values: FormulaValues, units: FormulaUnits, words: FormulaWords) {
    this.#home = home;
    this.#values = values;
    this.#units = units;
    this.#words = words;
  }

  /** The engine's value of a part. */
  value(part: FormulaPart): CellValue {
    if (part.is === 'number' || part.is === 'text') return part.value;
    if (part.is === 'cell')
      return this.#values.valueOf({ ...part.at, row: rowAt(part.at.row, this.#home.row) });
    if (!this.#known.has(part))
      this.#known.set(part, this.#values.evaluate(standingAt(part.stored, this.#home.row)));
    return this.#known.get(part) ?? null;
  }

  /** A value with the unit of its part. */
  shown(part: FormulaPart): string {
    return shownValue(this.value(part), this.#units.of(part));
  }

  /** Adds the steps of a part, those of what is inside it first. */
  explain(part: FormulaPart, depth = 0): void {
    if (depth > DEEPEST || this.steps.length >= MOST_STEPS) return;
    if (part.is === 'operator') this.#operator(part, depth);
    else if (part.is === 'call') this.#call(part, depth);
  }

  #operator(part: Extract<FormulaPart, { is: 'operator' }>, depth: number): void {
    const [left, right] = part.parts;
    if (!right) {
      // A sign or a percentage of a number is read as one number.
      this.explain(left, depth);
      if (left.is !== 'number') this.#say(`${this.#words.part(part)} = ${this.shown(part)}`, depth);
      return;
    }
    const chain = chained(part);
    for (const { part: each } of chain) this.explain(each, depth);
    const text = chain
      .map(({ sign, part: each }) => `${sign === '' ? '' : `${signOf(sign)} `}${this.#operand(each)}`)
      .join(' ');
    this.#say(`${text} = ${this.shown(part)}`, depth);
  }

  /** `Left 10 quart jars` of a cell, `10 quart jars` of what was worked out before. */
  #operand(part: FormulaPart): string {
    if (part.is === 'number') return told(part.value);
    if (part.is === 'text') return quoted(excerpt(part.value, 60));
    if (part.is === 'cell') return `${this.#words.part(part)} ${this.shown(part)}`;
    if (part.is === 'cells') return this.#range(part);
    if (part.is === 'array' || part.is === 'other') return part.stored;
    return this.shown(part);
  }

  #range(part: Extract<FormulaPart, { is: 'cells' }>): string {
    const filled = this.#values
      .cellsOf(part)
      ?.flat()
      .filter((value) => value !== null && value !== '').length;
    return filled === undefined
      ? this.#words.cells(part)
      : filled === 1
        ? say`1 cell in ${this.#words.cells(part)}`
        : say`${filled} cells in ${this.#words.cells(part)}`;
  }

  #call(part: Extract<FormulaPart, { is: 'call' }>, depth: number): void {
    const { name, args } = part;
    if (name === 'IF') {
      this.#if(part, depth);
      return;
    }
    if (name === 'IFERROR' || name === 'IFNA') {
      this.#ifError(part, depth);
      return;
    }
    for (const arg of args) if (arg) this.explain(arg, depth);
    const declared = functionNamed(name);
    if (declared) this.#ours(part, declared, depth);
    const given = args.map((arg) => (arg ? this.#operand(arg) : say`nothing`)).join(', ');
    this.#say(`${name}${given === '' ? '' : say` of ${given}`} = ${this.shown(part)}`, depth);
  }

  #ours(
    part: Extract<FormulaPart, { is: 'call' }>,
    declared: NonNullable<ReturnType<typeof functionNamed>>,
    depth: number,
  ): void {
    const given = part.args.map((arg) => (arg ? this.#given(arg) : undefined));
    const units = part.args.map((arg) =>
      arg ? { quantity: this.#units.of(arg), text: arg.is === 'text' ? arg.value : undefined } : undefined,
    );
    const x = freeUnit(declared, units);
    const told = stepsOfCall(declared, given, this.#values.context, x ? quantityInWords(x) : '');
    if (!told.ok) return;
    for (const step of told.value.steps.slice(0, 12)) this.#say(step, depth + 1);
    this.figures.push({ name: part.name, answer: told.value.answer });
  }

  /** An argument as our functions are given it: a value, or a range row by row. */
  #given(part: FormulaPart): GivenValue | undefined {
    if (part.is === 'array') return part.values;
    if (part.is === 'cells') return this.#values.cellsOf(part)?.map((row) => row.map(scalar));
    return scalar(this.value(part));
  }

  #if(part: Extract<FormulaPart, { is: 'call' }>, depth: number): void {
    const [condition, then, otherwise] = part.args;
    if (!condition) return;
    if (condition.is === 'call' || condition.is === 'operator') this.explain(condition, depth);
    const holds = this.value(condition);
    const chosen = truth(holds) ? then : otherwise;
    if (chosen) this.explain(chosen, depth);
    const asked = this.#words.part(condition);
    this.#say(
      truth(holds)
        ? say`IF ${asked}: that holds, so = ${this.shown(part)}`
        : say`IF ${asked}: that does not hold, so = ${this.shown(part)}`,
      depth,
    );
  }

  #ifError(part: Extract<FormulaPart, { is: 'call' }>, depth: number): void {
    const [first, otherwise] = part.args;
    if (!first) return;
    const failed = isCellError(this.value(first));
    if (failed) {
      this.#say(`${this.#words.part(first)} = ${this.shown(first)}`, depth);
      if (otherwise) this.explain(otherwise, depth);
    } else this.explain(first, depth);
    this.#say(
      failed
        ? say`that is an error, so the other = ${this.shown(part)}`
        : say`that is no error, so it stays = ${this.shown(part)}`,
      depth,
    );
  }

  #say(text: string, depth: number): void {
    if (this.steps.length >= MOST_STEPS) return;
    this.steps.push(depth === 0 ? { text: excerpt(text, 400) } : { text: excerpt(text, 400), depth });
  }
}

/** The operands of additions, or of multiplications, that follow one another. */
function chained(part: FormulaPart): { readonly sign: string; readonly part: FormulaPart }[] {
  if (part.is !== 'operator' || part.parts.length !== 2) return [{ sign: '', part }];
  const [left, right] = part.parts;
  const flat = chains(part.operator, left) && left.is === 'operator' && simple(left, part.operator);
  return [...(flat ? chained(left) : [{ sign: '', part: left }]), { sign: part.operator, part: right }];
}

const simple = (left: FormulaPart, operator: string): boolean =>
  left.is === 'operator' && '+-'.includes(left.operator) === '+-'.includes(operator);

const truth = (value: CellValue): boolean => value === true || (typeof value === 'number' && value !== 0);

const scalar = (value: CellValue): Scalar => (isCellError(value) ? null : value);

/** A value as a step tells it. */
export function shownValue(value: CellValue, unit: Quantity | undefined): string {
  if (value === null || value === '') return say`blank`;
  if (isCellError(value)) return `${value.error} ${excerpt(value.message, 160)}`;
  if (typeof value === 'boolean') return value ? say`yes` : say`no`;
  if (typeof value === 'string') return excerpt(value, 80);
  const words = unit ? quantityInWords(unit) : '';
  return words === '' ? plainNumber(value) : toldOf(value, words);
}

/** Without a unit it may be money or a share: decimals, no fractions. */
const plainNumber = (n: number): string =>
  Number.isFinite(n)
    ? localNumber(
        (Math.abs(n) < 0.1 ? Number(n.toPrecision(3)) : Math.round(n * 1000) / 1000)
          .toLocaleString('en-US', { maximumFractionDigits: 12, useGrouping: false })
          .replace('-', '−'),
      )
    : say`no number`;
