import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { type Outcome, parseBook, type TakenColumn } from '../../src/book/index.js';
import { openBook } from '../../src/core.js';
import { nameAnew, unnamedColumns } from '../../src/live/doings/take-columns.js';
import type { BookChange, LiveBook } from '../../src/live/live-book.js';
import { takeable } from '../../src/live/taken-kinds.js';
import { speak } from '../../src/words/index.js';
import { AS_OF, startingBook } from '../support/random-book.js';

let live: LiveBook;
beforeEach(() => {
  live = startingBook();
});
afterEach(() => live.close());
afterEach(() => speak('en'));

const code = (outcome: Outcome): string => (outcome.ok ? 'done' : outcome.problem.code);

/** A sheet with names, and figures of the rows they name. */
function sheetOf(
  names: readonly string[],
  taken: Omit<TakenColumn, 'by'> = { kind: 'foods', column: 'on_hand' },
) {
  const done = live.apply({
    do: 'add sheet',
    sheet: 'own',
    title: 'Own',
    columns: [
      { id: 'name', title: 'Name' },
      { id: 'figure', title: 'Figure', as: { plan: { ...taken, by: 'name' } } },
    ],
    rows: names.map((name, i) => ({ id: `o${i}`, cells: { name } })),
  });
  if (!done.ok) throw new Error(done.problem.message);
}
const figures = () => live.rowIds('own').map((row) => live.value('own', row, 'figure'));
const problem = (row = 'o0') => live.problem('own', row, 'figure');

describe('a row is named', () => {
  it('by its food, as foods compare, with the unit and the working of the figure', () => {
    sheetOf(['tomato', 'PEAS', '']);
    expect(figures()).toEqual([24.5, 30, null]);
    expect([live.unit('own', 'o0', 'figure'), live.unit('own', 'o1', 'figure')]).toEqual([
      'quart jar',
      'pint freezer bag',
    ]);
    expect(live.working('own', 'o0', 'figure')).toEqual(live.working('foods', 'f1', 'on_hand'));
    expect(live.working('own', 'o2', 'figure')).toBeUndefined();
    expect(problem('o2')).toBeUndefined();
  });

  it('by its food and way in German, whatever is spoken; German suggests it so', async () => {
    live.insertRows('foods', [
      { food: 'Tomaten', way: 'canned', counted_in: 'quart jar' },
      { food: 'Tomaten', way: 'dried', counted_in: 'pound' },
    ]);
    const [canned, dried] = live.rowIds('foods').slice(-2);
    const found = (text: string) => live.namesOfKind('foods').find(text);
    for (const tag of ['en', 'de']) {
      await speak(tag);
      for (const text of [
        'Tomaten, eingekocht',
        'Eingekochte Tomaten',
        'Tomate (eingeweckt)',
        'tomaten, canned',
      ])
        expect(found(text), text).toEqual({ is: 'row', row: canned });
      for (const text of ['Tomaten, gedörrt', 'gedoerrte Tomaten', 'Tomaten getrocknet'])
        expect(found(text), text).toEqual({ is: 'row', row: dried });
      expect(found('verkochte Tomaten').is).toBe('none');
    }
    sheetOf(['Tomaten']);
    expect(problem()?.mend).toBe('Schreiben: „Tomaten, eingekocht“ oder „Tomaten, getrocknet“.');
    expect(live.namesOfKind('foods').all()).toContain('Tomaten, eingekocht');
    await speak('en');
    expect(live.namesOfKind('foods').all()).toContain('Tomaten, canned');
  });

  it('by its food and way, where it is kept in two', () => {
    live.insertRows('foods', [{ food: 'Tomatoes', way: 'dried', counted_in: 'pound' }]);
    sheetOf(['Tomatoes', 'tomatoes, canned', 'Canned tomatoes', 'tomatoes (dried)']);
    expect(figures()).toEqual([null, 24.5, 24.5, 0]);
    expect(problem()).toMatchObject({
      code: 'names-several-rows',
      message: '“Tomatoes” is in Foods twice.',
      mend: 'Write “Tomatoes, canned” or “Tomatoes, dried”.',
    });
  });

  it('by nothing that is there: the nearest is suggested', () => {
    sheetOf(['Tomatoey', 'turnip']);
    expect(problem('o0')?.message).toBe('“Tomatoey” is not in Foods: did you mean Tomatoes?');
    expect(problem('o1')?.message).toBe('“turnip” is not in Foods.');
    expect(live.choices('own', 'o0', 'name')?.map(({ value }) => value)).toEqual(['Tomatoes', 'Peas']);
  });

  it('by the lot, or the food of one lot', () => {
    sheetOf(['peas', 'tomatoes', 'l2', live.lotLabel('l1'), 'frozen peas'], {
      kind: 'shelf',
      column: 'left',
    });
    expect(figures()).toEqual([30, null, 9, 20, 30]);
    expect(problem('o1')?.code).toBe('names-several-rows');
    expect(problem('o1')?.mend).toContain(live.lotLabel('l2'));
  });

  it('by dish, planting, item and person', () => {
    sheetOf(['stew'], { kind: 'dishes', column: 'makes' });
    expect(figures()).toEqual([live.value('dishes', 'e1', 'makes')]);
    live.apply({ do: 'remove sheet', sheet: 'own' });
    sheetOf(['tomatoes', 'b2'], { kind: 'beds', column: 'row_feet' });
    expect(figures()).toEqual(['b1', 'b2'].map((row) => live.value('beds', row, 'row_feet')));
    expect(figures()[0]).toBeGreaterThan(0);
    live.apply({ do: 'remove sheet', sheet: 'own' });
    sheetOf(['ben'], { kind: 'household', column: 'part_of_table' });
    expect(figures()[0]).toBeCloseTo(100 / 3, 9);
    live.apply({ do: 'remove sheet', sheet: 'own' });
    const { rows } = live.insertRows('supplies', [{ item: 'Regular lids', on_hand: 3 }]);
    sheetOf(['regular lid'], { kind: 'supplies', column: 'short' });
    expect(live.sourceOf('own', 'o0', 'figure')?.row).toBe(rows[0]);
  });

  it('only in kinds that say which row is meant', () => {
    expect(takeable().map(({ kind }) => kind)).toEqual([
      'foods',
      'shelf',
      'dishes',
      'beds',
      'supplies',
      'household',
    ]);
    expect(takeable().every(({ columns, named }) => columns.length > 0 && named !== '')).toBe(true);
    sheetOf([]);
    const plan = { kind: 'draws', column: 'took_from', by: 'name' } as const;
    expect(code(live.apply({ do: 'describe column', sheet: 'own', column: 'figure', as: { plan } }))).toBe(
      'no-such-figure',
    );
  });
});

