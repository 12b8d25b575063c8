import type { Command } from '../../src/book/index.js';
import { bringBack } from '../../src/live/doings/bring-back.js';
import { type LiveBook, openBook } from '../../src/live/live-book.js';
import { mergeBooks } from '../../src/storage/index.js';
import { asCommand, sortedRows } from './as-command.js';
import type { Edit } from './edits.js';
import { expectSame, type Flat, flat } from './flat.js';
import { expectLikeRebuilt, parsed, today } from './rebuilt.js';
import { Tab } from './tab.js';

/** What may happen next to a book that is open somewhere: an edit in a tab, or something around it. */
export type Happening =
  | { readonly happens: 'edit'; readonly tab: number; readonly edit: Edit }
  | { readonly happens: 'undo' | 'redo' | 'undo and redo' | 'reload' | 'close tab'; readonly tab: number }
  /** Rows sorted or filtered: to be seen, and nothing else. */
  | { readonly happens: 'look'; readonly tab: number; readonly sheet: number; readonly column: number }
  | { readonly happens: 'open tab' | 'take a copy' }
  /** The copy that was taken, or a sheet of it, as an earlier version. */
  | { readonly happens: 'bring back'; readonly tab: number; readonly sheet: number | null }
  | { readonly happens: 'deliver'; readonly tab: number; readonly which: readonly number[] }
  | { readonly happens: 'edit the copy'; readonly edit: Edit }
  | { readonly happens: 'merge the copy'; readonly tab: number; readonly based: boolean };

export interface Count {
  operations: number;
  cells: number;
}

export interface TableOptions {
  /** The book is built anew and compared after so many operations; after each unless given. */
  readonly every?: number;
  /** No sheet grows beyond this by edits. */
  readonly mostRows?: number;
}

/** One household's book with all that is open on it. Every happening is followed by the checks. */
export class Table {
  readonly #tabs: Tab[];
  readonly #count: Count;
  #copy: { readonly base: string; readonly live: LiveBook } | undefined;
  #made = 0;

  readonly #every: number;
  readonly #mostRows: number;

  constructor(text: string, count: Count, { every = 1, mostRows = 40 }: TableOptions = {}) {
    this.#count = count;
    this.#every = every;
    this.#mostRows = mostRows;
    this.#tabs = [Tab.first(parsed(text), (update) => this.#send(0, update))];
  }

  readonly #newId = (): string => `x${++this.#made}`;

  /** Does it, then checks every page that it concerned. */
  happen(happening: Happening): void {
    const tab = this.#tabs['tab' in happening ? happening.tab % this.#tabs.length : 0]!;
    const concerned = this.#do(happening, tab);
    this.#count.operations++;
    // Words cost as much as all the rest, so they are compared less often.
    const words = this.#count.operations % 25 === 0;
    if (concerned && this.#isDue) this.#count.cells += expectLikeRebuilt(concerned.live, { words });
  }

  get #isDue(): boolean {
    return this.#count.operations % this.#every === 0;
  }

