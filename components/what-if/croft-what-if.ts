import { html, LitElement, nothing, type PropertyValues, type TemplateResult } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import type { Raw } from '../../src/book/index.js';
import type { LiveBook } from '../../src/live/live-book.js';
import type { Varied } from '../../src/live/what-if.js';
import {
  readWatched,
  type SheetChanges,
  type Watched,
  watchedOf,
  whatIfFigures,
} from '../../src/live/what-if-figures.js';
import { type Asked, readVary } from '../../src/live/what-if-text.js';
import type { WhatIfTrial } from '../../src/live/what-if-trial.js';
import type { Problem } from '../../src/problem.js';
import { say } from '../../src/words/index.js';
import type { CroftBook } from '../book/croft-book.js';
import { BookController } from '../book/find-book.js';
import { base } from '../look/base.js';
import { inWords, isNote, problemList } from '../look/problems.js';
import { tableStyles } from '../look/table-styles.js';
import { withoutBook } from '../pictures/no-book.js';
import { cautionsOf, cautionsView } from '../sheet/cautions.js';
import { tickTold } from '../told-as-text.js';
import type { BookGiver } from './book-copy.js';
import { changeInWords, changesView, countInWords } from './changes-view.js';
import { controlView } from './control-view.js';
import { OwnCopy } from './own-copy.js';
import { Pending } from './pending.js';
import { elsewhereInWords, formulasNote, putInWords, putView } from './put-view.js';
import { whatIfStyles } from './what-if-styles.js';

/** Milliseconds of rest after which it is said what came of trying. */
const SAY_AFTER = 900;

/**
 * Values of a book to be tried otherwise, without touching the book: sliders and boxes, and the planning figures
 * that would change. Elements inside of it (a picture, a sheet) show the copy in which the values are tried.
 *
 * @element croft-what-if
 * @attr vary - What to vary, parted by semicolons: a setting (`cushion`), or a sheet, a row and a column
 *   (`foods / Tomatoes, canned / own_use`), with a range where the usual one does not fit: `[0 to 12 by 0.5]`.
 * @attr sheet - Sheet whose planning figures are compared, by id, kind or title; all sheets unless given.
 * @attr figures - Columns to compare instead: `foods / to_put_up, weeks_of_supply; beds / plants_wanted`.
 * @attr book - Id of the `<croft-book>`; the one around it unless given.
 * @attr heading - A heading of your own.
 * @attr read-only - Nothing can be put into the book.
 * @attr without-table - Only the controls, and what stands inside the element.
 * @attr theme - `light`, `dark` or `auto`; else the page's `color-scheme` counts.
 * @slot - Elements that show the copy, such as `<croft-runway>`.
 * @fires croft-what-if - What is tried changed: `detail` is `{ tried, figures }`, how many of each.
 * @fires croft-what-if-put - Values were put into the book: `detail` is `{ values }`.
 * @csspart controls - The values to vary.
 * @csspart changes - The figures that would change.
 * @cssprop --croft-what-if-height - Greatest height of the table of figures.
 */
@customElement('croft-what-if')
export class CroftWhatIf extends LitElement implements BookGiver {
  static override styles = [base, tableStyles, whatIfStyles];

  @property() vary = '';
  @property() sheet = '';
  @property() figures = '';
  @property() heading = '';
  @property({ type: Boolean, converter: tickTold, attribute: 'read-only' }) readOnly = false;
  @property({ type: Boolean, converter: tickTold, attribute: 'without-table' }) withoutTable = false;
  @property({ reflect: true }) theme: string | null = null;
  /** Each value can be taken away again: says `croft-vary-less` with its key. */
  @property({ attribute: false }) removable = false;
  @state() private asking = false;
  @state() private said = '';
  @state() private refused: Problem | null = null;
  readonly #book = new BookController(this, (change) => this.#own.follow(change));
  readonly #own = new OwnCopy(() => this.requestUpdate());
  readonly #pending = new Pending((values) => this.#try(values));
  #asked: readonly Asked[] = [];
  #problems: readonly Problem[] = [];
  #watched: readonly Watched[] = [];
  #changes: readonly SheetChanges[] = [];
  /** Titles of sheets that are not looked at, where figures would change though none does that is. */
  #elsewhere: readonly string[] = [];
  #all = new Set<string>();
  #quiet: ReturnType<typeof setTimeout> | undefined;

