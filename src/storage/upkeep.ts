import type { Keep } from './keep.js';
import type { ParseBook } from './opening.js';
import type { BookReplica } from './replica.js';

export interface UpkeepOptions {
  readonly id: string;
  readonly parseBook: ParseBook;
  readonly now?: () => number;
}

const VERSION_EVERY = 10 * 60_000;
/** Compacting a large book takes a second, so it waits until the page is put away, if it can. */
const MOST_WAITING = 2000;
const WORTH_COMPACTING = 200;

/** Keeps earlier versions and compacts updates, beside the saving. What fails here loses nothing. */
export class Upkeep {
  readonly #keep: Keep;
  readonly #options: UpkeepOptions;
  readonly #replica: BookReplica;
  #saves = 0;
  #lastVersion = 0;

  constructor(keep: Keep, options: UpkeepOptions, replica: BookReplica) {
    this.#keep = keep;
    this.#options = options;
    this.#replica = replica;
  }

  get #now(): number {
    return (this.#options.now ?? Date.now)();
  }

  /** Keeps the book as it is now among its versions, if it is a good one. */
  async keepVersion(): Promise<void> {
    this.#lastVersion = this.#now;
    const book = this.#replica.toBook();
    if (!this.#options.parseBook(book).ok) return;
    const label = { title: this.#replica.title, at: this.#lastVersion };
    await this.#quietly(async () => {
      await this.#keep.saveVersion(this.#options.id, JSON.stringify(book), label);
    });
  }

  async afterSaving(): Promise<void> {
    this.#saves++;
    if (this.#now - this.#lastVersion >= VERSION_EVERY) await this.keepVersion();
    if (this.#saves % MOST_WAITING === 0) await this.#quietly(() => this.#keep.compact(this.#options.id));
  }

  /** The page is hidden: time for what would be felt while typing. */
  async putAway(): Promise<void> {
    await this.keepVersion();
    await this.#quietly(async () => {
      if ((await this.#keep.waiting(this.#options.id)) >= WORTH_COMPACTING)
        await this.#keep.compact(this.#options.id);
    });
  }

  async #quietly(work: () => Promise<void>): Promise<void> {
    try {
      await work();
    } catch {
      // The book itself is saved; this is tried again at the next turn.
    }
  }
}
