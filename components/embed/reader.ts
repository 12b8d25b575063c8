import type { BookDoc } from '../../src/book/types.js';
import type { EmbedCell, ShownTable } from '../../src/live/embed/index.js';
import type { Problem } from '../../src/problem.js';
import { digestOf, dropKept, type KeptCopy, readElsewhere, readKept, writeKept } from './kept-copy.js';
import { saidIn, say, typedText } from './said.js';
import { dataScriptOf, keyOf, type Source, type SourceHost, sourceOf } from './source-text.js';
import type { Trial } from './trial.js';
import type { PageTableDoc } from './written-cells.js';

/** What a reader's copy needs of the element that shows it. */
export interface ReaderHost {
  readonly page: SourceHost & {
    /** Name under which the copy is kept; null where the page gives none. */
    readonly keepName: string | null;
    readonly sheet: string;
    readonly engineLicenceKey: string;
  };
  readonly shape: {
    readonly columns: readonly string[];
    readonly open: readonly string[];
    readonly rows?: readonly string[];
  };
  /** Cells may show something else. */
  follow(rows: ReadonlySet<string>): void;
}

interface Entry {
  readonly row: string;
  readonly column: string;
  readonly text: string;
}

/** What a reader has tried: their own copy of the book, opened only when they try something. */
export class Reader {
  /** The reader's copy as kept; null while they have tried nothing. */
  kept: KeptCopy | null;
  /** Whether what the reader tries is kept. */
  keeps = true;
  /** The page's data is another than when the reader began. */
  outdated = false;
  readonly #host: ReaderHost;
  /** A copy that was begun on another page, where this table may stand, too. */
  #elsewhere: KeptCopy | null;
  #trial: Promise<Trial> | null = null;
  #open: Trial | null = null;
  #doc: BookDoc | null = null;
  #reading: Promise<BookDoc> | null = null;
  #source: Source | null = null;
  /** Something was written since the copy was opened; `touched`: since it was kept. */
  #tried = false;
  #touched = false;
  #saving: ReturnType<typeof setTimeout> | undefined;

  constructor(host: ReaderHost) {
    this.#host = host;
    const { keepName } = host.page;
    this.kept = keepName === null ? null : readKept(keepName, location.pathname);
    this.#elsewhere = keepName === null || this.kept ? null : readElsewhere(keepName, location.pathname);
  }

  /** Where the data came from, once it was asked for. */
  get source(): Source | null {
    return this.#source;
  }

  get canUndo(): boolean {
    return this.#open?.live.undoLabel !== undefined;
  }

