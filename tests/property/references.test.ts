import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { blankBook, type CellValue, isCellError, parseBook } from '../../src/book/index.js';
import { openBook } from '../../src/core.js';
import type { LiveBook } from '../../src/live/live-book.js';
import {
  formulaCells,
  type Model,
  modelOf,
  moved,
  type Part,
  removed,
  stored,
  type Term,
  worked,
} from '../support/formula-model.js';

const RUNS = Number(process.env.CROFTSHEET_RUNS ?? 24);
const SHEETS = ['sone', 'stwo'] as const;
const AS_OF = '2026-02-15';

/** Titles that a person may give, the awkward ones among them. */
const TITLES = [
  'A1',
  'R1C1',
  'SUM',
  'TRUE',
  '42',
  '1e5',
  'Price',
  'Price per jar',
  'price',
  "Ada's “best”",
  '🍅',
  '🍅 jars',
  'מחיר',
  'कीमत',
  'x²',
  '=A1',
  'a;b',
  '[x@y]',
  'Left!A1',
  '_ref_0_',
  'C',
  '#REF!',
];

const SHEET_TITLES = [
  'One',
  "Ada's",
  'A1',
  'Two sheets',
  '🍅',
  'מחיר',
  'R1C1',
  '2024',
  'sum(1)',
  'Hay! Straw',
  '6" jars',
  '"quoted"',
  'a;b,c',
  '#REF!',
  "it''s",
  '{x} & <y>',
  '-',
  '= A1',
  'TRUE',
  '_ref_0_',
];

type Step =
  | { step: 'insert'; sheet: number; part: Part; before: number }
  | { step: 'remove'; sheet: number; part: Part; at: number; count: number }
  | { step: 'move'; sheet: number; part: Part; at: number; count: number; before: number }
  | { step: 'rename column'; sheet: number; at: number; title: string }
  | { step: 'rename sheet'; sheet: number; title: string }
  | { step: 'number'; sheet: number; row: number; column: number; value: number }
  | { step: 'formula'; sheet: number; row: number; column: number; terms: readonly Wanted[] }
  | { step: 'fill'; sheet: number; column: number; terms: readonly Wanted[] }
  | { step: 'undo' }
  | { step: 'redo' }
  | { step: 'reopen' };

/** A term with its places as numbers, fitted to the book when it is written. */
interface Wanted {
  readonly kind: Term['kind'];
  readonly other: boolean;
  readonly rows: readonly [number, number];
  readonly columns: readonly [number, number];
}

const small = fc.nat({ max: 30 });
const sheet = fc.nat({ max: 1 });
const part = fc.constantFrom<Part>('row', 'column');
const count = fc.integer({ min: 1, max: 3 });
const wanted: fc.Arbitrary<Wanted> = fc.record({
  kind: fc.constantFrom<Term['kind']>('cell', 'range', 'whole column', 'by name', 'own row'),
  other: fc.boolean(),
  rows: fc.tuple(small, small),
  columns: fc.tuple(small, small),
});
const of = <T extends Step['step']>(step: T) => fc.constant(step);
const step: fc.Arbitrary<Step> = fc.oneof(
  { weight: 3, arbitrary: fc.record({ step: of('insert'), sheet, part, before: small }) },
  { weight: 4, arbitrary: fc.record({ step: of('remove'), sheet, part, at: small, count }) },
  { weight: 4, arbitrary: fc.record({ step: of('move'), sheet, part, at: small, count, before: small }) },
  {
    weight: 2,
    arbitrary: fc.record({
      step: of('rename column'),
      sheet,
      at: small,
      title: fc.oneof(fc.constantFrom(...TITLES), fc.string({ unit: 'grapheme', maxLength: 8 })),
    }),
  },
  {
    weight: 1,
    arbitrary: fc.record({
      step: of('rename sheet'),
      sheet,
      title: fc.constantFrom(...SHEET_TITLES),
    }),
  },
  {
    weight: 2,
    arbitrary: fc.record({
      step: of('number'),
      sheet,
      row: small,
      column: small,
      value: fc.integer({ min: -9, max: 9 }),
    }),
  },
  {
    weight: 5,
    arbitrary: fc.record({
      step: of('formula'),
      sheet,
      row: small,
      column: small,
      terms: fc.array(wanted, { minLength: 1, maxLength: 3 }),
    }),
  },
  {
    weight: 2,
    arbitrary: fc.record({
      step: of('fill'),
      sheet,
      column: small,
      terms: fc.array(wanted, { minLength: 1, maxLength: 2 }),
    }),
  },
  ...(['undo', 'redo', 'reopen'] as const).map((each) => fc.record({ step: of(each) })),
);

