import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import type { Command } from '../../src/book/index.js';
import { type BookDoc, openBook, parseBook } from '../../src/core.js';
import type { LiveBook } from '../../src/live/live-book.js';
import { AS_OF, shown, startingBook } from '../support/random-book.js';

let live: LiveBook;
beforeEach(() => {
  live = startingBook();
});
afterEach(() => live.close());

function reopened(book: LiveBook = live): LiveBook {
  const parsed = parseBook(JSON.stringify(book.toJSON()));
  if (!parsed.ok) throw new Error(JSON.stringify(parsed.problems.slice(0, 3)));
  return openBook(parsed.book, { asOf: AS_OF });
}

/** What the live book shows is what a book opened from its saved JSON shows. */
function expectSameWhenReopened() {
  const again = reopened();
  expect(shown(live)).toEqual(shown(again));
  again.close();
}

/** The live book, opened from its JSON after a hand has been at it. */
// biome-ignore lint/suspicious/noExplicitAny: a hand may have changed anything in the file
function reopenEdited(edit: (book: { sheets: Record<string, any> }) => void) {
  const doc = JSON.parse(JSON.stringify(live.toJSON()));
  edit(doc);
  const parsed = parseBook(JSON.stringify(doc));
  if (!parsed.ok) throw new Error(JSON.stringify(parsed.problems));
  live.close();
  live = openBook(parsed.book as BookDoc, { asOf: AS_OF });
}

describe('a book that was edited for years can be opened again', () => {
  it('when rows were put in above the same row, one at a time', () => {
    for (let i = 0; i < 700; i++)
      live.apply({
        do: 'insert rows',
        sheet: 'snotes',
        before: 'n3',
        rows: [{ id: `g${i}`, cells: { ca: i } }],
      });
    const order = live.rowIds('snotes');
    expect(order.slice(2, -1)).toEqual(Array.from({ length: 700 }, (_, i) => `g${i}`));
    const again = reopened();
    expect(again.rowIds('snotes')).toEqual(order);
    const longest = Math.max(
      ...Object.values(live.toJSON().sheets.snotes!.rows).map((row) => row.order.length),
    );
    expect(longest).toBeLessThanOrEqual(40);
    again.close();
    live.undo();
    expect(live.rowIds('snotes').slice(2, -1)).toEqual(Array.from({ length: 699 }, (_, i) => `g${i}`));
  });

  it('when two columns changed places again and again before a third', () => {
    live.apply({ do: 'add column', sheet: 'snotes', column: 'cc', before: null, title: 'C' });
    for (let i = 0; i < 600; i++) live.moveColumns('snotes', [i % 2 ? 'ca' : 'cb'], 'cc');
    expect(live.columns('snotes').map(({ id }) => id)).toEqual(['cb', 'ca', 'cc']);
    const again = reopened();
    expect(again.columns('snotes').map(({ id }) => id)).toEqual(['cb', 'ca', 'cc']);
    again.close();
  });

  it('when its file was saved with keys of several hundred characters', () => {
    reopenEdited(({ sheets }) => {
      sheets.snotes.rows.n2.order = `a1${'V'.repeat(600)}`;
    });
    live.apply({ do: 'insert rows', sheet: 'snotes', before: 'n2', rows: [{ id: 'x1' }] });
    expect(live.rowIds('snotes')).toEqual(['n1', 'x1', 'n2', 'n3']);
  });

  const long = 'x'.repeat(300);
  const commands: Command[] = [
    { do: 'rename book', title: long },
    { do: 'add column', sheet: 'snotes', column: 'cx', before: null, title: long },
    { do: 'describe column', sheet: 'snotes', column: 'ca', as: { title: long } },
    { do: 'set setting', setting: 'basis', typed: 'x'.repeat(50_000) },
    { do: 'set cells', sheet: 'snotes', cells: [{ row: 'n1', column: 'ca', typed: 'x'.repeat(50_000) }] },
    {
      do: 'set cells',
      sheet: 'snotes',
      cells: [{ row: 'n1', column: 'ca', typed: `=${'A1+'.repeat(6000)}1` }],
    },
    {
      do: 'add column',
      sheet: 'snotes',
      column: 'cx',
      before: null,
      title: 'x',
      formula: `=${'A1+'.repeat(6000)}1`,
    },
    { do: 'describe column', sheet: 'snotes', column: 'ca', as: { formula: `="${'x'.repeat(50_000)}"` } },
    {
      do: 'add column',
      sheet: 'snotes',
      column: 'cx',
      before: null,
      title: 'x',
      formula: `=${'('.repeat(80)}1${')'.repeat(80)}`,
    },
    {
      do: 'insert rows',
      sheet: 'snotes',
      before: null,
      rows: [{ id: 'x1', cells: { ca: 'x'.repeat(50_000) } }],
    },
    { do: 'insert rows', sheet: 'snotes', before: null, rows: [{ id: 'toString' }] },
    { do: 'add sheet', sheet: 'hasOwnProperty', title: 'Mine' },
    { do: 'add column', sheet: 'snotes', column: 'valueOf', before: null, title: 'x' },
  ];
  it.each(commands.map((command) => [command.do, command] as const))(
    'for what it could not read is refused: %s',
    (_name, command) => {
      const before = JSON.stringify(live.toJSON());
      const outcome = live.apply(command);
      expect(outcome.ok).toBe(false);
      expect(!outcome.ok && outcome.problem.mend.length).toBeGreaterThan(10);
      expect(JSON.stringify(live.toJSON())).toBe(before);
    },
  );

  it('with numbers that JSON cannot hold left as text or blank', () => {
    live.apply({ do: 'describe column', sheet: 'snotes', column: 'ca', as: { width: Number.NaN } });
    const typed = [`${'9'.repeat(400)}/1`, '1e999', Number.NaN, Number.POSITIVE_INFINITY, '-0', -0];
    for (const each of typed) {
      live.set('shelf', 'l1', 'count', each);
      live.set('snotes', 'n1', 'ca', each);
      expectSameWhenReopened();
    }
    expect(live.value('shelf', 'l1', 'count')).toBe(0);
  });
});