describe('a taken figure', () => {
  beforeEach(() => sheetOf(['tomatoes', 'peas']));

  it('cannot be written, and follows what it is worked out from, in the event too', () => {
    expect(code(live.set('own', 'o0', 'figure', 3))).toBe('planning-column');
    expect(
      code(live.apply({ do: 'describe column', sheet: 'own', column: 'figure', as: { formula: '=1' } })),
    ).toBe('planning-column');
    const seen: BookChange[] = [];
    live.on('change', (change) => seen.push(change));
    live.insertRows('draws', [{ date: '2026-01-10', food: 'tomato', amount: 2, container: 'quart' }]);
    expect(figures()).toEqual([22.5, 30]);
    expect(seen[0]?.cells).toContainEqual({ sheet: 'own', row: 'o0', column: 'figure' });
    expect(seen[0]?.cells).not.toContainEqual({ sheet: 'own', row: 'o1', column: 'figure' });
    expect(JSON.stringify(live.toJSON())).not.toContain('22.5');
  });

  it('is there for formulas, which follow it', () => {
    const { column } = live.addColumn('own', 'Twice', { formula: '=Figure*2' });
    live.set('own', 'o1', 'name', '=A1');
    expect(live.value('own', 'o1', column)).toBe(49);
    live.set('own', 'o0', 'name', 'peas');
    expect([live.value('own', 'o0', column), live.value('own', 'o1', column)]).toEqual([60, 60]);
  });

  it('says what is missing when its naming column goes, and comes back with it', () => {
    live.removeColumns('own', ['name']);
    expect([figures(), problem()?.code]).toEqual([[null, null], 'no-naming-column']);
    live.undo();
    expect([figures(), problem()]).toEqual([[24.5, 30], undefined]);
  });

  it('stays with its names when columns, rows and the sheet of its kind are moved about and renamed', () => {
    live.moveColumns('own', ['figure'], 'name');
    live.moveRows('own', ['o1'], 'o0');
    live.moveRows('foods', ['f2'], 'f1');
    live.apply({ do: 'describe column', sheet: 'own', column: 'name', as: { title: 'What' } });
    live.apply({ do: 'rename sheet', sheet: 'foods', title: 'Larder' });
    expect(figures()).toEqual([30, 24.5]);
    live.set('own', 'o0', 'name', 'pear');
    expect(problem()?.message).toBe('“pear” is not in Larder: did you mean Peas?');
  });

  it('is named by another column where its own is gone', () => {
    live.apply({ do: 'add column', sheet: 'own', column: 'other', before: null, title: 'Other' });
    live.set('own', 'o0', 'other', 'peas');
    live.removeColumns('own', ['name']);
    const lost = unnamedColumns(live, 'own');
    expect(lost.map(({ id }) => id)).toEqual(['figure']);
    live.apply(nameAnew(lost, 'own', 'other'));
    expect([figures(), unnamedColumns(live, 'own')]).toEqual([[30, null], []]);
  });

  it('is taken off by removing it or saying so, which undo takes back', () => {
    live.removeColumns('own', ['figure']);
    expect(live.columns('own').map(({ id }) => id)).toEqual(['name']);
    live.undo();
    live.apply({ do: 'describe column', sheet: 'own', column: 'figure', as: { plan: null } });
    expect(code(live.set('own', 'o0', 'figure', 3))).toBe('done');
    live.undo();
    live.undo();
    expect(figures()).toEqual([24.5, 30]);
  });

  it('stands in no column that names rows', () => {
    const plan = (column: string, by: string) =>
      code(
        live.apply({
          do: 'describe column',
          sheet: 'own',
          column,
          as: { plan: { kind: 'foods', column: 'on_hand', by } },
        }),
      );
    live.addColumn('own', 'More');
    const more = live.columns('own').at(-1)!.id;
    expect([plan('name', more), plan(more, more), plan(more, 'figure'), plan(more, 'name')]).toEqual([
      'names-rows',
      'names-rows',
      'no-naming-column',
      'done',
    ]);
  });

  it('comes from another copy of the book, even where that put figures into the naming column', () => {
    const other = openBook(structuredClone(live.toJSON()), { asOf: AS_OF });
    other.apply({ do: 'set cells', sheet: 'own', cells: [{ row: 'o0', column: 'name', typed: 'peas' }] });
    const path = ['sheets', 'own', 'columns', 'name', 'plan'];
    live.applyRemote([
      { path: ['sheets', 'own', 'rows', 'o0', 'cells', 'name'], to: 'peas', was: 'tomatoes' },
    ]);
    expect(figures()).toEqual([30, 30]);
    live.applyRemote([{ path, to: { kind: 'foods', column: 'on_hand', by: 'figure' }, was: undefined }]);
    expect([figures(), problem()?.code, live.problem('own', 'o0', 'name')?.code]).toEqual([
      [null, null],
      'no-naming-column',
      'no-naming-column',
    ]);
    live.applyRemote([{ path, to: undefined, was: undefined }]);
    expect(figures()).toEqual([30, 30]);
    other.close();
  });
});

