import { css, html, LitElement, nothing } from 'lit';
import { customElement, property, query, state } from 'lit/decorators.js';
import { toIsoDay } from '../../src/planning/dates.js';
import type { Problem } from '../../src/problem.js';
import { say } from '../../src/words/index.js';
import { BookController } from '../book/find-book.js';
import { base } from '../look/base.js';
import { inWords } from '../look/problems.js';
import { tickTold } from '../told-as-text.js';
import { shownDay } from './shown.js';

/**
 * The day that a book's figures are for, where it is not today's by the clock, with a way to change it.
 *
 * @element croft-figures-day
 * @attr book - Id of the `<croft-book>`; the one around it unless given.
 * @attr read-only - Only says the day.
 * @attr theme - `light`, `dark` or `auto`.
 * @csspart day - The line that says the day.
 */
@customElement('croft-figures-day')
export class CroftFiguresDay extends LitElement {
  static override styles = [
    base,
    css`
      .line {
        display: flex;
        flex-wrap: wrap;
        align-items: center;
        gap: 0.125rem 0.5rem;
      }
      input {
        width: auto !important;
      }
      @media print {
        .link {
          display: none;
        }
      }
    `,
  ];

  @property({ type: Boolean, converter: tickTold, attribute: 'read-only' }) readOnly = false;
  @property({ reflect: true }) theme: string | null = null;
  @state() private changing = false;
  @state() private wrong: Problem | null = null;
  @query('input') private field!: HTMLInputElement | null;
  readonly #book = new BookController(this);

  protected override render() {
    const { live } = this.#book;
    if (!live || live.setting('as_of') === undefined) return nothing;
    const day = toIsoDay(live.household.asOf);
    if (!this.changing) {
      return html`<div class="line small quiet" part="day">
        <span>${say`Figures for ${shownDay(day)}`}</span>
        ${
          this.readOnly
            ? nothing
            : html`<button class="link" type="button" aria-label=${say`Change the day that figures are for`} @click=${this.#change}>
                ${say`change`}
              </button>`
        }
      </div>`;
    }
    return html`<form class="line small" @submit=${this.#keep} @keydown=${this.#key}>
      <label for="day">${say`Figures for`}</label>
      <input id="day" type="date" required .value=${day} />
      <button class="button">${say`Set`}</button>
      <button class="button" type="button" @click=${() => this.#set(null)}>${say`Today, every day`}</button>
      ${this.wrong ? html`<span class="problem" role="alert">${inWords(this.wrong)}</span>` : nothing}
    </form>`;
  }

  readonly #change = async (): Promise<void> => {
    this.changing = true;
    await this.updateComplete;
    this.field?.focus();
  };

  readonly #keep = (event: Event): void => {
    event.preventDefault();
    this.#set(this.field?.value ?? null);
  };

  #set(typed: string | null): void {
    const outcome = this.#book.live?.apply({ do: 'set setting', setting: 'as_of', typed });
    this.wrong = outcome && !outcome.ok ? outcome.problem : null;
    if (!this.wrong) this.changing = false;
  }

  readonly #key = (event: KeyboardEvent): void => {
    if (event.key === 'Escape') this.changing = false;
  };
}

export type { CroftEvents } from '../events.js';

declare global {
  interface HTMLElementTagNameMap {
    'croft-figures-day': CroftFiguresDay;
  }
}
