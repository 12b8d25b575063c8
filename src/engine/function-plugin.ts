import {
  CellError,
  ErrorType,
  FunctionArgumentType,
  FunctionPlugin,
  HyperFormula,
  SimpleRangeValue,
} from 'hyperformula';
import {
  type ArgumentDeclaration,
  type FunctionContext,
  type FunctionDeclaration,
  type FunctionValue,
  isListArgument,
} from '../formulas/declare.js';
import { callFunction, functions } from '../formulas/index.js';
import type { GivenValue, Scalar } from '../formulas/read-arguments.js';
import type { Problem } from '../problem.js';
import { spoken } from '../words/index.js';
import { OURS } from './messages.js';

/** Days from the engine's day 0, 1899-12-30, to 1970-01-01. */
export const EPOCH = 25_569;

/** The engine's configuration carries this, so that functions know the book's day and basis. */
export interface ContextHolder {
  current: FunctionContext;
}

const isDateKind = ({ kind }: ArgumentDeclaration) =>
  kind === 'date' || kind === 'month-day' || kind === 'dates with blanks';

function scalar(value: unknown, dates: boolean): Scalar {
  // Inside a range the engine wraps dates and percentages; the number is in `val`.
  const plain = typeof value === 'object' && value !== null && 'val' in value ? value.val : value;
  if (typeof plain === 'number') return dates ? { day: Math.floor(plain) - EPOCH } : plain;
  return typeof plain === 'string' || typeof plain === 'boolean' ? plain : null;
}

function given(value: unknown, arg: ArgumentDeclaration | undefined): GivenValue | CellError | undefined {
  if (value === undefined) return undefined;
  if (value instanceof CellError) return value;
  const dates = arg !== undefined && isDateKind(arg);
  if (!(value instanceof SimpleRangeValue)) return scalar(value, dates);
  const error = value.data.flat().find((cell): cell is CellError => cell instanceof CellError);
  return error ?? value.data.map((row) => row.map((cell) => scalar(cell, dates)));
}

const inOneLine = ({ message, mend }: Problem): string => `${spoken(message)} ${spoken(mend)}`.trim();

const answered = (value: FunctionValue): number | string | boolean =>
  typeof value === 'object' ? value.day + EPOCH : value;

/** What a plugin's method needs of the class it stands in; the engine marks these protected. */
interface Callable {
  readonly config: { readonly context: unknown };
  metadata(name: string): unknown;
  runFunction(
    args: unknown,
    state: unknown,
    metadata: unknown,
    fn: (...values: unknown[]) => unknown,
  ): unknown;
}

/** One engine plugin with a method for every declared function. */
function pluginOf(declarations: readonly FunctionDeclaration[]): typeof FunctionPlugin {
  class Declared extends FunctionPlugin {}
  const implemented: NonNullable<(typeof FunctionPlugin)['implementedFunctions']> = {};
  for (const declaration of declarations) {
    implemented[declaration.name] = {
      method: declaration.name,
      parameters: declaration.arguments.map((arg) => ({
        argumentType: isListArgument(arg) ? FunctionArgumentType.ANY : FunctionArgumentType.SCALAR,
        ...(arg.optional && { optionalArg: true }),
      })),
      ...(/\bdate\b/.test(declaration.gives) && { returnNumberType: 'NUMBER_DATE' as never }),
    };
    Object.defineProperty(Declared.prototype, declaration.name, {
      value(this: Callable, ast: { readonly args: unknown }, state: unknown) {
        const holder = this.config.context as ContextHolder;
        return this.runFunction(ast.args, state, this.metadata(declaration.name), (...values) => {
          const read = values.map((value, i) => given(value, declaration.arguments[i]));
          const error = read.find((value): value is CellError => value instanceof CellError);
          if (error) return error;
          while (read.length > 0 && read.at(-1) === undefined) read.pop();
          const result = callFunction(declaration, read as GivenValue[], holder.current);
          return result.ok
            ? answered(result.value)
            : new CellError(ErrorType.VALUE, OURS + inOneLine(result.problem));
        });
      },
    });
  }
  Declared.implementedFunctions = implemented;
  return Declared;
}

let registered = false;

/** Makes the declared functions known to every engine built from now on. */
export function registerFunctions(): void {
  if (registered) return;
  registered = true;
  const names = Object.fromEntries(functions.map(({ name }) => [name, name]));
  HyperFormula.registerFunctionPlugin(pluginOf(functions) as never, { enGB: names });
}
