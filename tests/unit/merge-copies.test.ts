import { afterEach, describe, expect, it } from 'vitest';
import * as Y from 'yjs';
import { editable } from '../../components/book/keeping.js';
import { parseBook } from '../../src/book/parse.js';
import type { BookDoc } from '../../src/book/types.js';
import { type LiveBook, openBook } from '../../src/live/live-book.js';
import {
  type BookCopy,
  bothOf,
  conflictKey,
  type Decision,
  KeptBook,
  type MergePlan,
  mergeCommand,
  openACopy,
  readKeptCopy,
  saveForMerging,
} from '../../src/storage/index.js';
import { aBook, newDatabase } from './storage-support.js';

interface Home {
  readonly kept: KeptBook;
  readonly live: LiveBook;
  readonly database: string;
}
const open: Home[] = [];

const home = async (start: () => BookDoc | BookCopy = withDraws, database = newDatabase()): Promise<Home> => {
  const kept = await KeptBook.open({ id: 'b1', database, parseBook, start });
  if (!kept.ok) throw new Error(kept.problem.message);
  const live = openBook(kept.value.doc, { today: () => 20_000 });
  kept.value.attach(editable(live));
  const opened = { kept: kept.value, live, database };
  open.push(opened);
  return opened;
};
afterEach(async () => {
  for (const { kept } of open.splice(0)) await kept.close();
});

/** Ten quarts of tomatoes. */
const withDraws = (): BookDoc => {
  const book = aBook();
  const shelf = book.sheets.shelf!;
  const r1 = {
    ...shelf.rows.r1!,
    cells: {
      food: 'tomatoes',
      way: 'canned',
      count: 10,
      container: 'quart jar',
      put_up_on: '2024-08-01',
      place: 'cellar',
    },
  };
  return { ...book, sheets: { ...book.sheets, shelf: { ...shelf, rows: { ...shelf.rows, r1 } } } };
};

/** The book as another household member gets it: by a file saved for merging. */
const away = async ({ kept, live }: Home): Promise<Home> => {
  const file = await saveForMerging(live.toJSON(), kept.state());
  const read = await openACopy(file, parseBook);
  if (!read.ok) throw new Error(read.problems[0]!.message);
  return home(() => read.copy);
};
const file = async ({ kept, live }: Home): Promise<BookCopy> => {
  const read = await openACopy(await saveForMerging(live.toJSON(), kept.state()), parseBook);
  if (!read.ok) throw new Error(read.problems[0]!.message);
  return read.copy;
};
const planned = (at: Home, copy: BookCopy): MergePlan => {
  const plan = at.kept.planMerge(copy);
  if (!plan.ok) throw new Error(plan.problem.message);
  return plan.value;
};
const merge = (at: Home, plan: MergePlan, decisions = new Map<string, Decision>()): void => {
  expect(at.kept.merging(plan, () => at.live.apply(mergeCommand(plan, decisions)).ok)).toBe(true);
};
const draw = (at: Home, amount: number) =>
  at.live.insertRows('draws', [
    { date: '2024-09-01', food: 'tomatoes', way: 'canned', amount, container: 'quart jar' },
  ]).rows[0]!;
const cell = ({ live }: Home, row: string, column: string) => live.value('shelf', row, column);

