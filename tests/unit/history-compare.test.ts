import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { BookDoc, Typed } from '../../src/book/index.js';
import { parseBook } from '../../src/book/parse.js';
import { HyperFormulaEngine } from '../../src/engine/hyperformula-engine.js';
import { bringBack } from '../../src/live/doings/bring-back.js';
import { type BookComparison, compareBooks } from '../../src/live/doings/compare-books.js';
import { Sizes } from '../../src/live/doings/difference-size.js';
import { type LiveBook, openBook } from '../../src/live/live-book.js';
import { aBook } from './storage-support.js';

const TODAY = 20_000;
const opened = (doc: BookDoc): LiveBook => openBook(doc, { today: () => TODAY });
const withEngine = (doc: BookDoc): LiveBook =>
  openBook(doc, { today: () => TODAY, engine: new HyperFormulaEngine({ asOf: TODAY, basis: 'usual' }) });

/** Two foods with stock and use, and a draw. */
const stocked = (): LiveBook => {
  const live = opened(aBook());
  live.apply({
    do: 'set cells',
    sheet: 'shelf',
    cells: ['r1', 'r2'].flatMap((row) => [
      { row, column: 'way', typed: 'canned' },
      { row, column: 'container', typed: 'quart jar' },
      { row, column: 'put_up_on', typed: '2024-08-01' },
    ]),
  });
  live.apply({
    do: 'insert rows',
    sheet: 'foods',
    before: null,
    rows: [
      { id: 'f1', cells: { food: 'tomatoes', way: 'canned', own_use: 2, counted_in: 'quart jar' } },
      { id: 'f2', cells: { food: 'peaches', way: 'canned', own_use: 1, counted_in: 'quart jar' } },
    ],
  });
  live.apply({
    do: 'insert rows',
    sheet: 'draws',
    before: null,
    rows: [
      {
        id: 'd1',
        cells: { date: '2024-09-01', food: 'tomatoes', way: 'canned', amount: 4, container: 'quart jar' },
      },
    ],
  });
  return live;
};

/** Without the names of what is gone, which are noted for broken formulas. */
const withoutGone = (doc: BookDoc) =>
  Object.entries(doc.sheets).map(([id, { gone: _, ...sheet }]) => [id, sheet]);

const compared = (before: LiveBook, after: LiveBook): BookComparison => {
  const slices = compareBooks(before, after);
  for (;;) {
    const step = slices.next();
    if (step.done) return step.value;
  }
};
const done = (live: LiveBook, outcome: ReturnType<typeof bringBack>) => {
  if (!outcome.ok) throw new Error(outcome.problem.message);
  const applied = live.apply(outcome.value.command);
  expect(applied.ok).toBe(true);
  return applied;
};

