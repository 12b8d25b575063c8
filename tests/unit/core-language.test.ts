import { afterEach, describe, expect, it } from 'vitest';
import { blankBook, LANGUAGES, type LiveBook, openBook, speak } from '../../src/core.js';
import { takeColumns } from '../../src/live/doings/take-columns.js';
import { shownCell } from '../../src/live/shown.js';

afterEach(() => speak('en'));

const withLot = (live: LiveBook): string =>
  live.insertRows('shelf', [{ food: 'tomatoes', way: 'canned', container: 'quart jar', count: 12 }]).rows[0]!;

describe('speak, of the core', () => {
  it('answers all who asked when what was asked for last is spoken, and not before', async () => {
    expect(await Promise.all([speak('de'), speak('de'), speak('de-CH')])).toEqual([
      'de-CH',
      'de-CH',
      'de-CH',
    ]);
    const german = speak('de');
    expect(await speak('en')).toBe('en-US');
    expect(await german).toBe('en-US');
  });

  it('has a book say in German what is wrong, and stores the same', async () => {
    expect(LANGUAGES).toContain('de');
    expect(await speak('de-AT')).toBe('de-AT');
    const live = openBook(blankBook('Haus', 'b1'));
    const lot = withLot(live);
    const refused = live.set('shelf', lot, 'left', 3);
    expect(refused.ok ? '' : refused.problem.message).toMatch(/^„.+“ wird aus dem Buch errechnet/);
    live.set('shelf', lot, 'count', 'viele');
    expect(live.problem('shelf', lot, 'count')?.mend).toMatch(/^In Ziffern schreiben/);
    expect(live.undoLabel).toBe('Änderung einer Zelle');
    expect(live.toJSON().sheets.shelf!.title).toBe('Shelf');
    live.close();
  });

  it('takes our own words as they are called in German, and stores the same', async () => {
    await speak('de');
    const live = openBook(blankBook('Haus', 'b1'));
    const lot = withLot(live);
    live.set('shelf', lot, 'way', 'Eingefroren');
    live.set('shelf', lot, 'container', 'Pint-Gefrierbeutel');
    live.set('shelf', lot, 'food', 'Gefroren und eingekocht');
    expect(live.toJSON().sheets.shelf!.rows[lot]!.cells).toMatchObject({
      way: 'frozen',
      container: 'pint freezer bag',
      food: 'Gefroren und eingekocht',
    });
    expect(live.choices('shelf', lot, 'way')).toContainEqual({ value: 'frozen', label: 'eingefroren' });
    expect(shownCell(live, 'shelf', lot, live.column('shelf', 'way')!, false).text).toBe('eingefroren');
    live.close();
  });

  it('calls what comes without a title as the language spoken does at that moment, and leaves it so', async () => {
    await speak('de');
    const book = blankBook();
    const live = openBook(book);
    live.apply({ do: 'add sheet', sheet: 'mine', title: ' ' });
    live.apply({ do: 'add column', sheet: 'mine', column: 'a', before: null, title: '' });
    await speak('en');
    live.apply({ do: 'add column', sheet: 'mine', column: 'b', before: null, title: '' });
    const { title, sheets } = live.toJSON();
    expect([title, sheets.mine!.title]).toEqual(['Unser Buch', 'Eigenes Blatt']);
    expect(['a', 'b'].map((id) => sheets.mine!.columns[id]!.title)).toEqual(['Neue Spalte', 'New column']);
    live.undo();
    live.undo();
    live.redo();
    expect(live.column('mine', 'a')?.title).toBe('Neue Spalte');
    live.close();
  });

  it('calls a planning column on a sheet of one’s own as the language spoken does', async () => {
    const live = openBook(blankBook('House', 'b1'));
    live.apply({ do: 'add sheet', sheet: 'mine', title: 'Mine' });
    const { command, first } = takeColumns(live, {
      sheet: 'mine',
      kind: 'foods',
      columns: ['weeks_of_supply'],
      by: null,
    });
    live.apply(command);
    expect(live.column('mine', first)?.title).toBe('Weeks of supply');
    await speak('de');
    expect(live.column('mine', first)?.title).toBe(live.column('foods', 'weeks_of_supply')?.title);
    live.apply({ do: 'describe column', sheet: 'mine', column: first, as: { title: 'Reicht noch' } });
    await speak('en');
    expect(live.column('mine', first)?.title).toBe('Reicht noch');
    live.close();
  });

  it('has a book that is open say it anew', async () => {
    const live = openBook(blankBook('House', 'b1'));
    const lot = withLot(live);
    live.set('shelf', lot, 'count', 'many');
    const english = live.problem('shelf', lot, 'count')?.message;
    expect(english).toContain('takes a number');
    await speak('de');
    expect(live.problem('shelf', lot, 'count')?.message).toMatch(/nimmt eine Zahl/);
    await speak('en');
    expect(live.problem('shelf', lot, 'count')?.message).toBe(english);
    live.close();
  });
});
