import type { BookChange, LiveBook } from '../../src/live/live-book.js';
import type { Problem } from '../../src/problem.js';
import { say } from '../../src/words/index.js';

/** The formula engine of one open book: loaded once, when something must be worked out. */
export class BookEngine {
  readonly #live: LiveBook;
  readonly #licenceKey: () => string;
  readonly #loaded: (problem: Problem | undefined) => void;
  #loading: Promise<void> | null = null;
  #ready = false;
  #closed = false;

  /** `loaded` hears what stood in the way, if anything did; nothing once the book is closed. */
  constructor(live: LiveBook, licenceKey: () => string, loaded: (problem: Problem | undefined) => void) {
    this.#live = live;
    this.#licenceKey = licenceKey;
    this.#loaded = loaded;
  }

  /** False while formulas wait for it. */
  get ready(): boolean {
    return this.#ready;
  }

  /** Loads it unless it is there or on its way; after a failure, anew. */
  ensure(): Promise<void> {
    this.#loading ??= giveEngine(this.#live, this.#licenceKey(), () => !this.#closed).then((problem) => {
      if (this.#closed) return;
      this.#ready = problem === undefined;
      if (problem) this.#loading = null;
      this.#loaded(problem);
    });
    return this.#loading;
  }

  /** Loads it where a change brings a formula in. */
  heed(change: BookChange): void {
    if (!this.#loading && bringsFormula(change)) void this.ensure();
  }

  close(): void {
    this.#closed = true;
  }
}

/** Loads the formula engine and gives it to the book; answers what stands in the way, if anything does. */
export async function giveEngine(
  live: LiveBook,
  licenceKey: string,
  stillOpen: () => boolean,
): Promise<Problem | undefined> {
  try {
    const { HyperFormulaEngine } = await import('../../src/engine/hyperformula-engine.js');
    if (!stillOpen()) return undefined;
    const { asOf, basis } = live.household;
    live.attachEngine(new HyperFormulaEngine({ asOf, basis }, licenceKey));
    return undefined;
  } catch {
    return {
      code: 'engine-not-loaded',
      message: say`Formulas could not be loaded, so cells with formulas stay blank.`,
      mend: say`Check the connection, then load the page again. Everything else works.`,
    };
  }
}

/** Whether changes bring a formula into a book: asked instead of looking through all of its cells each time. */
const bringsFormula = ({ changes }: BookChange): boolean => changes.some(({ to }) => holdsFormula(to));

function holdsFormula(value: unknown): boolean {
  if (typeof value === 'string') return value.startsWith('=');
  return typeof value === 'object' && value !== null && Object.values(value).some(holdsFormula);
}