const at = <T>(list: readonly T[], n: number): T | undefined =>
  list.length === 0 ? undefined : list[n % list.length];

/** The book and, beside it, what an independent reckoning makes of the same steps. */
class Pair {
  live: LiveBook;
  model: Model;
  #done: Model[] = [];
  #undone: Model[] = [];
  #made = 0;

  constructor() {
    this.live = openBook(blankBook('Test', 'btest'), { asOf: AS_OF });
    for (const id of SHEETS) {
      const columns = ['ca', 'cb', 'cc', 'cd'].map((column) => ({ id: column, title: `Title ${column}` }));
      const rows = ['r1', 'r2', 'r3', 'r4'].map((row, i) => ({ id: row, cells: { ca: i + 1, cb: 10 * i } }));
      const made = this.live.apply({ do: 'add sheet', sheet: id, title: `Sheet ${id}`, columns, rows });
      if (!made.ok) throw new Error(made.problem.message);
    }
    this.model = modelOf(this.live, SHEETS);
  }

  take(doing: Step): void {
    if (doing.step === 'reopen') this.#reopen();
    else if (doing.step === 'undo' || doing.step === 'redo') this.#replay(doing.step);
    else {
      const next = this.#step(doing, SHEETS[doing.sheet]!);
      if (!next) return;
      this.#done.push(this.model);
      this.#undone = [];
      this.model = next;
    }
  }