describe('a copy merged through the interface’s plan', () => {
  it('brings the draws of both: ten jars, one taken on each copy, eight left', async () => {
    const here = await home();
    const there = await away(here);
    draw(here, 1);
    draw(there, 1);
    const plan = planned(here, await file(there));
    expect(plan).toMatchObject({ conflicts: [], sharesPast: true });
    merge(here, plan);
    expect(cell(here, 'r1', 'left')).toBe(8);
    // The way back too, and once more: nothing is taken twice.
    merge(there, planned(there, await file(here)));
    expect(cell(there, 'r1', 'left')).toBe(8);
    expect(planned(here, await file(there)).edits).toEqual([]);
    expect(there.live.toJSON()).toEqual(here.live.toJSON());
  });

  it('is one step that can be taken back, kept as shown, and merged again', async () => {
    const here = await home();
    const there = await away(here);
    draw(there, 1);
    there.live.set('shelf', 'r2', 'place', 'pantry');
    const before = here.live.toJSON();
    merge(here, planned(here, await file(there)));
    const merged = here.live.toJSON();
    expect(merged.sheets.shelf!.rows.r2!.cells.place).toBe('pantry');
    expect(here.live.undoLabel).toBe('merging of a copy');
    here.live.undo();
    expect(here.live.toJSON()).toEqual(before);
    await here.kept.flush();
    const again = await KeptBook.open({ id: 'b1', database: here.database, parseBook, start: withDraws });
    expect(again.ok && again.value.doc).toEqual(before);
    if (again.ok) await again.value.close();
    here.live.redo();
    expect(here.live.toJSON()).toEqual(merged);
  });

  it('asks where both changed one cell, and writes what was chosen', async () => {
    // More than once: which of the two the library lets stand is drawn anew with each copy.
    for (const [decision, place] of [0, 1, 2].flatMap(
      () =>
        [
          [undefined, 'top shelf'],
          ['mine', 'top shelf'],
          ['theirs', 'freezer'],
        ] as const,
    )) {
      const here = await home();
      const there = await away(here);
      here.live.set('shelf', 'r1', 'place', 'top shelf');
      there.live.set('shelf', 'r1', 'place', 'freezer');
      there.live.set('shelf', 'r1', 'count', 9);
      const plan = planned(here, await file(there));
      expect(plan.conflicts).toEqual([
        { path: ['sheets', 'shelf', 'rows', 'r1', 'cells', 'place'], mine: 'top shelf', theirs: 'freezer' },
      ]);
      const [conflict] = plan.conflicts;
      merge(here, plan, new Map(decision && [[conflictKey(conflict!), decision]]));
      expect([cell(here, 'r1', 'place'), cell(here, 'r1', 'count')]).toEqual([place, 9]);
      // Decided once: the copy that comes next brings no question.
      const back = planned(there, await file(here));
      expect(back.conflicts).toEqual([]);
      merge(there, back);
      expect(cell(there, 'r1', 'place')).toBe(place);
    }
  });

  it('offers both of two texts, but not of numbers, dates or formulas', () => {
    const conflict = (mine: string | number, theirs: string | number) => ({ path: ['title'], mine, theirs });
    expect(bothOf(conflict('from Ida', 'a little salty'))).toBe('from Ida; a little salty');
    expect(bothOf(conflict(3, 4))).toBeUndefined();
    expect(bothOf(conflict('2026-01-01', '2026-01-02'))).toBeUndefined();
    expect(bothOf(conflict('=A1', 'x'))).toBeUndefined();
  });

  it('asks about titles and settings too, and about a row that one removed and the other edited', async () => {
    const here = await home();
    const there = await away(here);
    here.live.apply({ do: 'rename book', title: 'Cellar' });
    there.live.apply({ do: 'rename book', title: 'Shelves' });
    here.live.apply({ do: 'set setting', setting: 'cushion', typed: 20 });
    there.live.apply({ do: 'set setting', setting: 'cushion', typed: 30 });
    here.live.removeRows('shelf', ['r2']);
    there.live.set('shelf', 'r2', 'count', 11);
    const plan = planned(here, await file(there));
    const at = (...path: string[]) =>
      plan.conflicts.find((each) => conflictKey(each) === JSON.stringify(path));
    expect(at('title')).toMatchObject({ mine: 'Cellar', theirs: 'Shelves' });
    expect(at('settings', 'cushion')).toMatchObject({ mine: 20, theirs: 30 });
    const row = at('sheets', 'shelf', 'rows', 'r2')!;
    expect(row.mine).toBeUndefined();
    expect(plan.conflicts).toHaveLength(3);
    // Undecided, what somebody wrote stays.
    merge(here, plan);
    expect(cell(here, 'r2', 'count')).toBe(11);
    here.live.undo();
    expect(here.live.rowIds('shelf')).toEqual(['r1']);
  });

  it('leaves a row removed when that is decided', async () => {
    const here = await home();
    const there = await away(here);
    here.live.removeRows('shelf', ['r2']);
    there.live.set('shelf', 'r2', 'count', 11);
    const plan = planned(here, await file(there));
    merge(here, plan, new Map([[conflictKey(plan.conflicts[0]!), 'mine']]));
    expect(here.live.rowIds('shelf')).toEqual(['r1']);
    await here.kept.flush();
    const again = await KeptBook.open({ id: 'b1', database: here.database, parseBook, start: withDraws });
    expect(again.ok && Object.keys(again.value.doc.sheets.shelf!.rows)).toEqual(['r1']);
    if (again.ok) await again.value.close();
  });

  it('says nothing of a cell that one changed after it had seen the other’s change', async () => {
    const here = await home();
    here.live.set('shelf', 'r1', 'place', 'top shelf');
    const there = await away(here);
    there.live.set('shelf', 'r1', 'place', 'freezer');
    const plan = planned(here, await file(there));
    expect(plan.conflicts).toEqual([]);
    merge(here, plan);
    expect(cell(here, 'r1', 'place')).toBe('freezer');
  });

  it('takes a plain copy as well, also one that was opened beside under another id and title', async () => {
    const here = await home();
    const copy = { ...here.live.toJSON(), id: 'bcopy', title: 'Our shelf (copy)' };
    const there = openBook(copy);
    there.insertRows('shelf', [{ food: 'beans', count: 4 }]);
    there.set('shelf', 'r1', 'place', 'freezer');
    here.live.set('shelf', 'r1', 'place', 'top shelf');
    const plan = planned(here, { doc: there.toJSON() });
    expect(plan.conflicts.map(({ path }) => path.at(-1))).toEqual(['place']);
    merge(here, plan);
    expect(here.live.title).toBe('Our shelf');
    expect(here.live.id).toBe('b1');
    expect(here.live.rowIds('shelf')).toHaveLength(3);
  });

  it('takes another book of the same storage that is a copy of this one', async () => {
    const here = await home();
    const beside = await KeptBook.open({
      id: 'beside',
      database: here.database,
      parseBook,
      start: async () => ({
        ...(await file(here)),
        doc: { ...here.live.toJSON(), id: 'bx', title: 'Our shelf (copy)' },
      }),
    });
    if (!beside.ok) throw new Error(beside.problem.message);
    const there = openBook(beside.value.doc, { today: () => 20_000 });
    beside.value.attach(editable(there));
    there.set('shelf', 'r1', 'place', 'freezer');
    there.removeRows('shelf', ['r2']);
    await beside.value.close();
    const copy = await readKeptCopy(here.database, 'beside', parseBook);
    if (!copy.ok) throw new Error(copy.problem.message);
    const plan = planned(here, copy.value);
    // The copy knows its beginning: a removal comes in too, and its other title is no question.
    expect(plan).toMatchObject({ sharesPast: true, conflicts: [] });
    merge(here, plan);
    expect(here.live.rowIds('shelf')).toEqual(['r1']);
    expect([here.live.title, here.live.toJSON().id]).toEqual(['Our shelf', 'b1']);
    await here.kept.flush();
    const again = await KeptBook.open({ id: 'b1', database: here.database, parseBook, start: withDraws });
    expect(again.ok && again.value.doc).toEqual(here.live.toJSON());
    if (again.ok) await again.value.close();
    expect(await readKeptCopy(here.database, 'nowhere', parseBook)).toMatchObject({
      problem: { code: 'book-not-here' },
    });
  });

  it('refuses a book that has nothing in common, and says what to do instead', async () => {
    const here = await home();
    const other = { ...aBook(), id: 'b9', title: 'Hill House' };
    const rows = { x1: { order: 'a0', cells: { food: 'plums' } } };
    const plan = here.kept.planMerge({
      doc: { ...other, sheets: { ...other.sheets, shelf: { ...other.sheets.shelf!, rows } } },
    });
    expect(plan).toMatchObject({ ok: false, problem: { code: 'other-book' } });
    expect(!plan.ok && plan.problem.mend).toMatch(/beside/);
  });
});

