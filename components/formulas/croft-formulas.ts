import { html, LitElement, nothing, type TemplateResult } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import { repeat } from 'lit/directives/repeat.js';
import {
  formulasOfBook,
  type ListedEntry,
  type ListedFormula,
  type ListedSheet,
} from '../../src/live/doings/formulas-of-book.js';
import type { LiveBook } from '../../src/live/live-book.js';
import { BookController } from '../book/find-book.js';
import { base } from '../look/base.js';
import { icons } from '../look/icons.js';
import { isNote } from '../look/problems.js';
import { withoutBook } from '../pictures/no-book.js';
import type { FormulaDone } from './done.js';
import { lineStyles, listStyles } from './formulas-styles.js';
import './formula-line.js';
import { say, spoken } from '../../src/words/index.js';
import { tickTold } from '../told-as-text.js';
import { goTo } from './go-to.js';
import { nothingListed, summary } from './list-words.js';

/** Rests between an edit and reading the book's formulas anew. */
const REST = 200;
/** Lines shown at first; the others on demand. */
const FIRST_LINES = 100;

/**
 * Every formula of the book and everything that is wrong in it, sheet by sheet: what each formula gives, what
 * it uses and what uses it, and why it shows an error; with ways to change it, and to put something else in
 * the place of what it misses. Follows the book as it changes.
 *
 * @element croft-formulas
 * @attr book - Id of the `<croft-book>`; the one around it unless given.
 * @attr errors - Only formulas that show errors, and entries that cannot be read.
 * @attr search - Only what holds these words: in its column, its sheet, its formula or its message.
 * @attr read-only - Nothing can be changed.
 * @attr bare - Without the title.
 * @attr theme - `light`, `dark` or `auto`; else the page's `color-scheme` counts.
 * @fires croft-show - A person chose a place: `detail` is `{ sheet, row, column }`, for the page to bring that
 *   sheet into view. The cell is selected in the book before.
 * @csspart controls - The search and the choice of errors.
 * @csspart list - The list.
 * @csspart empty - What stands there while there is nothing to list.
 */
@customElement('croft-formulas')
export class CroftFormulas extends LitElement {
  static override styles = [base, lineStyles, listStyles];

  @property({ type: Boolean, converter: tickTold, reflect: true, useDefault: true }) errors = false;
  @property() search = '';
  @property({ type: Boolean, converter: tickTold, attribute: 'read-only' }) readOnly = false;
  @property({ type: Boolean, converter: tickTold }) bare = false;
  @property({ reflect: true }) theme: string | null = null;
  @state() private told: (FormulaDone['detail'] & { readonly wrong?: boolean }) | null = null;
  @state() private most = FIRST_LINES;
  @state() private reference: TemplateResult | typeof nothing = nothing;
  readonly #book = new BookController(this, () => this.#changed());
  #live: LiveBook | null = null;
  #listed: readonly ListedSheet[] = [];
  #stale = true;
  #timer: ReturnType<typeof setTimeout> | undefined;

