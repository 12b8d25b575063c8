/**
 * A formula function is declared once: its name, arguments, units, help, example, source and what it does.
 * The engine, completion, hints, the reference page and the tests all read this.
 */

import type { Basis, DayNumber, Origin } from '../planning/types.js';
import { ok, type Result } from '../problem.js';

/** What an argument takes; the engine checks and converts before `run`, with a message where it does not fit. */
export type ArgumentKind =
  /** A number. */
  | 'number'
  /** Text. */
  | 'text'
  /** A day: an ISO date, a date typed as people write it, or a spreadsheet date. Given to `run` as a day number. */
  | 'date'
  /** A day of every year: `05-24`, or any date (its month and day count). Given as `{ month, day }`. */
  | 'month-day'
  /** A crop of the registry, given as its canonical name. Unknown ones are refused with the nearest names. */
  | 'crop'
  /** Any food, as text. */
  | 'food'
  /** A container, given as its id. */
  | 'container'
  /** A unit of volume, weight, length…, given as its id. */
  | 'unit'
  /** A container or a unit, given as its id. */
  | 'measure'
  | 'way kept'
  /** `lean`, `usual` or `good`. */
  | 'basis'
  /** A range or a single value, as a flat list in row order, blanks dropped. */
  | 'numbers'
  /** A range of days, as day numbers; blanks are null so that it pairs with another range. */
  | 'dates with blanks'
  /** A range of numbers; blanks are null so that it pairs with another range. */
  | 'numbers with blanks';

export interface ArgumentValue {
  number: number;
  text: string;
  date: DayNumber;
  'month-day': { readonly month: number; readonly day: number };
  crop: string;
  food: string;
  container: string;
  unit: string;
  measure: string;
  'way kept': string;
  basis: Basis;
  numbers: readonly number[];
  'dates with blanks': readonly (DayNumber | null)[];
  'numbers with blanks': readonly (number | null)[];
}

export interface ArgumentDeclaration {
  readonly name: string;
  readonly kind: ArgumentKind;
  /** Meaning and unit, in a few words: the hint while typing. */
  readonly help: string;
  /** May be left out or empty; `run` then gets undefined. */
  readonly optional?: true;
  /** What a blank cell counts as, where the standard says so. */
  readonly blank?: 0;
  /** What counts when left out, in words. */
  readonly otherwise?: string;
  /** Known values offered while typing. */
  readonly values?: readonly string[];
  /** Smallest number allowed. */
  readonly least?: number;
  readonly most?: number;
  /**
   * Unit in which it is meant, in words: 'pounds', 'eggs a week'. `X` is whatever unit the others with `X` are
   * in; `{jar|quart jar}` is what the argument `jar` says, or quart jars where it is left out.
   */
  readonly unit?: string;
}

/** Does this argument take a range, rather than one value? */
export const isListArgument = ({ kind }: ArgumentDeclaration): boolean =>
  kind === 'numbers' || kind.endsWith('with blanks');

export const GROUPS = ['Supply', 'Measures', 'Growing', 'Putting up', 'Animals and staples'] as const;
export type Group = (typeof GROUPS)[number];

/** What a formula may ask of the book it stands in. */
export interface FunctionContext {
  /** The day that the figures are for. */
  readonly asOf: DayNumber;
  readonly basis: Basis;
}

/** A day to give back: shown as an ISO date and usable in date arithmetic. */
export interface DayResult {
  readonly day: DayNumber;
}

export type FunctionValue = number | string | boolean | DayResult;

/** An answer with what stands behind it: for hints, workings and the reference page. */
export interface Explained {
  readonly value: FunctionValue;
  /** Unit of the value, in words. */
  readonly unit: string;
  /** Ends of the published range in the same unit, where there is one. */
  readonly low?: number;
  readonly high?: number;
  /** Where it comes from: publisher and title, or 'arithmetic'. */
  readonly source: string;
  readonly origin: Origin;
  /** What is particular: worked out rather than printed, sources that differ. */
  readonly notes: readonly string[];
}

/** What the steps of a call may tell of besides its arguments. */
export interface Told {
  readonly answer: Explained;
  readonly context: FunctionContext;
  /** The unit that `X` stands for in this call, in the plural; blank where it is not known. */
  readonly x: string;
}

export interface FunctionDeclaration {
  /** Capitals, underscores between words. */
  readonly name: string;
  readonly group: Group;
  /** What it gives, in one sentence. */
  readonly summary: string;
  readonly arguments: readonly ArgumentDeclaration[];
  /** Unit of the answer, in words: 'weeks', 'quarts', 'pounds a plant', 'date'. */
  readonly gives: string;
  /** The same to reckon with; see `unit` of an argument. */
  readonly unit: string;
  /** Further lines of help: how it is worked out, ranges, errors. */
  readonly details?: readonly string[];
  readonly example: { readonly formula: string; readonly gives: string };
  /** Where its figures come from, in words, or 'arithmetic'. */
  readonly source: string;
  /** Food-safety words shown with every answer of it. */
  readonly caution?: string;
  /** Arguments arrive checked and converted, in order; optional ones may be undefined. */
  readonly run: (args: readonly unknown[], context: FunctionContext) => Result<FunctionValue>;
  /** How it is worked out from these arguments, as in `24 ÷ 0.8 a week = 30 weeks`; the last step ends in the answer. */
  readonly steps: (args: readonly unknown[], told: Told) => readonly string[];
  /** The same answer with its range and source, where it rests on published figures. */
  readonly explain?: (args: readonly unknown[], context: FunctionContext) => Result<Explained>;
}

type ValueOf<A extends ArgumentDeclaration> = A extends { readonly optional: true }
  ? ArgumentValue[A['kind']] | undefined
  : ArgumentValue[A['kind']];

type ValuesOf<Args extends readonly ArgumentDeclaration[]> = {
  -readonly [I in keyof Args]: ValueOf<Args[I]>;
};

type Common<Args extends readonly ArgumentDeclaration[]> = Omit<
  FunctionDeclaration,
  'arguments' | 'run' | 'explain' | 'steps'
> & {
  readonly arguments: Args;
  readonly steps: (args: ValuesOf<Args>, told: Told) => readonly string[];
};

/** Declares a function with the types of its arguments worked out from their kinds. */
export function declareFunction<const Args extends readonly ArgumentDeclaration[]>(
  declaration: Common<Args> & {
    readonly run: (args: ValuesOf<Args>, context: FunctionContext) => Result<FunctionValue>;
  },
): FunctionDeclaration {
  return declaration as unknown as FunctionDeclaration;
}

/** As `declareFunction`, for a function that rests on published figures: it answers with range and source. */
export function declareExplained<const Args extends readonly ArgumentDeclaration[]>(
  declaration: Common<Args> & {
    readonly explain: (args: ValuesOf<Args>, context: FunctionContext) => Result<Explained>;
  },
): FunctionDeclaration {
  const { explain } = declaration;
  const run = (args: ValuesOf<Args>, context: FunctionContext): Result<FunctionValue> => {
    const answer = explain(args, context);
    return answer.ok ? ok(answer.value.value) : answer;
  };
  return { ...declaration, run } as unknown as FunctionDeclaration;
}

/** `JARS_PER_BUSHEL(crop, [jar], [pack], [basis])` */
export const signature = ({ name, arguments: args }: FunctionDeclaration): string =>
  `${name}(${args.map((arg) => (arg.optional ? `[${arg.name}]` : arg.name)).join(', ')})`;
