import type { ReactiveControllerHost } from 'lit';
import type { Caution } from '../../src/facts/index.js';
import type { BookChange, LiveBook } from '../../src/live/live-book.js';
import { cautionsOf } from './cautions.js';
import type { Sheet } from './sheet-called.js';

/** Rests between an edit and looking through the sheet again: cautions may follow a moment later. */
const REST = 400;

/** The cautions of a sheet, looked for again only when edits have come to rest. */
export class CautionWatch {
  readonly #host: ReactiveControllerHost;
  #of: { readonly live: LiveBook; readonly sheet: string; readonly found: readonly Caution[] } | undefined;
  #timer: ReturnType<typeof setTimeout> | undefined;

  constructor(host: ReactiveControllerHost) {
    this.#host = host;
  }

  of(live: LiveBook, sheet: Sheet): readonly Caution[] {
    if (this.#of?.live !== live || this.#of.sheet !== sheet.id) {
      this.#of = { live, sheet: sheet.id, found: cautionsOf(live, sheet.id, sheet.kind) };
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
