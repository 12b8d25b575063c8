/** A function tried with what a person typed into one field for each argument: for its reference. */

import { ok, type Result } from '../problem.js';
import { decimalSign } from '../words/index.js';
import type { ArgumentDeclaration, Explained, FunctionContext, FunctionDeclaration } from './declare.js';
import { isListArgument } from './declare.js';
import { stepsOfCall } from './evaluate-declared.js';
import { givenInExample, withUnits } from './example-working.js';
import { unitsOfCall } from './function-units.js';
import { quantityInWords } from './quantity-words.js';
import type { GivenValue, Scalar } from './read-arguments.js';
import { toldValue } from './tell.js';

export interface TriedFunction {
  /** The call as a formula, to be put into a cell. */
  readonly formula: string;
  readonly answer: Result<{
    /** The value with its unit, as people read it. */
    readonly text: string;
    readonly steps: readonly string[];
    readonly explained: Explained;
  }>;
}

const NUMBER = /^[-+]?(?:\d+\.?\d*|\.\d+)$/;

const textOf = (value: Scalar | undefined): string =>
  value === null || value === undefined || typeof value === 'object'
    ? ''
    : typeof value === 'number'
      ? String(value).replace('.', decimalSign())
      : String(value);

/** What the fields begin with: the arguments of the example; blank where it leaves one out. */
export function exampleTexts(declaration: FunctionDeclaration): readonly string[] {
  const given = givenInExample(declaration) ?? [];
  return declaration.arguments.map((_arg, i) => {
    const value = given[i];
    return Array.isArray(value) ? value.flat().map(textOf).join('; ') : textOf(value as Scalar | undefined);
  });
}

/** A number may be typed with the decimal sign of the language, or with a point as in formulas. */
function scalar(text: string): Scalar {
  const plain = text.replace(decimalSign(), '.');
  return NUMBER.test(plain) ? Number(plain) : text === '' ? null : text;
}

/** Values of a list stand apart by semicolons or lines; numbers by commas too, where no comma stands inside one. */
function listed(text: string, arg: ArgumentDeclaration): Scalar[] {
  const apart = arg.kind.startsWith('dates') || decimalSign() === ',' ? /[;\n]/ : /[;,\n]/;
  return text.split(apart).map((each) => scalar(each.trim()));
}

function givenFrom(text: string, arg: ArgumentDeclaration): GivenValue | undefined {
  const typed = text.trim();
  if (typed === '') return undefined;
  return isListArgument(arg) ? listed(typed, arg).map((value) => [value]) : scalar(typed);
}

const literal = (value: Scalar): string =>
  typeof value === 'number'
    ? String(value)
    : value === null
      ? '""'
      : `"${textOf(value).replaceAll('"', '""')}"`;

function written(value: GivenValue | undefined): string {
  if (value === undefined) return '';
  return Array.isArray(value) ? `{${value.flat().map(literal).join(';')}}` : literal(value as Scalar);
}

function formulaOf({ name }: FunctionDeclaration, given: readonly (GivenValue | undefined)[]): string {
  const last = given.findLastIndex((value) => value !== undefined);
  const args = given
    .slice(0, last + 1)
    .map((value, i) => (i === 0 || value === undefined ? '' : ' ') + written(value));
  return `=${name}(${args.join(',')})`;
}

/**
 * Calls a function with what stands in its fields, one text for each argument; a blank field leaves its argument
 * out. Lists are written with semicolons. What does not fit is the answer's problem, as a cell would say it.
 */
export function tryFunction(
  declaration: FunctionDeclaration,
  texts: readonly string[],
  context: FunctionContext,
): TriedFunction {
  const given = declaration.arguments.map((arg, i) => givenFrom(texts[i] ?? '', arg));
  const units = withUnits(given);
  const tried = stepsOfCall(declaration, given, context);
  const formula = formulaOf(declaration, given);
  if (!tried.ok) return { formula, answer: tried };
  const { answer: explained, steps } = tried.value;
  const unit = unitsOfCall(declaration, units).answer;
  const words = typeof explained.value === 'number' && unit ? quantityInWords(unit) : '';
  return { formula, answer: ok({ text: toldValue(explained.value, words), steps, explained }) };
}
