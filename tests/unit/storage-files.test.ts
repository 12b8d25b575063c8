import { describe, expect, it } from 'vitest';
import { parseBook } from '../../src/book/parse.js';
import type { BookDoc } from '../../src/book/types.js';
import {
  copyName,
  copyText,
  mergeBooks,
  openACopy,
  saveACopy,
  saveForMerging,
} from '../../src/storage/index.js';
import { BookReplica } from '../../src/storage/replica.js';
import { aBook } from './storage-support.js';

const text = (book: BookDoc): string => copyText(book);

describe('a copy in a file', () => {
  it('is read again as the same book', async () => {
    expect(await openACopy(saveACopy(aBook()), parseBook)).toEqual({ ok: true, copy: { doc: aBook() } });
    expect(await openACopy(`\uFEFF${text(aBook())}`, parseBook)).toMatchObject({ ok: true });
  });

  it('is the same text for the same book, rows in their order', () => {
    const book = aBook();
    const rows = book.sheets.shelf!.rows;
    const shuffled = {
      ...book,
      sheets: {
        ...Object.fromEntries(Object.entries(book.sheets).reverse()),
        shelf: { ...book.sheets.shelf!, rows: { r2: rows.r2!, r1: rows.r1! } },
      },
    };
    expect(text(shuffled)).toBe(text(book));
    expect(text(book).indexOf('"r1"')).toBeLessThan(text(book).indexOf('"r2"'));
    expect(text(book)).toMatch(/^{\n {2}"format": "croftsheet-book",\n/);
  });

  it('is named after the book and the day', () => {
    expect(copyName('Our Shelf & Cellar!', new Date(2026, 1, 1))).toBe(
      'our-shelf-cellar-2026-02-01.croft.json',
    );
    expect(copyName('../..', new Date(2026, 1, 1))).toBe('book-2026-02-01.croft.json');
  });

  it('carries its state when it is saved for merging, and not in the book', async () => {
    const replica = BookReplica.fromBook(aBook());
    const copy = await openACopy(await saveForMerging(aBook(), replica.encode()), parseBook);
    expect(copy).toEqual({ ok: true, copy: { doc: aBook(), state: replica.encode() } });
  });

  it('is read without its state when that was damaged', async () => {
    const damaged = JSON.stringify({ ...aBook(), replica: 'H4sIAAAAnonsense' });
    expect(await openACopy(damaged, parseBook)).toEqual({ ok: true, copy: { doc: aBook() } });
  });

  it('is refused with the reason when it is no book', async () => {
    const code = async (file: string) => {
      const copy = await openACopy(file, parseBook);
      return copy.ok ? 'read' : copy.problems[0]!.code;
    };
    expect(await code('')).toBe('file-empty');
    expect(await code('food,count\ntomatoes,24\n')).toBe('not-json');
    expect(await code('[1, 2]')).toBe('not-a-book');
    expect(await code('{"format":"something else"}')).toBe('not-a-book');
    const whole = text(aBook());
    for (const end of [30, 200, whole.length - 3]) expect(await code(whole.slice(0, end))).toBe('truncated');
  });

  it('cannot reach into prototypes', async () => {
    const hostile = text(aBook()).replace('"settings": {', '"settings": {"__proto__": {"polluted": true},');
    expect(await openACopy(hostile, parseBook)).toMatchObject({
      ok: false,
      problems: [{ code: 'hostile-key' }],
    });
    const doc = JSON.parse(hostile) as BookDoc;
    const { book } = mergeBooks(aBook(), doc);
    BookReplica.fromBook(doc).toBook();
    copyText(book);
    expect(({} as { polluted?: boolean }).polluted).toBeUndefined();
    expect(Object.getPrototypeOf(book.settings)).toBe(Object.prototype);
  });
});

describe('merging two copies', () => {
  const withCells = (cells: Record<string, string | number>, of: BookDoc = aBook()): BookDoc => ({
    ...of,
    sheets: {
      ...of.sheets,
      shelf: {
        ...of.sheets.shelf!,
        rows: { ...of.sheets.shelf!.rows, r1: { order: 'a0', cells } },
      },
    },
  });
  const without = (row: string): BookDoc => {
    const { [row]: _, ...rows } = aBook().sheets.shelf!.rows;
    return { ...aBook(), sheets: { ...aBook().sheets, shelf: { ...aBook().sheets.shelf!, rows } } };
  };

  it('takes the edits of both against an earlier version', () => {
    const mine = withCells({ food: 'tomatoes', count: 20 });
    const theirs = withCells({ food: 'tomatoes', count: 24, note: 'cellar' }, without('r2'));
    const { book, conflicts } = mergeBooks(mine, theirs, aBook());
    expect(book.sheets.shelf!.rows).toEqual({
      r1: { order: 'a0', cells: { food: 'tomatoes', count: 20, note: 'cellar' } },
    });
    expect(conflicts).toEqual([]);
  });

  it('keeps mine where both set a cell, and lists what theirs was', () => {
    const { book, conflicts } = mergeBooks(
      withCells({ food: 'tomatoes', count: 20 }),
      withCells({ food: 'tomatoes', count: 19 }),
      aBook(),
    );
    expect(book.sheets.shelf!.rows.r1!.cells.count).toBe(20);
    expect(conflicts).toEqual([
      { path: ['sheets', 'shelf', 'rows', 'r1', 'cells', 'count'], mine: 20, theirs: 19 },
    ]);
  });

  it('brings back a row that one removed and the other edited', () => {
    const { book } = mergeBooks(without('r1'), withCells({ food: 'tomatoes', count: 19 }), aBook());
    expect(book.sheets.shelf!.rows.r1!.cells).toEqual({ food: 'tomatoes', count: 19 });
  });

  it('without an earlier version takes what only one has as added', () => {
    const { book, conflicts } = mergeBooks(
      without('r1'),
      withCells({ food: 'tomatoes', count: 19 }, without('r2')),
    );
    expect(Object.keys(book.sheets.shelf!.rows).sort()).toEqual(['r1', 'r2']);
    expect(conflicts).toEqual([]);
  });

  it('of one book with itself is that book', () => {
    expect(mergeBooks(aBook(), aBook())).toEqual({ book: aBook(), changes: [], conflicts: [] });
  });
});