describe('a comparison of two books', () => {
  it('finds nothing between a book and its copy', () => {
    const live = stocked();
    expect(compared(opened(live.toJSON()), live)).toEqual({ title: null, settings: [], sheets: [] });
  });

  it('lists entries with what they were, and the figures that follow, by what the row is', () => {
    const live = stocked();
    const before = opened(live.toJSON());
    live.set('shelf', 'r1', 'count', 54);
    live.removeRows('draws', ['d1']);
    live.insertRows('shelf', [{ food: 'beans', count: 6 }]);
    live.apply({ do: 'set setting', setting: 'cushion', typed: 20 });
    live.apply({ do: 'rename book', title: 'Cellar' });
    const found = compared(before, live);
    expect(found.title).toEqual({ was: 'Our shelf', is: 'Cellar' });
    expect(found.settings).toMatchObject([{ title: 'Cushion', was: null, is: 20, unit: '%' }]);
    const rows = (sheet: string) => found.sheets.find((each) => each.sheet === sheet)!.rows;
    const lot = rows('shelf').find(({ row }) => row === 'r1')!;
    expect(lot.called).toContain('tomatoes');
    expect(lot.entries).toMatchObject([{ column: { id: 'count' }, was: 24, is: 54 }]);
    expect(rows('shelf').find(({ what }) => what === 'added')?.called).toContain('beans');
    expect(rows('draws')).toMatchObject([{ row: 'd1', what: 'removed' }]);
    expect(rows('draws')[0]!.entries.map(({ is }) => is)).toEqual([null, null, null, null, null]);
    // Twenty jars at two a week are ten weeks; fifty-four are twenty-seven.
    const weeks = rows('foods')
      .find(({ row }) => row === 'f1')!
      .figures.find(({ column }) => column.id === 'weeks_of_supply')!;
    expect([weeks.was, weeks.is, weeks.column.unit]).toEqual([10, 27, 'weeks']);
    expect(rows('foods').find(({ row }) => row === 'f1')!.entries).toEqual([]);
  });

  it('puts the big differences in figures first, in what is usual for each column', () => {
    const live = stocked();
    const before = opened(live.toJSON());
    live.set('foods', 'f1', 'own_use', 1.9);
    live.set('foods', 'f2', 'own_use', 0.25);
    const foods = compared(before, live).sheets.find(({ sheet }) => sheet === 'foods')!;
    expect(foods.rows.map(({ row }) => row)).toEqual(['f2', 'f1']);
    for (const { figures } of foods.rows)
      expect(figures.map(({ size }) => size)).toEqual(figures.map(({ size }) => size).sort((a, b) => b - a));
  });

  it('measures a difference by the middle figure of its column, and dates by months', () => {
    const sizes = new Sizes();
    sizes.note('servings', 900, 1000, 1100);
    sizes.note('weeks', 20, 18, 0);
    expect(sizes.of('servings', 1000, 1100)).toBeCloseTo(0.1);
    expect(sizes.of('weeks', 20, 10)).toBeCloseTo(0.5);
    expect(sizes.of('day', '2026-01-01', '2026-01-31')).toBe(1);
    expect(sizes.of('weeks', null, 20)).toBeCloseTo(1);
  });

  it('of a long sheet comes in slices, with the part done', () => {
    const live = stocked();
    live.insertRows(
      'shelf',
      Array.from({ length: 1000 }, (_, i) => ({ food: `food ${i}`, count: i })),
    );
    const slices = compareBooks(opened(live.toJSON()), live);
    const parts: number[] = [];
    for (let step = slices.next(); !step.done; step = slices.next()) parts.push(step.value);
    expect(parts.length).toBeGreaterThan(20);
    expect(parts).toEqual([...parts].sort((a, b) => a - b));
    expect(parts.at(-1)).toBeLessThanOrEqual(1);
  });

  it('compares what own formulas give, and says which columns came, went or were renamed', () => {
    const first = withEngine(aBook());
    const { column } = first.addColumn('shelf', 'Twice', {
      formula: `=${first.column('shelf', 'count')!.name}*2`,
    });
    const before = withEngine(first.toJSON());
    first.set('shelf', 'r1', 'count', 30);
    first.apply({ do: 'describe column', sheet: 'shelf', column, as: { title: 'Double' } });
    const [shelf] = compared(before, first).sheets;
    expect(shelf!.columns).toMatchObject([{ title: 'Double', words: 'was called “Twice”' }]);
    const twice = shelf!.rows[0]!.figures.find((each) => each.column.id === column);
    expect(twice).toMatchObject({ was: 48, is: 60 });
    before.close();
    first.close();
  });
});

