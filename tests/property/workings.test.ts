import convertUnits from 'convert-units';
import fc from 'fast-check';
import Qty from 'js-quantities';
import { describe, expect, it } from 'vitest';
import {
  conversion,
  divided,
  isPlain,
  likeness,
  multiplied,
  type Quantity,
  quantityOf,
  raised,
  sameUnits,
} from '../../src/formulas/quantity.js';
import { quantityInWords, readQuantity } from '../../src/formulas/quantity-words.js';
import { partsOf } from '../../src/live/formula-working-tree.js';
import { FormulaUnits } from '../../src/live/formula-working-units.js';
import { UNITS } from '../../src/units/index.js';
import { startingBook } from '../support/random-book.js';
import { readNumber } from '../support/read-steps.js';

const RUNS = Number(process.env.CROFTSHEET_RUNS ?? 200);

/** Our unit, and what js-quantities calls it. */
const THEIRS: Readonly<Record<string, string>> = {
  pound: 'lb',
  ounce: 'oz',
  quart: 'quart',
  pint: 'pint',
  foot: 'ft',
  week: 'week',
};
const atom = fc.constantFrom(...UNITS.map(({ id }) => id), 'quart jar', 'week', 'plant', 'load');
const quantity = fc
  .array(fc.tuple(atom, fc.constantFrom(-2, -1, 1, 2)), { maxLength: 4 })
  .map((parts) =>
    parts.reduce<Quantity>((all, [id, power]) => multiplied(all, raised(quantityOf(id), power)!), new Map()),
  );

describe('units multiply and divide', () => {
  it('in any order, and back again', () => {
    fc.assert(
      fc.property(quantity, quantity, quantity, (a, b, c) => {
        expect(sameUnits(multiplied(a, b), multiplied(b, a))).toBe(true);
        expect(sameUnits(multiplied(multiplied(a, b), c), multiplied(a, multiplied(b, c)))).toBe(true);
        expect(sameUnits(divided(multiplied(a, b), b), a)).toBe(true);
        expect(isPlain(divided(a, a))).toBe(true);
        expect(sameUnits(raised(a, 2)!, multiplied(a, a))).toBe(true);
      }),
      { numRuns: RUNS },
    );
  });

  it('and are alike, convertible or unlike whichever comes first, and whatever else they are multiplied by', () => {
    fc.assert(
      fc.property(quantity, quantity, quantity, (a, b, c) => {
        const like = likeness(a, b);
        expect(likeness(b, a)).toBe(like);
        expect(likeness(a, a)).toBe('alike');
        expect(likeness(multiplied(a, c), multiplied(b, c)) === 'unlike').toBe(like === 'unlike');
        const there = conversion(a, b);
        expect(there === undefined).toBe(like === 'unlike');
        if (there !== undefined) expect(there * conversion(b, a)!).toBeCloseTo(1, 9);
      }),
      { numRuns: RUNS },
    );
  });

  it('and their words are read back as they were', () => {
    fc.assert(
      fc.property(atom, atom, (above, below) => {
        fc.pre(above !== below);
        const of = divided(quantityOf(above), quantityOf(below));
        const words = quantityInWords(of);
        expect(words).toMatch(/^\S.* an? \S/);
        const read = readQuantity(words);
        expect(read && likeness(read, of)).toBe('alike');
      }),
      { numRuns: RUNS },
    );
  });
});

describe('conversions against outside libraries', () => {
  const pair = fc.tuple(fc.constantFrom('pound', 'ounce'), fc.constantFrom('quart', 'pint', 'foot'));

  it('of one unit by another agree with js-quantities', () => {
    fc.assert(
      fc.property(pair, pair, ([a, b], [c, d]) => {
        const [from, to] = [divided(quantityOf(a), quantityOf(b)), divided(quantityOf(c), quantityOf(d))];
        const ours = conversion(from, to);
        let theirs: number | undefined;
        try {
          theirs = Qty(1, `${THEIRS[a]}/${THEIRS[b]}`).to(`${THEIRS[c]}/${THEIRS[d]}`).scalar;
        } catch {
          theirs = undefined;
        }
        expect(ours === undefined).toBe(theirs === undefined);
        if (ours !== undefined && theirs !== undefined) expect(ours / theirs).toBeCloseTo(1, 6);
      }),
    );
  });

  it.each([
    ['week', 'week', 'day', 'd'],
    ['day', 'd', 'hour', 'h'],
    ['gallon', 'gal', 'quart', 'qt'],
    ['kilogram', 'kg', 'pound', 'lb'],
    ['yard', 'yd', 'foot', 'ft'],
  ])('a %s as convert-units has it', (from, theirs, to, their) => {
    expect(
      conversion(quantityOf(from), quantityOf(to))! / convertUnits(1).from(theirs).to(their),
    ).toBeCloseTo(1, 4);
  });
});