describe('a provider that a page ties to the document', () => {
  /** The smallest provider there can be: what one document says is told to the other, while they are joined. */
  const joined = (a: Y.Doc, b: Y.Doc) => {
    const pass = (to: Y.Doc, name: string) => (update: Uint8Array, origin: unknown) => {
      if (origin !== name) Y.applyUpdate(to, update, name);
    };
    const [toB, toA] = [pass(b, 'a-b'), pass(a, 'a-b')];
    Y.applyUpdate(b, Y.encodeStateAsUpdate(a, Y.encodeStateVector(b)), 'a-b');
    Y.applyUpdate(a, Y.encodeStateAsUpdate(b, Y.encodeStateVector(a)), 'a-b');
    a.on('update', toB);
    b.on('update', toA);
    return () => {
      a.off('update', toB);
      b.off('update', toA);
    };
  };

  it('shows and stores on each side what the other did, through a split of the net', async () => {
    const [one, two] = [await home(), await home()];
    const part = joined(one.kept.document, two.kept.document);
    draw(one, 1);
    two.live.set('shelf', 'r2', 'count', 7);
    expect([cell(two, 'r1', 'left'), cell(one, 'r2', 'count')]).toEqual([9, 7]);
    part();
    draw(one, 2);
    draw(two, 3);
    one.live.set('shelf', 'r1', 'place', 'top shelf');
    two.live.set('shelf', 'r1', 'place', 'freezer');
    one.live.set('shelf', 'r2', 'place', 'pantry');
    expect(cell(two, 'r1', 'left')).toBe(6);
    joined(one.kept.document, two.kept.document);
    expect([cell(one, 'r1', 'left'), cell(two, 'r1', 'left')]).toEqual([4, 4]);
    expect(two.live.toJSON()).toEqual(one.live.toJSON());
    // The true conflict: one value stands on both sides, and the copy whose value lost says so, with both.
    const stands = cell(one, 'r1', 'place');
    const [loser, lost] = stands === 'freezer' ? [one, 'top shelf'] : [two, 'freezer'];
    expect(loser.kept.conflicts.open).toEqual([
      { path: ['sheets', 'shelf', 'rows', 'r1', 'cells', 'place'], mine: lost, theirs: stands },
    ]);
    await Promise.all([one.kept.flush(), two.kept.flush()]);
    for (const { database, live } of [one, two]) {
      const again = await KeptBook.open({ id: 'b1', database, parseBook, start: withDraws });
      expect(again.ok && again.value.doc).toEqual(live.toJSON());
      if (again.ok) await again.value.close();
    }
  });

  it('cannot bring what no book may hold: it is not shown, written back, and the book opens again', async () => {
    const one = await home();
    const doc = one.kept.document;
    const before = one.live.toJSON();
    doc.transact(() => {
      doc.getMap('cells').set('shelf/r1/count', ['{"a":{}}']);
      doc.getMap('rows').set('shelf/r9', true);
      doc.getMap('rows').set('shelf/r2/order', 17);
      doc.getMap('sheets').set('shelf/kind', 'cupboard');
      doc.getMap('book').set('title', ['[]']);
      doc.getMap('cells').set('shelf/r1/note', 'a good one');
    }, 'provider');
    expect(one.live.value('shelf', 'r1', 'note')).toBe('a good one');
    expect(one.live.rowIds('shelf')).toEqual(['r1', 'r2']);
    one.live.set('shelf', 'r1', 'note', null);
    expect(one.live.toJSON()).toEqual(before);
    await one.kept.flush();
    const again = await KeptBook.open({ id: 'b1', database: one.database, parseBook, start: withDraws });
    expect(again.ok && again.value.notice).toBeUndefined();
    expect(again.ok && again.value.doc).toEqual(before);
    if (again.ok) await again.value.close();
  });
});