  /** Looks whether the page's data is still that with which the reader began; true where that showed a copy. */
  async compare(): Promise<boolean> {
    const copy = this.kept ?? this.#elsewhere;
    if (!copy) return false;
    const text = await keyOf(this.#host.page).catch(() => null);
    const isOther = text !== null && digestOf(text) !== copy.digest;
    if (this.kept) {
      this.outdated = isOther;
      return false;
    }
    if (text === null || isOther || this.#trial || this.#elsewhere !== copy) return false;
    this.letGo();
    this.kept = copy;
    return true;
  }

  /** Works out what a copy lacks that was kept too early. */
  finish(): void {
    if (this.kept?.unfinished) this.trial().catch(() => undefined);
  }

  /** The book as it stands, without the planners. */
  async doc(): Promise<BookDoc> {
    if (this.#open) return this.#open.toJSON();
    if (this.kept) return this.kept.book;
    if (this.#doc) return this.#doc;
    this.#reading ??= this.#read();
    const mine = this.#reading;
    try {
      const doc = await mine;
      if (this.#reading === mine) this.#doc = doc;
      return doc;
    } finally {
      if (this.#reading === mine) this.#reading = null;
    }
  }

  async #read(): Promise<BookDoc> {
    const source = await sourceOf(this.#host.page);
    this.#source = source;
    return asDoc(source.text);
  }

  /** What editing a cell begins with: as written, where the data is there to be asked. */
  typed(row: string, column: string): string | null {
    if (this.#open) return this.#open.typed(row, column);
    const script = this.kept || this.#doc ? null : dataScriptOf(this.#host.page);
    if (script) this.#doc = asDoc(script.textContent);
    const { sheets, page_table }: Partial<PageTableDoc> = this.kept?.book ?? this.#doc ?? {};
    const raw = sheets?.[this.#host.page.sheet]?.rows[row]?.cells[column];
    if (raw === undefined || String(raw).startsWith('=')) return null;
    return typedText(raw, page_table?.language);
  }

  /** Gets what works the figures out; called as soon as a reader seems about to try something. */
  trial(): Promise<Trial> {
    this.#trial ??= this.#openTrial().catch((error: unknown) => {
      this.#trial = null;
      throw error;
    });
    return this.#trial;
  }

  async #openTrial(): Promise<Trial> {
    const doc = await this.doc();
    const { openTrial, speakAs } = await import('./trial.js');
    await speakAs(saidIn());
    const opened = openTrial(doc, {
      sheet: this.#host.page.sheet,
      engineLicenceKey: this.#host.page.engineLicenceKey,
    });
    if (!opened.ok) throw new Error(`${opened.problem.message} ${opened.problem.mend}`.trim());
    const trial = opened.value;
    this.#open = trial;
    this.#tried = this.kept?.unfinished === true;
    trial.onRows((rows, { changes }) => {
      this.#host.follow(rows);
      this.#tried ||= changes.length > 0;
      if (!this.#tried) return;
      // Figures that are worked out after what was tried are kept with it, too.
      this.#touched = true;
      this.keepSoon();
    });
    return trial;
  }

  /** What works the figures out says them in the language spoken here now. */
  speakAnew(): void {
    if (this.#open) void import('./trial.js').then(({ speakAs }) => speakAs(saidIn()));
  }

  /** Writes what a reader typed; answers what is wrong with it, if anything is. */
  async write({ row, column, text }: Entry): Promise<Problem | undefined> {
    const trial = await this.trial();
    if (trial.typed(row, column) === text) return undefined;
    return trial.set(row, column, text);
  }

  cell(row: string, column: string): EmbedCell | undefined {
    return this.#open?.cell(row, column);
  }

  undo(): void {
    this.#open?.live.undo();
  }

  /** A copy that came about elsewhere: in the grid, or brought back. */
  take(book: BookDoc, table: ShownTable): void {
    this.letGo();
    this.#keep(book, table);
  }

  /** Back to the page's own data; answers the copy that was. */
  startOver(): KeptCopy | null {
    this.keepNow();
    const was = this.kept;
    this.letGo();
    this.kept = null;
    this.outdated = false;
    if (this.#host.page.keepName !== null) dropKept(this.#host.page.keepName, was?.page ?? location.pathname);
    return was;
  }

  keepSoon(): void {
    clearTimeout(this.#saving);
    this.#saving = setTimeout(() => this.keepNow(), 250);
  }

  keepNow(): void {
    clearTimeout(this.#saving);
    const trial = this.#open;
    if (!trial || !this.#touched) return;
    this.#touched = false;
    const { columns, open, rows } = this.#host.shape;
    this.#keep(trial.toJSON(), trial.table(columns, open, rows), !trial.isWorkedOut);
  }

  letGo(): void {
    clearTimeout(this.#saving);
    this.#open?.close();
    this.#open = null;
    this.#trial = null;
    this.#doc = null;
    this.#reading = null;
    this.#tried = false;
  }

  #keep(book: BookDoc, table: ShownTable, unfinished = false): void {
    const { keepName } = this.#host.page;
    const { digest: before, page = location.pathname } = this.kept ?? {};
    this.kept = { digest: before ?? '', book, table, page, ...(unfinished && { unfinished }) };
    void (
      before ? Promise.resolve(before) : keyOf(this.#host.page).then((text) => digestOf(text ?? ''))
    ).then(
      (digest) => {
        if (!this.kept) return;
        this.kept = { ...this.kept, digest };
        this.keeps = keepName !== null && writeKept(keepName, this.kept);
        this.#host.follow(new Set());
      },
      () => {
        this.keeps = false;
      },
    );
  }
}

/** The data as read; what is no book says so when it is opened. */
function asDoc(text: string | null): BookDoc {
  try {
    return JSON.parse(text ?? '') as BookDoc;
  } catch {
    throw new Error(say`The data of this table cannot be read.`);
  }
}
