import { parse, tokenize } from '@borgar/fx';
import { fromIsoDay } from '../planning/dates.js';
import type { Explained, FunctionContext, FunctionDeclaration } from './declare.js';
import { stepsOfCall } from './evaluate-declared.js';
import { freeUnit } from './function-units.js';
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

/** How a function comes to the answer of its example: for the help that shows it. Undefined where it cannot. */
export function workingOfExample(declaration: FunctionDeclaration): ExampleWorking | undefined {
  const tree = parse(tokenize(declaration.example.formula)) as Node;
  const call = callOf(tree, declaration.name);
  if (!call) return undefined;
  const given = (call.arguments ?? []).map(givenOf);
  const units = given.map((value) => ({
    quantity: undefined,
    text: typeof value === 'string' ? value : undefined,
  }));
  const x = freeUnit(declaration, units);
  const found = stepsOfCall(declaration, given, EXAMPLE_CONTEXT, x ? quantityInWords(x) : '');
  return found.ok ? found.value : undefined;
}
