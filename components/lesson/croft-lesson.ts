import { html, LitElement, type PropertyValues, type TemplateResult, unsafeCSS } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import { LEVELS, type Level, readNumbers, topicWithId } from '../../src/lessons/index.js';
import { asWritten, say, spoken, spokenTag } from '../../src/words/index.js';
import { BookController } from '../book/find-book.js';
import { PageLanguage } from '../book/page-language.js';
import { base } from '../look/base.js';
import { printInFrame } from '../look/print-frame.js';
import { problemList } from '../look/problems.js';
import './croft-lesson-sheet.js';
import { withoutBook } from '../pictures/no-book.js';
import { numberTold } from '../told-as-text.js';
import type { CroftLessonSheet } from './croft-lesson-sheet.js';
import { LessonSource } from './lesson-source.js';
import { lessonStyles } from './lesson-styles.js';
import { cautionsOf } from './lesson-view.js';
import { LessonWork } from './lesson-work.js';
import { FRAME_RULES, PAPER_RULES, paper } from './paper.js';
import { screenView } from './screen-view.js';

/**
 * A worksheet of school mathematics drawn from a book's own numbers, or a lesson with its words around one:
 * blanks that are checked, hints a step at a time, and a sheet with its answer key on paper.
 *
 * @element croft-lesson
 * @attr book - Id of the `<croft-book>`; the one around it unless given.
 * @attr topics - Topics by their ids, parted by blanks or commas: `units dates charts area bushel rates ratio
 *   percent averages chance linear`.
 * @attr level - 1, 2 or 3.
 * @attr seed - Any number or word: the same one gives the same sheet from the same book.
 * @attr count - How many problems, to 40.
 * @attr units - `shown` (usual): the unit stands beside the blank; `write`: it is to be written.
 * @attr lesson - A lesson: the address of its file on this site, or its JSON. A
 *   `<script type="application/json">` inside the element is read, too.
 * @attr keep-as - A name under which answers are kept in this browser, apart from the book; a lesson's are by its id.
 * @attr heading - Title of the sheet.
 * @attr theme - `light`, `dark` or `auto`; else the page's `color-scheme` counts.
 * @slot - `<ol>` with `<li data-answer="…">`: questions of the page's own, before those from the book.
 * @fires croft-lesson-checked - An answer was checked: `detail` is `{ question, kind, right, count }`, where
 *   `question` is a number, or the task of which a formula was checked.
 * @csspart controls - Level, another sheet, print.
 * @csspart questions - The questions.
 * @csspart tasks - Formulas to be written, each on its own sheet.
 */
@customElement('croft-lesson')
export class CroftLesson extends LitElement {
  static override styles = [base, lessonStyles, unsafeCSS(`@media print { ${PAPER_RULES} }`)];

  @property() topics = '';
  @property({ type: Number, reflect: true, useDefault: true })
  get level(): number {
    return this.#told.level;
  }
  set level(told: number | string) {
    this.#told.level = numberTold(told, 1);
  }
  @property({ reflect: true, useDefault: true }) seed = '1';
  @property({ type: Number })
  get count(): number {
    return this.#told.count;
  }
  set count(told: number | string) {
    this.#told.count = numberTold(told, 6);
  }
  @property() units: 'shown' | 'write' = 'shown';
  @property() lesson = '';
  @property({ attribute: 'keep-as' }) keepAs = '';
  @property() heading = '';
  @property({ reflect: true }) theme: string | null = null;
  @state() private said = '';
  @state() private isBehind = false;
  readonly #told = { level: 1, count: 6 };
  readonly #book = new BookController(this, () => this.#bookChanged());
  readonly #work = new LessonWork();
  readonly #source = new LessonSource();
  #language = '';

  /** Makes another sheet of the same kind. */
  another(seed = String(Math.floor(Math.random() * 9000) + 1000)): void {
    this.seed = seed;
    this.#work.kept?.write({ seed });
    this.said = say`Another sheet: ${seed}.`;
  }

