import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { parseBook } from '../../src/book/index.js';
import { isCellError, type LiveBook, openBook } from '../../src/core.js';
import { changedFigures, dependentsOf, removalOf } from '../../src/live/doings/dependents.js';
import { AS_OF, startingBook } from '../support/random-book.js';

let live: LiveBook;
const NOTES = 'snotes';

beforeEach(() => {
  live = startingBook();
});
afterEach(() => live.close());

const places = (some: readonly { sheetTitle: string; columnTitle: string; cells: number | null }[]) =>
  some.map(({ sheetTitle, columnTitle, cells }) => `${sheetTitle}, ${columnTitle}: ${cells ?? 'column'}`);

/** What shows #REF! in the book, by sheet and column. */
function broken(): string[] {
  const found = new Set<string>();
  for (const { id, title } of live.sheets()) {
    for (const column of live.columns(id)) {
      for (const row of live.rowIds(id)) {
        const value = live.value(id, row, column.id);
        if (isCellError(value) && value.error === '#REF!') found.add(`${title}, ${column.title}`);
      }
    }
  }
  return [...found];
}

describe('what depends on a thing that would be removed', () => {
  it('is nothing where nothing refers to it', () => {
    expect(dependentsOf(live, { sheet: NOTES, columns: ['cb'] })).toBeNull();
    expect(dependentsOf(live, { sheet: 'shelf', columns: ['cown'] })).toBeNull();
    expect(dependentsOf(live, { sheet: NOTES })).toBeNull();
    expect(dependentsOf(live, { sheet: NOTES, rows: ['n2'] })).toBeNull();
    expect(dependentsOf(live, { sheet: 'nosuch' })).toBeNull();
  });

  it('lists cells and whole columns, in the sheet and in others, and what hangs on them', () => {
    live.set(NOTES, 'n2', 'cb', '=A2*2');
    live.addColumn(NOTES, 'Worth', { formula: '=A*10' });
    live.addColumn(NOTES, 'Dearer', { formula: '=Worth+1' });
    live.addColumn('shelf', 'Share', { formula: '=SUM(Notes!A)' });
    const found = dependentsOf(live, { sheet: NOTES, columns: ['ca'] })!;
    expect(found.of).toBe('“A”');
    expect(places(found.broken).sort()).toEqual([
      'Notes, B: 2',
      'Notes, Worth: column',
      'Shelf, Share: column',
    ]);
    expect(found.formulas).toBe(4);
    expect(found.further).toBe(1);
    expect(found.feedsPlan).toBe(false);
    live.removeColumns(NOTES, ['ca']);
    expect(broken().sort()).toEqual(['Notes, B', 'Notes, Dearer', 'Notes, Worth', 'Shelf, Share']);
  });

  it('knows a range that only grows smaller from one that goes whole', () => {
    live.addColumn(NOTES, 'C');
    const wide = live.addColumn(NOTES, 'All').column;
    live.set(NOTES, 'n1', wide, '=SUM(A2:C2)');
    const one = dependentsOf(live, { sheet: NOTES, columns: ['ca'] })!;
    expect(places(one.smaller)).toEqual(['Notes, All: 1']);
    expect(places(one.broken)).toEqual(['Notes, B: 1']);
    const all = dependentsOf(live, {
      sheet: NOTES,
      columns: live
        .columns(NOTES)
        .slice(0, 3)
        .map((c) => c.id),
    })!;
    expect([places(all.smaller), places(all.broken)]).toEqual([[], ['Notes, All: 1']]);
  });

  it('asks of rows only where a formula names them, not where a range goes on without them', () => {
    live.set(NOTES, 'n3', 'cb', '=A2+1');
    live.addColumn(NOTES, 'Sum', { formula: '=SUM(A)' });
    expect(places(dependentsOf(live, { sheet: NOTES, rows: ['n2'] })!.broken)).toEqual(['Notes, B: 1']);
    expect(dependentsOf(live, { sheet: NOTES, rows: ['n2', 'n3'] })).toBeNull();
    expect(dependentsOf(live, { sheet: NOTES, rows: ['n1'] })).toBeNull();
    expect(places(dependentsOf(live, { sheet: NOTES, rows: ['n1', 'n2', 'n3'] })?.broken ?? [])).toEqual([]);
  });

  it('lists what uses a sheet, but not the formulas that go with it', () => {
    live.apply({ do: 'add sheet', sheet: 'sprices', title: 'Prices' });
    live.apply({ do: 'add column', sheet: 'sprices', column: 'cp', before: null, title: 'Price' });
    live.addColumn('sprices', 'Twice', { formula: '=Price*2' });
    live.addColumn('shelf', 'Worth', { formula: '=SUM(Prices!Price)' });
    const found = dependentsOf(live, { sheet: 'sprices' })!;
    expect(found.of).toBe('the sheet “Prices”');
    expect(places(found.broken)).toEqual(['Shelf, Worth: column']);
  });

  it('lists a planning column that is shown by the names that would go', () => {
    live.apply({
      do: 'add column',
      sheet: NOTES,
      column: 'cleft',
      before: null,
      title: 'On hand',
      as: { plan: { kind: 'foods', column: 'on_hand', by: 'ca' } },
    });
    const found = dependentsOf(live, { sheet: NOTES, columns: ['ca'] })!;
    expect(places(found.taken)).toEqual(['Notes, On hand: column']);
    expect(dependentsOf(live, { sheet: NOTES, columns: ['cleft'] })).toBeNull();
  });

  it('says which planning figures would change', () => {
    live.set('shelf', 'l1', 'count', '=SUM(Notes!A)');
    const found = dependentsOf(live, { sheet: NOTES, columns: ['ca'] })!;
    expect(found.feedsPlan).toBe(true);
    const parsed = parseBook(JSON.stringify(live.toJSON()));
    if (!parsed.ok) throw new Error('not read');
    const trial = openBook(parsed.book, { asOf: AS_OF });
    trial.removeColumns(NOTES, ['ca']);
    const changed = changedFigures(live, trial).map(({ columnTitle, lost }) => [columnTitle, lost]);
    expect(changed).toContainEqual(['Left', 1]);
    trial.close();
    expect(changedFigures(live, live)).toEqual([]);
  });

  it('knows which commands remove', () => {
    expect(removalOf({ do: 'remove sheet', sheet: NOTES })).toEqual({ sheet: NOTES });
    expect(removalOf({ do: 'rename book', title: 'x' })).toBeNull();
  });
});
