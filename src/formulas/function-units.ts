import type { ArgumentDeclaration, FunctionDeclaration } from './declare.js';
import { divided, isPlain, likeness, multiplied, type Quantity, quantityOf } from './quantity.js';
import { readQuantity } from './quantity-words.js';

/** What is known of an argument as it stands in a formula, before anything is worked out. */
export interface GivenUnit {
  /** Its unit; undefined where that is not known. */
  readonly quantity: Quantity | undefined;
  /** What it says, where it is a text written in the formula. */
  readonly text: string | undefined;
}

/** An argument in another unit than the function takes. */
export interface WrongUnit {
  readonly argument: ArgumentDeclaration;
  readonly wanted: Quantity;
  readonly given: Quantity;
  readonly likeness: 'convertible' | 'unlike';
}

const X = 'X';
const HOLE = /\{(\w+)(?:\|([^}]*))?\}/g;

/** A unit template with what the arguments say put in; undefined where one of them is not a text in the formula. */
function filled(
  template: string,
  { arguments: args }: FunctionDeclaration,
  given: readonly (GivenUnit | undefined)[],
): string | undefined {
  let known = true;
  const text = template.replace(HOLE, (_all, name: string, otherwise: string | undefined) => {
    const at = args.findIndex((arg) => arg.name === name);
    const said = given[at] === undefined ? otherwise : given[at].text;
    if (said === undefined) known = false;
    // A plain 'quart' said of a jar is the jar.
    const jar =
      args[at]?.kind === 'container' && said !== undefined ? readQuantity(`${said} jar`) : undefined;
    return jar ? `${said} jar` : (said ?? '');
  });
  return known ? text : undefined;
}

/** `X a week` as what stands beside the X: undefined where the template has no X. */
const besideX = (template: string): string | undefined =>
  template === X ? '' : template.startsWith(`${X} `) ? template.slice(2) : undefined;

const perOf = (beside: string): Quantity | undefined =>
  beside === '' ? new Map() : readQuantity(beside.replace(/^an? /, ''));

/** The unit of an argument of a date kind, or as it is declared. */
function wantedOf(
  declaration: FunctionDeclaration,
  argument: ArgumentDeclaration,
  given: readonly (GivenUnit | undefined)[],
  x: Quantity | undefined,
): Quantity | undefined {
  if (argument.kind === 'date' || argument.kind === 'dates with blanks') return quantityOf('date');
  return argument.unit === undefined ? undefined : unitOf(argument.unit, declaration, given, x);
}

function unitOf(
  template: string,
  declaration: FunctionDeclaration,
  given: readonly (GivenUnit | undefined)[],
  x: Quantity | undefined,
): Quantity | undefined {
  const beside = besideX(template);
  if (beside === undefined) {
    const words = filled(template, declaration, given);
    return words === undefined ? undefined : readQuantity(words);
  }
  const per = perOf(beside);
  return x && per && divided(x, per);
}

/** The unit that `X` stands for: of the first argument that is in it. */
export function freeUnit(
  declaration: FunctionDeclaration,
  given: readonly (GivenUnit | undefined)[],
): Quantity | undefined {
  for (const [i, argument] of declaration.arguments.entries()) {
    const beside = argument.unit === undefined ? undefined : besideX(argument.unit);
    const quantity = given[i]?.quantity;
    if (beside === undefined || !quantity || isPlain(quantity)) continue;
    const per = perOf(beside);
    if (per) return multiplied(quantity, per);
  }
  return undefined;
}

/** The unit of what a function answers, and which of its arguments are in another unit than it takes. */
export function unitsOfCall(
  declaration: FunctionDeclaration,
  given: readonly (GivenUnit | undefined)[],
): { readonly answer: Quantity | undefined; readonly wrong: readonly WrongUnit[] } {
  const x = freeUnit(declaration, given);
  const wrong: WrongUnit[] = [];
  for (const [i, argument] of declaration.arguments.entries()) {
    const quantity = given[i]?.quantity;
    const wanted = wantedOf(declaration, argument, given, x);
    if (!wanted || !quantity || isPlain(quantity)) continue;
    const like = likeness(quantity, wanted);
    if (like !== 'alike') wrong.push({ argument, wanted, given: quantity, likeness: like });
  }
  return { answer: unitOf(declaration.unit, declaration, given, x), wrong };
}
