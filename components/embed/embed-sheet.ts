import { askedOf, type FileDoc, isTableAlone, warnOfMissing } from './asked-of-file.js';
import { adopted, drawTable } from './draw-table.js';
import type { EmbedAttributes } from './embed-attributes.js';
import type { EmbedEvents } from './embed-events.js';
import { EmbedView } from './embed-view.js';
import { fetchGrid, openAsGrid } from './grid-opening.js';
import type { KeptCopy } from './kept-copy.js';
import { keptTable, markTotals } from './kept-table.js';
import type { OpenCellsHost } from './open-cells.js';
import { adviseOnce } from './page-check.js';
import { tableOf } from './page-content.js';
import { Reader, type ReaderHost } from './reader.js';
import { say, spoken } from './said.js';
import { heightSeen, settleHeight } from './settle-height.js';
import { isOwn, SourceError } from './source-text.js';
import { standingWords } from './standing-words.js';
import { type Doings, OPEN_GRID, toolsFor } from './tools.js';
import { NOT_LOADED, ON_PAPER, OPENING_OWN, WORKING } from './words.js';

/** What an embedded sheet shows and what its reader does with it, from its data to the line under the table. */
export class EmbedSheet implements ReaderHost, OpenCellsHost {
  readonly page: EmbedAttributes;
  readonly #view: EmbedView;
  #reader: Reader;
  #was: KeptCopy | null = null;
  #last: { row: string; column: string } | null = null;
  #closeGrid: (() => void) | null = null;
  #working = 0;
  /** Resolves when all that was written has been taken, or refused. */
  #writing: Promise<unknown> = Promise.resolve();
  /** Ends the opening of a grid, while one is on its way. */
  #opening: AbortController | null = null;
  /** What is shown came without the book behind it: nothing in it can be tried. */
  #isAlone = false;
  /** Height in pixels of the page's own table as readers saw it, before ours took its place; 0 where none did. */
  readonly #before: number;

  constructor(page: EmbedAttributes) {
    this.page = page;
    this.#before = heightSeen(page);
    this.#reader = new Reader(this);
    this.#view = new EmbedView(page.shadowRoot ?? page.attachShadow({ mode: 'open' }), this);
  }

  get shape() {
    const { frame } = this.#view;
    const rows = frame?.rows ?? [];
    return {
      columns: frame?.columns ?? listed(this.page.columns),
      open: this.#openColumns,
      ...(rows.length > 0 && { rows }),
    };
  }

  /** The reader has numbers of their own. */
  get tried(): boolean {
    return this.#reader.kept !== null || this.#reader.canUndo;
  }

  begin(): void {
    this.#drawFirst();
    settleHeight(this.page, this.#view.root, this.#before);
  }

  /** The page's own words inside are others than they were. */
  contentChanged(): void {
    if (this.tried) this.#compare();
    else {
      this.#reader.letGo();
      this.#drawSource();
    }
  }

  /** What is shown comes from somewhere else now. */
  showAnother(): void {
    this.letGo();
    this.#reader = new Reader(this);
    this.#was = null;
    this.#drawFirst();
  }

  /** Another language is spoken now. */
  speakAnew(): void {
    this.tell();
    this.#reader.speakAnew();
  }

  keepNow(): void {
    this.#reader.keepNow();
  }

  letGo(): void {
    this.#endOpening();
    if (this.#closeGrid) this.#doings.leaveGrid();
    this.#reader.keepNow();
    this.#reader.letGo();
  }

  #drawFirst(): void {
    const { kept } = this.#reader;
    this.#isAlone = false;
    this.page.sheetShown = kept?.table.sheet;
    if (kept) this.#draw(keptTable(this.page, kept.table));
    else this.#drawSource();
    this.#compare();
    this.#reader.finish();
  }

  /** What the page gives, or the reader's own book. */
  #drawSource(): void {
    const stands = this.page.book === null && tableOf(this.page) !== null;
    if (stands) this.#draw(adopted(this.page));
    else if (isOwn(this.page) && !this.#view.frame) this.#view.opening(spoken(OPENING_OWN));
    if (!stands || isOwn(this.page)) void this.#drawFromData();
  }

  #compare(): void {
    const reader = this.#reader;
    void reader.compare().then((found) => {
      if (reader !== this.#reader) return;
      if (found && reader.kept) this.#draw(keptTable(this.page, reader.kept.table));
      else if (reader.kept) this.tell();
    });
  }

  #draw(content: DocumentFragment): void {
    if (!this.#view.draw(content, this.#asksOpen)) return;
    this.#endOpening();
    this.#closeGrid = null;
    this.tell();
    const own = this.#reader.source?.ownTitle !== undefined;
    this.#fire('croft-shown', { sheet: this.page.sheet, rows: this.#view.frame?.rows.length ?? 0, own });
  }

  #endOpening(): void {
    this.#opening?.abort();
    this.#opening = null;
  }

