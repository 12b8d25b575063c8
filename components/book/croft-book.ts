import { css, html, LitElement, type PropertyValues, unsafeCSS } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import type { Doc } from 'yjs';
import { newId } from '../../src/book/index.js';
import type { KnownFigures } from '../../src/live/known-figures.js';
import type { BookChange, LiveBook } from '../../src/live/live-book.js';
import type { Problem } from '../../src/problem.js';
import type { BookEntry, KeepStatus } from '../../src/storage/index.js';
import { schemeText } from '../look/token-text.js';
import { BookOpening, type Opening } from './book-opening.js';
import type { BookPast } from './book-past.js';
import { type CopyFile, copyFile, download, readCopy, titleBeside } from './copies.js';
import { type SelectedCell, tell } from './events.js';
import { booksKept } from './keeping.js';
import { type OwnBookAnswers, ownBook } from './own-book.js';
import { PageLanguage } from './page-language.js';
import { PageWatch } from './page-watch.js';

/**
 * Holds one household's book for the `croft-` elements inside it, or those that name it by `book="id"`.
 * Shows nothing of its own. The book comes from `src` (same site), from a
 * `<script type="application/json">` inside, from the `book` property, or from this browser's storage when
 * `keep` is set: then the stored copy wins, and the source only starts it.
 *
 * @element croft-book
 * @attr src - Address of a book file on the same site.
 * @attr keep - Keep the book in this browser; the value, where given, names the database.
 * @attr keep-as - Key under which the source's book is kept; from its address unless given.
 * @attr which - Key of a kept book to show instead of the one that `src` starts.
 * @attr theme - `light`, `dark` or `auto` (as the system is set); else the page's `color-scheme` counts.
 * @attr lang - The language that the page speaks, here or on any element around it; English unless `de`. One for all
 *   elements of a page.
 * @attr engine-licence-key - Licence key of the formula engine; its open-source key unless given.
 * @attr grid-licence-key - Licence key of the grid; needed before an editing view can open.
 * @slot - Elements that show the book.
 * @fires croft-ready - A book is open.
 * @fires croft-change - Something in the book changed.
 * @fires croft-status - How the book stands with storage: opening, saving, saved, could not save, not kept.
 * @fires croft-problem - A book or file could not be opened; `detail.problems` says why.
 * @fires croft-select - The selected cell changed.
 * @fires croft-conflicts - Two copies set something each its own way, or such a thing was decided.
 */
@customElement('croft-book')
export class CroftBook extends LitElement {
  static override styles = css`
    :host {
      display: contents;
    }
    ${unsafeCSS(schemeText)}
  `;

  @property() src: string | null = null;
  /** Name of the database that keeps the book; empty is the usual one, and null keeps nothing. */
  @property()
  get keep(): string | null {
    return this.#keep;
  }
  set keep(told: string | boolean | null | undefined) {
    // As text they come from libraries that write a tick so, where they find no property of the name.
    const ticked = told === 'true' ? true : told === 'false' ? false : told;
    this.#keep = typeof ticked === 'string' ? ticked : ticked ? '' : null;
  }
  @property({ attribute: 'keep-as' }) keepAs: string | null = null;
  @property() which: string | null = null;
  @property({ reflect: true }) theme: string | null = null;
  @property({ attribute: 'engine-licence-key' }) engineLicenceKey = 'gpl-v3';
  @property({ attribute: 'grid-licence-key' }) gridLicenceKey = '';
  /** A book as data or JSON text; it goes before `src`. */
  @property({ attribute: false }) book: unknown = null;
  /** Figures that the page shows already: `book` is then shown at once, and checked once it is seen. */
  @property({ attribute: false }) known: KnownFigures | null = null;

  #keep: string | null = null;
  #selected: SelectedCell | null = null;
  readonly #shown: BookOpening;

  constructor() {
    super();
    new PageWatch(this);
    const book = this;
    const host = {
      get database() {
        return book.#database;
      },
      engineLicenceKey: () => this.engineLicenceKey,
      changed: (change: BookChange) => tell(this, 'croft-change', change),
      conflictsChanged: () => tell(this, 'croft-conflicts', this.past?.conflicts ?? []),
      engineLoaded: (problem: Problem | undefined) => {
        if (problem) tell(this, 'croft-problem', { problems: [problem] });
        else this.requestUpdate();
      },
      closed: () => {
        this.#selected = null;
      },
    };
    this.#shown = new BookOpening(this, host, new PageLanguage(this));
  }

  /** The open book; null until it is read, and when it could not be. */
  get live(): LiveBook | null {
    return this.#shown.book?.live ?? null;
  }

  /** How the book stands with storage. */
  get status(): KeepStatus {
    return this.#shown.status;
  }