  /** Compares every page with one built anew, words and all. */
  compareAll(): void {
    for (const { live } of this.#tabs) this.#count.cells += expectLikeRebuilt(live, { words: true });
  }

  /** Everything on its way arrives: all pages must then show one book. */
  settle(): void {
    for (let any = true; any; ) {
      any = false;
      for (const tab of this.#tabs) {
        while (tab.inbox.length > 0) {
          tab.hear(tab.inbox.length - 1);
          any = true;
        }
      }
    }
    for (const tab of this.#tabs.slice(1))
      expectSame(this.#tabs[0]!.flat, tab.flat, 'two tabs that have heard everything');
  }

  close(): void {
    for (const tab of this.#tabs) tab.close();
    this.#copy?.live.close();
  }

  #send(from: number, update: Uint8Array): void {
    for (const [i, tab] of this.#tabs.entries()) if (i !== from) tab.inbox.push(update);
  }

  #do(happening: Happening, tab: Tab): Tab | undefined {
    switch (happening.happens) {
      case 'edit': {
        const command = this.#command(tab.live, happening.edit);
        if (command) tab.apply(command);
        return command && tab;
      }
      case 'undo':
      case 'redo':
        tab[happening.happens]();
        return tab;
      case 'undo and redo':
        tab.undo();
        if (this.#isDue) expectLikeRebuilt(tab.live);
        tab.redo();
        return tab;
      case 'look':
        this.#look(tab, happening);
        return undefined;
      case 'reload':
      case 'close tab':
      case 'open tab':
        return this.#pages(happening.happens, tab);
      case 'deliver':
        for (const which of happening.which) tab.hear(which);
        if (this.#tabs.every(({ inbox }) => inbox.length === 0)) this.settle();
        return tab;
      case 'take a copy': {
        this.#copy?.live.close();
        const base = JSON.stringify(tab.live.toJSON());
        // Without the formula engine, as where only the reading view is open.
        this.#copy = { base, live: openBook(parsed(base), { today }) };
        return undefined;
      }
      case 'edit the copy': {
        const command = this.#copy && this.#command(this.#copy.live, happening.edit);
        if (command) this.#copy!.live.apply(command);
        return undefined;
      }
      case 'bring back': {
        if (!this.#copy) return undefined;
        const sheets = tab.live.sheets();
        const sheet = happening.sheet === null ? undefined : sheets[happening.sheet % sheets.length]!.id;
        const what = sheet === undefined ? ({ part: 'book' } as const) : ({ part: 'sheet', sheet } as const);
        const back = bringBack(tab.live, parsed(this.#copy.base), what, 'before');
        if (!back.ok) return undefined;
        tab.apply(back.value.command);
        this.#expectBack(tab, sheet);
        return tab;
      }
      case 'merge the copy':
        return this.#merge(tab, happening.based);
    }
  }

  #command(live: LiveBook, edit: Edit): Command | undefined {
    return asCommand(live, edit, this.#newId, this.#mostRows);
  }

  #look(tab: Tab, { sheet, column }: Extract<Happening, { happens: 'look' }>): void {
    const before = tab.flat;
    const id = tab.live.sheets()[sheet % tab.live.sheets().length]!.id;
    const columns = tab.live.columns(id);
    const by = columns[column % (columns.length || 1)]?.id;
    if (by === undefined) return;
    const rows = sortedRows(tab.live, id, by).filter((row) => tab.live.value(id, row, by) !== null);
    for (const row of rows) tab.live.choices(id, row, by);
    expectSame(before, flat(tab.live.toJSON()), 'looking at a sheet sorted and filtered');
  }

  /** Pages come and go; what a page that goes has not sent yet is on its way. */
  #pages(what: 'reload' | 'close tab' | 'open tab', tab: Tab): Tab | undefined {
    const at = this.#tabs.indexOf(tab);
    if (what === 'open tab') {
      if (this.#tabs.length > 1) return undefined;
      const opened = Tab.reopened(tab.replica.encode(), (update) => this.#send(1, update));
      this.#tabs.push(opened);
      return opened;
    }
    if (what === 'close tab' && this.#tabs.length === 1) return undefined;
    this.settle();
    const before = tab.flat;
    tab.close();
    if (what === 'close tab') {
      this.#tabs.splice(at, 1);
      // The one that stays is the first from now on, and sends to nobody until another opens.
      const stays = Tab.reopened(this.#tabs[0]!.replica.encode(), (update) => this.#send(0, update));
      this.#tabs[0]!.close();
      this.#tabs[0] = stays;
      expectSame(before, stays.flat, 'the book after a tab closed');
      return stays;
    }
    const again = Tab.reopened(tab.replica.encode(), (update) => this.#send(at, update));
    this.#tabs[at] = again;
    expectSame(before, again.flat, 'the book as it was stored');
    return again;
  }

  /** What was brought back stands there exactly as in the version, what was allotted to draws included. */
  #expectBack(tab: Tab, sheet: string | undefined): void {
    const concerned = (book: Flat): Flat =>
      new Map(
        [...book].filter(
          ([path]) =>
            // A sheet takes no title that another has by now, and remembers what its formulas miss.
            !REMEMBERED.test(path) &&
            (sheet === undefined ||
              (path.startsWith(`sheets/${sheet}/`) && path !== `sheets/${sheet}/title`)),
        ),
      );
    expectSame(concerned(flat(parsed(this.#copy!.base))), concerned(tab.flat), 'brought back');
  }

  #merge(tab: Tab, based: boolean): Tab | undefined {
    const copy = this.#copy;
    if (!copy) return undefined;
    const [mine, theirs] = [tab.live.toJSON(), copy.live.toJSON()];
    const { book, changes } = mergeBooks(mine, theirs, based ? parsed(copy.base) : undefined);
    parsed(JSON.stringify(book));
    expectNothingLost(flat(mine), flat(theirs), based ? flat(parsed(copy.base)) : undefined, flat(book));
    tab.replica.apply(changes);
    tab.remote(changes);
    expectSame(flat(book), tab.flat, 'the merged book as shown');
    return tab;
  }
}

const REMEMBERED = /^sheets\/[^/]+\/gone$/;
const CELL = /^sheets\/[^/]+\/rows\/[^/]+\/(cells\/[^/]+|(note|colour):.+)$/;

/** An entry of either copy is in the merged book, unless one of them took it away or both set it. */
function expectNothingLost(mine: Flat, theirs: Flat, base: Flat | undefined, merged: Flat): void {
  const fail = (path: string): never => {
    const held = [base, mine, theirs, merged].map((copy) => JSON.stringify(copy?.get(path)) ?? 'nothing');
    throw new Error(
      `merging lost ${path}: before ${held[0]}, mine ${held[1]}, theirs ${held[2]}, merged ${held[3]}`,
    );
  };
  for (const [path, value] of mine) {
    if (!CELL.test(path) || merged.get(path) === value) continue;
    // Theirs may stand only where they changed it and I did not.
    if (!base || base.get(path) !== value || theirs.get(path) === value) fail(path);
  }
  for (const [path, value] of theirs) {
    if (!CELL.test(path) || merged.get(path) === value) continue;
    const isNew = base ? base.get(path) !== value : true;
    const untouchedByMe = base ? mine.get(path) === base.get(path) : !mine.has(path);
    if (isNew && untouchedByMe) fail(path);
  }
}
