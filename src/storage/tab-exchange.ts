import type { Change } from '../book/types.js';
import { type BookReplica, isVector } from './replica.js';
import type { TabMessage, Tabs, TabWords } from './tabs.js';

/** The open book, as far as other tabs are concerned. */
export interface ExchangingBook {
  /** This page keeps its book in storage. */
  readonly stores: boolean;
  /** Some edits of this page are stored nowhere yet. */
  unsaved(): boolean;
  /** Shows what another tab edited. */
  deliver(changes: readonly Change[]): void;
  /** Stores an edit that its own tab could not store. */
  store(update: Uint8Array): void;
}

/** Exchanges edits with the other tabs that show the book: each is sent what it lacks. */
export class TabExchange {
  readonly #tabs: Tabs;
  readonly #replica: BookReplica;
  readonly #book: ExchangingBook;

  constructor(tabs: Tabs, replica: BookReplica, book: ExchangingBook) {
    this.#tabs = tabs;
    this.#replica = replica;
    this.#book = book;
  }

  /** Tells the other tabs of an edit; `kept` once it is stored. */
  tell(update: Uint8Array, kept: boolean): void {
    this.#post({ kind: 'update', update, kept });
  }

  /** Asks the other tabs for what this page lacks. */
  ask(): void {
    this.#post({ kind: 'hello', vector: this.#replica.vector() });
  }

  hear(message: TabMessage): void {
    if (!this.#concernsUs(message)) return;
    if (message.kind === 'hello') this.#answer(message.vector);
    else this.#take(message.update, message.kept);
  }

  close(): void {
    this.#tabs.close();
  }

  #answer(vector: Uint8Array): void {
    if (!isVector(vector)) return;
    const unsaved = !this.#book.stores || this.#book.unsaved();
    if (unsaved || this.#replica.isAheadOf(vector)) this.tell(this.#replica.encodeSince(vector), false);
    if (this.#replica.isBehind(vector)) this.ask();
  }

  #take(update: Uint8Array, kept: boolean): void {
    const merged = this.#replica.merge(update);
    if (!merged.ok) return;
    this.#book.deliver(merged.value);
    if (!kept) this.#book.store(update);
    if (this.#replica.incomplete) this.ask();
  }

  /**
   * Pages that store their book have one book between them. Where one of the two does not, they may have begun
   * with different ones (the source changed meanwhile, say): their edits must not mix.
   */
  #concernsUs({ begun, stores }: TabMessage): boolean {
    if (!begun || (stores && this.#book.stores)) return true;
    const ours = this.#replica.beginnings;
    return begun.some((each) => ours.includes(each));
  }

  #post(words: TabWords): void {
    this.#tabs.post({ ...words, begun: this.#replica.beginnings, stores: this.#book.stores });
  }
}
