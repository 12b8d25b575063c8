import {
  type BookNumbers,
  checkAnswer,
  type Lesson,
  type Level,
  makeSheet,
  readNumbers,
} from '../../src/lessons/index.js';
import type { LiveBook } from '../../src/live/live-book.js';
import type { Problem } from '../../src/problem.js';
import { spokenTag } from '../../src/words/index.js';
import { KeptWork, type Work } from './kept-work.js';
import { type Asked, asked } from './question-view.js';
import { questionsIn } from './written-questions.js';

/** What a sheet is made from. */
export interface SheetFrom {
  /** The element, for questions that a page writes inside it. */
  readonly host: Element;
  readonly lesson: Lesson | null;
  readonly live: LiveBook | null;
  readonly topics: readonly string[];
  readonly level: Level;
  readonly seed: string;
  readonly count: number;
  /** Units are to be written with the answers. */
  readonly writeUnits: boolean;
}

/** Answers to other sheets that are kept beside those of this one. */
const MOST_OTHERS = 200;

/** The questions of a sheet, and what somebody wrote and found out at them. */
export class LessonWork {
  asked: readonly Asked[] = [];
  /** What stood in the way of more. */
  notes: readonly Problem[] = [];
  /** Why the page's own questions could not be read. */
  problems: readonly Problem[] = [];
  /** The numbers it was drawn from; null where it needs no book. */
  numbers: BookNumbers | null = null;
  /** Where it is kept; null: as long as the page lasts. */
  kept: KeptWork | null = null;
  #keptAt = '';
  #from = '';
  /** The language in which its questions are said. */
  #language = '';
  #writesUnits = false;
  /** What was written before it was all blanked. */
  #cleared: Work | null = null;

  /** Takes up what was written under this name; answers the level and the seed at which it was left, once. */
  keepAs(book: string, name: string): Pick<Work, 'level' | 'seed'> {
    const at = `${book}:${name}`;
    if (at === this.#keptAt) return {};
    this.#keptAt = at;
    this.kept = name === '' ? null : new KeptWork(book, name);
    return this.kept?.work ?? {};
  }

  /** Draws the sheet when what it is made from is another; one that somebody works at stays. True where it is new. */
  make(from: SheetFrom): boolean {
    const { host, lesson, live, topics, level, seed, count, writeUnits } = from;
    if (topics.length > 0 && !live) return false;
    const wanted = JSON.stringify([topics, level, seed, count, lesson?.id, live?.id]);
    const isSame = wanted === this.#from;
    if (isSame && this.#language === spokenTag()) return false;
    this.#from = wanted;
    this.#language = spokenTag();
    // Said in another language it is the same sheet: what was written stays.
    const before = isSame ? this.asked : [];
    this.#writesUnits = writeUnits;
    if (!isSame) this.#cleared = null;
    const own = questionsIn(host);
    this.problems = own.problems;
    this.numbers = live && topics.length > 0 ? readNumbers(live) : null;
    const { forms, questions = [] } = lesson ?? {};
    const sheet = this.numbers
      ? makeSheet(this.numbers, { topics, level, seed, count, ...(forms && { forms }) })
      : { problems: [], notes: [] };
    this.notes = sheet.notes;
    this.asked = [...questions, ...own.questions, ...sheet.problems].map(asked);
    this.#takeUp(before);
    return true;
  }

  /** The next `make` draws it anew. */
  forget(): void {
    this.#from = '';
  }

  /** True where what was written was blanked, and can come back. */
  get isCleared(): boolean {
    return this.#cleared !== null;
  }

  get isBegun(): boolean {
    return this.asked.some(({ typed, steps }) => typed !== '' || steps > 0);
  }

  get right(): number {
    return this.asked.filter(({ checked }) => checked?.kind === 'right').length;
  }

  type(at: number, typed: string): void {
    const each = this.asked[at];
    if (!each) return;
    each.typed = typed;
    // What was said of the answer before is said no more.
    each.checked = null;
    this.#cleared = null;
    this.#keep();
  }

  check(at: number): Asked['checked'] {
    const each = this.asked[at];
    if (!each) return null;
    each.checked = checkAnswer(each.problem.key, each.typed, { writeUnits: this.#writesUnits });
    return each.checked;
  }

  /** The next step of the working, in words. */
  hint(at: number): string {
    const each = this.asked[at];
    if (!each || each.steps >= each.problem.steps.length) return '';
    each.steps++;
    this.#keep();
    return each.problem.steps[each.steps - 1] ?? '';
  }

  /** Everything that was written goes, or comes back: the first is taken back by the second. */
  clearOrBringBack(): void {
    const before = this.#cleared;
    this.#cleared = before ? null : (this.kept?.work ?? null);
    this.kept?.write(before ?? { answers: {}, formulas: {} });
    for (const each of this.asked) Object.assign(each, { typed: '', checked: null, steps: 0 });
    this.#takeUp();
  }

  /** What is kept of answers to these questions. Whether it was right is not kept, so it is checked again. */
  #takeUp(there: readonly Asked[] = []): void {
    const answers = this.kept?.work.answers ?? {};
    this.asked.forEach((each, at) => {
      const { id } = each.problem;
      const before = there.find(({ problem }) => problem.id === id) ?? answers[id];
      if (!before) return;
      each.typed = before.typed;
      each.steps = Math.min(before.steps, each.problem.steps.length);
      if (each.typed !== '') this.check(at);
    });
  }

  /** Answers to other sheets of this lesson stay, up to so many. */
  #keep(): void {
    if (!this.kept) return;
    const here = new Set(this.asked.map(({ problem }) => problem.id));
    const others = Object.entries(this.kept.work.answers).filter(([question]) => !here.has(question));
    const written = this.asked
      .filter(({ typed, steps }) => typed !== '' || steps > 0)
      .map(({ problem, typed, steps }) => [problem.id, { typed, steps }] as const);
    this.kept.write({ answers: Object.fromEntries([...others.slice(-MOST_OTHERS), ...written]) });
  }
}