  #step(doing: Exclude<Step, { step: 'undo' | 'redo' | 'reopen' }>, id: string): Model | undefined {
    const { live, model } = this;
    const { rows, columns } = model[id]!;
    switch (doing.step) {
      case 'insert': {
        const made = `x${++this.#made}`;
        const before = at(doing.part === 'row' ? rows : columns, doing.before) ?? null;
        const done =
          doing.part === 'row'
            ? live.apply({ do: 'insert rows', sheet: id, before, rows: [{ id: made }] })
            : live.apply({ do: 'add column', sheet: id, column: made, before, title: made });
        return done.ok ? moved(model, id, doing.part, [made], before) : undefined;
      }
      case 'remove': {
        const all = doing.part === 'row' ? rows : columns;
        const ids = all.slice(doing.at % (all.length || 1)).slice(0, doing.count);
        if (ids.length === 0) return undefined;
        if (doing.part === 'row') live.removeRows(id, ids);
        else live.removeColumns(id, ids);
        return removed(model, id, doing.part, ids);
      }
      case 'move': {
        const all = doing.part === 'row' ? rows : columns;
        const ids = all.slice(doing.at % (all.length || 1)).slice(0, doing.count);
        const before = at(all, doing.before) ?? null;
        if (ids.length === 0 || (before !== null && ids.includes(before))) return undefined;
        const label = live.undoLabel;
        const asked = live.apply(
          doing.part === 'row'
            ? { do: 'move rows', sheet: id, rows: ids, before }
            : { do: 'move columns', sheet: id, columns: ids, before },
        );
        expect(label === undefined || asked.ok).toBe(true);
        return asked.ok && asked.changes.length > 0 ? moved(model, id, doing.part, ids, before) : undefined;
      }
      case 'rename column': {
        const column = at(columns, doing.at);
        if (!column) return undefined;
        const done = live.apply({ do: 'describe column', sheet: id, column, as: { title: doing.title } });
        return done.ok && done.changes.length > 0 ? model : undefined;
      }
      case 'rename sheet': {
        const done = live.apply({ do: 'rename sheet', sheet: id, title: doing.title });
        return done.ok && done.changes.length > 0 ? model : undefined;
      }
      case 'fill': {
        const column = at(columns, doing.column);
        const terms = this.#terms(doing.terms, id);
        if (!column || terms.length === 0) return undefined;
        const done = live.apply({ do: 'describe column', sheet: id, column, as: { formula: stored(terms) } });
        if (!done.ok || done.changes.length === 0) return undefined;
        return { ...model, [id]: { ...model[id]!, fills: { ...model[id]!.fills, [column]: terms } } };
      }
      case 'number':
      case 'formula': {
        const [row, column] = [at(rows, doing.row), at(columns, doing.column)];
        if (!row || !column) return undefined;
        const content = doing.step === 'number' ? doing.value : this.#terms(doing.terms, id);
        if (Array.isArray(content) && content.length === 0) return undefined;
        const typed = typeof content === 'number' ? content : stored(content);
        const done = live.set(id, row, column, typed);
        if (!done.ok || done.changes.length === 0) return undefined;
        const cells = { ...model[id]!.cells, [`${row}/${column}`]: content };
        return { ...model, [id]: { ...model[id]!, cells } };
      }
    }
  }

  #terms(wanted: readonly Wanted[], home: string): Term[] {
    return wanted.flatMap(({ kind, other, rows, columns }): Term[] => {
      const sheet = other && kind !== 'own row' ? SHEETS.find((id) => id !== home)! : home;
      const there = this.model[sheet]!;
      const [column, column2] = columns.map((n) => at(there.columns, n));
      const [row, row2] = rows.map((n) => at(there.rows, n));
      if (!column || !column2 || !row || !row2) return [];
      const name = sheet === home ? undefined : sheet;
      return [{ kind, sheet: name, from: { row, column }, to: { row: row2, column: column2 } }];
    });
  }

  #replay(which: 'undo' | 'redo'): void {
    const [from, to] = which === 'undo' ? [this.#done, this.#undone] : [this.#undone, this.#done];
    const model = from.pop();
    if (!model) return;
    expect(which === 'undo' ? this.live.undo() : this.live.redo()).toBe(true);
    to.push(this.model);
    this.model = model;
  }

  #reopen(): void {
    const parsed = parseBook(JSON.stringify(this.live.toJSON()));
    if (!parsed.ok) throw new Error(JSON.stringify(parsed.problems));
    this.live.close();
    this.live = openBook(parsed.book, { asOf: AS_OF });
    this.#done = [];
    this.#undone = [];
  }
}

const plain = (value: CellValue): unknown => (isCellError(value) ? value.error : value);

