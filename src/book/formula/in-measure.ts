import { metricOf } from '../../units/index.js';
import type { TakesOneValue } from './one-value.js';
import { type PlacedPart, placedTree } from './placed-tree.js';
import { ALIKE, same, type TurnOfReference, turnOf } from './same-measure.js';

/** Codes of CONVERT for the customary units in which columns are, and for the metric ones in their place. */
export const CODES: readonly (readonly [customary: string, code: string, metric: string])[] = [
  ['lb', 'lbm', 'kg'],
  ['in', 'in', 'cm'],
  ['ft', 'ft', 'm'],
  ['sq ft', 'ft2', 'm2'],
  ['cu ft', 'ft3', 'l'],
  ['bu', 'bushel', 'l'],
  ['quarts', 'qt', 'l'],
  ['cups', 'cup', 'ml'],
];

const PAIRS = CODES.flatMap(([unit, code, metric]) => {
  const { factor } = metricOf(unit)!;
  return [
    { from: code, to: metric, factor },
    { from: metric, to: code, factor: 1 / factor },
  ];
});

export interface Rewriting {
  readonly ofReference: TurnOfReference;
  readonly takesOne: TakesOneValue;
}

/**
 * A stored formula rewritten so that it gives `wanted` times what it gave, once all that it refers to has been
 * turned. What goes the right way by itself stays as it is written; numbers that stand in it, and cells beside
 * them, are wrapped into CONVERT; where CONVERT stands that was put there by the way back, it goes.
 *
 * @param follows what it gives may go the way of what it is added up from, where that is one way
 * @returns undefined where it cannot be done: a range in another measure inside a function that does not add up, a
 *   unit that CONVERT does not know, or a formula that cannot be read
 */
export function inMeasure(
  stored: string,
  wanted: number,
  follows: boolean,
  rewriting: Rewriting,
): string | undefined {
  const tree = placedTree(stored);
  if (!tree) return undefined;
  const turn = turnOf(tree, rewriting.ofReference);
  if (follows && turn !== undefined) return stored;
  const text = new Rewriter(stored, rewriting, follows).as(tree, wanted);
  return text === undefined ? undefined : stored.slice(0, tree.from) + text + stored.slice(tree.until);
}

class Rewriter {
  readonly #stored: string;
  readonly #rewriting: Rewriting;
  /** What CONVERT stands around at the very outside is not bared where it would then follow its cells. */
  readonly #follows: boolean;

  constructor(stored: string, rewriting: Rewriting, follows: boolean) {
    this.#stored = stored;
    this.#rewriting = rewriting;
    this.#follows = follows;
  }

  #turn = (part: PlacedPart) => turnOf(part, this.#rewriting.ofReference);
  #text = ({ from, until }: PlacedPart): string => this.#stored.slice(from, until);

  /** `around` and `at`: which part of what it is; nothing for the whole formula. */
  as(part: PlacedPart, wanted: number, around?: PlacedPart, at = 0): string | undefined {
    const turn = this.#turn(part);
    if (turn === 'any' || (turn !== undefined && same(turn, wanted))) return this.#text(part);
    const bared = this.#bared(part, wanted, around, at);
    if (bared !== undefined) return bared;
    if (turn !== undefined) {
      const stays = wrapped(this.#text(part), 1 / turn);
      return stays === undefined ? undefined : wrapped(stays, wanted);
    }
    if (part.is === 'operator' && (part.parts.length === 1 || /^[+-]$/.test(part.operator)))
      return this.#with(part, (each) => this.#within(part, each, wanted));
    if (part.is === 'call' && (ALIKE.has(part.name) || part.name === 'IF'))
      return this.#with(part, (each, at) =>
        part.name === 'IF' && at === 0 ? this.#condition(part, each) : this.#within(part, each, wanted, at),
      );
    if (part.is !== 'operator' && part.is !== 'call') return undefined;
    const before = this.#with(part, (each, at) => this.#within(part, each, 1, at));
    return before === undefined ? undefined : wrapped(before, wanted);
  }

  #condition(call: PlacedPart, part: PlacedPart): string | undefined {
    return this.#turn(part) === undefined ? this.#within(call, part, 1, 0) : this.#text(part);
  }

  /** A part of another. A range stays a range: CONVERT would take one cell of it. */
  #within(around: PlacedPart, part: PlacedPart, wanted: number, at = 0): string | undefined {
    const text = this.as(part, wanted, around, at);
    if (text === undefined || text === this.#text(part) || part.is !== 'reference') return text;
    const { to, from } = part.reference;
    if (to || (!from.byName && (from.row === undefined || from.column === undefined))) return undefined;
    const oneValue = around.is !== 'call' || !from.byName || this.#rewriting.takesOne(around.name, at);
    return oneValue ? text : undefined;
  }

  #with(
    part: Extract<PlacedPart, { is: 'operator' | 'call' }>,
    as: (each: PlacedPart, at: number) => string | undefined,
  ): string | undefined {
    let [text, done] = ['', part.from];
    for (const [at, each] of part.parts.entries()) {
      const then = as(each, at);
      if (then === undefined) return undefined;
      text += this.#stored.slice(done, each.from) + then;
      done = each.until;
    }
    return text + this.#stored.slice(done, part.until);
  }

  /** What stands inside CONVERT, where that gives by itself what is wanted now. */
  #bared(part: PlacedPart, wanted: number, around: PlacedPart | undefined, at: number): string | undefined {
    if (part.is !== 'call' || part.name !== 'CONVERT') return undefined;
    const [inside, from, to] = part.parts;
    if (!inside || from?.is !== 'text' || to?.is !== 'text') return undefined;
    const pair = PAIRS.find((each) => each.from === from.value && each.to === to.value);
    if (!pair) return undefined;
    const turn = this.#turn(inside);
    const byItself = typeof turn === 'number' && same(turn, wanted * pair.factor);
    if (byItself && !around && this.#follows && !same(turn, 1)) return undefined;
    if (!byItself && !same(wanted * pair.factor, 1)) return undefined;
    const text = byItself ? this.#text(inside) : this.as(inside, 1, part);
    return text !== undefined && needsBrackets(inside, around, at) ? `(${text})` : text;
  }
}

const BINDS = ['= <> < > <= >=', '&', '+ -', '* /', '^'].map((each) => each.split(' '));
const binding = ({ operator, parts }: Extract<PlacedPart, { is: 'operator' }>): number =>
  parts.length === 1 ? BINDS.length : BINDS.findIndex((each) => each.includes(operator));

/** Would it be read otherwise where it stands as a part of what is around it? */
function needsBrackets(inside: PlacedPart, around: PlacedPart | undefined, at: number): boolean {
  if (inside.is !== 'operator' || inside.bracketed || around?.is !== 'operator') return false;
  const [within, outside] = [binding(inside), binding(around)];
  return within < outside || (within === outside && at > 0);
}

/** In CONVERT, so that it gives `by` times as much. */
function wrapped(text: string, by: number): string | undefined {
  if (same(by, 1)) return text;
  const pair = PAIRS.find(({ factor }) => same(factor, by));
  return pair && `CONVERT(${text},"${pair.from}","${pair.to}")`;
}
