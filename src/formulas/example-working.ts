import { parse, tokenize } from '@borgar/fx';
import { fromIsoDay } from '../planning/dates.js';
import type { Explained, FunctionContext, FunctionDeclaration } from './declare.js';
import { stepsOfCall } from './evaluate-declared.js';
import { freeUnit, type GivenUnit } from './function-units.js';
import { quantityInWords } from './quantity-words.js';
import type { GivenValue, Scalar } from './read-arguments.js';

/** The example of a function, worked out step by step. */
export interface ExampleWorking {
  readonly steps: readonly string[];
  readonly answer: Explained;
}

interface Node {
  readonly type: string;
  readonly value?: Scalar;
  readonly callee?: { readonly name: string };
  readonly arguments?: readonly (Node | null)[];
  readonly elements?: readonly (readonly Node[])[];
}

/** Examples are for one day and one basis, so that they say the same in every book. */
export const EXAMPLE_CONTEXT: FunctionContext = { asOf: dayOf('2026-02-01'), basis: 'usual' };

function dayOf(iso: string): number {
  const day = fromIsoDay(iso);
  return day.ok ? day.value : 0;
}

/** The call of the function in its example, which may stand inside another one. */
function callOf(node: Node | null, name: string): Node | undefined {
  if (!node) return undefined;
  if (node.type === 'CallExpression' && node.callee?.name === name) return node;
  for (const argument of node.arguments ?? []) {
    const found = callOf(argument, name);
    if (found) return found;
  }
  return undefined;
}

function givenOf(node: Node | null): GivenValue | undefined {
  if (!node) return undefined;
  if (node.type === 'ArrayExpression')
    return (node.elements ?? []).map((row) => row.map(({ value }) => value ?? null));
  return node.value;
}

/** What the example gives to the function; undefined where its formula does not call it. */
export function givenInExample(
  declaration: FunctionDeclaration,
): readonly (GivenValue | undefined)[] | undefined {
  const tree = parse(tokenize(declaration.example.formula)) as Node;
  return callOf(tree, declaration.name)?.arguments?.map(givenOf);
}

/** Values as they stand in a formula: a text may name a unit, and nothing else is known of theirs. */
export const withUnits = (given: readonly (GivenValue | undefined)[]): readonly (GivenUnit | undefined)[] =>
  given.map((value) =>
    value === undefined
      ? undefined
      : { quantity: undefined, text: typeof value === 'string' ? value : undefined },
  );

/** How a function comes to the answer of its example: for the help that shows it. Undefined where it cannot. */
export function workingOfExample(declaration: FunctionDeclaration): ExampleWorking | undefined {
  const given = givenInExample(declaration);
  if (!given) return undefined;
  const x = freeUnit(declaration, withUnits(given));
  const found = stepsOfCall(declaration, given, EXAMPLE_CONTEXT, x ? quantityInWords(x) : '');
  return found.ok ? found.value : undefined;
}
