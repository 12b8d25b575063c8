/** Formulas of one task: one for every row, or what stands in each. As typed. */
export interface KeptFormulas {
  readonly every?: string;
  readonly cells?: Readonly<Record<string, string>>;
}

/** What a pupil wrote in one lesson. */
export interface Work {
  readonly level?: number;
  readonly seed?: string;
  /** By the question’s text in English: a book that has changed since asks other questions. */
  readonly answers: Readonly<Record<string, { readonly typed: string; readonly steps: number }>>;
  /** By task. */
  readonly formulas: Readonly<Record<string, KeptFormulas>>;
}

const NOTHING: Work = { answers: {}, formulas: {} };
/** Sheets and lessons write into one place of their own; a lesson’s work is small. */
const MOST = 200_000;

type Plain = Readonly<Record<string, unknown>>;
const plain = (value: unknown): Plain =>
  typeof value === 'object' && value !== null && !Array.isArray(value) ? (value as Plain) : {};
const text = (value: unknown): string => (typeof value === 'string' ? value.slice(0, 400) : '');

const texts = (value: unknown): Record<string, string> =>
  Object.fromEntries(Object.entries(plain(value)).map(([key, each]) => [key, text(each)]));

/** What is stored may be of another version, or of somebody else: what does not fit counts as not written. */
function read(json: string): Work {
  const { level, seed, answers, formulas } = plain(JSON.parse(json));
  return {
    ...(typeof level === 'number' && { level }),
    ...(typeof seed === 'string' && { seed }),
    answers: Object.fromEntries(
      Object.entries(plain(answers)).map(([question, each]) => {
        const { typed, steps } = plain(each);
        return [question, { typed: text(typed), steps: Number.isInteger(steps) ? Number(steps) : 0 }];
      }),
    ),
    formulas: Object.fromEntries(
      Object.entries(plain(formulas)).map(([task, each]) => {
        const { every, cells } = plain(each);
        return [task, { ...(typeof every === 'string' && { every: text(every) }), cells: texts(cells) }];
      }),
    ),
  };
}

/**
 * A pupil’s work on one lesson, in this browser's `localStorage`: apart from the book, and from other lessons. In
 * a frame without storage it lasts as long as the page.
 */
export class KeptWork {
  readonly #place: string;
  #work: Work;

  /** `lesson` blank: it lasts as long as the page. */
  constructor(book: string, lesson: string) {
    this.#place = lesson === '' ? '' : `croft-lesson:${book}:${lesson}`;
    this.#work = NOTHING;
    if (this.#place === '') return;
    try {
      const json = localStorage.getItem(this.#place);
      if (json !== null) this.#work = read(json);
    } catch {
      // No storage here, or nothing that can be read in it.
    }
  }

  get work(): Work {
    return this.#work;
  }

  get isBlank(): boolean {
    return Object.keys(this.#work.answers).length === 0 && Object.keys(this.#work.formulas).length === 0;
  }

  write(part: Partial<Work>): void {
    this.#work = { ...this.#work, ...part };
    const json = JSON.stringify(this.#work);
    try {
      if (this.#place !== '' && json.length <= MOST) localStorage.setItem(this.#place, json);
    } catch {
      // It lasts as long as the page.
    }
  }

  writeFormulas(task: string, written: KeptFormulas): void {
    this.write({ formulas: { ...this.#work.formulas, [task]: written } });
  }

  clear(): void {
    this.#work = NOTHING;
    try {
      if (this.#place !== '') localStorage.removeItem(this.#place);
    } catch {
      // Nothing was kept.
    }
  }
}
