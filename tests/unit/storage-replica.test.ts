import { describe, expect, it } from 'vitest';
import type { Change, Json } from '../../src/book/types.js';
import { BookReplica } from '../../src/storage/replica.js';
import { aBook } from './storage-support.js';

const change = (path: string, to: Json | undefined): Change => ({
  path: path.split('/'),
  to,
  was: undefined,
});
const cell = (row: string, column: string, to: Json | undefined) =>
  change(`sheets/shelf/rows/${row}/cells/${column}`, to);

/** Two copies of one book, edited apart, then exchanged. */
function exchanged(mine: Change[], theirs: Change[], both: Change[] = []) {
  const [a, b] = [BookReplica.fromBook(aBook()), BookReplica.fromBook(aBook())];
  a.apply(both);
  b.merge(a.encode());
  a.apply(mine);
  b.apply(theirs);
  const [toA, toB] = [b.encodeSince(a.vector()), a.encodeSince(b.vector())];
  const [inA, inB] = [a.merge(toA), b.merge(toB)];
  if (!inA.ok || !inB.ok) throw new Error('not merged');
  expect(a.toBook()).toEqual(b.toBook());
  return { book: a.toBook(), inMine: inA.value, inTheirs: inB.value, a, b };
}

describe('two copies edited apart', () => {
  it('both keep cells of one row', () => {
    const { book } = exchanged([cell('r1', 'count', 20)], [cell('r1', 'note', 'lids bulge')]);
    expect(book.sheets.shelf!.rows.r1!.cells).toEqual({ food: 'tomatoes', count: 20, note: 'lids bulge' });
  });

  it('both keep draws added on each', () => {
    const { book } = exchanged(
      [change('sheets/draws/rows/d1', { order: 'a0', cells: { count: 1 }, allotted: { r1: 1 } })],
      [change('sheets/draws/rows/d2', { order: 'a0', cells: { count: 2 }, allotted: { r1: 2 } })],
    );
    expect(Object.keys(book.sheets.draws!.rows).sort()).toEqual(['d1', 'd2']);
    expect(book.sheets.draws!.rows.d2!.allotted).toEqual({ r1: 2 });
  });

  it('bring a removed row back whole when the other copy edited it', () => {
    const { book, inMine } = exchanged([change('sheets/shelf/rows/r1', undefined)], [cell('r1', 'count', 9)]);
    expect(book.sheets.shelf!.rows.r1!.cells).toEqual({ food: 'tomatoes', count: 9 });
    expect(inMine).toEqual([
      {
        path: ['sheets', 'shelf', 'rows', 'r1'],
        to: { order: 'a0', cells: { food: 'tomatoes', count: 9 } },
        was: undefined,
      },
    ]);
  });

  it('remove a row that only one of them touched', () => {
    const { book, inTheirs } = exchanged(
      [change('sheets/shelf/rows/r1', undefined)],
      [cell('r2', 'count', 9)],
    );
    expect(Object.keys(book.sheets.shelf!.rows)).toEqual(['r2']);
    expect(inTheirs).toEqual([
      { path: ['sheets', 'shelf', 'rows', 'r1'], to: undefined, was: aBook().sheets.shelf!.rows.r1 },
    ]);
  });

  it('keep an edit made elsewhere when a removal is undone', () => {
    const row = aBook().sheets.shelf!.rows.r1 as unknown as Json;
    const { book } = exchanged(
      [change('sheets/shelf/rows/r1', undefined), change('sheets/shelf/rows/r1', row)],
      [cell('r1', 'note', 'cellar')],
    );
    expect(book.sheets.shelf!.rows.r1!.cells.note).toBe('cellar');
  });

  it('keep a typed cell over a cleared one', () => {
    const { book } = exchanged([cell('r1', 'count', undefined)], [cell('r1', 'count', 7)]);
    expect(book.sheets.shelf!.rows.r1!.cells.count).toBe(7);
  });

  it('both keep what each was first to set about a column', () => {
    const { book } = exchanged(
      [change('sheets/shelf/columns/food/width', 240)],
      [change('sheets/shelf/columns/food/pinned', true)],
    );
    expect(book.sheets.shelf!.columns.food).toEqual({ width: 240, pinned: true });
  });

  it('bring back a whole sheet that was removed while a cell of it was edited', () => {
    const { book } = exchanged([change('sheets/shelf', undefined)], [cell('r2', 'count', 3)]);
    expect(book.sheets.shelf!.rows.r2!.cells.count).toBe(3);
    expect(book.sheets.shelf!.rows.r1!.cells.count).toBe(24);
  });

  it('let a row that came back be removed again, and stay removed', () => {
    const { a, b } = exchanged([change('sheets/shelf/rows/r1', undefined)], [cell('r1', 'count', 9)]);
    a.apply([change('sheets/shelf/rows/r1', undefined)]);
    b.merge(a.encode());
    expect(b.toBook().sheets.shelf!.rows.r1).toBeUndefined();
  });

  it('do not remove a row that is edited back to what it was when it was removed', () => {
    const { a, b } = exchanged([change('sheets/shelf/rows/r1', undefined)], [cell('r1', 'count', 9)]);
    b.apply([cell('r1', 'count', 24)]);
    a.merge(b.encode());
    expect(a.toBook()).toEqual(aBook());
  });
});

