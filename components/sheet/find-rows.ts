import { css, html, LitElement, nothing, type PropertyValues } from 'lit';
import { customElement, property, query, state } from 'lit/decorators.js';
import type { BookChange, LiveBook } from '../../src/live/live-book.js';
import { say } from '../../src/words/index.js';
import type { GridCell } from '../grid/grid-view.js';
import { base } from '../look/base.js';
import { icons } from '../look/icons.js';
import { ShownRows } from './shown-rows.js';

/** More rows than these are worth finding in. */
export const ROWS_WORTH_FINDING_IN = 12;

export interface FindEvents {
  /** A row that was found is to be seen; `take`: the keyboard goes to it; `first`: by its first column. */
  found: CustomEvent<{ readonly cell: GridCell; readonly take: boolean; readonly first: boolean }>;
  done: CustomEvent<null>;
}

/**
 * Beside a grid: rows that hold all of the words looked for, one after the other. The grid draws only what is in
 * sight, so the browser's own search finds nothing else in it.
 */
@customElement('croft-find-rows')
export class FindRows extends LitElement {
  static override styles = [
    base,
    css`
      form {
        display: flex;
        align-items: center;
        gap: 0.375rem;
        margin-bottom: 0.5rem;
      }
      input {
        flex: 1 1 5rem;
        max-width: 20rem;
      }
      .button {
        min-width: 2.75rem;
        justify-content: center;
      }
      p {
        min-width: 3.5rem;
        white-space: nowrap;
        font-variant-numeric: tabular-nums;
      }
      @media print {
        :host {
          display: none;
        }
      }
    `,
  ];

  @property({ attribute: false }) live!: LiveBook;
  @property() sheet = '';
  /** Rows that the grid leaves out on purpose are not looked through. */
  @property({ attribute: false }) hides: (row: string) => boolean = () => false;
  @state() private words = '';
  /** Which of the rows found was shown last. */
  @state() private at = 0;
  @query('input') private field!: HTMLInputElement;
  #rows: ShownRows | undefined;

  override focus(): void {
    this.field?.focus();
    this.field?.select();
  }

  /** To be called with every change of the book. */
  heed(change: BookChange): void {
    this.#rows?.heed(change);
    this.requestUpdate();
  }

  protected override willUpdate(changed: PropertyValues<FindRows>): void {
    if (changed.has('live') || changed.has('sheet')) this.#rows = new ShownRows(this.live, this.sheet, false);
  }

  protected override render() {
    const found = this.#found();
    return html`<form role="search" @submit=${this.#next} @keydown=${this.#pressed}>
      <input
        type="search"
        enterkeyhint="search"
        autocomplete="off"
        aria-label=${say`Find rows`}
        placeholder=${say`Find rows`}
        .value=${this.words}
        @input=${this.#written}
      />
      <button class="button" type="button" aria-label=${say`Row before`} title=${say`Row before`} ?disabled=${found.length === 0} @click=${() => this.#go(-1)}>
        <span aria-hidden="true">↑</span>
      </button>
      <button class="button" type="submit" aria-label=${say`Next row`} title=${say`Next row`} ?disabled=${found.length === 0}>
        <span aria-hidden="true">↓</span>
      </button>
      <p class="small quiet" role="status">
        ${
          this.words.trim() === ''
            ? nothing
            : found.length === 0
              ? say`in no row`
              : say`${Math.min(this.at, found.length - 1) + 1} of ${found.length}`
        }
      </p>
      <button class="button plain" type="button" aria-label=${say`Close`} @click=${this.#done}>${icons.close}</button>
    </form>`;
  }

  #found(): readonly string[] {
    if (this.words.trim() === '') return [];
    const found = this.#rows!.matching(this.words).filter((row) => !this.hides(row));
    // “shelf 2” is not a shelf of 2025, where there is one.
    const together = found.filter((row) => this.#rows!.row(row).text.includes(this.#sought));
    return together.length > 0 ? together : found;
  }

  get #sought(): string {
    return this.words.trim().toLowerCase();
  }

  readonly #written = (): void => {
    this.words = this.field.value;
    this.at = 0;
    this.#tell(false);
  };

  readonly #next = (event: Event): void => {
    event.preventDefault();
    this.#go(this.#shown === this.words ? 1 : 0);
  };

  readonly #pressed = (event: KeyboardEvent): void => {
    if (event.key !== 'Escape') return;
    event.preventDefault();
    this.#done();
  };

  readonly #done = (): void => void this.dispatchEvent(new CustomEvent('done', { detail: null }));

  /** The words whose first row has been gone to. */
  #shown = '';

  #go(by: number): void {
    const { length } = this.#found();
    if (length === 0) return;
    this.at = (Math.min(this.at, length - 1) + by + length) % length;
    this.#shown = this.words;
    this.#tell(true);
  }

  #tell(take: boolean): void {
    const row = this.#found()[this.at];
    if (row === undefined) return;
    const { columns } = this.#rows!;
    const texts = this.#rows!.row(row).cells.map(({ text }) => text.toLowerCase());
    const whole = texts.findIndex((text) => text.includes(this.#sought));
    const [first = ''] = this.#sought.split(/\s+/);
    const at = whole >= 0 ? whole : texts.findIndex((text) => text.includes(first));
    const column = columns[Math.max(0, at)]?.id;
    if (column === undefined) return;
    const detail: FindEvents['found']['detail'] = { cell: { row, column }, take, first: at <= 0 };
    this.dispatchEvent(new CustomEvent('found', { detail }));
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'croft-find-rows': FindRows;
  }
}