  protected override willUpdate(): void {
    const { live, book } = this.#book;
    if (live !== this.#live) {
      this.#live = live;
      this.#stale = true;
      this.told = null;
    }
    if (!this.#stale) return;
    this.#stale = false;
    if (live?.needsEngine) void book?.ensureEngine();
    this.#listed = live ? formulasOfBook(live, isNote) : [];
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    clearTimeout(this.#timer);
    this.#stale = true;
  }

  protected override render() {
    const { live, book } = this.#book;
    if (!live) return withoutBook(book);
    const shown = this.#shown();
    return html`
      ${this.bare ? nothing : html`<div class="head"><h2>${say`Formulas and errors`}</h2></div>`}
      <div class="controls" part="controls">
        <div class="field">
          <label for="search">${say`Search`}</label>
          <input id="search" type="search" autocomplete="off" .value=${this.search} @input=${this.#searched} />
        </div>
        <label class="check">
          <input type="checkbox" .checked=${this.errors} @change=${this.#errorsOnly} />
          ${say`Errors only`}
        </label>
        <button class="button" id="functions" type="button" @click=${this.#functions}>${icons.functions}${say`Functions…`}</button>
      </div>
      <p class="small quiet" role="status">${summary(live, this.#listed)}</p>
      <div class="told" role="status">${this.#toldView()}</div>
      <div part="list" @formula-done=${this.#done}>${this.#sheets(live, shown)}</div>
      ${this.reference}
    `;
  }

  /** The reference of functions, over the list. */
  readonly #functions = async (): Promise<void> => {
    await import('../functions/functions-dialog.js');
    const done = (event: Event): void => {
      event.stopPropagation();
      this.reference = nothing;
      this.renderRoot.querySelector<HTMLElement>('#functions')?.focus();
    };
    this.reference = html`<croft-functions-dialog @croft-dialog-done=${done}></croft-functions-dialog>`;
  };

  #sheets(live: LiveBook, shown: readonly ListedSheet[]) {
    if (shown.length === 0)
      return html`<p class="empty" part="empty">${nothingListed(this.search, this.errors)}</p>`;
    let left = this.most;
    const parts: TemplateResult[] = [];
    for (const sheet of shown) {
      if (left <= 0) break;
      const formulas = sheet.formulas.slice(0, left);
      const entries = sheet.entries.slice(0, left - formulas.length);
      left -= formulas.length + entries.length;
      parts.push(this.#sheet(live, { ...sheet, formulas, entries }));
    }
    const all = shown.reduce((sum, sheet) => sum + sheet.formulas.length + sheet.entries.length, 0);
    return html`${parts}${
      all > this.most
        ? html`<button class="button more" type="button" @click=${() => {
            this.most += FIRST_LINES;
          }}>${say`Show more (${all - this.most} left)`}</button>`
        : nothing
    }`;
  }

  #sheet(live: LiveBook, { id, title, formulas, entries }: ListedSheet): TemplateResult {
    return html`<section aria-labelledby=${`sheet-${id}`}>
      <h3 id=${`sheet-${id}`}>${title}</h3>
      ${
        formulas.length === 0
          ? nothing
          : html`<ul class="lines" aria-label=${say`Formulas of ${title}`}>
              ${repeat(
                formulas,
                ({ key }) => key,
                (line) => html`<li>
                  <croft-formula-line
                    .live=${live}
                    .line=${line}
                    .licenceKey=${this.#book.book?.engineLicenceKey ?? ''}
                    .readOnly=${this.readOnly}
                  ></croft-formula-line>
                </li>`,
              )}
            </ul>`
      }
      ${
        entries.length === 0
          ? nothing
          : html`<h4>${say`Entries to look at`}</h4>
              <ul class="lines" aria-label=${say`Entries of ${title} to look at`}>
                ${entries.map((entry) => this.#entry(live, entry))}
              </ul>`
      }
    </section>`;
  }

  #entry(live: LiveBook, { place, typed, rows, sheet, problem }: ListedEntry): TemplateResult {
    const first = live.rowIds(sheet).indexOf(rows[0]!) + 1;
    const where = rows.length === 1 ? say`row ${first}` : say`row ${first} and ${rows.length - 1} more`;
    return html`<li class="line">
      <div class="what">
        <span
          ><button class="place" type="button" title=${say`Go there`} @click=${() => goTo(this, place)}>
            ${place.words}, ${where}
          </button></span
        >
        <span class="value">${typed.length > 60 ? `${typed.slice(0, 60)}…` : typed}</span>
      </div>
      <p class="small"><strong class="problem">${spoken(problem.message)}</strong> ${spoken(problem.mend)}</p>
    </li>`;
  }

  /** What the choices let through. */
  #shown(): ListedSheet[] {
    const words = this.search.trim().toLowerCase();
    const holds = (...texts: readonly string[]): boolean =>
      words === '' || texts.some((text) => text.toLowerCase().includes(words));
    const ofFormula = ({ shown, place, errors }: ListedFormula, title: string): boolean =>
      (!this.errors || errors.length > 0) &&
      holds(shown, place.words, title, ...errors.flatMap(({ error }) => [error.error, error.message]));
    return this.#listed
      .map((sheet) => ({
        ...sheet,
        formulas: sheet.formulas.filter((line) => ofFormula(line, sheet.title)),
        entries: sheet.entries.filter(({ place, typed, problem }) =>
          holds(place.words, sheet.title, typed, spoken(problem.message)),
        ),
      }))
      .filter(({ formulas, entries }) => formulas.length + entries.length > 0);
  }

  #toldView() {
    if (!this.told) return nothing;
    const { said, done, wrong } = this.told;
    return html`<span class="small ${wrong ? 'problem' : ''}">${said}</span>${
      done
        ? html`<button class="button" type="button" @click=${this.#undo}>${icons.undo}${say`Undo`}</button>`
        : nothing
    }`;
  }

  readonly #undo = (): void => {
    this.#book.book?.undo();
    this.told = { said: say`Taken back.`, done: false };
    this.renderRoot.querySelector<HTMLElement>('#search')?.focus();
  };

  readonly #done = async (event: FormulaDone): Promise<void> => {
    event.stopPropagation();
    const [from] = event.composedPath();
    this.told = { ...event.detail, wrong: !event.detail.done };
    await this.updateComplete;
    // What mended goes away with the error.
    if (from instanceof HTMLElement && from.localName === 'croft-mend-choice')
      this.renderRoot.querySelector<HTMLElement>('.told button')?.focus();
  };

  readonly #searched = (event: Event): void => {
    this.search = (event.target as HTMLInputElement).value;
    this.most = FIRST_LINES;
  };

  readonly #errorsOnly = (event: Event): void => {
    this.errors = (event.target as HTMLInputElement).checked;
    this.most = FIRST_LINES;
  };

  #changed(): void {
    clearTimeout(this.#timer);
    this.#timer = setTimeout(() => {
      this.#stale = true;
      this.requestUpdate();
    }, REST);
  }
}

export type { CroftEvents } from '../events.js';

declare global {
  interface HTMLElementTagNameMap {
    'croft-formulas': CroftFormulas;
  }
}
