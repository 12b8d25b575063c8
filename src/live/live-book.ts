import {
  type BookDoc,
  type CellAddress,
  type Change,
  type Command,
  describe,
  History,
  inverse,
  type Outcome,
  perform,
  put,
} from '../book/index.js';
import type { CalcEngine } from '../engine/calc-engine.js';
import type { DayNumber } from '../planning/types.js';
import type { Problem } from '../problem.js';
import { onLanguage, say } from '../words/index.js';
import { type BookChange, bookChange } from './book-change.js';
import { BookEditing } from './book-editing.js';
import { takesOneValue } from './engine-sync.js';
import { todayHere } from './household.js';
import type { KnownFigures } from './known-figures.js';
import { type AllottedAsStored, allottedAsStored, forgotten, postings } from './post-draws.js';
import { makeStillOurs } from './still-ours.js';
import { BROKE_DOWN, figuresLeft } from './unforeseen.js';

export type { BookChange } from './book-change.js';

export interface LiveBookOptions {
  /** Needed for own formulas; without it they show as pending until `attachEngine`. */
  readonly engine?: CalcEngine;
  /** Today as a day number; the device's civil day unless given. */
  readonly today?: () => DayNumber;
  /** Work figures out only when `workOut` is called or something needs one; else that is done at once. */
  readonly later?: boolean;
  /** Figures that the page shows already, for what paints cells before they are worked out. */
  readonly known?: KnownFigures;
}

type Listener = (change: BookChange) => void;

/**
 * A book that is open: it takes commands, lets the engine recalculate, runs the planners, and says what
 * changed. Knows no grid, no page and no storage.
 */
export class LiveBook extends BookEditing {
  readonly #history = new History();
  readonly #listeners = new Set<Listener>();
  readonly #unheed = this.#heedLanguage();

  constructor(
    doc: BookDoc,
    { engine, today = () => todayHere(), later = false, known }: LiveBookOptions = {},
  ) {
    super(doc, today, known);
    if (engine) this.settling.attach(engine);
    else if (!later) this.settling.planFirst();
  }

  /** Works the figures out, unless they are; what was painted without them hears of it. */
  workOut(): void {
    void this.settling.plan;
  }

  get undoLabel(): string | undefined {
    return this.#history.undoLabel;
  }

  get redoLabel(): string | undefined {
    return this.#history.redoLabel;
  }

  attachEngine(engine: CalcEngine): void {
    this.workOut();
    this.#tell('engine', [], this.settling.attach(engine), say`formulas are ready`);
  }

  /**
   * Does what a command says, or refuses with the reason and changes nothing. Never throws: what nobody
   * foresaw is taken back and refused like anything else.
   */
  apply(command: Command): Outcome {
    const bench = { state: this.state, layout: this.layout, takesOne: takesOneValue };
    const label = describe(command);
    let written: readonly Change[] = [];
    let cells: readonly CellAddress[];
    let notes: readonly Problem[];
    try {
      this.workOut();
      const done = perform(command, bench);
      if (!done.ok) return done;
      notes = done.value.notes;
      written = done.value.changes;
      const stays = allottedAsStored(command, written);
      const stale = forgotten(this.state, this.settling.plan, written, stays);
      put(stale, bench);
      written = [...written, ...stale];
      cells = this.settling.settle(written);
      const posted = postings(this.state, this.settling.plan, written, stays);
      if (posted.length > 0) {
        put(posted, bench);
        written = [...written, ...posted];
        cells = [...cells, ...this.settling.settle(posted)];
      }
    } catch (error) {
      put(inverse(written), bench);
      this.#workOutAnew();
      return { ok: false, problem: figuresLeft(label, error) };
    }
    this.#history.add(label, written);
    if (written.length > 0) this.#tell('local', written, cells, label);
    return { ok: true, changes: written, notes };
  }

  undo(): boolean {
    return this.#replay('undo');
  }

  redo(): boolean {
    return this.#replay('redo');
  }

  /** The last `count` steps become one of undo, called `label`: for work that is done in parts. */
  joinSteps(count: number, label: string): void {
    this.#history.join(count, label);
  }

  /** Nothing can be done again: for work that was broken off and taken back. */
  forgetUndone(): void {
    this.#history.forgetUndone();
  }

