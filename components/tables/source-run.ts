import type { ReactiveController, ReactiveControllerHost } from 'lit';
import type { Problem } from '../../src/problem.js';
import { type Metadata, readMetadata } from '../../src/tables/csvw-read.js';
import { guessHeader } from '../../src/tables/guess.js';
import {
  firstChoices,
  type OpenedFile,
  openFile,
  openText,
  readText,
  type TextChoices,
} from '../../src/tables/open-file.js';
import type { SourceTable } from '../../src/tables/types.js';
import { readWorksheet } from '../../src/tables/workbook-read.js';
import { phrase } from '../../src/words/index.js';

/** What is being done just now that takes time; `share` from 0 to 1. */
export interface Busy {
  readonly what: 'reading' | 'bringing in';
  readonly share: number;
}

/** Opening a file and reading its table, a slice at a time: the first half of bringing it in. */
export abstract class SourceRun implements ReactiveController {
  protected readonly host: ReactiveControllerHost;
  #stop = new AbortController();

  opened: OpenedFile | null = null;
  choices: TextChoices | null = null;
  worksheet = 0;
  table: SourceTable | null = null;
  busy: Busy | null = null;
  problem: Problem | null = null;
  /** The file that turned out to be a whole book. */
  book: File | null = null;
  protected metadata: Metadata | undefined;
  #fileName = '';

  constructor(host: ReactiveControllerHost) {
    this.host = host;
    host.addController(this);
  }

  /** Decides what is done with the table that was read. */
  protected abstract decide(place: null, header: boolean): Promise<void>;

  /** Forgets what was decided. */
  protected abstract forget(): void;

  hostDisconnected(): void {
    this.stop();
  }

  /** What the table is called, for titles and for undo. */
  get name(): string {
    return this.#fileName || (this.opened?.name ?? '');
  }

  get described(): boolean {
    return this.metadata !== undefined;
  }

  /** Stops what is being done. */
  stop(): void {
    this.#stop.abort();
    this.busy = null;
    this.host.requestUpdate();
  }

  async take(files: readonly File[]): Promise<void> {
    this.reset();
    // Beside a table may lie a file that describes it.
    const beside = files.length > 1 ? files.find(({ name }) => /\.json$/i.test(name)) : undefined;
    const file = files.find((each) => each !== beside);
    if (!file) return;
    this.#fileName = file.name;
    const signal = this.begin('reading');
    const opened = await openFile(new Uint8Array(await file.arrayBuffer()), file.name);
    if (signal.aborted) return;
    if (beside) {
      const metadata = readMetadata(await beside.text(), file.name);
      if (!metadata.ok) return this.refuse(metadata.problem);
      this.metadata = metadata.value;
    }
    if (!opened.ok) {
      this.book = opened.problem.code === 'is-a-book' ? file : null;
      return this.refuse(opened.problem);
    }
    this.opened = opened.value;
    await this.#first(opened.value);
  }

  async takeText(text: string): Promise<void> {
    this.reset();
    const opened = openText(text);
    if (!opened.ok) return this.refuse(opened.problem);
    this.opened = opened.value;
    await this.#first(opened.value);
  }

  reset(): void {
    this.stop();
    Object.assign(this, { opened: null, table: null, problem: null, book: null });
    this.forget();
    this.metadata = undefined;
    this.#fileName = '';
    this.worksheet = 0;
    this.choices = null;
  }

  async read(choices: Partial<TextChoices>): Promise<void> {
    if (!this.opened || !this.choices) return;
    this.choices = { ...this.choices, ...choices };
    await this.#read();
  }

  async readWorksheet(index: number): Promise<void> {
    this.worksheet = index;
    await this.#read();
  }

  async #first(opened: OpenedFile): Promise<void> {
    if (opened.form === 'workbook') {
      const shown = opened.workbook.worksheets.find(({ hidden }) => !hidden);
      this.worksheet = shown?.index ?? 0;
    } else this.choices = firstChoices(opened, this.metadata);
    await this.#read();
  }

  async #read(): Promise<void> {
    const { opened, choices } = this;
    if (!opened) return;
    const signal = this.begin('reading');
    this.problem = null;
    const read =
      opened.form === 'workbook'
        ? await readWorksheet(opened.workbook, this.worksheet)
        : await readText(opened, choices!, { signal, onProgress: this.progress('reading', signal) });
    if (signal.aborted || read === null) return;
    if (!read.ok) {
      this.table = null;
      this.forget();
      return this.refuse(read.problem);
    }
    if (read.value.rows.length === 0) {
      this.table = null;
      this.forget();
      return this.refuse({
        code: 'file-empty',
        message: phrase('This worksheet has nothing in it.'),
        mend: phrase('Choose another worksheet or another file.'),
      });
    }
    this.table = read.value;
    await this.decide(null, this.metadata?.header ?? guessHeader(read.value.rows));
  }

  protected begin(what: Busy['what']): AbortSignal {
    this.#stop.abort();
    this.#stop = new AbortController();
    this.busy = { what, share: 0 };
    this.host.requestUpdate();
    return this.#stop.signal;
  }

  protected progress(what: Busy['what'], signal: AbortSignal): (share: number) => void {
    return (share) => {
      if (signal.aborted) return;
      this.busy = { what, share };
      this.host.requestUpdate();
    };
  }

  protected refuse(problem: Problem): void {
    this.busy = null;
    this.problem = problem;
    this.host.requestUpdate();
  }
}