  /** What the person must be told about keeping the book, until it has passed or was read. */
  get notices(): readonly Problem[] {
    return this.#shown.notices.all;
  }

  /** Takes a notice away that a person has read. */
  dismiss(notice: Problem): void {
    this.#shown.notices.dismiss(notice);
    tell(this, 'croft-status', this.status);
  }

  /** Why the book could not be opened; empty when it is. */
  get problems(): readonly Problem[] {
    return this.#shown.problems;
  }

  /** Key under which the open book is kept, or null where it is not. */
  get key(): string | null {
    return this.#shown.book?.key ?? null;
  }

  /** False while formulas wait for the engine. */
  get engineReady(): boolean {
    return this.#shown.book?.engine.ready ?? false;
  }

  /** The cell that a person selected last, in whichever element of the book. */
  get selected(): SelectedCell | null {
    return this.#selected;
  }

  /** Called by the elements of the book when a person selects a cell. */
  select(cell: SelectedCell | null): void {
    this.#selected = cell;
    tell(this, 'croft-select', cell);
  }

  /** Takes the last step back; false where there is none, or no book is open. */
  undo(): boolean {
    return this.live?.undo() ?? false;
  }

  /** Does the step again that was taken back last; false where there is none. */
  redo(): boolean {
    return this.live?.redo() ?? false;
  }

  /** Loads the formula engine unless it is there; formulas are worked out when this resolves. */
  ensureEngine(): Promise<void> {
    return this.#shown.book?.engine.ensure() ?? Promise.resolve();
  }

  /** Earlier versions of the open book and other copies of it; null while no book is open. */
  get past(): BookPast | null {
    return this.#shown.book?.past ?? null;
  }

  /**
   * The replicated document (a `Y.Doc`) behind a book that is kept, for a provider that the page brings: hand
   * it over, and copies of the book meet through that provider. What comes is shown and stored; nothing is
   * sent anywhere unless the page does this. Copies must share their beginning (a file saved for merging).
   * Null where the book is not kept, or none is open.
   */
  replicaDoc(): Doc | null {
    return this.past?.document() ?? null;
  }

  /** Saves now what could not be saved; true when all is kept. */
  async tryAgain(): Promise<boolean> {
    return (await this.past?.tryAgain()) ?? false;
  }

  /** Gives the person a file with the whole book; answers the file. */
  async saveACopy(): Promise<CopyFile | null> {
    if (!this.live) return null;
    const file = await copyFile(this.live.toJSON());
    download(file);
    return file;
  }

  /**
   * Opens a book from a file beside those that are kept; none of them is written over. What is wrong with a
   * file comes back as problems, and the open book stays.
   */
  async openACopy(file: Blob | string): Promise<Opening> {
    const read = await readCopy(file);
    if (!read.ok) return this.#shown.refuse(read.problems);
    const kept = await this.keptBooks();
    const taken = kept.some(({ id }) => id === read.book.id);
    const title = titleBeside(read.book.title, [...kept.map((each) => each.title), this.live?.title ?? '']);
    return this.#beside({ ...read.book, title, ...(taken && { id: newId('b') }) }, read.state);
  }

  /** Starts a new household's book from a few answers; it stands beside the others. */
  startOwnBook(answers: OwnBookAnswers = {}): Promise<Opening> {
    return this.#beside(ownBook(answers));
  }

  /** The books kept in this browser, latest edited first; empty where nothing is kept. */
  async keptBooks(): Promise<readonly BookEntry[]> {
    return this.keep === null ? [] : booksKept(this.#database);
  }

  /** Key under which the book that `src` starts is kept. */
  get sourceKey(): string {
    return this.keepAs || (this.src === null ? 'book' : `from ${this.src}`);
  }

  get #database(): string | undefined {
    return this.keep || undefined;
  }

  override connectedCallback(): void {
    super.connectedCallback();
    if (this.hasUpdated && !this.#shown.book) void this.#shown.open();
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    // Moved within the page is not removed: it is connected again before this runs.
    queueMicrotask(() => {
      if (this.isConnected) return;
      this.#shown.leave();
    });
  }

  protected override updated(changed: PropertyValues<CroftBook>): void {
    const another = changed.has('which') && (this.which || this.sourceKey) !== this.key;
    if (changed.has('src') || changed.has('keep') || changed.has('book') || another) void this.#shown.open();
  }

  protected override render() {
    return html`<slot></slot>`;
  }

  async #beside(...book: Parameters<BookOpening['beside']>): Promise<Opening> {
    const opened = await this.#shown.beside(...book);
    if (opened.ok && this.keep !== null) this.which = book[0].id;
    return opened;
  }
}

export type { CroftEvents } from '../events.js';
export type { Opening };

declare global {
  interface HTMLElementTagNameMap {
    'croft-book': CroftBook;
  }
}
