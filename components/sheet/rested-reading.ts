import type { ReactiveControllerHost } from 'lit';
import type { BookChange, LiveBook } from '../../src/live/live-book.js';
import type { Sheet } from './sheet-called.js';

/** Rests between an edit and looking through the sheet again: what is said of it may follow a moment later. */
const REST = 400;

/** Something read from the whole of a sheet, read again only when edits have come to rest. */
export class RestedReading<T> {
  readonly #host: ReactiveControllerHost;
  readonly #read: (live: LiveBook, sheet: Sheet) => T;
  readonly #also: readonly string[];
  #of: { readonly live: LiveBook; readonly sheet: string; readonly found: T } | undefined;
  #timer: ReturnType<typeof setTimeout> | undefined;

  /** `also`: kinds of the other sheets that it is read from. */
  constructor(
    host: ReactiveControllerHost,
    read: (live: LiveBook, sheet: Sheet) => T,
    also: readonly string[] = [],
  ) {
    this.#host = host;
    this.#read = read;
    this.#also = also;
  }

  of(live: LiveBook, sheet: Sheet): T {
    if (this.#of?.live !== live || this.#of.sheet !== sheet.id) {
      this.#of = { live, sheet: sheet.id, found: this.#read(live, sheet) };
    }
    return this.#of.found;
  }

  heed(change: BookChange): void {
    if (!this.#of) return;
    const { live, sheet } = this.#of;
    const from = new Set([sheet]);
    for (const { id, kind } of live.sheets()) if (this.#also.includes(kind)) from.add(id);
    if (!change.cells.some((cell) => from.has(cell.sheet)) && ![...from].some((id) => change.sheets.has(id)))
      return;
    clearTimeout(this.#timer);
    this.#timer = setTimeout(() => {
      this.#of = undefined;
      this.#host.requestUpdate();
    }, REST);
  }
}
