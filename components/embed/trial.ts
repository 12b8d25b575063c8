/** The part of an embedded sheet that works figures out; loaded when a reader first tries something. */
import { type BookDoc, parseBook, type Typed } from '../../src/book/index.js';
import { type EmbedCell, embedCell, type ShownTable, shownTable } from '../../src/live/embed/index.js';
import { type BookChange, type LiveBook, openBook } from '../../src/live/live-book.js';
import { ok, type Problem, type Result, refuse } from '../../src/problem.js';
import { say } from '../../src/words/index.js';
import { copyFile, download } from '../book/copies.js';
import { BookEngine } from '../book/engine.js';
import { typedText } from '../look/typed-text.js';
import { sheetCalled } from '../sheet/sheet-called.js';
import { type WrittenCells, withoutPage, writtenCells } from './written-cells.js';

export { speakAs } from './speak-as.js';

export interface TrialOptions {
  /** Id, kind or title of the sheet. */
  readonly sheet: string;
  readonly engineLicenceKey: string;
}

/** An embedded sheet's book, open for a reader to try things in. */
export class Trial {
  readonly live: LiveBook;
  readonly sheet: string;
  readonly #engine: BookEngine;
  /** Where the book was made of the page's own table. */
  readonly #written: WrittenCells | null;

  constructor(live: LiveBook, sheet: string, engineLicenceKey: string, written: WrittenCells | null) {
    this.live = live;
    this.#written = written;
    this.sheet = sheet;
    // Cells without their formulas' values say so themselves; nothing else is to be said of a failure.
    this.#engine = new BookEngine(
      live,
      () => engineLicenceKey,
      () => undefined,
    );
    if (live.needsEngine) void this.#engine.ensure();
    live.on('change', (change) => this.#engine.heed(change));
  }

  /** False while figures wait for the formula engine. */
  get isWorkedOut(): boolean {
    return !this.live.needsEngine || this.#engine.ready;
  }

  /** What a reader typed into a cell; answers what is wrong with it, if anything is. */
  set(row: string, column: string, typed: Typed): Problem | undefined {
    const meant = this.#written?.meant(row, column, typed) ?? typed;
    const done = this.live.set(this.sheet, row, column, meant);
    return done.ok ? this.live.problem(this.sheet, row, column) : done.problem;
  }

  /** Calls back with the rows of the sheet that may show something else. */
  onRows(listener: (rows: ReadonlySet<string>, change: BookChange) => void): () => void {
    return this.live.on('change', (change) => {
      const rows = change.cells.filter(({ sheet }) => sheet === this.sheet).map(({ row }) => row);
      listener(new Set(rows), change);
    });
  }

  cell(row: string, column: string): EmbedCell | undefined {
    const view = this.live.column(this.sheet, column);
    const written = this.#written?.text(row, column);
    if (written !== undefined) return written;
    return view && this.live.rowIds(this.sheet).includes(row)
      ? embedCell(this.live, this.sheet, row, view)
      : undefined;
  }

  /** The sheet as it now reads, in these columns. */
  table(columns: readonly string[], open: readonly string[], rows?: readonly string[]): ShownTable {
    const shown = shownTable(this.live, this.sheet, {
      ...(columns.length > 0 && { columns }),
      ...(rows && { rows }),
      open,
    });
    return this.#written?.table(shown) ?? shown;
  }

  typed(row: string, column: string): string {
    return this.#written?.typed(row, column) ?? typedText(this.live.typed(this.sheet, row, column));
  }

  toJSON(): BookDoc {
    return this.live.toJSON();
  }

  /**
   * Hands the reader a file with the book as it now is.
   *
   * @param keepName name under which the page keeps the reader's numbers, if it gives one.
   */
  async takeHome(keepName: string | null): Promise<void> {
    const page = location.origin + location.pathname;
    download(await copyFile(withoutPage(this.toJSON(), page, keepName)));
  }

  close(): void {
    this.#engine.close();
    this.live.close();
  }
}

/** Opens a book for trying; refused where it is none, or lacks the sheet. */
export function openTrial(json: unknown, { sheet, engineLicenceKey }: TrialOptions): Result<Trial> {
  const { shown: _shown, ...book } = (typeof json === 'string' ? readJson(json) : (json as object)) as {
    shown?: unknown;
  };
  const parsed = parseBook(book);
  if (!parsed.ok) return { ok: false, problem: parsed.problems[0]! };
  const live = openBook(parsed.book);
  const found = sheetCalled(live, sheet);
  if (!found)
    return refuse(
      'no-such-sheet',
      say`This book has no sheet called “${sheet}”.`,
      say`Name one of its sheets.`,
    );
  return ok(new Trial(live, found.id, engineLicenceKey, writtenCells(live, parsed.book)));
}

function readJson(text: string): object {
  try {
    const value: unknown = JSON.parse(text);
    return typeof value === 'object' && value !== null ? value : {};
  } catch {
    return {};
  }
}
