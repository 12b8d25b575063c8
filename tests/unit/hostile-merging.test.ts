import { afterEach, describe, expect, it } from 'vitest';
import { editable } from '../../components/book/keeping.js';
import type { BookDoc, Command, Outcome } from '../../src/book/index.js';
import { parseBook } from '../../src/book/parse.js';
import { type LiveBook, openBook } from '../../src/live/live-book.js';
import { type BookCopy, KeptBook, mergeCommand, openACopy, saveForMerging } from '../../src/storage/index.js';
import { aBook, newDatabase } from './storage-support.js';

interface Home {
  readonly kept: KeptBook;
  readonly live: LiveBook;
  readonly database: string;
}
const open: Home[] = [];
afterEach(async () => {
  for (const { kept } of open.splice(0)) await kept.close();
});

const home = async (start: () => BookDoc | BookCopy = aBook, database = newDatabase()): Promise<Home> => {
  const kept = await KeptBook.open({ id: 'b1', database, parseBook, start });
  if (!kept.ok) throw new Error(kept.problem.message);
  const live = openBook(kept.value.doc, { today: () => 20_000 });
  kept.value.attach(editable(live));
  open.push({ kept: kept.value, live, database });
  return open.at(-1)!;
};

const file = async ({ kept, live }: Home): Promise<BookCopy> => {
  const read = await openACopy(await saveForMerging(live.toJSON(), kept.state()), parseBook);
  if (!read.ok) throw new Error(read.problems[0]!.message);
  return read.copy;
};

/** Brings what `from` has into `at`, with every conflict decided as usual. */
const merge = async (at: Home, from: Home): Promise<void> => {
  const plan = at.kept.planMerge(await file(from));
  if (!plan.ok) throw new Error(plan.problem.message);
  let outcome: Outcome | undefined;
  at.kept.merging(plan.value, () => {
    outcome = at.live.apply(mergeCommand(plan.value, new Map()));
    return outcome.ok;
  });
  expect(outcome).toMatchObject({ ok: true, notes: [] });
};

const OWN: Command = {
  do: 'add sheet',
  sheet: 'own',
  title: 'Own',
  columns: [
    { id: 'c', title: 'Sown' },
    { id: 'd', title: 'Picked' },
  ],
  rows: [
    { id: 'r1', cells: { c: 1, d: 'x' } },
    { id: 'r2', cells: { c: 2 } },
  ],
};

const twoCopies = async (): Promise<[Home, Home]> => {
  const here = await home();
  here.live.apply(OWN);
  const copy = await file(here);
  return [here, await home(() => copy)];
};
const columns = ({ live }: Home) => live.columns('own').map(({ id }) => id);
const cell = ({ live }: Home, row: string, column: string) => live.value('own', row, column);
const fromElsewhere = ({ live }: Home, path: readonly string[], to: string) =>
  live.applyRemote([{ path: ['sheets', 'own', 'rows', ...path], to, was: undefined }]);

describe('a column removed on one copy, in which the other wrote', () => {
  it('comes back with what was written, in whichever direction they merge', async () => {
    const [here, there] = await twoCopies();
    here.live.removeColumns('own', ['c']);
    there.live.set('own', 'r2', 'c', 99);
    await merge(here, there);
    await merge(there, here);
    for (const each of [here, there]) {
      expect(columns(each).sort()).toEqual(['c', 'd']);
      expect(cell(each, 'r2', 'c')).toBe(99);
      expect(cell(each, 'r1', 'c')).toBeNull();
      expect(each.live.column('own', 'c')?.title).toBe('Sown');
    }
    // Whoever removed it can do so again, and then it is gone on both.
    here.live.removeColumns('own', ['c']);
    await merge(there, here);
    expect([columns(here), columns(there)]).toEqual([['d'], ['d']]);
  });

  it('comes back into the book that stays open, and is there when it is opened again', async () => {
    const [here, there] = await twoCopies();
    here.live.removeColumns('own', ['c']);
    there.live.set('own', 'r2', 'c', 99);
    await merge(here, there);
    const shown = here.live.toJSON();
    expect(shown.sheets.own?.columns).toHaveProperty('c');
    await here.kept.flush();
    const again = await home(aBook, here.database);
    expect(again.live.toJSON().sheets.own).toEqual(shown.sheets.own);
  });

  it('stays removed where the other only looked, or wrote beside it', async () => {
    const [here, there] = await twoCopies();
    here.live.removeColumns('own', ['c']);
    there.live.set('own', 'r2', 'd', 'y');
    await merge(here, there);
    await merge(there, here);
    expect([columns(here), columns(there)]).toEqual([['d'], ['d']]);
  });

  it('stays removed though a row that is gone once held something in it', async () => {
    const [here, there] = await twoCopies();
    here.live.removeRows('own', ['r1']);
    here.live.removeColumns('own', ['c']);
    await merge(there, here);
    await here.kept.flush();
    expect([columns(here), columns(there)]).toEqual([['d'], ['d']]);
    expect(columns(await home(aBook, here.database))).toEqual(['d']);
  });
});

describe('undo', () => {
  it('leaves a new column in which somebody else wrote, and says so', async () => {
    const here = await home();
    here.live.apply(OWN);
    here.live.apply({ do: 'add column', sheet: 'own', column: 'e', before: null, title: 'Eaten' });
    fromElsewhere(here, ['r1', 'cells', 'e'], 'from elsewhere');
    const notes: string[] = [];
    here.live.on('change', (change) => notes.push(...(change.notes ?? []).map(({ code }) => code)));
    here.live.undo();
    expect(columns(here)).toEqual(['c', 'd', 'e']);
    expect(cell(here, 'r1', 'e')).toBe('from elsewhere');
    expect(notes).toEqual(['changed-elsewhere']);
  });

  it('leaves a new sheet with the columns in which somebody else wrote', async () => {
    const here = await home();
    here.live.apply(OWN);
    fromElsewhere(here, ['r2', 'cells', 'd'], 'from elsewhere');
    here.live.undo();
    expect(columns(here)).toContain('d');
    expect(cell(here, 'r2', 'd')).toBe('from elsewhere');
  });
});
