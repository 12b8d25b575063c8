import type { BookChange, LiveBook } from '../../src/live/live-book.js';
import { formulasFeedPlan, WhatIfTrial } from '../../src/live/what-if-trial.js';
import type { Problem } from '../../src/problem.js';
import type { CroftBook } from '../book/croft-book.js';
import type { BookEvents } from '../book/events.js';
import { BookCopy } from './book-copy.js';

const EVENTS = [
  'croft-ready',
  'croft-change',
  'croft-status',
  'croft-problem',
  'croft-conflicts',
  'croft-select',
];

/** Opens a copy of a book, keeps it up with the book, and holds what is tried on it. */
export class OwnCopy {
  readonly book = new BookCopy();
  readonly #tell: () => void;
  #of: LiveBook | null = null;
  #trial: WhatIfTrial | null = null;
  /** What happened to the book while its copy was being opened. */
  #meanwhile: BookChange[] = [];
  #problems: readonly Problem[] = [];

  /** `tell` is called when the copy is open, changed, or could not be opened. */
  constructor(tell: () => void) {
    this.#tell = tell;
    // What happens to the copy is no business of the page around the book.
    for (const name of EVENTS) this.book.addEventListener(name, (event) => event.stopPropagation());
    this.book.addEventListener('croft-ready', () => this.#opened());
    this.book.addEventListener('croft-change', () => this.#tell());
    this.book.addEventListener('croft-problem', (event) => {
      this.#problems = (event as BookEvents['croft-problem']).detail.problems;
      this.#tell();
    });
  }

  get trial(): WhatIfTrial | null {
    return this.#trial;
  }

  get problems(): readonly Problem[] {
    return this.#problems;
  }

  /** True once there is a book to copy. */
  get isBegun(): boolean {
    return this.#of !== null;
  }

  /** Copies this book unless it is the one that is copied already. */
  of(book: CroftBook | null, shownWithFormulas: boolean): void {
    const live = book?.live ?? null;
    if (book && live && shownWithFormulas && !this.book.followsFormulas) {
      this.book.followsFormulas = true;
      if (this.book.live?.needsEngine) void this.book.ensureEngine();
    }
    if (live === this.#of) return;
    this.#of = live;
    this.#trial = null;
    this.#meanwhile = [];
    this.#problems = [];
    if (!book || !live) return;
    this.book.original = book;
    this.book.engineLicenceKey = book.engineLicenceKey;
    this.book.followsFormulas = shownWithFormulas || formulasFeedPlan(live);
    this.book.book = live.toJSON();
  }

  /** The book changed. */
  follow(change: BookChange): void {
    if (change.changes.length === 0) return;
    if (this.#trial) this.#trial.follow(change);
    else this.#meanwhile.push(change);
  }

  #opened(): void {
    const copy = this.book.live;
    if (!this.#of || !copy) return;
    this.#trial = new WhatIfTrial(this.#of, copy);
    for (const change of this.#meanwhile) this.#trial.follow(change);
    this.#meanwhile = [];
    this.#tell();
  }
}
