import type { ReactiveController } from 'lit';
import type { CroftBook } from './croft-book.js';
import { takesUndoKey } from './undo-keys.js';

/** What a book hears of the page around it: undo keys, a new day, and the page being closed. */
export class PageWatch implements ReactiveController {
  readonly #book: CroftBook;

  constructor(book: CroftBook) {
    this.#book = book;
    book.addController(this);
  }

  hostConnected(): void {
    document.addEventListener('keydown', this.#onKey);
    document.addEventListener('visibilitychange', this.#shown);
    window.addEventListener('beforeunload', this.#leaving);
  }

  hostDisconnected(): void {
    document.removeEventListener('keydown', this.#onKey);
    document.removeEventListener('visibilitychange', this.#shown);
    window.removeEventListener('beforeunload', this.#leaving);
  }

  readonly #onKey = (event: KeyboardEvent): void => {
    const which = takesUndoKey(event, this.#book);
    if (!which) return;
    event.preventDefault();
    if (which === 'undo') this.#book.undo();
    else this.#book.redo();
  };

  readonly #shown = (): void => {
    if (document.visibilityState === 'visible') this.#book.live?.refreshDay();
  };

  /** Asks before edits are lost that could not be saved. */
  readonly #leaving = (event: BeforeUnloadEvent): void => {
    if (this.#book.status.state === 'could not save') event.preventDefault();
  };
}