describe('a formula, whatever is inserted, moved, removed, renamed, undone and reopened', () => {
  it('counts with the things that it was written for, and says #REF! where one is gone', () => {
    fc.assert(
      fc.property(fc.array(step, { minLength: 3, maxLength: 30 }), (steps) => {
        const pair = new Pair();
        for (const doing of steps) {
          pair.take(doing);
          for (const { sheet: id, row, column } of formulaCells(pair.model)) {
            const expected = worked(pair.model, id, row, column);
            if (expected === 'in a ring') continue;
            const where = `${id}/${row}/${column} ${pair.live.typed(id, row, column)}`;
            expect([where, plain(pair.live.value(id, row, column))]).toEqual([where, expected]);
          }
        }
        pair.live.close();
      }),
      { numRuns: RUNS },
    );
  });

  it('means the same when it is typed again as it is shown', () => {
    fc.assert(
      fc.property(fc.array(step, { minLength: 3, maxLength: 20 }), (steps) => {
        const pair = new Pair();
        for (const doing of steps) pair.take(doing);
        const { live } = pair;
        for (const { sheet: id, row, column } of formulaCells(pair.model)) {
          const shown = String(live.typed(id, row, column));
          if (shown.includes('#REF!')) continue;
          const before = live.toJSON().sheets[id]!.rows[row]!.cells[column];
          // Filled by its column's formula.
          if (before === undefined) continue;
          live.set(id, row, column, shown);
          const after = live.toJSON().sheets[id]!.rows[row]!.cells[column];
          expect([shown, reading(after)]).toEqual([shown, reading(before)]);
        }
        live.close();
      }),
      { numRuns: RUNS },
    );
  });

  it('takes a column by its name, whatever its title', () => {
    fc.assert(
      fc.property(
        fc.oneof(fc.constantFrom(...TITLES), fc.string({ unit: 'grapheme', minLength: 1, maxLength: 12 })),
        (title) => {
          const live = openBook(blankBook('Test', 'btest'), { asOf: AS_OF });
          live.apply({ do: 'add sheet', sheet: 'sone', title: 'One' });
          live.apply({ do: 'add column', sheet: 'sone', column: 'ca', before: null, title });
          live.apply({ do: 'add column', sheet: 'sone', column: 'cb', before: null, title: 'Twice' });
          live.apply({
            do: 'insert rows',
            sheet: 'sone',
            before: null,
            rows: [{ id: 'r1', cells: { ca: 21 } }],
          });
          const { name } = live.column('sone', 'ca')!;
          live.set('sone', 'r1', 'cb', `=${name}*2`);
          expect([name, live.value('sone', 'r1', 'cb')]).toEqual([name, 42]);
          live.set('sone', 'r1', 'cb', `=SUM(One!${name})`);
          expect([name, live.value('sone', 'r1', 'cb')]).toEqual([name, 21]);
          live.close();
        },
      ),
      { numRuns: RUNS },
    );
  });
});

describe('a sheet, whatever its title', () => {
  it('is found by formulas typed with it, or the title is refused', () => {
    fc.assert(
      fc.property(
        fc.oneof(
          fc.constantFrom(...SHEET_TITLES),
          fc.string({ unit: 'grapheme', minLength: 1, maxLength: 12 }),
        ),
        (title) => {
          const live = openBook(blankBook('Test', 'btest'), { asOf: AS_OF });
          const rows = [{ id: 'r1', cells: { ca: 20, cb: 1 } }];
          const columns = ['ca', 'cb'].map((id) => ({ id, title: id }));
          const made = live.apply({ do: 'add sheet', sheet: 'sone', title, columns, rows });
          if (!made.ok) {
            expect(made.problem.code).toMatch(/sheet-title/);
            live.close();
            return;
          }
          live.apply({ do: 'add sheet', sheet: 'stwo', title: 'Other', columns, rows: [{ id: 'r1' }] });
          const formula = '=[sone.ca@r1]+SUM([sone.ca@r1]:[sone.cb@r1])+SUM([sone.cb])&" ""[sone.ca]"""';
          live.set('stwo', 'r1', 'ca', formula);
          const shown = live.typed('stwo', 'r1', 'ca');
          live.set('stwo', 'r1', 'cb', shown);
          const { cells } = live.toJSON().sheets.stwo!.rows.r1!;
          expect([shown, cells.cb]).toEqual([shown, formula]);
          expect([shown, live.value('stwo', 'r1', 'cb')]).toEqual([shown, '42 "[sone.ca]"']);
          live.close();
        },
      ),
      { numRuns: RUNS },
    );
  });
});

/** A range means the same from either end, and one of a single cell what that cell means. */
function reading(formula: unknown): string {
  return String(formula).replace(/(\[[^\]]*@[^\]]*\])(?::(\[[^\]]*\]))?/g, (_, a: string, b = a) => {
    const parts = (text: string) => /^\[(?:(\w+)\.)?(\w*)@(\w*)\]$/.exec(text)!.slice(1);
    const [[sheet, c1, r1], [, c2, r2]] = [parts(a), parts(b)] as [string[], string[]];
    return `${sheet}:${[c1, c2].sort().join('..')}/${[r1, r2].sort().join('..')}`;
  });
}
