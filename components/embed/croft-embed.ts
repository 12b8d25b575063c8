import type { BookDoc } from '../../src/book/types.js';
import type { EmbedCell, ShownTable } from '../../src/live/embed/index.js';
import { Bar, type Tool } from './bar.js';
import { defineOnce, PageElement } from './define.js';
import { adopted, drawTable, fillCell, make } from './draw-table.js';
import { embedStyles } from './embed-styles.js';
import { Frame } from './frame.js';
import { fetchGrid, openAsGrid } from './grid-opening.js';
import type { KeptCopy } from './kept-copy.js';
import { OpenCells, type OpenCellsHost } from './open-cells.js';
import { Reader, type ReaderHost } from './reader.js';
import { settleHeight } from './settle-height.js';
import { scriptOf } from './source-text.js';
import { HINT, KEPT, NEWER, NOT_KEPT, NOT_LOADED, WORKING } from './words.js';

const list = (text: string | null): string[] =>
  (text ?? '')
    .split(',')
    .map((each) => each.trim())
    .filter((each) => each !== '');

/**
 * One sheet on a page of someone's own: the table that stands inside it, made good to read whatever the page
 * does around it. Where the page opens cells, readers may try numbers of their own, and the figures follow; what
 * works them out is loaded only then.
 *
 * @element croft-embed
 * @attr sheet - Id, kind (`shelf`) or title of the sheet in the book.
 * @attr src - Address of the data on the same site, where no script inside holds it.
 * @attr columns - Ids of the columns to show where no table stands inside, with commas between.
 * @attr open - Ids of columns that readers may write into, with commas between; likewise `data-open` on a `th` or `td`.
 * @attr keep-as - Name under which a reader's own numbers are kept in their browser; the element's id unless given.
 * @attr grid-licence-key - Licence key of the grid: the sheet may then be opened as one.
 * @attr engine-licence-key - Licence key of the formula engine; its open-source key unless given.
 * @attr theme - `light`, `dark` or `auto` (as the system is set); else the page's `color-scheme` counts.
 * @fires croft-try - A reader wrote something into a cell; `detail` is `{ row, column, text }`.
 * @csspart frame - What scrolls the table.
 * @csspart bar - The line under the table.
 * @cssprop --croft-paper - Background; likewise `--croft-raised`, `--croft-ink`, `--croft-quiet-ink`,
 *   `--croft-line`, `--croft-accent`, `--croft-planning`, `--croft-planning-line`, `--croft-focus`.
 * @cssprop --croft-font - Font; likewise `--croft-font-title`, `--croft-font-figures`.
 * @cssprop --croft-font-size - Size of its text.
 * @cssprop --croft-sheet-height - Greatest height of the table; as high as it is unless given.
 */
export class CroftEmbed extends PageElement implements ReaderHost, OpenCellsHost {
  #reader: Reader | null = null;
  #frame: Frame | null = null;
  #cells: OpenCells | null = null;
  #bar: Bar | null = null;
  #root: HTMLElement | null = null;
  #was: KeptCopy | null = null;
  #last: { row: string; column: string } | null = null;
  #closeGrid: (() => void) | null = null;
  #working = 0;
  #watcher: MutationObserver | undefined;

  get keepName(): string | null {
    return this.getAttribute('keep-as') || this.id || null;
  }

  get sheetName(): string {
    return this.getAttribute('sheet') ?? 'shelf';
  }

