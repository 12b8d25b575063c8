import type { ReactiveControllerHost } from 'lit';
import type { LiveBook } from '../../src/live/live-book.js';
import { type BroughtIn, bringIn } from '../../src/tables/bring-in.js';
import { guessReadings } from '../../src/tables/guess.js';
import { likeliestSheet } from '../../src/tables/match.js';
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
import type { Reading } from '../../src/tables/types.js';
import { say } from '../../src/words/index.js';
import { SourceRun } from './source-run.js';

/** Bringing a table in, from the file to the book: what was opened, what is decided, and how far it is. */
export class ImportRun extends SourceRun {
  protected readonly live: () => LiveBook | null;
  plan: ImportPlan | null = null;
  settled: SettledImport | null = null;
  #guesses: readonly Reading[] = [];

  constructor(host: ReactiveControllerHost, live: () => LiveBook | null) {
    super(host);
    this.live = live;
  }

  protected override forget(): void {
    this.plan = null;
    this.settled = null;
  }

  setHeader(header: boolean): Promise<void> {
    return this.decide(this.plan?.place ?? null, header);
  }

  setPlace(place: ImportPlan['place']): Promise<void> {
    return this.decide(place, this.plan?.header ?? true);
  }

  /** The title of a new sheet, which changes nothing else. */
  setTitle(newSheet: string): void {
    if (this.plan) this.plan = { ...this.plan, place: { newSheet } };
    this.host.requestUpdate();
  }

  setTarget(index: number, target: Target): Promise<void> {
    const live = this.live();
    if (!live || !this.plan) return Promise.resolve();
    return this.#settle(withTarget(live, this.plan, index, target, this.guessed(index)));
  }

  setReading(index: number, change: Partial<Reading>): Promise<void> {
    return this.#change(index, (each) => {
      const reading = { ...each.reading, ...change };
      // A column that was taken for text may be full of numbers all the same: they tell how they are written.
      if (change.type === 'number') {
        const { decimalComma } = this.guessed(index);
        return { ...each, reading: { ...reading, decimalComma, choices: [] } };
      }
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
    this.host.requestUpdate();
  }

  /** What the cells of a column tell of it, whatever has been decided. */
  guessed(index: number): Reading {
    return (
      this.#guesses[index] ?? { type: 'text', dateOrder: 'month first', decimalComma: false, choices: [] }
    );
  }

  /** Brings it in; null where it was stopped or refused, and then nothing is changed. */
  async bring(): Promise<BroughtIn | null> {
    const live = this.live();
    if (!live || !this.plan || !this.settled) return null;
    const signal = this.begin('bringing in');
    const done = await bringIn(live, this.plan, this.settled, say`import of ${this.name}`, {
      signal,
      onProgress: this.progress('bringing in', signal),
    });
    if (signal.aborted || done === null) return null;
    this.busy = null;
    if (done.ok) return done.value;
    this.refuse(done.problem);
    return null;
  }

  /** Plans anew; with no place given, where the table most likely goes. */
  protected override async decide(place: ImportPlan['place'] | null, header: boolean): Promise<void> {
    const live = this.live();
    if (!live || !this.table) return;
    const semicolons = this.choices?.separator === ';';
    const signal = this.begin('reading');
    const guesses = await inSlices(
      guessReadings(header ? this.table.rows.slice(1) : this.table.rows, {
        dateOrder: dateOrderOf(live),
        semicolons,
      }),
      { signal, onProgress: this.progress('reading', signal) },
    );
    if (guesses === null || signal.aborted) return;
    this.#guesses = guesses;
    const hints = { semicolons, metadata: this.metadata?.columns, guesses };
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
    const signal = this.begin('reading');
    const settled = await inSlices(settleImport(this.table, plan), {
      signal,
      onProgress: this.progress('reading', signal),
    });
    if (signal.aborted || settled === null) return;
    this.settled = settled;
    this.busy = null;
    this.host.requestUpdate();
  }
}