describe('bringing back', () => {
  it('brings a removed row back at its place, with its id, its draw’s allotment and formulas', () => {
    const live = withEngine(stocked().toJSON());
    live.insertRows('foods', [{ food: 'plums', way: 'canned' }]);
    const { column } = live.addColumn('shelf', 'Mine');
    live.set('shelf', 'r2', column, '=D1*2');
    const version = live.toJSON();
    const allotted = version.sheets.draws!.rows.d1!.allotted;
    expect(allotted).toEqual({ r1: 4 });
    live.removeRows('draws', ['d1']);
    live.removeRows('shelf', ['r1']);
    live.set('shelf', 'r2', 'count', 99);
    const back = bringBack(live, version, { part: 'row', sheet: 'shelf', row: 'r1' }, 'before');
    expect(back.ok && back.value.counts).toEqual({ rowsBack: 1, rowsGone: 0, cells: 0, rest: 0 });
    done(live, back);
    expect(live.rowIds('shelf')[0]).toBe('r1');
    expect(live.value('shelf', 'r2', column)).toBe(48);
    expect(live.value('shelf', 'r2', 'count')).toBe(99);
    done(live, bringBack(live, version, { part: 'row', sheet: 'draws', row: 'd1' }, 'before'));
    expect(live.toJSON().sheets.draws!.rows.d1!.allotted).toEqual(allotted);
    expect(live.value('shelf', 'r1', 'left')).toBe(20);
    live.undo();
    live.undo();
    expect(live.rowIds('shelf')).toEqual(['r2']);
    live.close();
  });

  it('brings back one cell only', () => {
    const live = stocked();
    const version = live.toJSON();
    live.set('shelf', 'r1', 'count', 1);
    live.set('shelf', 'r1', 'place', 'attic');
    done(live, bringBack(live, version, { part: 'cell', sheet: 'shelf', row: 'r1', column: 'count' }, 'x'));
    expect(live.value('shelf', 'r1', 'count')).toBe(24);
    expect(live.value('shelf', 'r1', 'place')).toBe('attic');
  });

  it('brings back a sheet: rows added since go, formulas elsewhere keep their ranges', () => {
    const live = withEngine(stocked().toJSON());
    const version = live.toJSON();
    const { rows } = live.insertRows('shelf', [{ food: 'beans', count: 6 }]);
    const { column } = live.addColumn('foods', 'Sum');
    const title = live.sheets().find(({ id }) => id === 'shelf')!.title;
    live.set('foods', 'f1', column, `=SUM(${title}!D1:D3)`);
    expect(live.value('foods', 'f1', column)).toBe(42);
    done(live, bringBack(live, version, { part: 'sheet', sheet: 'shelf' }, 'x'));
    expect(live.rowIds('shelf')).not.toContain(rows[0]);
    expect(live.value('foods', 'f1', column)).toBe(36);
    live.undo();
    expect(live.value('foods', 'f1', column)).toBe(42);
    live.close();
  });

  it('never writes into a planning column, whatever a version holds there', () => {
    const live = stocked();
    const version = structuredClone(live.toJSON()) as unknown as {
      sheets: { shelf: { rows: { r1: { cells: Record<string, Typed> } } } };
    };
    version.sheets.shelf.rows.r1.cells.left = 999;
    live.set('shelf', 'r1', 'count', 3);
    const applied = done(live, bringBack(live, version as unknown as BookDoc, { part: 'book' }, 'x'));
    expect(applied.ok && applied.notes[0]?.code).toBe('planning-column');
    expect(live.toJSON().sheets.shelf!.rows.r1!.cells.left).toBeUndefined();
    expect(live.value('shelf', 'r1', 'left')).toBe(20);
  });

  it('refuses what differs in nothing', () => {
    const live = stocked();
    expect(bringBack(live, live.toJSON(), { part: 'book' }, 'x').ok).toBe(false);
  });

  it('of the whole book gives the version exactly, and undo what was there, after any edits', () => {
    const sheet = fc.constantFrom('shelf', 'foods', 'draws');
    const edit = fc.oneof(
      fc.record({
        kind: fc.constant('set'),
        sheet,
        at: fc.nat(5),
        typed: fc.constantFrom<Typed>(3, 'x', null, '2026-01-01', '=A1', '=SUM(D1:D2)'),
      }),
      fc.record({ kind: fc.constant('insert'), sheet, at: fc.nat(5), typed: fc.constant<Typed>('beans') }),
      fc.record({ kind: fc.constant('remove'), sheet, at: fc.nat(5), typed: fc.constant<Typed>(null) }),
      fc.record({ kind: fc.constant('move'), sheet, at: fc.nat(5), typed: fc.constant<Typed>(null) }),
      fc.record({ kind: fc.constant('column'), sheet, at: fc.nat(5), typed: fc.constant<Typed>('=A1') }),
      fc.record({ kind: fc.constant('drop'), sheet, at: fc.nat(5), typed: fc.constant<Typed>(null) }),
      fc.record({ kind: fc.constant('sheet'), sheet, at: fc.nat(5), typed: fc.constant<Typed>(null) }),
    );
    const perform = (
      live: LiveBook,
      { kind, sheet: on, at, typed }: { kind: string; sheet: string; at: number; typed: Typed },
    ) => {
      const rows = live.rowIds(on);
      const row = rows[at % Math.max(rows.length, 1)];
      const own = live.columns(on).filter(({ role }) => role === 'own');
      if (kind === 'insert') live.insertRows(on, [{ food: typed }], row ?? null);
      else if (kind === 'column') live.addColumn(on, `C${at}`, at % 2 ? { formula: String(typed) } : {});
      else if (kind === 'drop' && own[0]) live.removeColumns(on, [own[0].id]);
      else if (kind === 'sheet') {
        const made = live.sheets().filter(({ kind: each }) => each === 'own');
        if (made[0] && at % 2) live.apply({ do: 'remove sheet', sheet: made[0].id });
        else live.apply({ do: 'add sheet', sheet: `s${made.length}x${at}`, title: `Own ${at}` });
      } else if (row && kind === 'set') live.set(on, row, at % 2 ? (own[0]?.id ?? 'note') : 'note', typed);
      else if (row && kind === 'remove') live.removeRows(on, [row]);
      else if (row && kind === 'move') live.moveRows(on, [row], null);
    };
    fc.assert(
      fc.property(
        fc.array(edit, { maxLength: 8 }),
        fc.array(edit, { minLength: 1, maxLength: 12 }),
        (first, then) => {
          const live = stocked();
          for (const each of first) perform(live, each);
          const version = live.toJSON();
          for (const each of then) perform(live, each);
          const now = live.toJSON();
          const back = bringBack(live, version, { part: 'book' }, 'then');
          if (!back.ok) {
            expect(withoutGone(now)).toEqual(withoutGone(version));
            return;
          }
          done(live, back);
          expect(withoutGone(live.toJSON())).toEqual(withoutGone(version));
          expect(parseBook(JSON.stringify(live.toJSON())).ok).toBe(true);
          live.undo();
          expect(live.toJSON()).toEqual(now);
        },
      ),
      { numRuns: Number(process.env.CROFTSHEET_RUNS ?? 40) },
    );
  });
});
