import type { ReactiveController, ReactiveControllerHost } from 'lit';
import type { LiveBook } from '../../src/live/live-book.js';
import type { Problem } from '../../src/problem.js';
import { type BroughtIn, bringIn } from '../../src/tables/bring-in.js';
import { type Metadata, readMetadata } from '../../src/tables/csvw-read.js';
import { guessHeader, guessReading } from '../../src/tables/guess.js';
import { likeliestSheet } from '../../src/tables/match.js';
import {
  firstChoices,
  type OpenedFile,
  openFile,
  openText,
  readText,
  type TextChoices,
} from '../../src/tables/open-file.js';
import {
  type ColumnPlan,
  dateOrderOf,
  freeTitle,
  type ImportPlan,
  planFor,
  type Target,
  withTarget,
} from '../../src/tables/plan.js';
import { type SettledImport, settleImport } from '../../src/tables/settle.js';
import { inSlices } from '../../src/tables/slices.js';
import type { Reading, SourceTable } from '../../src/tables/types.js';
import { readWorksheet } from '../../src/tables/workbook-read.js';

/** What is being done just now that takes time; `share` from 0 to 1. */
export interface Busy {
  readonly what: 'reading' | 'bringing in';
  readonly share: number;
}

/** A file handed over by the person: chosen, dropped, or pasted as text. */
export interface Handed {
  readonly files: readonly File[];
}

/** Bringing a table in, from the file to the book: what was opened, what is decided, and how far it is. */
export class ImportRun implements ReactiveController {
  readonly #host: ReactiveControllerHost;
  readonly #live: () => LiveBook | null;
  #stop = new AbortController();

  opened: OpenedFile | null = null;
  choices: TextChoices | null = null;
  worksheet = 0;
  table: SourceTable | null = null;
  plan: ImportPlan | null = null;
  settled: SettledImport | null = null;
  busy: Busy | null = null;
  problem: Problem | null = null;
  /** The file that turned out to be a whole book. */
  book: File | null = null;
  #metadata: Metadata | undefined;
  #fileName = '';

  constructor(host: ReactiveControllerHost, live: () => LiveBook | null) {
    this.#host = host;
    this.#live = live;
    host.addController(this);
  }

  hostDisconnected(): void {
    this.stop();
  }

  /** What the table is called, for titles and for undo. */
  get name(): string {
    return this.#fileName || (this.opened?.name ?? '');
  }

  get described(): boolean {
    return this.#metadata !== undefined;
  }

  /** Stops what is being done. */
  stop(): void {
    this.#stop.abort();
    this.busy = null;
    this.#host.requestUpdate();
  }

  async take(files: readonly File[]): Promise<void> {
    this.reset();
    // Beside a table may lie a file that describes it.
    const beside = files.length > 1 ? files.find(({ name }) => /\.json$/i.test(name)) : undefined;
    const file = files.find((each) => each !== beside);
    if (!file) return;
    this.#fileName = file.name;
    const signal = this.#begin('reading');
    const opened = await openFile(new Uint8Array(await file.arrayBuffer()), file.name);
    if (signal.aborted) return;
    if (beside) {
      const metadata = readMetadata(await beside.text(), file.name);
      if (!metadata.ok) return this.#refuse(metadata.problem);
      this.#metadata = metadata.value;
    }
    if (!opened.ok) {
      this.book = opened.problem.code === 'is-a-book' ? file : null;
      return this.#refuse(opened.problem);
    }
    this.opened = opened.value;
    await this.#first(opened.value);
  }

  async takeText(text: string): Promise<void> {
    this.reset();
    const opened = openText(text);
    if (!opened.ok) return this.#refuse(opened.problem);
    this.opened = opened.value;
    await this.#first(opened.value);
  }

