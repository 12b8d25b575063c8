import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { asShown } from '../../components/embed/as-shown.js';
import { asItStands, type BookDoc, parseBook } from '../../src/book/index.js';
import { openBook } from '../../src/live/live-book.js';
import { shownCell } from '../../src/live/shown.js';
import { shownSoFar } from '../../src/live/shown-so-far.js';

const demo = (): BookDoc => {
  const parsed = parseBook(readFileSync('demo/data/tamarack-bench.json', 'utf8'));
  if (!parsed.ok) throw new Error(parsed.problems[0]?.message);
  return parsed.book;
};
const today = () => 20_499;
const visible = (live: ReturnType<typeof openBook>) => live.columns('shelf').filter(({ hidden }) => !hidden);

describe('a book whose figures are worked out later', () => {
  it('shows what people entered at once, and figures only where they are known', () => {
    const whole = openBook(demo(), { today });
    const [row] = whole.rowIds('shelf');
    const live = openBook(demo(), {
      today,
      later: true,
      known: (sheet, id, column) => {
        const view = whole.column(sheet, column);
        return column === 'left' && view ? shownCell(whole, sheet, id, view, false) : undefined;
      },
    });
    const soFar = (column: string) => shownSoFar(live, 'shelf', row!, live.column('shelf', column)!, false);
    const exact = (column: string) => shownCell(whole, 'shelf', row!, whole.column('shelf', column)!, false);
    expect(soFar('food').text).toBe(exact('food').text);
    expect(soFar('left')).toMatchObject({ text: exact('left').text, unit: exact('left').unit });
    expect(soFar('weeks_of_supply').kind).toBe('pending');
    expect(live.isPlanned).toBe(false);
    whole.close();
    live.close();
  });

  it('comes to the same as one worked out at once, and says so to what showed it before', async () => {
    const whole = openBook(demo(), { today });
    const live = openBook(demo(), { today, later: true });
    const told: string[] = [];
    live.on('change', ({ cells, changes }) => told.push(`${cells.length > 0} ${changes.length}`));
    live.showsSoFar();
    live.workOut();
    await Promise.resolve();
    expect(told).toEqual(['true 0']);
    for (const row of live.rowIds('shelf'))
      for (const column of visible(live))
        expect(shownCell(live, 'shelf', row, column, false)).toEqual(
          shownCell(whole, 'shelf', row, whole.column('shelf', column.id)!, false),
        );
    whole.close();
    live.close();
  });

  it('works them out before the first edit, which comes to the same', () => {
    const [whole, live] = [openBook(demo(), { today }), openBook(demo(), { today, later: true })];
    const [row] = whole.rowIds('shelf');
    for (const book of [whole, live]) expect(book.set('shelf', row!, 'count', 99).ok).toBe(true);
    expect(live.value('shelf', row!, 'left')).toBe(whole.value('shelf', row!, 'left'));
    live.undo();
    whole.undo();
    expect(live.value('shelf', row!, 'left')).toBe(whole.value('shelf', row!, 'left'));
    whole.close();
    live.close();
  });

  it('is worked out by the first question that needs a figure', () => {
    const live = openBook(demo(), { today, later: true });
    const [row] = live.rowIds('shelf');
    expect(live.isPlanned).toBe(false);
    expect(live.value('shelf', row!, 'left')).not.toBeNull();
    expect(live.isPlanned).toBe(true);
    live.close();
  });
});

describe('a book shown before it is checked', () => {
  it('is the one that checking gives', () => {
    const book = JSON.parse(JSON.stringify(demo())) as BookDoc;
    const parsed = parseBook(book);
    expect(asItStands(book)).toEqual(parsed.ok && parsed.book);
  });

  it('is none where it must be read first', () => {
    const book = demo();
    expect(asItStands({ ...book, version: 0 })).toBeUndefined();
    expect(asItStands({ ...book, references: undefined })).toBeUndefined();
    expect(asItStands({ ...book, sheets: { shelf: null } })).toBeUndefined();
    expect(asItStands('{}')).toBeUndefined();
  });
});

describe('a sheet with just the columns of a table', () => {
  it('shows them in the table’s order and widths, and goes back to its own', () => {
    const book = demo();
    const widths = new Map([
      ['left', 120],
      ['food', 140],
    ]);
    const { book: shown, back } = asShown(book, 'shelf', widths);
    const live = openBook(shown, { today });
    expect(visible(live).map(({ id, width }) => [id, width])).toEqual([...widths]);
    const again = back(live.toJSON());
    expect(again.sheets.shelf?.columns).toEqual(book.sheets.shelf?.columns);
    live.apply({ do: 'describe column', sheet: 'shelf', column: 'food', as: { width: 200 } });
    expect(back(live.toJSON()).sheets.shelf?.columns.food?.width).toBe(200);
    live.close();
  });
});