/** What js-quantities knows besides what the tests of units use. */
interface Theirs {
  mul(other: Theirs): Theirs;
  div(other: Theirs): Theirs;
  isCompatible(other: Theirs): boolean;
}
const theirs = (id: string): Theirs => Qty(1, THEIRS[id]!) as unknown as Theirs;

interface Tree {
  readonly text: string;
  /** Null where something in it cannot be added. */
  readonly of: Theirs | null;
}

const leaf = fc.constantFrom(...Object.keys(THEIRS)).map((id): Tree => ({ text: `[${id}]`, of: theirs(id) }));
const tree = fc.letrec<{ tree: Tree }>((tie) => ({
  tree: fc.oneof(
    { maxDepth: 4 },
    leaf,
    fc.tuple(tie('tree'), fc.constantFrom('+', '-', '*', '/'), tie('tree')).map(([a, sign, b]): Tree => {
      const text = `(${a.text}${sign}${b.text})`;
      if (!a.of || !b.of) return { text, of: null };
      if (sign === '*') return { text, of: a.of.mul(b.of) };
      if (sign === '/') return { text, of: a.of.div(b.of) };
      return { text, of: a.of.isCompatible(b.of) ? a.of : null };
    }),
  ),
})).tree;

describe('the units of a formula', () => {
  it('do not go together just where js-quantities says so', () => {
    fc.assert(
      fc.property(tree, ({ text, of }) => {
        const parts = partsOf(`=${text}`, 'own')!;
        const { problems } = new FormulaUnits(parts, {
          unitAt: (part) => (part.is === 'cell' ? quantityOf(part.at.column) : undefined),
          unitIn: () => undefined,
          mixedIn: () => undefined,
          words: () => 'this',
        });
        // A share (pounds ÷ pounds) is a plain number here: it goes with whatever it is added to.
        fc.pre(!problems.some(({ message }) => /\bnumber/.test(message)));
        // Ours measures what jars hold in quarts, never in feet of three sides.
        fc.pre((text.match(/\[foot\]/g) ?? []).length < 3);
        const unlike = problems.some(({ code }) => code === 'unlike-units');
        // Ounces and pounds added unconverted are said first; what that sum is in is then not known.
        const unconverted = problems.some(({ code }) => code === 'convert-units');
        if (unlike) expect(of, text).toBeNull();
        else if (of === null && !unconverted) expect(text).toMatch(/\/|\*/);
      }),
      { numRuns: RUNS },
    );
  });
});

describe('the working of any formula', () => {
  const operand = fc.constantFrom(
    'A',
    'B',
    'Sum_of',
    '2',
    '0.5',
    '(A+B)',
    'ROUND(A,1)',
    'WEEKS_OF_SUPPLY(A,B)',
  );
  const formula = fc
    .array(fc.tuple(operand, fc.constantFrom('+', '-', '*', '/')), { minLength: 1, maxLength: 4 })
    .chain((parts) => operand.map((last) => `=${parts.map(([each, sign]) => each + sign).join('')}${last}`))
    .map((text) => text.replaceAll('Sum_of', 'SUM(A)'));

  it('ends in the value that its cell shows', () => {
    const live = startingBook();
    live.apply({
      do: 'add sheet',
      sheet: 'own',
      title: 'Own',
      columns: [
        { id: 'a', title: 'A', as: { type: 'number', measure: 'quart' } },
        { id: 'b', title: 'B', as: { type: 'number' } },
        { id: 'out', title: 'Out' },
      ],
      rows: [{ id: 'r1', cells: { a: 17, b: 3 } }],
    });
    const fields = live.columns('own').map(({ name }) => name);
    try {
      fc.assert(
        fc.property(formula, (text) => {
          const typed = text.replace(/\bA\b/g, fields[0]!).replace(/\bB\b/g, fields[1]!);
          live.set('own', 'r1', 'out', typed);
          const [value, working] = [live.value('own', 'r1', 'out'), live.working('own', 'r1', 'out')];
          expect(working, typed).toBeDefined();
          if (typeof value !== 'number') return;
          const last = working!.steps.at(-1)!.text;
          const shown = readNumber(last.slice(last.lastIndexOf('=') + 1));
          expect(Math.abs(shown - value), `${typed}: ${last} ${value}`).toBeLessThanOrEqual(0.0006);
        }),
        { numRuns: Math.min(RUNS, 60) },
      );
    } finally {
      live.close();
    }
  });
});