describe('names that formulas give', () => {
  it('may hang on figures named before them, however long the chain', () => {
    const names = [
      'tomatoes',
      ...Array.from({ length: 30 }, (_, i) => `=IF(B${i + 1}>25,"tomatoes","peas")`),
    ];
    sheetOf(names);
    expect(figures()).toEqual(names.map((_, i) => (i % 2 === 0 ? 24.5 : 30)));
    live.set('own', 'o0', 'name', 'peas');
    expect(figures().slice(0, 3)).toEqual([30, 24.5, 30]);
  });

  it('that hang on their own figure say so, and only they do', () => {
    sheetOf(['=IF(B1>25,"tomatoes","peas")', 'peas', '=A2']);
    expect(live.value('own', 'o0', 'name')).toMatchObject({ error: '#CYCLE!' });
    expect([figures()[0], problem()?.code]).toEqual([null, 'named-by-error']);
    expect(figures().slice(1)).toEqual([30, 30]);
    live.set('own', 'o0', 'name', 'peas');
    expect(figures()).toEqual([30, 30, 30]);
  });

  it('come to the same in a book opened afresh, whatever stood there before', () => {
    // Either name would do: which one it is must not hang on the past.
    sheetOf(['=IF(B1>28,"peas","tomatoes")']);
    const first = figures();
    live.set('own', 'o0', 'name', 'peas');
    live.set('own', 'o0', 'name', '=IF(B1>28,"peas","tomatoes")');
    const parsed = parseBook(JSON.stringify(live.toJSON()));
    if (!parsed.ok) throw new Error('unreadable');
    const again = openBook(parsed.book, { asOf: AS_OF });
    expect([figures(), again.value('own', 'o0', 'figure')]).toEqual([first, first[0]]);
    again.close();
  });

  it('and kept cells that read taken figures: what depends on itself says so', () => {
    sheetOf(['peas']);
    live.set('shelf', 'l1', 'count', '=Own!B1+1');
    expect(live.value('shelf', 'l1', 'left')).toBe(31);
    live.set('own', 'o0', 'name', 'tomatoes');
    expect(live.value('shelf', 'l1', 'count')).toMatchObject({ error: '#CYCLE!' });
    live.undo();
    expect(live.value('shelf', 'l1', 'left')).toBe(31);
  });
});

it('needs no engine for names that are written, and is left in peace by files of a hand', () => {
  sheetOf(['peas', '=A1']);
  const doc = structuredClone(live.toJSON()) as unknown as {
    sheets: Record<string, { columns: Record<string, Record<string, unknown>> }>;
  };
  doc.sheets.own!.columns.bad = { own: true, title: 'Bad', plan: { kind: 'own', column: 'x', by: 'name' } };
  doc.sheets.own!.columns.worse = { own: true, title: 'Worse', plan: 'peas' };
  const parsed = parseBook(JSON.stringify(doc));
  if (!parsed.ok) throw new Error(JSON.stringify(parsed.problems));
  const again = openBook(parsed.book, { asOf: AS_OF });
  expect(again.columns('own').map(({ role }) => role)).toEqual(['own', 'planning', 'own', 'own']);
  expect(again.value('own', 'o1', 'figure')).toBe(30);
  again.close();
});