describe('what a hand wrote into the file where it does not belong', () => {
  it('a value or a formula under a planning column counts for nothing, and stays', () => {
    reopenEdited(({ sheets }) => {
      sheets.shelf.rows.l1.cells.left = 99;
      sheets.shelf.rows.l2.cells.left = '=[shelf.count@l1]*100';
      sheets.shelf.columns.left = { own: true, title: 'Left', formula: '=1' };
      sheets.snotes.rows.n1.cells.cb = '=SUM([shelf.left@l1]:[shelf.left@l3])';
    });
    expect(['l1', 'l2', 'l3'].map((lot) => live.value('shelf', lot, 'left'))).toEqual([20, 9, 30]);
    expect(live.value('snotes', 'n1', 'cb')).toBe(59);
    expect(live.typed('shelf', 'l1', 'left')).toBeNull();
    expect(live.toJSON().sheets.shelf!.rows.l1!.cells.left).toBe(99);
  });

  it('a formula on a column of the kind fills no blank cells', () => {
    reopenEdited(({ sheets }) => {
      sheets.shelf.columns.count = { formula: '=5' };
      delete sheets.shelf.rows.l1.cells.count;
    });
    expect([live.value('shelf', 'l1', 'count'), live.value('shelf', 'l1', 'left')]).toEqual([null, null]);
  });

  it('an own column without a place stands last', () => {
    reopenEdited(({ sheets }) => {
      delete sheets.shelf.columns.cown.order;
    });
    expect(live.columns('shelf').at(-1)).toMatchObject({ id: 'cown', title: 'Twice' });
    expect(live.value('shelf', 'l1', 'cown')).toBe(40);
    live.moveColumns('shelf', ['cown'], 'food');
    expect(live.columns('shelf')[0]!.id).toBe('cown');
  });

  it('two sheets of one kind in one place: the same one counts every time', () => {
    reopenEdited(({ sheets }) => {
      sheets.aaa = { ...sheets.shelf, title: 'Second', rows: {} };
    });
    expectSameWhenReopened();
  });
});

describe('changes from another copy', () => {
  const remote = (path: string[], to: unknown) =>
    live.applyRemote([{ path, to: to as never, was: undefined }]);

  it('that bring another sheet of a kind, and take it away again', () => {
    remote(['sheets', 'zzz'], { kind: 'shelf', title: 'Second', order: 'Zz', columns: {}, rows: {} });
    // The first sheet of a kind counts: formulas see the other's planning columns blank, as they are shown.
    expect([live.value('shelf', 'l1', 'left'), live.value('shelf', 'l1', 'cown')]).toEqual([null, 0]);
    expectSameWhenReopened();
    remote(['sheets', 'zzz', 'order'], 'b01');
    expect([live.value('shelf', 'l1', 'left'), live.value('shelf', 'l1', 'cown')]).toEqual([20, 40]);
    expectSameWhenReopened();
    remote(['sheets', 'zzz', 'order'], 'Zz');
    expectSameWhenReopened();
    remote(['sheets', 'zzz', 'kind'], 'own');
    expect(live.value('shelf', 'l1', 'cown')).toBe(40);
    expectSameWhenReopened();
    remote(['sheets', 'zzz'], undefined);
    expectSameWhenReopened();
  });

  it('that give a row a place which is none', () => {
    remote(['sheets', 'snotes', 'rows', 'n2', 'order'], 'a00');
    const outcome = live.apply({ do: 'insert rows', sheet: 'snotes', before: 'n2', rows: [{ id: 'x1' }] });
    expect(outcome.ok).toBe(true);
    const { ids } = { ids: live.rowIds('snotes') };
    expect(ids.indexOf('x1')).toBe(ids.indexOf('n2') - 1);
  });

  it('that remove what is undone here', () => {
    live.set('snotes', 'n1', 'ca', 5);
    live.apply({ do: 'describe column', sheet: 'snotes', column: 'ca', as: { title: 'Mine' } });
    live.insertRows('snotes', [{ ca: 1 }]);
    remote(['sheets', 'snotes', 'columns', 'ca'], undefined);
    remote(['sheets', 'snotes', 'rows', 'n1'], undefined);
    remote(['sheets', 'snotes'], undefined);
    while (live.undo());
    while (live.redo());
    expect(live.value('shelf', 'l1', 'left')).toBe(20);
    expectSameWhenReopened();
  });
});
