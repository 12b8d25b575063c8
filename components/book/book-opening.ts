import { asItStands, type BookDoc, parseBook } from '../../src/book/index.js';
import type { KnownFigures } from '../../src/live/known-figures.js';
import type { Problem } from '../../src/problem.js';
import type { KeepStatus } from '../../src/storage/index.js';
import { tell } from './events.js';
import { NO_BOOK, NOT_KEPT, OPENING, openKept } from './keeping.js';
import { Notices } from './notices.js';
import { OpenBook, type OpenBookHost, type ToOpen } from './open-book.js';
import type { PageLanguage } from './page-language.js';
import { type ReadBook, readSource, type Source, startOf } from './source.js';

/** What came of opening something. */
export type Opening = { readonly ok: true } | { readonly ok: false; readonly problems: readonly Problem[] };

/** What an element says about the book that it is to show. */
interface BookElement extends Source {
  readonly keep: string | null;
  readonly which: string | null;
  readonly known: KnownFigures | null;
}

/** Which book an element shows: opens one in place of another, and says how it went. */
export class BookOpening {
  readonly notices = new Notices();
  readonly #element: BookElement;
  readonly #host: OpenBookHost;
  readonly #language: PageLanguage;
  #book: OpenBook | null = null;
  #status: KeepStatus = OPENING;
  #problems: readonly Problem[] = [];
  /** Stands for the book being shown or opened: what answers for an earlier one is let go. */
  #current: object = {};

  constructor(element: BookElement, host: OpenBookHost, language: PageLanguage) {
    this.#element = element;
    this.#host = host;
    this.#language = language;
  }

  /** The open book; null until it is read, and when it could not be. */
  get book(): OpenBook | null {
    return this.#book;
  }

  get status(): KeepStatus {
    return this.#status;
  }

  /** Why the book could not be opened; empty when it is. */
  get problems(): readonly Problem[] {
    return this.#problems;
  }

  /** Opens the book that the element asks for. */
  async open(): Promise<void> {
    const mine = this.#begin();
    const { keep, which, sourceKey } = this.#element;
    this.#close();
    this.#say(OPENING);
    if (keep === null && this.#showAsItStands()) return;
    if (this.#language.loading) await this.#language.loading;
    if (mine !== this.#current) return;
    if (keep === null) {
      const read = await readSource(this.#element);
      if (mine === this.#current) this.#settle(read);
      return;
    }
    const key = which || sourceKey;
    const opened = await this.#openKept(mine, key, () => startOf(this.#element, key));
    if (mine !== this.#current) return void (opened.ok && opened.kept.close());
    if (opened.ok) this.#settle({ ok: true, book: opened.kept.doc }, opened.kept, key);
    else this.#settle(opened);
  }

  /** Opens a book in place of the one shown, kept under its own key where books are kept. */
  async beside(doc: BookDoc, state?: Uint8Array): Promise<Opening> {
    if (this.#element.keep === null) {
      this.#close();
      this.#settle({ ok: true, book: doc });
      return { ok: true };
    }
    const mine = {};
    const opened = await this.#openKept(mine, doc.id, async () => ({ doc, ...(state && { state }) }));
    if (!opened.ok) return this.refuse(opened.problems);
    this.#current = mine;
    this.#close();
    this.#settle({ ok: true, book: opened.kept.doc }, opened.kept, doc.id);
    return { ok: true };
  }

  refuse(problems: readonly Problem[]): Opening {
    tell(this.#element, 'croft-problem', { problems });
    return { ok: false, problems };
  }

  /** The element left the page: whatever is on its way is let go. */
  leave(): void {
    this.#begin();
    this.#close();
  }

  #begin(): object {
    this.#current = {};
    return this.#current;
  }

  #openKept(mine: object, key: string, start: Parameters<typeof openKept>[2]): ReturnType<typeof openKept> {
    return openKept(key, this.#host.database, start, (status) => {
      if (mine === this.#current) this.#say(status);
    });
  }

  /** Shows the book that was given before it is checked; false where it must be read first. */
  #showAsItStands(): boolean {
    const { book, known } = this.#element;
    const doc = known && asItStands(book);
    if (!doc) return false;
    try {
      this.#show({ doc, kept: null, key: null, known, check: () => this.#checked(parseBook(book)) });
      return true;
    } catch {
      // What is wrong with it is found by reading it.
      this.#close();
      return false;
    }
  }

  /** What was shown is no book: it goes, and why is said. */
  #checked(read: ReadBook): boolean {
    if (read.ok) return true;
    this.#close();
    this.#settle(read);
    return false;
  }

  #settle(read: ReadBook, kept: ToOpen['kept'] = null, key: string | null = null): void {
    if (!read.ok) {
      this.refuse(read.problems);
      this.#problems = read.problems;
      this.#say(NO_BOOK);
      return;
    }
    this.#show({ doc: read.book, kept, key });
  }

  #show(book: ToOpen): void {
    const opened = new OpenBook(this.#host, book);
    this.#book = opened;
    this.#problems = [];
    this.#say(opened.kept?.status ?? NOT_KEPT);
    tell(this.#element, 'croft-ready', { live: opened.live, key: opened.key });
  }

  #say(status: KeepStatus): void {
    this.#status = status;
    this.notices.hear(status);
    tell(this.#element, 'croft-status', status);
  }

  #close(): void {
    this.#book?.close();
    this.#book = null;
    this.notices.forget();
    this.#host.closed();
  }
}