  /** Changes from another copy of the book: shown, but not this copy's to undo. */
  applyRemote(changes: readonly Change[]): void {
    if (changes.length === 0) return;
    this.workOut();
    put(changes, { state: this.state, layout: this.layout });
    this.#settleAndTell('remote', changes, say`change from another copy`, []);
  }

  /** To be called when the day may have turned: figures for 'today' follow. */
  refreshDay(): void {
    this.workOut();
    const { asOf } = this.household;
    const cells = this.settling.settle([]);
    if (cells.length > 0 || this.household.asOf !== asOf) this.#tell('engine', [], cells, say`a new day`);
  }

  on(_event: 'change', listener: Listener): () => void {
    this.#listeners.add(listener);
    return () => this.#listeners.delete(listener);
  }

  /** Lets the engine go. The book answers no more. */
  close(): void {
    this.#unheed();
    this.#listeners.clear();
    this.settling.close();
  }

  /** A book that somebody let go without closing it is not held for the sake of a language. */
  #heedLanguage(): () => void {
    const weak = new WeakRef(this);
    const unheed = onLanguage(() => {
      const live = weak.deref();
      if (live) live.#sayAnew();
      else unheed();
    });
    return unheed;
  }

  /** A step back or forth. What another copy has changed since is not written over: a note says so. */
  #replay(which: 'undo' | 'redo'): boolean {
    this.workOut();
    const label = (which === 'undo' ? this.#history.undoLabel : this.#history.redoLabel) ?? which;
    const step = which === 'undo' ? this.#history.undo() : this.#history.redo();
    if (!step) return false;
    const bench = { state: this.state, layout: this.layout };
    const { changes, parted, notes } = makeStillOurs(this.state, step, label, (each) => put([each], bench));
    const draws = this.settling.plan.rows.sheet('draws')?.id;
    // What is stored of a draw of which only a part came back was allotted to neither of the two.
    const stays = (row: string): boolean => !parted.has(`${draws}/${row}`);
    const stale = forgotten(this.state, this.settling.plan, changes, stays);
    put(stale, bench);
    this.#settleAndTell(which, [...changes, ...stale], label, notes, stays);
    return true;
  }

  #settleAndTell(
    origin: 'undo' | 'redo' | 'remote',
    made: readonly Change[],
    label: string,
    notes: readonly Problem[],
    stays: AllottedAsStored = () => true,
  ): void {
    let changes = made;
    try {
      let cells = this.settling.settle(changes);
      const posted = postings(this.state, this.settling.plan, changes, stays);
      if (posted.length > 0) {
        put(posted, { state: this.state, layout: this.layout });
        changes = [...changes, ...posted];
        cells = [...cells, ...this.settling.settle(posted)];
      }
      this.#tell(origin, changes, cells, label, notes);
    } catch {
      // The change itself is made, here or elsewhere: it stays, and the figures are worked out from nothing.
      const anew = this.#workOutAnew();
      this.#tell(origin, changes, this.everyCell(), label, anew ? notes : [...notes, BROKE_DOWN]);
    }
  }

  /** Plans from nothing, after a planner broke off in the middle; false where it breaks off again. */
  #workOutAnew(): boolean {
    try {
      this.settling.startOver();
      return true;
    } catch {
      return false;
    }
  }

  /** Told when what asked has got its answer: that may be a view in the middle of painting. */
  protected override workedOut(): void {
    queueMicrotask(() => this.#tell('engine', [], this.everyCell(), say`figures are worked out`));
  }

  /** Another language is spoken: names, problems and workings are made anew, and every view shows them. */
  #sayAnew(): void {
    this.layout.forgetNames();
    if (this.settling.isPlanned) this.#workOutAnew();
    const sheets = this.sheets().map(({ id }) => id);
    this.#tell('engine', [], this.everyCell(), '', [], sheets);
  }

  #tell(
    origin: BookChange['origin'],
    changes: readonly Change[],
    cells: readonly CellAddress[],
    label: string,
    notes: readonly Problem[] = [],
    anew: readonly string[] = [],
  ): void {
    this.forgetReadings();
    const looked = this.lookedAnew(changes, cells);
    const event = bookChange(origin, changes, looked.length > 0 ? [...cells, ...looked] : cells, {
      label,
      notes,
      anew,
    });
    for (const listener of [...this.#listeners]) listener(event);
  }
}

/** Opens a book that `parseBook` has read. */
export const openBook = (book: BookDoc, options: LiveBookOptions = {}): LiveBook =>
  new LiveBook(book, options);
