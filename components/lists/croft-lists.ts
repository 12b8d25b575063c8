import { html, LitElement, nothing, type PropertyValues, type TemplateResult } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import type { LiveBook } from '../../src/live/live-book.js';
import { weekInMind } from '../../src/live/week-in-mind.js';
import { fromIsoDay, isDay, toIsoDay } from '../../src/planning/dates.js';
import { mediumDay } from '../../src/planning/day-words.js';
import type { DayNumber } from '../../src/planning/types.js';
import { mondayOf } from '../../src/planning/week/index.js';
import { say } from '../../src/words/index.js';
import { BookController } from '../book/find-book.js';
import { base } from '../look/base.js';
import { icons } from '../look/icons.js';
import { withoutBook } from '../pictures/no-book.js';
import { tickTold } from '../told-as-text.js';
import { type ListLine, type ShownLists, shownLists } from './list-lines.js';
import { listsStyles } from './lists-styles.js';
import { type ListsHost, listsView } from './lists-view.js';
import { printLists, sizeOnPaper } from './print-lists.js';
import { Ticks } from './ticks.js';

/**
 * A week's three lists: what to bring up (place by place, oldest first), what to buy, and what to do ahead. Lines
 * are ticked by hand, and stay ticked in this browser; they belong to whoever holds the list, not to the book.
 *
 * @element croft-lists
 * @attr book - Id of the `<croft-book>`; the one around it unless given.
 * @attr week - Any day of the week, as `2026-02-16`; the one at hand on the book's as-of date unless given.
 * @attr bare - Without the title and the buttons.
 * @attr theme - `light`, `dark` or `auto`; else the page's `color-scheme` counts.
 * @fires croft-week - A person moved to another week: `detail` is its Monday, as `2026-02-23`.
 * @csspart bringUp - What to fetch.
 * @csspart shopping - What to buy.
 * @csspart prep - What to do ahead.
 * @csspart meals - The meals that the lists are for.
 * @csspart cautions - Food-safety words.
 * @csspart empty - What stands there for a week without meals.
 */
@customElement('croft-lists')
export class CroftLists extends LitElement implements ListsHost {
  static override styles = [base, listsStyles];

