import { type BookDoc, type Change, type Command, readEntry } from '../../src/book/index.js';
import { BookState } from '../../src/book/state.js';
import type { LiveBook } from '../../src/live/live-book.js';
import { BookReplica } from '../../src/storage/index.js';
import { differing, expectSame, type Flat, flat } from './flat.js';
import { footprint, type MayTouch } from './footprint.js';
import { opened, parsed } from './rebuilt.js';

/** A step that can be undone: the book before it, or null where another copy's edits came in between. */
type Before = Flat | null;

/** One page that shows the book: the open book, its mirror for saving and merging, and what it has yet to hear. */
export class Tab {
  live: LiveBook;
  replica: BookReplica;
  /** Updates of other tabs, on their way. */
  readonly inbox: Uint8Array[] = [];
  #flat: Flat;
  #undo: Before[] = [];
  #redo: Before[] = [];

  private constructor(doc: BookDoc, replica: BookReplica, send: (update: Uint8Array) => void) {
    this.live = opened(doc);
    this.replica = replica;
    this.#flat = flat(doc);
    this.#listen(send);
  }

  static first(doc: BookDoc, send: (update: Uint8Array) => void): Tab {
    return new Tab(doc, BookReplica.fromBook(doc), send);
  }

  /** A page that opens what is stored. */
  static reopened(state: Uint8Array, send: (update: Uint8Array) => void): Tab {
    const replica = BookReplica.fromState(state);
    if (!replica.ok) throw new Error(`what was stored cannot be read: ${replica.problem.message}`);
    return new Tab(parsed(JSON.stringify(replica.value.toBook())), replica.value, send);
  }

  get flat(): Flat {
    return this.#flat;
  }

  #listen(send: (update: Uint8Array) => void): void {
    this.replica.onUpdate((update, origin) => {
      if (origin === 'local') send(update);
    });
    this.live.on('change', ({ changes, origin }) => {
      if (origin !== 'remote') this.replica.apply(changes);
    });
  }

  /** Does it, and looks at what became of everything else. */
  apply(command: Command): void {
    const before = this.#flat;
    const label = this.live.undoLabel;
    const may = footprint(command, new BookState(this.live.toJSON()));
    const outcome = this.live.apply(command);
    if (!outcome.ok) {
      this.#look(() => false, `refused (${outcome.problem.code})`);
      if (this.live.undoLabel !== label) throw new Error('a refusal can be undone');
      return;
    }
    if (outcome.changes.length > 0) {
      this.#undo.push(before);
      this.#redo = [];
    }
    this.#look(may, command.do);
    if (command.do === 'set cells' && outcome.notes.length === 0) this.#expectEntered(command);
  }

  undo(): void {
    this.#replay('undo', this.#undo, this.#redo);
  }

  redo(): void {
    this.#replay('redo', this.#redo, this.#undo);
  }

  /** Hears one of the updates on their way; they need not come in order. */
  hear(which: number): void {
    const [update] = this.inbox.splice(which % (this.inbox.length || 1), 1);
    if (!update) return;
    const merged = this.replica.merge(update);
    if (!merged.ok) throw new Error(`an edit of the other tab cannot be read: ${merged.problem.message}`);
    this.remote(merged.value);
  }

  /** Changes from elsewhere, which the mirror knows already. */
  remote(changes: readonly Change[]): void {
    const paths = changes.map(({ path }) => path.join('/'));
    const forget = (step: Before): Before => (paths.length > 0 ? null : step);
    this.#undo = this.#undo.map(forget);
    this.#redo = this.#redo.map(forget);
    this.live.applyRemote(changes);
    this.#look(
      ({ path }) =>
        paths.some((start) => path === start || path.startsWith(`${start}/`) || start.startsWith(`${path}/`)),
      'edits from elsewhere',
    );
  }

  /** Says nothing where all is well; the mirror, which is what is saved, must hold the same as the page. */
  #look(may: MayTouch, what: string): void {
    const after = flat(this.live.toJSON());
    const lost = differing(this.#flat, after).filter((difference) => !may(difference));
    if (lost.length > 0)
      throw new Error(`${what} changed what it may not touch: ${JSON.stringify(lost.slice(0, 3))}`);
    this.#flat = after;
    expectSame(after, flat(this.replica.toBook()), `after ${what}, the mirror (before: the page)`);
  }

  #replay(which: 'undo' | 'redo', from: Before[], to: Before[]): void {
    const now = this.#flat;
    const did = this.live[which]();
    const before = from.pop();
    if (before === undefined) {
      if (did) throw new Error(`${which} did something where there was nothing`);
      this.#look(() => false, which);
      return;
    }
    if (!did) throw new Error(`${which} did nothing`);
    to.push(before === null ? null : now);
    this.#look(() => true, which);
    if (before !== null) expectSame(before, this.#flat, `${which} does not come back exactly`);
  }

  /** A number, a tick or plain text typed into a cell is what the cell holds. */
  #expectEntered({ sheet, cells }: Extract<Command, { do: 'set cells' }>): void {
    const last = new Map(cells.map((cell) => [`${cell.row}/${cell.column}`, cell]));
    for (const { row, column, typed } of last.values()) {
      if (typeof typed === 'string' && (typed.trimStart().startsWith('=') || /[\d/]|^\s*$/.test(typed)))
        continue;
      const type = this.live.column(sheet, column)?.type ?? 'any';
      const held = this.#flat.get(`sheets/${sheet}/rows/${row}/cells/${column}`);
      if (!Object.is(held, readEntry(typed, type)))
        throw new Error(
          `${sheet}/${row}/${column} was given ${JSON.stringify(typed)}, holds ${JSON.stringify(held)}`,
        );
    }
  }

  close(): void {
    this.live.close();
  }
}