  /** No table stands inside, or not the one to show: the data brings one, or it has to be worked out. */
  async #drawFromData(): Promise<void> {
    const reader = this.#reader;
    try {
      const doc = (await reader.doc()) as FileDoc;
      // The page's own table stands already for who keeps no book.
      if (reader.source?.ownMissing && tableOf(this.page)) return this.tell();
      const [columns, open] = [listed(this.page.columns), listed(this.page.open)];
      const brought = askedOf(doc, this.page.getAttribute('sheet'), columns);
      const table = brought ?? (await reader.trial()).table(columns, open);
      if (reader !== this.#reader) return;
      warnOfMissing(columns, table);
      this.#isAlone = brought !== null && isTableAlone(doc, brought);
      if (this.#isAlone && (open.length > 0 || this.page.gridLicenceKey))
        adviseOnce(this.page, 'alone', table.title);
      this.page.sheetShown = table.sheet;
      this.#draw(drawTable(table));
    } catch (error) {
      if (reader !== this.#reader) return;
      const isEmpty = error instanceof SourceError && error.noOwnBook;
      if (this.#view.frame && isOwn(this.page)) this.tell(wordsOf(error));
      else if (isEmpty) this.#view.empty(error.message, this.page.startAt);
      else this.#view.fail(wordsOf(error));
    }
  }

  // What open cells ask for.

  typed(row: string, column: string): string | null {
    return this.#reader.typed(row, column);
  }

  near(row?: string, column?: string): void {
    if (row !== undefined && column !== undefined) this.#last = { row, column };
    const reader = this.#reader;
    reader
      .doc()
      .then(() => reader.trial())
      .catch(() => undefined);
  }

  wrote(row: string, column: string, text: string): void {
    this.#writing = Promise.all([this.#writing, this.#write(row, column, text)]);
  }

  async #write(row: string, column: string, text: string): Promise<void> {
    this.#was = null;
    this.#working++;
    this.#view.bar?.say(spoken(WORKING));
    let said = '';
    try {
      const problem = await this.#reader.write({ row, column, text });
      if (problem) said = `${spoken(problem.message)} ${spoken(problem.mend)}`.trim();
      this.#view.cells?.complain(row, column, problem !== undefined);
    } catch (error) {
      said = wordsOf(error);
    }
    this.#working--;
    this.#fire('croft-try', { row, column, text });
    if (this.#working === 0) this.tell(said);
  }

  /** Cells of these rows may show something else. */
  follow(rows: ReadonlySet<string>): void {
    for (const row of rows) {
      for (const column of this.#view.frame?.columns ?? []) {
        const shown = this.#reader.cell(row, column);
        if (shown !== undefined) this.#view.show(row, column, shown);
      }
    }
    if (this.#working === 0) this.tell();
  }

  get #asksOpen(): string[] {
    return this.#isAlone ? [] : listed(this.page.open);
  }

  get #openColumns(): string[] {
    return [...new Set(this.#view.frame?.open(this.#asksOpen).map(({ column }) => column))];
  }

  #fire<K extends keyof EmbedEvents>(name: K, detail: EmbedEvents[K]['detail']): void {
    this.page.dispatchEvent(new CustomEvent(name, { detail, bubbles: true, composed: true }));
  }

  /** Says how things stand, and offers what can be done. */
  tell(said = ''): void {
    const [{ bar, cells }, reader] = [this.#view, this.#reader];
    if (!bar) return;
    markTotals(this.#view.frame, this.tried);
    const standing = {
      tried: this.tried,
      own: isOwn(this.page),
      // The grid that is on its way would not know of it.
      canUndo: reader.canUndo && !this.#opening,
      outdated: reader.outdated,
      keeps: reader.keeps,
      source: reader.source,
      isOpen: cells !== null && cells.size > 0,
      canBringBack: this.#was !== null,
      mayOpenGrid: !this.#isAlone && Boolean(this.page.gridLicenceKey),
      isGrid: this.#closeGrid !== null,
    };
    bar.say(said || standingWords(standing), said !== '');
    bar.sayOnPaper(this.tried ? spoken(ON_PAPER) : '');
    bar.offer(toolsFor(standing, this.#doings));
  }

  readonly #doings: Doings = {
    undo: () => this.#reader.undo(),
    startOver: () => {
      this.#was = this.#reader.startOver();
      this.#drawSource();
    },
    bringBack: () => {
      if (!this.#was) return;
      const { book, table } = this.#was;
      this.#was = null;
      this.#reader.take(book, table);
      this.#draw(keptTable(this.page, table));
    },
    takeHome: () => {
      const home = this.#reader.trial().then((trial) => trial.takeHome(this.page.keepName));
      home.catch((error: unknown) => this.tell(wordsOf(error)));
    },
    openGrid: () => void this.#openGrid(),
    fetchGrid,
    leaveGrid: () => {
      const { kept } = this.#reader;
      this.#closeGrid?.();
      this.#closeGrid = null;
      if (kept) this.#draw(keptTable(this.page, kept.table));
      else this.tell();
    },
  };

  async #openGrid(): Promise<void> {
    const [reader, { bar, stand, frame }] = [this.#reader, this.#view];
    if (!stand || !frame || this.#opening) return;
    const opening = new AbortController();
    this.#opening = opening;
    this.tell();
    bar?.busy(spoken(OPEN_GRID), true);
    let failed = spoken(NOT_LOADED);
    let isLost = false;
    const close = await openAsGrid({
      host: this.page,
      stand,
      frame,
      open: this.#openColumns,
      sheet: this.page.sheet,
      cell: this.#last,
      signal: opening.signal,
      // A press on the button ends the writing in a cell.
      book: () => this.#writing.then(() => reader.doc()),
      changed: (book, table) => reader === this.#reader && reader.take(book, table),
      caution: (texts) => this.#view.caution(texts),
      lost: (written) => {
        isLost = true;
        failed = say`${spoken(NOT_LOADED)} What you wrote is not in the table: ${written.join('; ')}.`;
      },
    });
    bar?.busy(spoken(OPEN_GRID), false);
    if (opening.signal.aborted) {
      if (isLost) this.tell(failed);
      return;
    }
    this.#opening = null;
    this.#closeGrid = close;
    this.tell(close ? '' : failed);
  }
}

const listed = (text: string | null): string[] =>
  (text ?? '')
    .split(',')
    .map((each) => each.trim())
    .filter((each) => each !== '');

function wordsOf(error: unknown): string {
  if (error instanceof Error && !(error instanceof TypeError)) return error.message;
  // For whoever keeps the page.
  console.error(error);
  return spoken(NOT_LOADED);
}