describe('a mirror', () => {
  it('says what a merge changed, with what stood there before', () => {
    const { inTheirs } = exchanged([cell('r1', 'count', 20), change('title', 'Cellar')], []);
    expect(inTheirs).toContainEqual({ path: ['title'], to: 'Cellar', was: 'Our shelf' });
    expect(inTheirs).toContainEqual({
      path: ['sheets', 'shelf', 'rows', 'r1', 'cells', 'count'],
      to: 20,
      was: 24,
    });
  });

  it('takes an update that comes twice, or before the one it builds on', () => {
    const [a, b] = [BookReplica.fromBook(aBook()), BookReplica.fromBook(aBook())];
    const updates: Uint8Array[] = [];
    a.onUpdate((update) => updates.push(update));
    a.apply([cell('r1', 'count', 20)]);
    a.apply([cell('r1', 'count', 19)]);
    b.merge(updates[1]!);
    expect(b.incomplete).toBe(true);
    b.merge(updates[0]!);
    b.merge(updates[1]!);
    expect(b.incomplete).toBe(false);
    expect(b.toBook().sheets.shelf!.rows.r1!.cells.count).toBe(19);
  });

  it('lets go an edit below a row that is not there', () => {
    const replica = BookReplica.fromBook(aBook());
    replica.apply([cell('gone', 'count', 1)]);
    expect(replica.toBook()).toEqual(aBook());
  });

  it('refuses bytes that are no update and stays as it was', () => {
    const replica = BookReplica.fromBook(aBook());
    const whole = BookReplica.fromBook({ ...aBook(), title: 'Other' }).encode();
    for (const bytes of [new Uint8Array([250, 1, 9]), whole.slice(0, whole.length - 20)])
      expect(replica.merge(bytes)).toMatchObject({ ok: false, problem: { code: 'state-unreadable' } });
    expect(replica.toBook()).toEqual(aBook());
    expect(BookReplica.fromState(whole.slice(0, 40))).toMatchObject({ ok: false });
  });

  it('refuses state of which a part is missing', () => {
    const replica = BookReplica.fromBook(aBook());
    const before = replica.vector();
    replica.apply([cell('r1', 'count', 1)]);
    expect(BookReplica.fromState(replica.encodeSince(before))).toMatchObject({
      ok: false,
      problem: { code: 'state-incomplete' },
    });
  });

  it('goes on from saved state and takes what was changed by hand as an edit', () => {
    const first = BookReplica.fromBook(aBook());
    const byHand = structuredClone(first.toBook()) as { title: string } & ReturnType<typeof aBook>;
    byHand.title = 'By hand';
    const second = BookReplica.fromBook(byHand, first.encode());
    first.apply([cell('r1', 'count', 1)]);
    second.merge(first.encode());
    expect(second.toBook().title).toBe('By hand');
    expect(second.toBook().sheets.shelf!.rows.r1!.cells.count).toBe(1);
  });
});