  reset(): void {
    this.stop();
    Object.assign(this, { opened: null, table: null, plan: null, settled: null, problem: null, book: null });
    this.#metadata = undefined;
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

  setHeader(header: boolean): Promise<void> {
    return this.#decide(this.plan?.place ?? null, header);
  }

  setPlace(place: ImportPlan['place']): Promise<void> {
    return this.#decide(place, this.plan?.header ?? true);
  }

  /** The title of a new sheet, which changes nothing else. */
  setTitle(newSheet: string): void {
    if (this.plan) this.plan = { ...this.plan, place: { newSheet } };
    this.#host.requestUpdate();
  }

  setTarget(index: number, target: Target): Promise<void> {
    const live = this.#live();
    if (!live || !this.plan) return Promise.resolve();
    return this.#settle(withTarget(live, this.plan, index, target, this.guessed(index)));
  }

  setReading(index: number, change: Partial<Reading>): Promise<void> {
    return this.#change(index, (each) => {
      const reading = { ...each.reading, ...change };
      // Choices are listed anew when a column becomes one of choices.
      if (change.type === 'choice' && reading.choices.length === 0)
        return { ...each, reading: { ...reading, choices: this.guessed(index).choices } };
      return {
        ...each,
        reading: change.type && change.type !== 'choice' ? { ...reading, choices: [] } : reading,
      };
    });
  }

  setColumnTitle(index: number, title: string): void {
    if (!this.plan) return;
    const columns = this.plan.columns.map((each) =>
      each.index === index ? { ...each, target: { to: 'new', title } as const } : each,
    );
    this.plan = { ...this.plan, columns };
    this.#host.requestUpdate();
  }

  /** What the cells of a column tell of it, whatever has been decided. */
  guessed(index: number): Reading {
    const live = this.#live();
    const rows = this.table?.rows ?? [];
    return guessReading(this.plan?.header ? rows.slice(1) : rows, index, {
      dateOrder: live ? dateOrderOf(live) : 'month first',
      semicolons: this.choices?.separator === ';',
    });
  }

  /** Brings it in; null where it was stopped or refused, and then nothing is changed. */
  async bring(): Promise<BroughtIn | null> {
    const live = this.#live();
    if (!live || !this.plan || !this.settled) return null;
    const signal = this.#begin('bringing in');
    const done = await bringIn(live, this.plan, this.settled, `import of ${this.name}`, {
      signal,
      onProgress: this.#progress('bringing in', signal),
    });
    if (signal.aborted || done === null) return null;
    this.busy = null;
    if (done.ok) return done.value;
    this.#refuse(done.problem);
    return null;
  }

  async #first(opened: OpenedFile): Promise<void> {
    if (opened.form === 'workbook') {
      const shown = opened.workbook.worksheets.find(({ hidden }) => !hidden);
      this.worksheet = shown?.index ?? 0;
    } else this.choices = firstChoices(opened, this.#metadata);
    await this.#read();
  }

  async #read(): Promise<void> {
    const { opened, choices } = this;
    if (!opened) return;
    const signal = this.#begin('reading');
    this.problem = null;
    const read =
      opened.form === 'workbook'
        ? await readWorksheet(opened.workbook, this.worksheet)
        : await readText(opened, choices!, { signal, onProgress: this.#progress('reading', signal) });
    if (signal.aborted || read === null) return;
    if (!read.ok) {
      Object.assign(this, { table: null, plan: null, settled: null });
      return this.#refuse(read.problem);
    }
    if (read.value.rows.length === 0) {
      Object.assign(this, { table: null, plan: null, settled: null });
      return this.#refuse({
        code: 'file-empty',
        message: 'This worksheet has nothing in it.',
        mend: 'Choose another worksheet or another file.',
      });
    }
    this.table = read.value;
    await this.#decide(null, this.#metadata?.header ?? guessHeader(read.value.rows));
  }

  /** Plans anew; with no place given, where the table most likely goes. */
  async #decide(place: ImportPlan['place'] | null, header: boolean): Promise<void> {
    const live = this.#live();
    if (!live || !this.table) return;
    const hints = { semicolons: this.choices?.separator === ';', metadata: this.#metadata?.columns };
    const fresh = {
      newSheet: freeTitle(
        live,
        this.opened?.form === 'workbook' ? this.table.name : this.name.replace(/\.[^.]{1,12}$/, ''),
      ),
    };
    const first = planFor(live, this.table, header, place ?? fresh, hints);
    if (place) return this.#settle(first);
    const sheets = live.sheets().map(({ id }) => ({ id, columns: live.columns(id) }));
    const sheet = likeliestSheet(
      first.columns.map(({ heading }) => heading),
      sheets,
    );
    await this.#settle(sheet === null ? first : planFor(live, this.table, header, { sheet }, hints));
  }

  #change(index: number, to: (column: ColumnPlan) => ColumnPlan): Promise<void> {
    if (!this.plan) return Promise.resolve();
    const columns = this.plan.columns.map((each) => (each.index === index ? to(each) : each));
    return this.#settle({ ...this.plan, columns });
  }

  async #settle(plan: ImportPlan): Promise<void> {
    if (!this.table) return;
    this.plan = plan;
    this.settled = null;
    this.problem = null;
    const signal = this.#begin('reading');
    const settled = await inSlices(settleImport(this.table, plan), {
      signal,
      onProgress: this.#progress('reading', signal),
    });
    if (signal.aborted || settled === null) return;
    this.settled = settled;
    this.busy = null;
    this.#host.requestUpdate();
  }

  #begin(what: Busy['what']): AbortSignal {
    this.#stop.abort();
    this.#stop = new AbortController();
    this.busy = { what, share: 0 };
    this.#host.requestUpdate();
    return this.#stop.signal;
  }

  #progress(what: Busy['what'], signal: AbortSignal): (share: number) => void {
    return (share) => {
      if (signal.aborted) return;
      this.busy = { what, share };
      this.#host.requestUpdate();
    };
  }

  #refuse(problem: Problem): void {
    this.busy = null;
    this.problem = problem;
    this.#host.requestUpdate();
  }
}
