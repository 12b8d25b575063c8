import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { blankBook, type LiveBook, openBook } from '../../src/core.js';

const RUNS = Number(process.env.CROFTSHEET_RUNS ?? 10);

const UNTURNED = 'formula-of-other-measures';

/** Beds with numbers in two measures, one column without any, and room for formulas. */
function garden(): { live: LiveBook; beds: string; rows: readonly string[] } {
  const live = openBook(blankBook('Tamarack Bench'));
  const beds = live.sheets().find(({ kind }) => kind === 'beds')!.id;
  for (const [column, title] of [
    ['price', 'Price'],
    ['sum', 'Sum'],
    ['last', 'Last'],
  ] as const)
    live.apply({ do: 'add column', sheet: beds, column, title, before: null });
  const { rows } = live.insertRows(
    beds,
    [18, 12, 6, 30].map((own_spacing, at) => ({
      crop: 'kale',
      plants: 10 * (at + 1),
      own_spacing,
      own_yield: at + 0.5,
      price: at + 2,
    })),
  );
  return { live, beds, rows };
}

/**
 * Formulas as people write them: `S` is a spacing (inches), `Y` a yield (pounds), `P` a price (no measure). They
 * compare with what is not just met: numbers are turned to six digits.
 */
const number = fc.constantFrom('0', '1', '2.5', '12', '50');
const cell = fc.constantFrom('S1', 'S2', 'Y1', 'Y2', 'P1', 'P2', 'Row_feet', 'Price');
const { formula } = fc.letrec<{ formula: string }>((tie) => ({
  formula: fc.oneof(
    { depthSize: 'small', withCrossShrink: true },
    number,
    cell,
    fc
      .tuple(tie('formula'), fc.constantFrom('+', '-', '*', '/', ' + '), tie('formula'))
      .map(([a, operator, b]) => `${a}${operator}${b}`),
    tie('formula').map((each) => `(${each})`),
    tie('formula').map((each) => `-${each}`),
    fc
      .tuple(fc.constantFrom('SUM', 'MAX', 'AVERAGE', 'POWER'), tie('formula'), tie('formula'))
      .map(([name, a, b]) => `${name}(${a},${b})`),
    fc
      .tuple(tie('formula'), fc.constantFrom('>', '<='), tie('formula'), tie('formula'))
      .map(([a, operator, one, other]) => `IF(${a}${operator}7.31,${one},${other})`),
    fc.constantFrom('SUM(S1:S2)', 'SUM(Row_feet)', 'COUNT(Y1:Y2)', 'AVERAGE(Y1:Y2)'),
  ),
}));

describe('formulas when the household goes over to other measures and back', () => {
  it('give the same amounts, come back as they were written, and undo brings back all', () => {
    fc.assert(
      fc.property(fc.tuple(formula, formula, formula), (written) => {
        const { live, beds, rows } = garden();
        const at = (id: string) =>
          String.fromCharCode(65 + live.columns(beds).findIndex((each) => each.id === id));
        const letters = { S: at('own_spacing'), Y: at('own_yield'), P: at('price') };
        const typed = (text: string) =>
          `=${text.replace(/\b([SYP])([12])\b/g, (_, which: 'S', row: string) => letters[which] + row)}`;
        // In a cell with a measure, in one without, and in one that uses the one before.
        const places = [
          [rows[2]!, 'own_spacing', typed(written[0])],
          [rows[2]!, 'sum', typed(written[1])],
          [rows[3]!, 'last', `${typed(written[2])}+${at('sum')}3`],
        ] as const;
        for (const [row, column, text] of places) live.set(beds, row, column, text);
        const values = () => places.map(([row, column]) => live.value(beds, row, column));
        const texts = () => places.map(([row, column]) => live.typed(beds, row, column));
        const [before, was, wrote] = [live.toJSON(), values(), texts()];
        const go = (typed: string) => live.apply({ do: 'set setting', setting: 'measures', typed });

        go('metric');
        const turned = live.toJSON();
        // What cannot be turned is named, and what uses it can be no better.
        const left = places.map(([row, column]) => {
          // Something worse, such as a spacing below 0, may be said of the cell first.
          const { [`measures:${column}`]: marked } = turned.sheets[beds]!.rows[row]! as Record<
            string,
            unknown
          >;
          return live.problem(beds, row, column)?.code === UNTURNED || marked !== undefined;
        });
        for (const [i, then] of values().entries()) {
          if (left[i] || (i === 2 && left[1])) continue;
          const [unit, first] = [i === 0 ? [2.54] : [1, 2.54, 0.45359237, 0.3048], was[i]];
          // Own formulas that only add up go along with their measure.
          if (typeof first === 'number' && Math.abs(first) < 1e6)
            expect(
              unit.some(
                (by) => Math.abs(Number(then) - first * by) <= 1e-4 * Math.max(1, Math.abs(first * by)),
              ),
              `${wrote[i]} gave ${first}; ${texts()[i]} gives ${String(then)}`,
            ).toBe(true);
        }
        go('US customary');
        expect(texts()).toEqual(wrote);
        live.undo();
        expect(live.toJSON()).toEqual(turned);
        live.undo();
        expect(live.toJSON()).toEqual(before);
        live.close();
      }),
      { numRuns: RUNS },
    );
  });
});
