import { ok, type Problem, type Result, refuse } from '../problem.js';
import { asWritten, say, spoken } from '../words/index.js';
import type { Explained, FunctionContext, FunctionDeclaration, FunctionValue } from './declare.js';
import { type GivenValue, readArguments } from './read-arguments.js';

const unexpected = (name: string) =>
  refuse(
    'function-failed',
    say`${name} could not be worked out.`,
    say`Check what it is given; if that is right, please report it as a fault.`,
  );

/** A number that overflowed or is none must not reach a cell. */
function sound(name: string, value: FunctionValue): Result<FunctionValue> {
  if (typeof value === 'number' && !Number.isFinite(value)) {
    return refuse('not-a-number', say`${name} gives no number from this.`, say`Check what it is given.`);
  }
  return ok(Object.is(value, -0) ? 0 : value);
}

/**
 * Reads the arguments, runs the function, and never throws: whatever goes wrong is a problem that says
 * what and how to mend it, in US customary measures, in which functions reckon in every book. `given` may be shorter than the arguments; null and '' count as left out.
 */
export function callFunction(
  declaration: FunctionDeclaration,
  given: readonly (GivenValue | undefined)[],
  context: FunctionContext,
): Result<FunctionValue> {
  try {
    return asWritten(() => {
      const args = readArguments(declaration, given);
      if (!args.ok) return args;
      const answer = declaration.run(args.value, context);
      return answer.ok ? sound(declaration.name, answer.value) : answer;
    });
  } catch {
    return unexpected(declaration.name);
  }
}

/**
 * As `callFunction`, with the unit, the published range and the source of the answer where the function
 * rests on published figures; other functions answer with their declared unit and source.
 */
export function explainFunction(
  declaration: FunctionDeclaration,
  given: readonly (GivenValue | undefined)[],
  context: FunctionContext,
): Result<Explained> {
  try {
    return asWritten(() => {
      const args = readArguments(declaration, given);
      if (!args.ok) return args;
      if (declaration.explain) return declaration.explain(args.value, context);
      const answer = declaration.run(args.value, context);
      if (!answer.ok) return answer;
      const { gives, source } = declaration;
      return ok({ value: answer.value, unit: gives, source, origin: 'computed', notes: [] });
    });
  } catch {
    return unexpected(declaration.name);
  }
}

/**
 * The steps of a call with its answer, as `explainFunction`. `x` is the unit that the declaration calls `X`, in
 * words; blank where it is not known.
 */
export function stepsOfCall(
  declaration: FunctionDeclaration,
  given: readonly (GivenValue | undefined)[],
  context: FunctionContext,
  x = '',
): Result<{ readonly answer: Explained; readonly steps: readonly string[] }> {
  const answer = explainFunction(declaration, given, context);
  if (!answer.ok) return answer;
  const args = readArguments(declaration, given);
  if (!args.ok) return args;
  try {
    const steps = asWritten(() => declaration.steps(args.value, { answer: answer.value, context, x }));
    return ok({ answer: answer.value, steps });
  } catch {
    return ok({ answer: answer.value, steps: [] });
  }
}

/** A problem as one text for a cell: what is wrong, then how to mend it. */
export function problemText(problem: Problem): string {
  const [message, mend] = [spoken(problem.message), spoken(problem.mend)];
  const said = message === '' ? '' : message[0]!.toUpperCase() + message.slice(1);
  const stop = /[.?!]$/.test(said) ? '' : '.';
  return mend === '' ? `${said}${stop}` : `${said}${stop} ${mend}`;
}
