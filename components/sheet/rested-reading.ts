import type { ReactiveControllerHost } from 'lit';
import type { BookChange, LiveBook } from '../../src/live/live-book.js';
import type { Sheet } from './sheet-called.js';

/** Rests between an edit and looking through the sheet again: what is said of it may follow a moment later. */
const REST = 400;

/** Something read from the whole of a sheet, read again only when edits have come to rest. */
export class RestedReading<T> {
  readonly #host: ReactiveControllerHost;
  readonly #read: (live: LiveBook, sheet: Sheet) => T;
  #of: { readonly live: LiveBook; readonly sheet: string; readonly found: T } | undefined;
  #timer: ReturnType<typeof setTimeout> | undefined;

  constructor(host: ReactiveControllerHost, read: (live: LiveBook, sheet: Sheet) => T) {
    this.#host = host;
    this.#read = read;
  }

  of(live: LiveBook, sheet: Sheet): T {
    if (this.#of?.live !== live || this.#of.sheet !== sheet.id) {
      this.#of = { live, sheet: sheet.id, found: this.#read(live, sheet) };
    }
    return this.#of.found;
  }

  heed(change: BookChange): void {
    const { sheet } = this.#of ?? {};
    if (!change.cells.some((cell) => cell.sheet === sheet) && !(sheet && change.sheets.has(sheet))) return;
    clearTimeout(this.#timer);
    this.#timer = setTimeout(() => {
      this.#of = undefined;
      this.#host.requestUpdate();
    }, REST);
  }
}
