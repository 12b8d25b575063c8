import { css, html, LitElement, nothing, type TemplateResult } from 'lit';
import { customElement, property, query, state } from 'lit/decorators.js';
import type { Problem } from '../../src/problem.js';
import { say, spoken } from '../../src/words/index.js';
import { BookController } from '../book/find-book.js';
import { base } from '../look/base.js';
import { icons } from '../look/icons.js';
import { inWords, NOT_LOADED } from '../look/problems.js';
import type { DialogDone } from '../sheet/actions/action-dialog.js';
import { BOOK_DOINGS, type BookDoing } from './doings.js';

/**
 * What can be done with the whole book: a button that opens a menu, as WAI-ARIA has it.
 *
 * @element croft-book-menu
 * @attr book - Id of the `<croft-book>`, where it does not stand around this element.
 * @attr theme - `light`, `dark` or `auto`.
 * @fires croft-show - A sheet was made or brought in: `detail` is a cell of it, `{ sheet, row, column }`, for the page to
 *   bring it into view.
 * @csspart button - The button that opens the menu.
 * @csspart menu - The menu.
 */
@customElement('croft-book-menu')
export class CroftBookMenu extends LitElement {
  static override styles = [
    base,
    css`
      :host {
        display: inline-block;
        position: relative;
      }
      [role='menu'] {
        position: absolute;
        z-index: 20;
        inset-block-start: calc(100% + 0.25rem);
        inset-inline-end: 0;
        min-width: max-content;
        max-width: calc(100vw - 1rem);
        padding: 0.25rem;
        border: 1px solid var(--line);
        border-radius: var(--radius);
        background: var(--raised);
        box-shadow: 0 6px 20px rgb(0 0 0 / 0.18);
      }
      [role='menuitem'] {
        display: flex;
        align-items: center;
        gap: 0.5rem;
        width: 100%;
        min-height: 2.5rem;
        padding: 0.375rem 0.75rem;
        border-radius: calc(var(--radius) - 2px);
      }
      [role='menuitem']:hover,
      [role='menuitem']:focus {
        background: var(--plan);
        outline: none;
      }
      [role='menuitem']:focus-visible {
        outline: 2px solid var(--focus);
        outline-offset: -2px;
      }
      [role='separator'] {
        height: 1px;
        margin: 0.25rem 0.5rem;
        background: var(--line);
      }
      /* Over what stands below, so that nothing moves when it comes and goes. */
      .said {
        position: absolute;
        z-index: 19;
        inset-block-start: calc(100% + 0.25rem);
        inset-inline-end: 0;
        display: flex;
        gap: 0.75rem;
        align-items: start;
        width: max-content;
        max-width: min(30rem, calc(100vw - 2rem));
        padding: 0.5rem 0.75rem;
        border: 1px solid var(--line);
        border-radius: var(--radius);
        background: var(--raised);
        box-shadow: 0 6px 20px rgb(0 0 0 / 0.18);
      }
      @media (max-width: 36rem) {
        [role='menu'],
        .said {
          inset-inline: 0 auto;
        }
      }
    `,
  ];

  @property({ reflect: true }) theme: string | null = null;
  @state() private open = false;
  @state() private dialog: TemplateResult | null = null;
  @state() private said: Problem | string | null = null;
  @query('.opener') private opener!: HTMLButtonElement;
  readonly #book = new BookController(this);

  override connectedCallback(): void {
    super.connectedCallback();
    document.addEventListener('pointerdown', this.#outside);
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    document.removeEventListener('pointerdown', this.#outside);
  }

  protected override render() {
    return html`<button
        class="button opener"
        part="button"
        type="button"
        aria-haspopup="menu"
        aria-expanded=${this.open}
        ?disabled=${!this.#book.live}
        @click=${() => this.#toggle(!this.open)}
        @keydown=${this.#openerKey}
      >
        ${icons.page}<span>${say`This book`}</span>
      </button>
      ${this.open ? this.#menu() : nothing}
      ${
        this.said === null
          ? nothing
          : html`<p class="said small ${typeof this.said === 'string' ? '' : 'problem'}" role="status">
              <span>${inWords(this.said)}</span>
              <button class="link" type="button" @click=${() => this.#say(null)}>${say`Dismiss`}</button>
            </p>`
      }
      ${this.dialog === null ? nothing : html`<div @croft-dialog-done=${this.#done}>${this.dialog}</div>`}`;
  }

  #menu() {
    return html`<div role="menu" part="menu" aria-label=${say`This book`} @keydown=${this.#menuKey}>
      ${BOOK_DOINGS.map(
        (doing, i) => html`${
          i > 0 && BOOK_DOINGS[i - 1]!.group !== doing.group ? html`<div role="separator"></div>` : nothing
        }<button
          role="menuitem"
          type="button"
          tabindex="-1"
          title=${spoken(doing.title)}
          @click=${() => void this.#run(doing)}
        >
          ${doing.icon}<span>${spoken(doing.label)}</span>
        </button>`,
      )}
    </div>`;
  }

  #say(said: Problem | string | null): void {
    this.said = said;
  }

  async #toggle(open: boolean, last = false): Promise<void> {
    this.open = open;
    await this.updateComplete;
    if (open) this.#items.at(last ? -1 : 0)?.focus();
  }

  get #items(): HTMLElement[] {
    return [...this.renderRoot.querySelectorAll<HTMLElement>('[role="menuitem"]')];
  }

  async #run(doing: BookDoing): Promise<void> {
    this.open = false;
    this.said = null;
    this.opener.focus();
    try {
      this.dialog = await doing.open();
    } catch (error) {
      console.error(error);
      this.said = NOT_LOADED;
    }
  }

  readonly #done = (event: CustomEvent<DialogDone>): void => {
    this.dialog = null;
    this.said = event.detail.say;
    this.opener.focus();
  };

  readonly #outside = (event: Event): void => {
    if (event.composedPath().includes(this)) return;
    this.open = false;
    // What went well was read by now; what went wrong stays until it is dismissed.
    if (typeof this.said === 'string') this.said = null;
  };

  readonly #openerKey = (event: KeyboardEvent): void => {
    if (event.key !== 'ArrowDown' && event.key !== 'ArrowUp') return;
    event.preventDefault();
    void this.#toggle(true, event.key === 'ArrowUp');
  };

  readonly #menuKey = (event: KeyboardEvent): void => {
    const items = this.#items;
    const at = items.indexOf(this.shadowRoot?.activeElement as HTMLElement);
    const letter = event.key.length === 1 ? event.key.toLowerCase() : '';
    const lettered = [...items.slice(at + 1), ...items].find(
      (item) => letter.trim() !== '' && item.textContent?.trim().toLowerCase().startsWith(letter),
    );
    const to =
      lettered ??
      {
        ArrowDown: items[(at + 1) % items.length],
        ArrowUp: items[(at - 1 + items.length) % items.length],
        Home: items[0],
        End: items.at(-1),
      }[event.key];
    if (to) {
      event.preventDefault();
      to.focus();
    } else if (event.key === 'Escape') {
      event.preventDefault();
      this.open = false;
      this.opener.focus();
    } else if (event.key === 'Tab') this.open = false;
  };
}

export type { CroftEvents } from '../events.js';

declare global {
  interface HTMLElementTagNameMap {
    'croft-book-menu': CroftBookMenu;
  }
}
