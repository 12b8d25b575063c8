import { html, LitElement, nothing, type PropertyValues, type TemplateResult, unsafeCSS } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import {
  type BookNumbers,
  checkAnswer,
  LEVELS,
  type Lesson,
  type Level,
  makeSheet,
  readNumbers,
  topicWithId,
} from '../../src/lessons/index.js';
import type { Problem } from '../../src/problem.js';
import { BookController } from '../book/find-book.js';
import { base } from '../look/base.js';
import { PAPER_FONTS, printInFrame } from '../look/print-frame.js';
import { problemList } from '../look/problems.js';
import './croft-lesson-sheet.js';
import { withoutBook } from '../pictures/no-book.js';
import type { CroftLessonSheet } from './croft-lesson-sheet.js';
import { lessonStyles } from './lesson-styles.js';
import { beforeQuestions, cautionsOf, controls, words } from './lesson-view.js';
import { loadLesson } from './load-lesson.js';
import { PAPER_RULES, paper } from './paper.js';
import { type Asked, asked, questionView } from './question-view.js';
import { tasksView } from './tasks-view.js';
import { questionsIn } from './written-questions.js';

const FRAME_RULES = `
  @page { margin: 14mm; }
  * { box-sizing: border-box; }
  body { font: 11pt/1.4 ${PAPER_FONTS}; color: #000; margin: 0; }
  .unseen { display: none; }
  ${PAPER_RULES}
`;

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
  @property({ type: Number, reflect: true }) level = 1;
  @property({ reflect: true }) seed = '1';
  @property({ type: Number }) count = 6;
  @property() units: 'shown' | 'write' = 'shown';
  @property() lesson = '';
  @property() heading = '';
  @property({ reflect: true }) theme: string | null = null;
  @state() private asked: Asked[] = [];
  @state() private said = '';
  @state() private isBehind = false;
  readonly #book = new BookController(this, () => this.#bookChanged());
  #read: Lesson | null = null;
  /** Why the lesson could not be read. */
  #unread: readonly Problem[] = [];
  #problems: readonly Problem[] = [];
  #notes: readonly Problem[] = [];
  #made = '';
  #numbers: BookNumbers | null = null;
  #loading = '';

  /** Makes another sheet of the same kind. */
  another(seed = String(Math.floor(Math.random() * 9000) + 1000)): void {
    this.seed = seed;
    this.said = `Another sheet: ${seed}.`;
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

  protected override willUpdate(changed: PropertyValues): void {
    if (changed.has('lesson') || !this.hasUpdated) this.#load();
    this.#make();
  }

  get #title(): string {
    const [only, ...more] = this.#topics.map((id) => topicWithId(id)?.title).filter(Boolean);
    return this.heading || this.#read?.title || (only && more.length === 0 ? only : 'Food math');
  }

  get #topics(): readonly string[] {
    return this.#read?.topics ?? this.topics.split(/[\s,]+/).filter(Boolean);
  }

  get #level(): Level {
    return LEVELS.find((level) => level === Number(this.level)) ?? 1;
  }

  #load(): void {
    const inside = this.querySelector(':scope > script[type="application/json"]')?.textContent ?? '';
    const lesson = this.lesson || inside;
    this.#loading = lesson;
    if (lesson === '') {
      this.#read = null;
      this.#unread = [];
      return;
    }
    void loadLesson(lesson, document.baseURI).then((read) => {
      if (this.#loading !== lesson) return;
      this.#loading = '';
      this.#unread = read.ok ? [] : read.problems;
      this.#read = read.ok ? read.lesson : null;
      if (read.ok) {
        this.level = read.lesson.level;
        this.seed = read.lesson.seed;
        this.count = read.lesson.count;
      }
      this.#made = '';
      this.requestUpdate();
    });
  }

  /** Draws the sheet when what it is made from is another; a sheet that somebody works at stays as it is. */
  #make(): void {
    if (this.#loading !== '') return;
    const { live } = this.#book;
    const topics = this.#topics;
    if (topics.length > 0 && !live) return;
    const wanted = JSON.stringify([topics, this.#level, this.seed, this.count, this.#read?.id, live?.id]);
    if (wanted === this.#made) return;
    this.#made = wanted;
    this.isBehind = false;
    const own = questionsIn(this);
    this.#problems = [...this.#unread, ...own.problems];
    const { forms, questions = [] } = this.#read ?? {};
    this.#numbers = live && topics.length > 0 ? readNumbers(live) : null;
    const sheet = this.#numbers
      ? makeSheet(this.#numbers, {
          topics,
          level: this.#level,
          seed: this.seed,
          count: this.count,
          ...(forms && { forms }),
        })
      : { problems: [], notes: [] };
    this.#notes = sheet.notes;
    this.asked = [...questions, ...own.questions, ...sheet.problems].map(asked);
  }

  #bookChanged(): void {
    const { live } = this.#book;
    if (!live || !this.#numbers) return;
    if (JSON.stringify(readNumbers(live)) === JSON.stringify(this.#numbers)) return;
    if (this.asked.some(({ typed, steps }) => typed !== '' || steps > 0)) this.isBehind = true;
    else this.#made = '';
  }

  protected override render() {
    const { book, live } = this.#book;
    const slot = html`<slot hidden @slotchange=${this.#slotted}></slot>`;
    if (this.#problems.length > 0)
      return html`<div role="alert">
          <h3>The lesson cannot be read</h3>
          ${problemList(this.#problems)}
        </div>
        ${slot}`;
    if (this.#loading !== '') return html`<p class="quiet" aria-busy="true">Opening the lesson…</p>${slot}`;
    const needsBook = this.#topics.length > 0 || (this.#read?.tasks.length ?? 0) > 0;
    if (needsBook && !live) return html`${withoutBook(book)}${slot}`;
    return html`<div class="screen">${this.#screen()}</div>
      <div class="paper">${this.#paper()}</div>
      ${slot}`;
  }

  #screen(): TemplateResult {
    const lesson = this.#read;
    const right = this.#right;
    const count = this.#count;
    const events = { check: this.#check, type: this.#type, hint: this.#hint };
    return html`<header class="head">
        <div>
          <h2>${this.#title}</h2>
          <p class="quiet small">${this.#foot()}</p>
        </div>
        ${controls({
          topics: this.#topics,
          level: this.#level,
          onLevel: (level) => {
            this.level = level;
          },
          onAnother: () => this.another(),
          onPrint: () => this.print(),
        })}
      </header>
      ${lesson ? beforeQuestions(lesson) : nothing}
      ${cautionsOf(lesson, this.asked).map((words) => html`<p class="caution small"><strong>With care:</strong> ${words}</p>`)}
      ${this.#notes.map(({ message, mend }) => html`<p class="note"><strong>${message}</strong> ${mend}</p>`)}
      ${
        this.isBehind
          ? html`<p class="note">
              The book has changed since this sheet was made.
              <button class="link" type="button" @click=${this.#anew}>Make it anew</button>
            </p>`
          : nothing
      }
      ${
        count === 0
          ? nothing
          : html`<div class="progress">
              <progress max=${count} value=${right} aria-label="Answers that are right"></progress>
              <span class="small">${right} of ${count} right</span>
            </div>`
      }
      <ol class="questions" part="questions">
        ${this.asked.map((each, at) => questionView(each, at, events, this.units === 'write'))}
      </ol>
      ${lesson && lesson.tasks.length > 0 ? tasksView(lesson.tasks, this.asked.length, this.seed, this.#taskChecked) : nothing}
      ${lesson && lesson.discuss.length > 0 ? words('To talk over', lesson.discuss) : nothing}
      <p class="unseen" role="status">${this.said}</p>`;
  }

  #paper(): TemplateResult {
    return paper({
      title: this.#title,
      problems: this.asked.map(({ problem }) => problem),
      lesson: this.#read,
      live: this.#book.live,
      topics: this.#topics,
      foot: this.#numbers ? this.#foot() : '',
      cautions: cautionsOf(this.#read, this.asked),
      writeUnits: this.units === 'write',
    });
  }

  #foot(): string {
    const numbers = this.#numbers;
    return numbers
      ? `Level ${this.#level} · sheet ${this.seed} · from the numbers of ${numbers.title}`
      : `${this.asked.length} ${this.asked.length === 1 ? 'question' : 'questions'}`;
  }

  readonly #check = (at: number): void => {
    const each = this.asked[at];
    if (!each) return;
    each.checked = checkAnswer(each.problem.key, each.typed, { writeUnits: this.units === 'write' });
    const right = this.#right;
    const { kind, message } = each.checked;
    this.said = kind === 'blank' ? '' : `Question ${at + 1}: ${message} ${right} of ${this.#count} right.`;
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
    return this.asked.filter(({ checked }) => checked?.kind === 'right').length + formulas;
  }

  get #count(): number {
    return this.asked.length + (this.#read?.tasks.length ?? 0);
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
    const each = this.asked[at];
    if (!each) return;
    each.typed = typed;
    // What was said of the answer before is said no more.
    each.checked = null;
    this.requestUpdate();
  };

  readonly #hint = (at: number): void => {
    const each = this.asked[at];
    if (!each || each.steps >= each.problem.steps.length) return;
    each.steps++;
    this.said = `Question ${at + 1}, step ${each.steps}: ${each.problem.steps[each.steps - 1]}`;
    this.requestUpdate();
  };

  readonly #anew = (): void => {
    this.#made = '';
    this.requestUpdate();
  };

  /** Questions inside the element that came, or changed, after it was drawn. */
  readonly #slotted = (): void => {
    if (this.querySelector(':scope > ol > li') && !this.asked.some(({ typed }) => typed !== '')) this.#anew();
  };
}

declare global {
  interface HTMLElementTagNameMap {
    'croft-lesson': CroftLesson;
  }
}