  get shape() {
    const columns = this.#frame?.columns ?? list(this.getAttribute('columns'));
    const rows = this.#frame?.rows;
    return { columns, open: this.#openColumns, ...(rows && rows.length > 0 && { rows }) };
  }

  connectedCallback(): void {
    addEventListener('pagehide', this.#leave);
    if (this.#root) return;
    if (document.readyState === 'loading') {
      // What stands inside has not come yet.
      document.addEventListener('DOMContentLoaded', () => this.isConnected && this.#begin(), { once: true });
    } else this.#begin();
  }

  disconnectedCallback(): void {
    queueMicrotask(() => {
      if (this.isConnected) return;
      removeEventListener('pagehide', this.#leave);
      this.#watcher?.disconnect();
      this.#reader?.keepNow();
      this.#reader?.letGo();
    });
  }

  readonly #leave = (): void => this.#reader?.keepNow();

  #begin(): void {
    if (this.#root) return;
    const before = this.getBoundingClientRect().height;
    const table = this.querySelector(':scope > table');
    if (!table && !scriptOf(this) && !this.hasAttribute('src')) {
      // Written by script, it may come before what stands inside.
      this.#watcher ??= new MutationObserver(() => this.#begin());
      this.#watcher.observe(this, { childList: true });
      return;
    }
    this.#watcher?.disconnect();
    this.#reader = new Reader(this);
    const { kept } = this.#reader;
    this.#makeRoot();
    if (kept) this.#draw(drawTable(kept.table));
    else if (table) this.#draw(adopted(this));
    else void this.#drawFromData();
    if (this.#root) settleHeight(this, this.#root, before);
    if (kept) void this.#reader.compare().then(() => this.#tell());
  }

  #makeRoot(): void {
    const shadow = this.shadowRoot ?? this.attachShadow({ mode: 'open' });
    shadow.adoptedStyleSheets = [embedStyles()];
    const page = make('div', '', { class: 'page' });
    this.#root = make('div', '', { class: 'root' });
    page.append(this.#root);
    shadow.replaceChildren(page);
  }

  #draw(content: DocumentFragment): void {
    const table = content.querySelector('table');
    if (!table || !this.#root) return;
    this.#closeGrid = null;
    this.#frame = new Frame(table);
    const bar = new Bar(content.querySelector('[data-day]'));
    this.#bar = bar;
    const frame = make('div', '', {
      class: 'frame',
      part: 'frame',
      role: 'region',
      tabindex: '0',
      'aria-label': table.caption?.textContent?.trim() || 'Table',
    });
    table.before(frame);
    frame.append(table);
    frame.after(bar.element);
    this.#root.replaceChildren(content);
    this.#cells = new OpenCells(this.#frame, list(this.getAttribute('open')), this);
    this.#tell();
  }

  /** No table stands inside: the data brings one, or it has to be worked out. */
  async #drawFromData(): Promise<void> {
    const reader = this.#reader!;
    try {
      const doc = (await reader.doc()) as BookDoc & { readonly shown?: ShownTable };
      if (doc.shown) return this.#draw(drawTable(doc.shown));
      const trial = await reader.trial();
      this.#draw(drawTable(trial.table(list(this.getAttribute('columns')), list(this.getAttribute('open')))));
    } catch (error) {
      this.#root?.replaceChildren(make('p', wordsOf(error), { class: 'problem', role: 'alert' }));
    }
  }

  // What open cells ask for.

  typed(row: string, column: string): string | null {
    return this.#reader?.typed(row, column) ?? null;
  }

  near(row?: string, column?: string): void {
    if (row !== undefined && column !== undefined) this.#last = { row, column };
    this.#reader?.doc().then(
      () => this.#reader?.trial().catch(() => undefined),
      () => undefined,
    );
  }

  wrote(row: string, column: string, text: string): void {
    void this.#write(row, column, text);
  }

  async #write(row: string, column: string, text: string): Promise<void> {
    this.#was = null;
    this.#working++;
    this.#bar?.say(WORKING);
    let said = '';
    try {
      const problem = await this.#reader!.write({ row, column, text });
      if (problem) said = `${problem.message} ${problem.mend}`.trim();
      this.#cells?.complain(row, column, problem !== undefined);
    } catch (error) {
      said = wordsOf(error);
    }
    this.#working--;
    this.dispatchEvent(
      new CustomEvent('croft-try', { detail: { row, column, text }, bubbles: true, composed: true }),
    );
    if (this.#working === 0) this.#tell(said);
  }

  /** Cells of these rows may show something else. */
  follow(rows: ReadonlySet<string>): void {
    const frame = this.#frame;
    if (!frame) return;
    for (const row of rows) {
      for (const column of frame.columns) {
        const shown = this.#reader?.cell(row, column);
        if (shown !== undefined) this.#show(frame, row, column, shown);
      }
    }
    if (this.#working === 0) this.#tell();
  }

  #show(frame: Frame, row: string, column: string, shown: EmbedCell): void {
    const at = frame.cell(row, column);
    const text = typeof shown === 'string' ? shown : shown.text;
    if (!at || this.#cells?.show(row, column, text)) return;
    const before = at.textContent;
    fillCell(at, shown);
    if (at.textContent === before) return;
    at.classList.remove('changed');
    requestAnimationFrame(() => at.classList.add('changed'));
  }

  get #openColumns(): string[] {
    const open = new Set(this.#frame?.open(list(this.getAttribute('open'))).map(({ column }) => column));
    return [...open];
  }

  /** Says how things stand, and offers what can be done. */
  #tell(said = ''): void {
    const [bar, reader] = [this.#bar, this.#reader];
    if (!bar || !reader) return;
    const tried = reader.kept !== null || reader.canUndo;
    const hint = this.#cells && this.#cells.size > 0 ? HINT : '';
    const standing = reader.outdated ? NEWER : tried ? (reader.keeps ? KEPT : NOT_KEPT) : hint;
    bar.say(said || standing, said !== '');
    bar.offer(this.#tools(reader, tried));
  }

  #tools(reader: Reader, tried: boolean): Tool[] {
    const tools: Tool[] = [];
    const add = (when: boolean, label: string, title: string, run: () => void): void => {
      if (when) tools.push({ label, title, run });
    };
    add(reader.canUndo && !this.#closeGrid, 'Undo', 'Takes back what you wrote last.', () => reader.undo());
    add(
      tried,
      reader.outdated ? 'Take the new figures' : 'Start over',
      'Shows the page’s own figures again.',
      () => this.#startOver(),
    );
    add(
      tried,
      'Take home',
      'Saves your numbers as a file that Croftsheet opens.',
      () => void this.#takeHome(),
    );
    add(this.#was !== null, 'Bring mine back', 'Shows your own numbers again.', () => this.#bringBack());
    const grid = this.hasAttribute('grid-licence-key');
    if (grid && !this.#closeGrid)
      tools.push({
        label: GRID,
        title: 'Opens the sheet for editing.',
        run: () => void this.#openGrid(),
        near: fetchGrid,
      });
    add(this.#closeGrid !== null, 'Back to the table', 'Closes the grid.', () => this.#leaveGrid());
    return tools;
  }

  #startOver(): void {
    this.#was = this.#reader?.startOver() ?? null;
    if (this.querySelector(':scope > table')) this.#draw(adopted(this));
    else void this.#drawFromData();
  }

  #bringBack(): void {
    if (!this.#was) return;
    const { book, table } = this.#was;
    this.#was = null;
    this.#reader?.take(book, table);
    this.#draw(drawTable(table));
  }

  async #takeHome(): Promise<void> {
    try {
      await (await this.#reader!.trial()).takeHome();
    } catch (error) {
      this.#tell(wordsOf(error));
    }
  }

  async #openGrid(): Promise<void> {
    const [reader, frame, stand] = [
      this.#reader!,
      this.#frame!,
      this.#root?.querySelector<HTMLElement>('.frame'),
    ];
    if (!stand) return;
    this.#bar?.busy(GRID, true);
    const close = await openAsGrid({
      host: this,
      stand,
      frame,
      open: this.#openColumns,
      sheet: this.sheetName,
      cell: this.#last,
      book: () => reader.doc(),
      changed: (book, table) => reader.take(book, table),
    });
    this.#bar?.busy(GRID, false);
    this.#closeGrid = close;
    this.#tell(close ? '' : NOT_LOADED);
  }

  #leaveGrid(): void {
    const kept = this.#reader?.kept;
    this.#closeGrid?.();
    this.#closeGrid = null;
    if (kept) this.#draw(drawTable(kept.table));
    else this.#tell();
  }
}

const GRID = 'Open as a grid';

function wordsOf(error: unknown): string {
  if (error instanceof Error && !(error instanceof TypeError)) return error.message;
  // For whoever keeps the page.
  console.error(error);
  return NOT_LOADED;
}

defineOnce('croft-embed', CroftEmbed);

declare global {
  interface HTMLElementTagNameMap {
    'croft-embed': CroftEmbed;
  }
}
