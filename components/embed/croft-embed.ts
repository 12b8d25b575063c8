import { ContentWatch } from './content-watch.js';
import { defineOnce } from './define.js';
import { EmbedAttributes } from './embed-attributes.js';
import { EmbedSheet } from './embed-sheet.js';
import { embedStyles } from './embed-styles.js';
import { firstPaint } from './first-paint.js';
import { hasContent, tableOf } from './page-content.js';
import { heedLanguage, sayAs } from './said.js';
import { isOwn } from './source-text.js';

/**
 * One sheet on a page of someone's own: the table that stands inside it, made good to read whatever the page
 * does around it. Where the page opens cells, readers may try numbers of their own, and the figures follow; what
 * works them out is loaded only then. Its own words are in the language of the page (`lang`), in English where that
 * is not known.
 *
 * @element croft-embed
 * @attr sheet - Id, kind (`shelf`) or title of the sheet in the book.
 * @attr src - Address of the data on the same site, where no script inside holds it; from another nothing is fetched.
 * @attr source - `own` shows the book that the reader keeps in this browser on this site, the one edited last; what the
 *   page gives inside or by `src` shows where they keep none.
 * @attr which - Key or title of that book, where it is to be a certain one.
 * @attr database - Name of the database with the reader's books, where `keep` of `<croft-book>` names one.
 * @attr start-at - Address of the page where a reader starts a book.
 * @attr columns - Ids of the columns to show where no table stands inside, with commas between; what is not there is
 *   left out, and the console says so.
 * @attr open - Ids of columns that readers may write into, with commas between; likewise `data-open` on a `th` or `td`.
 *   In a table written by hand, with no data beside it, columns are `c1`, `c2`…, and `data-formula="=Pounds/6"` on a
 *   `th` has a column worked out from the others; `data-total` on a `tr` says that it is a total, and none of the data.
 * @attr keep-as - Name under which a reader's own numbers are kept in their browser, another in each post of a site; the
 *   element's id unless given.
 * @attr grid-licence-key - Licence key of the grid: the sheet may then be opened as one.
 * @attr engine-licence-key - Licence key of the formula engine; its open-source key unless given.
 * @attr theme - `light`, `dark` or `auto` (as the system is set); else the page's `color-scheme` counts.
 * @fires croft-shown - The table stands, or stands anew; `detail` is `{ sheet, rows, own }`.
 * @fires croft-try - A reader wrote something into a cell; `detail` is `{ row, column, text }`.
 * @fires croft-ready - The book inside is open, once the sheet is opened as a grid; as of `<croft-book>`.
 * @fires croft-change - Something changed in the book inside, while the sheet is open as a grid.
 * @fires croft-status - How the book inside stands with storage, while the sheet is open as a grid.
 * @fires croft-select - The selected cell changed, while the sheet is open as a grid.
 * @csspart frame - What scrolls the table.
 * @csspart bar - The line under the table.
 * @cssprop --croft-font-size - Size of its text.
 */
export class CroftEmbed extends EmbedAttributes {
  #shown: EmbedSheet | null = null;
  /** Ends heeding which language the page is written in. */
  #unheed: (() => void) | null = null;
  /** Resolves when its words are there, or could not be loaded: then it goes on in English. Null from there on. */
  #words: Promise<void> | null | undefined;
  /** It was taken off the page, and not only moved; what is asked of it there is done when it is back. */
  #away = false;
  #stale = false;
  readonly #content = new ContentWatch(this, () => this.#contentChanged());

  connectedCallback(): void {
    this.takeProperties();
    addEventListener('pagehide', this.#leave);
    document.addEventListener('visibilitychange', this.#seen);
    this.#content.start();
    this.#unheed ??= heedLanguage(this, () => this.#shown?.speakAnew());
    if (this.#shown) {
      this.#backAgain(this.#shown);
      return;
    }
    if (document.readyState === 'loading') {
      // What stands inside has not come yet.
      document.addEventListener('DOMContentLoaded', () => this.#begin(), { once: true });
    } else this.#begin();
  }

  /** In another document its look is gone. */
  adoptedCallback(): void {
    if (this.shadowRoot) this.shadowRoot.adoptedStyleSheets = [embedStyles(this.ownerDocument)];
  }

  disconnectedCallback(): void {
    queueMicrotask(() => {
      // Moved within the page is not removed: it is connected again before this runs.
      if (this.isConnected) return;
      removeEventListener('pagehide', this.#leave);
      document.removeEventListener('visibilitychange', this.#seen);
      this.#content.stop();
      this.#unheed?.();
      this.#unheed = null;
      this.#away = true;
      this.#shown?.letGo();
    });
  }

  protected override showAnother(): void {
    if (!this.isConnected) this.#stale = true;
    else if (this.#shown) this.#shown.showAnother();
    else this.#begin();
  }

  /** On the page again, where nothing was heard of what changed meanwhile. */
  #backAgain(shown: EmbedSheet): void {
    if (!this.#away) return;
    this.#away = false;
    if (this.#stale) shown.showAnother();
    else this.#content.lookAgain();
    this.#stale = false;
    void Promise.resolve(sayAs(this)).then(() => shown.speakAnew());
  }

  protected override offerAnew(): void {
    this.#shown?.tell();
  }

  #begin(): void {
    if (this.#shown || !this.isConnected || document.readyState === 'loading') return;
    // Written by script, it may come before what stands inside.
    if (!hasContent(this) && this.src === null && this.book === null && !isOwn(this)) return;
    if (this.#words === undefined) this.#words = this.#fetchWords();
    // Until then the page's own table stands there.
    if (this.#words) return;
    const paint = firstPaint(tableOf(this) !== null);
    if (paint) {
      void paint.then(() => this.#begin());
      return;
    }
    this.#content.read();
    this.#shown = new EmbedSheet(this);
    this.#shown.begin();
  }

  #fetchWords(): Promise<void> | null {
    const words = sayAs(this);
    if (!words) return null;
    return words.then(() => {
      this.#words = null;
      this.#begin();
    });
  }

  #contentChanged(): void {
    if (!this.#shown) this.#begin();
    // Taken out to be put in anew: what is shown stays until then.
    else if (hasContent(this)) {
      this.#content.read();
      this.#shown.contentChanged();
    }
  }

  readonly #leave = (): void => this.#shown?.keepNow();

  /** The reader's own book may have been edited on another page, or begun there. */
  readonly #seen = (): void => {
    if (document.visibilityState === 'visible' && isOwn(this) && !this.#shown?.tried) this.showAnother();
  };
}

defineOnce('croft-embed', CroftEmbed);

export type { CroftEvents } from '../events.js';

declare global {
  interface HTMLElementTagNameMap {
    'croft-embed': CroftEmbed;
  }
}
