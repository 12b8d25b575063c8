import { afterEach, describe, expect, it } from 'vitest';
import { blankBook, LANGUAGES, type LiveBook, openBook, speak } from '../../src/core.js';

afterEach(() => speak('en'));

const withLot = (live: LiveBook): string =>
  live.insertRows('shelf', [{ food: 'tomatoes', way: 'canned', container: 'quart jar', count: 12 }]).rows[0]!;

describe('speak, of the core', () => {
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
