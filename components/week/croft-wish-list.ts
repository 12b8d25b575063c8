import { css, html, LitElement, nothing, type TemplateResult } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import type { LiveBook } from '../../src/live/live-book.js';
import { type Wish, type WishFor, wishList } from '../../src/planning/week/index.js';
import { phrase, say, spoken } from '../../src/words/index.js';
import { BookController } from '../book/find-book.js';
import { base } from '../look/base.js';
import { withoutBook } from '../pictures/no-book.js';
import { tickTold } from '../told-as-text.js';
import { foodNames } from './food-names.js';

const GROUPS: readonly (readonly [WishFor, string, string])[] = [
  ['ran out', phrase('Ran out'), phrase('More of these, perhaps.')],
  ['wished for', phrase('Wished for'), phrase('Fetched or planned, and there was not enough.')],
  ['stayed', phrase('Stayed on the shelf'), phrase('Fewer of these, or more meals with them.')],
];

/** Lines of a group in sight before the others. */
const FIRST = 8;

/**
 * What the year’s draws and meals say of the next one: what ran out, what was wished for, and what stayed. Meant
 * to stand beside Beds or Foods while the next year is planned. It only tells; it changes nothing.
 *
 * @element croft-wish-list
 * @attr book - Id of the `<croft-book>`; the one around it unless given.
 * @attr bare - Without the title.
 * @attr theme - `light`, `dark` or `auto`; else the page's `color-scheme` counts.
 * @csspart group - One of the three lists.
 * @csspart empty - What stands there while there is nothing to tell.
 */
@customElement('croft-wish-list')
export class CroftWishList extends LitElement {
  static override styles = [
    base,
    css`
      :host {
        container-type: inline-size;
      }
      .groups {
        display: grid;
        gap: 1rem 1.5rem;
      }
      h2 {
        margin-bottom: 0.5rem;
      }
      h3 {
        font: 600 1rem/1.4 var(--font);
      }
      section {
        border-top: 4px solid var(--accent);
        padding-top: 0.375rem;
        min-width: 0;
      }
      li {
        padding: 0.3rem 0;
        border-top: 1px solid var(--line);
        overflow-wrap: anywhere;
      }
      summary {
        cursor: pointer;
        width: fit-content;
        padding: 0.375rem 0;
        text-decoration: underline;
        text-underline-offset: 2px;
      }
      .words {
        display: block;
      }
      .empty {
        border: 1px dashed var(--plan-line);
        border-radius: var(--radius);
        padding: 1rem;
      }
      @media print {
        .groups {
          display: block;
          columns: 3 15em;
        }
        li {
          break-inside: avoid;
        }
      }
      @container (min-width: 42rem) {
        .groups {
          grid-template-columns: repeat(auto-fit, minmax(16rem, 1fr));
        }
      }
    `,
  ];

  @property({ type: Boolean, converter: tickTold }) bare = false;
  @property({ reflect: true }) theme: string | null = null;
  readonly #book = new BookController(this, () => {
    this.#wishes = null;
  });
  #live: LiveBook | null = null;
  #wishes: readonly Wish[] | null = null;

  protected override willUpdate(): void {
    const { live } = this.#book;
    if (live !== this.#live) this.#wishes = null;
    this.#live = live;
    if (live) this.#wishes ??= wishList(live.foodLines, live.weekPlans?.week ?? null, live.household.asOf);
  }

  protected override render() {
    const live = this.#live;
    if (!live) return withoutBook(this.#book.book);
    const wishes = (this.#wishes ?? []).filter(worthTelling);
    const nameOf = foodNames(live);
    return html`
      ${this.bare ? nothing : html`<h2>${say`Wish list`}</h2>`}
      ${
        wishes.length === 0
          ? html`<p class="empty" part="empty">
              ${say`Nothing yet. As draws are written and meals marked done, this tells what ran out, what was fetched when there was not enough, and what nobody touched: a word for next year’s beds.`}
            </p>`
          : html`<div class="groups">
              ${GROUPS.map(([what, title, help]) => {
                const lines = wishes.filter((wish) => wish.what === what);
                return lines.length === 0 ? nothing : group(spoken(title), spoken(help), lines, nameOf);
              })}
            </div>`
      }
    `;
  }
}

/** Less than one container over is no more than the estimate’s own slack. */
const worthTelling = ({ what, amount }: Wish): boolean => what !== 'stayed' || amount === null || amount >= 1;

function group(
  title: string,
  help: string,
  wishes: readonly Wish[],
  nameOf: (food: string) => string,
): TemplateResult {
  const line = ({ food, way, words }: Wish) => html`<li>
    ${nameOf(food)}${way ? html` <span class="quiet small">${spoken(way)}</span>` : nothing}
    <span class="words small quiet">${words}</span>
  </li>`;
  return html`<section part="group" aria-label=${title}>
    <h3>${title} <span class="quiet small">${wishes.length}</span></h3>
    <p class="quiet small">${help}</p>
    <ul>
      ${wishes.slice(0, FIRST).map(line)}
    </ul>
    ${
      wishes.length > FIRST
        ? html`<details>
            <summary class="small">${say`${wishes.length - FIRST} more`}</summary>
            <ul>
              ${wishes.slice(FIRST).map(line)}
            </ul>
          </details>`
        : nothing
    }
  </section>`;
}

export type { CroftEvents } from '../events.js';

declare global {
  interface HTMLElementTagNameMap {
    'croft-wish-list': CroftWishList;
  }
}