  /** The copy of the book that elements inside of this one show. */
  get bookInside(): CroftBook {
    return this.#own.book;
  }

  /** Puts every value back as the book has it. */
  reset(): void {
    this.#pending.clear();
    this.refused = null;
    this.asking = false;
    this.#own.trial?.reset();
    this.#told();
  }

  override connectedCallback(): void {
    super.connectedCallback();
    // Elements inside that were there before this one was defined.
    document.dispatchEvent(new Event('croft-what-if-ready'));
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    clearTimeout(this.#quiet);
    this.#pending.clear();
  }

  protected override willUpdate(_changed: PropertyValues): void {
    this.#own.of(this.#book.book, this.querySelector('croft-sheet, croft-formulas') !== null);
    const { trial } = this.#own;
    if (!trial) return;
    const { asked, problems } = readVary(trial.original, this.vary);
    this.#asked = asked;
    const named = this.figures.trim() === '' ? null : readWatched(trial.original, this.figures);
    const all = named ? null : watchedOf(trial.original, this.sheet);
    this.#watched = named ? named.watched : all?.ok ? all.value : [];
    this.#problems = [...problems, ...(named?.problems ?? []), ...(all && !all.ok ? [all.problem] : [])];
    // What is not asked for any more is not tried either.
    const gone = trial.tried.filter(({ varied }) => !asked.some((each) => each.varied.key === varied.key));
    if (gone.length > 0) trial.try(gone.map(({ varied }) => ({ varied, value: undefined })));
    const { original, copy } = trial;
    this.#changes = trial.tried.length === 0 ? [] : whatIfFigures(original, copy, this.#watched);
    const isNone = trial.tried.length > 0 && this.#changes.length === 0;
    const others = isNone ? watchedOf(original) : null;
    this.#elsewhere = others?.ok ? whatIfFigures(original, copy, others.value).map(({ title }) => title) : [];
  }

  protected override render() {
    const { trial } = this.#own;
    const { live, book } = this.#book;
    const copy = this.#own.isBegun ? this.#own.book : nothing;
    const slot = html`<slot></slot>`;
    if (this.#own.problems.length > 0 && !trial)
      return html`<div role="alert"><h3>${say`No copy could be opened`}</h3>${problemList(this.#own.problems)}</div>${copy}`;
    if (!live || !trial) return html`${withoutBook(live ? null : book)}${copy}${slot}`;
    return html`${copy}
      <section class="whole" aria-label=${this.heading || say`What if`}>
        ${this.heading ? html`<h2>${this.heading}</h2>` : nothing}
        ${this.#problems.length > 0 ? html`<div role="alert">${problemList(this.#problems)}</div>` : nothing}
        ${
          this.#asked.length === 0
            ? html`<p class="quiet">${say`Nothing is chosen to vary yet.`}</p>`
            : html`<ul class="controls" part="controls">
                ${this.#asked.map((asked, at) => this.#control(trial, asked, at))}
              </ul>`
        }
        ${this.refused ? html`<p class="problem" role="alert">${inWords(this.refused)}</p>` : nothing}
        ${this.#asked.length === 0 ? nothing : this.#foot(trial)}
        ${slot}
        ${this.withoutTable || trial.tried.length === 0 ? nothing : this.#table(trial)}
        <p class="unseen" role="status">${this.said}</p>
      </section>`;
  }

  #control(trial: WhatIfTrial, asked: Asked, at: number): TemplateResult {
    const { key } = asked.varied;
    const pending = this.#pending.at(key);
    const tried = pending === undefined ? trial.at(key) : pending.value;
    const problem = tried === undefined ? undefined : trial.problem(asked.varied);
    return controlView(
      {
        asked,
        at,
        tried,
        problem: problem && !isNote(problem) ? problem : undefined,
        asOf: trial.original.household.asOf,
        removable: this.removable,
      },
      {
        vary: (varied, value) => {
          this.#pending.add({ varied, value });
          this.requestUpdate();
        },
        remove: ({ key: detail }) =>
          this.dispatchEvent(new CustomEvent('croft-vary-less', { detail, bubbles: true, composed: true })),
      },
    );
  }

  #foot(trial: WhatIfTrial): TemplateResult {
    const { tried } = trial;
    if (tried.length === 0)
      return html`<p class="quiet small">
        ${say`Move a slider or write a number: the figures that would change show here. The book stays as it is.`}
      </p>`;
    return html`<div class="doings">
        <p><strong>${countInWords(this.#changes)}</strong>
 ${elsewhereInWords(this.#elsewhere)}<span class="quiet small">${say`The book stays as it is.`}</span></p>
        <button class="button" type="button" @click=${() => this.reset()}>${say`All as in the book`}</button>
        ${
          this.readOnly
            ? nothing
            : html`<button
                class="button"
                type="button"
                aria-expanded=${String(this.asking)}
                @click=${() => {
                  this.asking = !this.asking;
                }}
              >
                ${say`Put it into the book…`}
              </button>`
        }
      </div>
      ${this.#own.book.live?.needsEngine ? formulasNote(this.#own.book.followsFormulas) : nothing}
      ${this.asking && !this.readOnly ? putView(trial, { put: this.#put, leave: this.#leave }) : nothing}`;
  }

  #table(trial: WhatIfTrial): TemplateResult {
    const showAll = (sheet: string): void => {
      this.#all = new Set([...this.#all, sheet]);
      this.requestUpdate();
    };
    const { original } = trial;
    const shown = new Set(this.#changes.map(({ sheet }) => sheet));
    const found = original
      .sheets()
      .filter(({ id }) => shown.has(id))
      .flatMap(({ id, kind }) => cautionsOf(original, id, kind));
    const cautions = [...new Map(found.map((each) => [each.id, each])).values()];
    return html`${changesView(this.#changes, this.#all, showAll)} ${cautionsView(cautions)}`;
  }

  readonly #leave = (): void => {
    this.asking = false;
  };

  readonly #put = (): void => {
    this.#pending.flush();
    const trial = this.#own.trial;
    const live: LiveBook | null = this.#book.live;
    const command = trial?.command() ?? null;
    if (!trial || !live || !command) return;
    const values = trial.tried.length;
    const done = live.apply(command);
    this.asking = false;
    this.refused = done.ok ? null : done.problem;
    if (!done.ok) return;
    this.said = putInWords(values);
    this.dispatchEvent(
      new CustomEvent('croft-what-if-put', { detail: { values }, bubbles: true, composed: true }),
    );
  };

  #try(values: readonly { readonly varied: Varied; readonly value: Raw | null | undefined }[]): void {
    const trial = this.#own.trial;
    if (!trial) return;
    this.refused = trial.try(values) ?? null;
    this.#told();
  }

  /** Says what came of it, once the hand rests. */
  #told(): void {
    this.requestUpdate();
    clearTimeout(this.#quiet);
    this.#quiet = setTimeout(() => {
      const { trial } = this.#own;
      if (!trial) return;
      const [first] = this.#changes.flatMap(({ figures }) => figures);
      this.said =
        trial.tried.length === 0
          ? say`All as in the book.`
          : `${countInWords(this.#changes)} ${first ? changeInWords(first) : ''}`.trim();
      const figures = this.#changes.reduce((sum, each) => sum + each.figures.length, 0);
      this.dispatchEvent(
        new CustomEvent('croft-what-if', { detail: { tried: trial.tried.length, figures }, bubbles: true }),
      );
    }, SAY_AFTER);
  }
}

export type { CroftEvents } from '../events.js';

declare global {
  interface HTMLElementTagNameMap {
    'croft-what-if': CroftWhatIf;
  }
}
