import type { BookDoc } from '../../src/book/index.js';
import type { KnownFigures } from '../../src/live/known-figures.js';
import { type BookChange, type LiveBook, openBook } from '../../src/live/live-book.js';
import type { Problem } from '../../src/problem.js';
import type { KeptBook } from '../../src/storage/index.js';
import { afterPaint } from './after-paint.js';
import { BookPast } from './book-past.js';
import { BookEngine } from './engine.js';
import { editable } from './keeping.js';

/** What an open book asks of the element that holds it. */
export interface OpenBookHost {
  readonly database: string | undefined;
  engineLicenceKey(): string;
  changed(change: BookChange): void;
  conflictsChanged(): void;
  /** The engine is there, or could not be loaded. */
  engineLoaded(problem: Problem | undefined): void;
  /** The book was let go. */
  closed(): void;
}

export interface ToOpen {
  readonly doc: BookDoc;
  readonly kept: KeptBook | null;
  /** Key under which it is kept; null where it is not. */
  readonly key: string | null;
  /** Figures that the page shows already. */
  readonly known?: KnownFigures | undefined;
  /** Checks a book that is shown unchecked, once it is seen; false where it was none and is closed. */
  readonly check?: () => boolean;
}

/** A book that is open on a page, with its storage, its past and its engine. */
export class OpenBook {
  readonly live: LiveBook;
  readonly kept: KeptBook | null;
  readonly key: string | null;
  readonly past: BookPast;
  readonly engine: BookEngine;
  #closed = false;

  constructor(host: OpenBookHost, { doc, kept, key, known, check }: ToOpen) {
    const live = openBook(doc, { later: true, ...(known && { known }) });
    this.live = live;
    this.kept = kept;
    this.key = kept ? key : null;
    this.past = new BookPast(live, kept, host.database, () => host.conflictsChanged(), doc);
    this.engine = new BookEngine(
      live,
      () => host.engineLicenceKey(),
      (problem) => host.engineLoaded(problem),
    );
    live.on('change', (change) => {
      this.engine.heed(change);
      host.changed(change);
    });
    kept?.attach(editable(live));
    afterPaint(() => this.#goOn(check));
  }

  /** What can wait until the page is seen: figures that nobody has asked for yet, and the engine. */
  #goOn(check?: () => boolean): void {
    if (this.#closed || check?.() === false) return;
    this.live.workOut();
    if (this.live.needsEngine) void this.engine.ensure();
  }

  close(): void {
    this.#closed = true;
    void this.kept?.close();
    this.live.close();
    this.engine.close();
  }
}
