import { describe, expect, it } from 'vitest';
import type { BookDoc } from '../../src/book/index.js';
import { bringBack } from '../../src/live/doings/bring-back.js';
import type { LiveBook } from '../../src/live/live-book.js';
import { startingBook } from '../support/random-book.js';

/** Column A of the sheet “Notes”: an entry, a note and a colour in its first row. */
const noted = (): LiveBook => {
  const live = startingBook();
  const cells = [{ row: 'n1', column: 'ca' }];
  live.apply({ do: 'mark cells', sheet: 'snotes', cells, note: 'Ask Ada', colour: 'rose' });
  return live;
};

const rowOf = (live: LiveBook) => live.toJSON().sheets.snotes!.rows.n1!;
const back = (live: LiveBook, version: BookDoc, what: Parameters<typeof bringBack>[2]) => {
  const found = bringBack(live, version, what, 'before');
  if (!found.ok) throw new Error(found.problem.message);
  return live.apply(found.value.command);
};

describe('a column that is gone', () => {
  it('takes back no cell of it, nor the note and colour there, and says so', () => {
    const live = noted();
    const version = live.toJSON();
    live.removeColumns('snotes', ['ca']);
    const before = rowOf(live);
    const outcome = back(live, version, { part: 'cell', sheet: 'snotes', row: 'n1', column: 'ca' });
    expect(outcome).toMatchObject({ ok: false, problem: { code: 'nowhere-to-go' } });
    expect(rowOf(live)).toEqual(before);
  });

  it('keeps nothing of a row that comes back, and says so, also where only a note stood there', () => {
    const live = noted();
    live.set('snotes', 'n1', 'ca', null);
    const version = live.toJSON();
    live.removeColumns('snotes', ['ca']);
    const without = rowOf(live);
    live.removeRows('snotes', ['n1']);
    const outcome = back(live, version, { part: 'row', sheet: 'snotes', row: 'n1' });
    expect(outcome).toMatchObject({ ok: true, notes: [{ code: 'columns-gone' }] });
    expect(rowOf(live)).toEqual(without);
  });

  it('comes back with its sheet, with entry, note and colour', () => {
    const live = noted();
    const version = live.toJSON();
    live.removeColumns('snotes', ['ca']);
    back(live, version, { part: 'sheet', sheet: 'snotes' });
    expect(rowOf(live)).toEqual(version.sheets.snotes!.rows.n1);
    expect(live.columns('snotes').map(({ id }) => id)).toEqual(['ca', 'cb']);
  });

  it('is not filled by undo where another copy removed it, and a note says so', () => {
    const live = noted();
    const row = rowOf(live);
    live.removeRows('snotes', ['n1']);
    const other = startingBook();
    other.removeRows('snotes', ['n1']);
    const removed = other.removeColumns('snotes', ['ca']);
    if (!removed.ok) throw new Error(removed.problem.message);
    live.applyRemote(removed.changes);
    const notes: string[] = [];
    live.on('change', (change) => notes.push(...(change.notes ?? []).map(({ code }) => code)));
    expect(live.undo()).toBe(true);
    const { order, cells } = row;
    expect(rowOf(live)).toEqual({ order, cells: { cb: cells.cb } });
    expect(notes).toEqual(['changed-elsewhere']);
  });
});