  @property({ reflect: true, useDefault: true }) week = '';
  @property({ type: Boolean, converter: tickTold }) bare = false;
  @property({ reflect: true }) theme: string | null = null;
  readonly #book = new BookController(this, () => {
    this.#shown = null;
  });
  readonly #ticks = new Ticks();
  #live: LiveBook | null = null;
  #shown: ShownLists | null = null;
  /** Held while the week is looked at, so that marking its last meal does not turn the page. */
  #inMind: DayNumber | null = null;
  #onPaper: CSSStyleSheet | undefined;

  /** The Monday of the week that is shown, in days since 1970-01-01; null while no book is open. */
  get monday(): DayNumber | null {
    const { live } = this.#book;
    const day = fromIsoDay(this.week);
    if (!live) return null;
    if (day.ok) return mondayOf(day.value);
    this.#inMind ??= weekInMind(live);
    return this.#inMind;
  }

  /** @internal */
  stateOf(line: ListLine) {
    return this.#ticks.stateOf(this.#live?.id ?? '', toIsoDay(this.monday ?? 0), line);
  }

  /** @internal */
  tick(line: ListLine, ticked: boolean): void {
    this.#ticks.set(this.#live?.id ?? '', toIsoDay(this.monday ?? 0), line, ticked);
    this.requestUpdate();
  }

  /** Prints the lists alone, on one page. */
  print(): void {
    const parts = this.#parts();
    if (parts[0]) printLists(this.#title(this.monday ?? 0), parts);
  }

  #parts(): readonly (Element | null)[] {
    return ['.lists', '.safety'].map((part) => this.renderRoot.querySelector(part));
  }

  /** On one page too when the page that they stand on is printed, by a rule that stands while it is. */
  readonly #fit = ({ type }: Event): void => {
    const root = this.shadowRoot!;
    root.adoptedStyleSheets = root.adoptedStyleSheets.filter((each) => each !== this.#onPaper);
    const parts = this.#parts();
    if (type !== 'beforeprint' || !parts[0]) return;
    const size = sizeOnPaper(this.#title(this.monday ?? 0), parts);
    if (size === '') return;
    this.#onPaper ??= new CSSStyleSheet();
    this.#onPaper.replaceSync(`@media print { :host { font-size: ${size} !important; } }`);
    root.adoptedStyleSheets = [...root.adoptedStyleSheets, this.#onPaper];
  };

  override connectedCallback(): void {
    super.connectedCallback();
    window.addEventListener('storage', this.#stored);
    window.addEventListener('beforeprint', this.#fit);
    window.addEventListener('afterprint', this.#fit);
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    window.removeEventListener('storage', this.#stored);
    window.removeEventListener('beforeprint', this.#fit);
    window.removeEventListener('afterprint', this.#fit);
  }

  protected override willUpdate(changed: PropertyValues<CroftLists>): void {
    const { live } = this.#book;
    if (live !== this.#live || changed.has('week')) this.#shown = null;
    if (live !== this.#live) this.#inMind = null;
    this.#live = live;
    if (live) this.#shown ??= shownLists(live, this.monday!);
  }

  protected override render() {
    if (!this.#live) return withoutBook(this.#book.book);
    const monday = this.monday!;
    const misread = this.week !== '' && !fromIsoDay(this.week).ok;
    return html`
      ${this.bare ? nothing : this.#top(monday)}
      ${
        misread
          ? html`<p class="problem" role="alert">
              ${say`“${this.week.slice(0, 40)}” is not a day. Write it year first, as in 2026-02-16; till then this is the present week.`}
            </p>`
          : nothing
      }
      ${this.#content()}
    `;
  }

  #title(monday: DayNumber): string {
    return say`Week of ${mediumDay(monday)}`;
  }

  #top(monday: DayNumber): TemplateResult {
    const present = mondayOf(this.#live!.household.asOf);
    const none = (this.#shown?.lists.empty ?? null) !== null;
    return html`<div class="top">
      <h2 aria-live="polite">${this.#title(monday)}</h2>
      <div class="row" role="group" aria-label=${say`Which week`}>
        <button class="button" type="button" @click=${() => this.#go(monday - 7)}>
          <span class="turns" aria-hidden="true">←</span>${say`Week before`}
        </button>
        <button class="button" type="button" @click=${() => this.#go(monday + 7)}>
          ${say`Week after`}<span class="turns" aria-hidden="true">→</span>
        </button>
        <button class="button" type="button" ?disabled=${monday === present} @click=${() => this.#go(present)}>
          ${say`This week`}
        </button>
      </div>
      <button class="button" type="button" ?disabled=${none} @click=${() => this.print()}>${icons.print}${say`Print`}</button>
    </div>`;
  }

  #content(): TemplateResult {
    const shown = this.#shown;
    if (!shown)
      return html`<p class="empty" part="empty">${say`This book has no Week sheet, from which lists are made.`}</p>`;
    if (shown.lists.empty !== null && shown.prep.length === 0) {
      return html`<div class="empty" part="empty">
        <p>${shown.lists.empty}</p>
        <p class="quiet small">
          ${say`The lists then say what to fetch from each place, what to buy, and what to do on which day.`}
        </p>
      </div>`;
    }
    return html`${listsView(shown, this)}
      <p class="foot small ${this.#ticks.stay ? 'quiet' : 'problem'}">
        ${
          this.#ticks.stay
            ? say`Ticks are kept in this browser, for this week; those made in a private window only until it is closed.`
            : say`This browser keeps nothing for this page (a private window, perhaps): ticks are gone when it is closed. Print the lists to keep them.`
        }
      </p>`;
  }

  #go(monday: DayNumber): void {
    if (!isDay(monday)) return;
    this.week = toIsoDay(monday);
    this.dispatchEvent(new CustomEvent('croft-week', { detail: this.week, bubbles: true, composed: true }));
  }

  readonly #stored = (event: StorageEvent): void => {
    if (this.#live && this.#ticks.concerns(event, this.#live.id)) this.requestUpdate();
  };
}

export type { CroftEvents } from '../events.js';

declare global {
  interface HTMLElementTagNameMap {
    'croft-lists': CroftLists;
  }
}