  /** Prints the sheet, and the answer key on a page of its own. */
  print(): void {
    const of = this.renderRoot.querySelector('.paper');
    if (of) {
      printInFrame(this.#title, FRAME_RULES, (body) => {
        body.append(body.ownerDocument.importNode(of, true));
      });
    }
  }

  protected override firstUpdated(): void {
    // Where there is no book to say which language the page speaks, the lesson does.
    if (!this.#needsBook && !this.#book.book) new PageLanguage(this);
  }

  protected override willUpdate(changed: PropertyValues): void {
    // What is wrong with a lesson is said where it is read.
    const isSaidAnew = this.#language !== spokenTag() && this.#source.problems.length > 0;
    this.#language = spokenTag();
    if (changed.has('lesson') || !this.hasUpdated || isSaidAnew) this.#load();
    this.#make();
  }

  get #title(): string {
    const [only, ...more] = this.#topics.map((id) => topicWithId(id)?.title).filter(Boolean);
    const ours = only && more.length === 0 ? asWritten(() => spoken(only)) : say`Food math`;
    return this.heading || this.#source.lesson?.title || ours;
  }

  get #topics(): readonly string[] {
    return this.#source.lesson?.topics ?? this.topics.split(/[\s,]+/).filter(Boolean);
  }

  get #level(): Level {
    return LEVELS.find((level) => level === Number(this.level)) ?? 1;
  }

  #load(): void {
    this.#source.load(this, this.lesson, () => {
      const { lesson } = this.#source;
      if (lesson) {
        this.level = lesson.level;
        this.seed = lesson.seed;
        this.count = lesson.count;
      }
      this.#work.forget();
      this.requestUpdate();
    });
  }

  get #needsBook(): boolean {
    return this.#topics.length > 0 || (this.#source.lesson?.tasks.length ?? 0) > 0;
  }

  #make(): void {
    const { live } = this.#book;
    if (this.#source.isLoading || (this.#needsBook && !live)) return;
    const { level = this.level, seed = this.seed } = this.#work.keepAs(
      live?.id ?? '',
      this.#source.lesson?.id ?? this.keepAs,
    );
    // Nothing is said anew that stands so already: it would be written onto the page.
    if (level !== this.level) this.level = level;
    if (seed !== this.seed) this.seed = seed;
    const made = this.#work.make({
      host: this,
      lesson: this.#source.lesson,
      live,
      topics: this.#topics,
      level: this.#level,
      seed,
      count: this.count,
      writeUnits: this.units === 'write',
    });
    if (made) this.isBehind = false;
  }

  #bookChanged(): void {
    const { live } = this.#book;
    const { numbers } = this.#work;
    if (!live || !numbers) return;
    if (JSON.stringify(readNumbers(live)) === JSON.stringify(numbers)) return;
    if (this.#work.isBegun) this.isBehind = true;
    else this.#work.forget();
  }

  protected override render() {
    const { book, live } = this.#book;
    const slot = html`<slot hidden @slotchange=${this.#slotted}></slot>`;
    const problems = [...this.#source.problems, ...this.#work.problems];
    if (problems.length > 0)
      return html`<div role="alert">
          <h3>${say`The lesson cannot be read`}</h3>
          ${problemList(problems)}
        </div>
        ${slot}`;
    if (this.#source.isLoading)
      return html`<p class="quiet" aria-busy="true">${say`Opening the lesson…`}</p>${slot}`;
    if (this.#needsBook && !live) return html`${withoutBook(book)}${slot}`;
    return html`<div class="screen">${this.#screen()}</div>
      <div class="paper">${this.#paper()}</div>
      ${slot}`;
  }

  #screen(): TemplateResult {
    return screenView({
      title: this.#title,
      foot: this.#foot(),
      lesson: this.#source.lesson,
      topics: this.#topics,
      level: this.#level,
      seed: this.seed,
      work: this.#work,
      right: this.#right,
      count: this.#count,
      said: this.said,
      isBehind: this.isBehind,
      writeUnits: this.units === 'write',
      on: {
        level: (level) => {
          this.level = level;
          this.#work.kept?.write({ level });
        },
        another: (seed) => this.another(seed),
        print: () => this.print(),
        clear: this.#clear,
        anew: this.#anew,
        check: this.#check,
        type: this.#type,
        hint: this.#hint,
        task: this.#taskChecked,
      },
    });
  }

  #paper(): TemplateResult {
    return paper({
      title: this.#title,
      problems: this.#work.asked.map(({ problem }) => problem),
      lesson: this.#source.lesson,
      live: this.#book.live,
      topics: this.#topics,
      foot: this.#work.numbers ? this.#foot() : '',
      cautions: cautionsOf(this.#source.lesson, this.#work.asked),
      writeUnits: this.units === 'write',
    });
  }

  #foot(): string {
    const { numbers, asked } = this.#work;
    return numbers
      ? say`Level ${this.#level} · sheet ${this.seed} · from the numbers of ${numbers.title}`
      : asked.length === 1
        ? say`1 question`
        : say`${asked.length} questions`;
  }

  readonly #check = (at: number): void => {
    const checked = this.#work.check(at);
    if (!checked) return;
    const { kind, message } = checked;
    const right = this.#right;
    this.said = kind === 'blank' ? '' : say`Question ${at + 1}: ${message} ${right} of ${this.#count} right.`;
    this.requestUpdate();
    if (kind === 'blank') return;
    this.dispatchEvent(
      new CustomEvent('croft-lesson-checked', {
        bubbles: true,
        composed: true,
        detail: { question: at + 1, kind, right, count: this.#count },
      }),
    );
  };

  /** Of questions and formulas together. */
  get #right(): number {
    const sheets = this.renderRoot?.querySelectorAll<CroftLessonSheet>('croft-lesson-sheet') ?? [];
    const formulas = [...sheets].filter(({ isRight }) => isRight).length;
    return this.#work.right + formulas;
  }

  get #count(): number {
    return this.#work.asked.length + (this.#source.lesson?.tasks.length ?? 0);
  }

  /** A formula was checked: it says so itself, and counts here. */
  readonly #taskChecked = (event: CustomEvent<{ readonly task: string; readonly kind: string }>): void => {
    event.stopPropagation();
    const { task, kind } = event.detail;
    this.requestUpdate();
    this.dispatchEvent(
      new CustomEvent('croft-lesson-checked', {
        bubbles: true,
        composed: true,
        detail: { question: task, kind, right: this.#right, count: this.#count },
      }),
    );
  };

  readonly #type = (at: number, typed: string): void => {
    this.#work.type(at, typed);
    this.requestUpdate();
  };

  readonly #hint = (at: number): void => {
    const step = this.#work.hint(at);
    if (step === '') return;
    this.said = say`Question ${at + 1}, step ${this.#work.asked[at]?.steps}: ${step}`;
    this.requestUpdate();
  };

  readonly #clear = (): void => {
    this.#work.clearOrBringBack();
    for (const each of this.renderRoot.querySelectorAll('croft-lesson-sheet')) each.takeUp();
    this.said = this.#work.isCleared ? say`All blank. It can be brought back.` : say`It is there again.`;
    this.requestUpdate();
  };

  readonly #anew = (): void => {
    this.#work.forget();
    this.requestUpdate();
  };

  /** Questions inside the element that came, or changed, after it was drawn. */
  readonly #slotted = (): void => {
    if (this.querySelector(':scope > ol > li') && !this.#work.isBegun) this.#anew();
  };
}

export type { CroftEvents } from '../events.js';

declare global {
  interface HTMLElementTagNameMap {
    'croft-lesson': CroftLesson;
  }
}
