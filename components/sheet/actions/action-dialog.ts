import { css, html, LitElement, type PropertyValues, type TemplateResult } from 'lit';
import { query } from 'lit/decorators.js';
import type { LiveBook } from '../../../src/live/live-book.js';
import type { Problem } from '../../../src/problem.js';
import { say, spoken } from '../../../src/words/index.js';
import { BookController } from '../../book/find-book.js';
import { base } from '../../look/base.js';
import { openModal } from '../../look/modal.js';
import { inWords } from '../../look/problems.js';
import { tableStyles } from '../../look/table-styles.js';

/** How a dialog ended; `say` goes to the line under the sheet. */
export interface DialogDone {
  readonly say: Problem | string | null;
}

export const dialogStyles = css`
  dialog {
    width: min(46rem, calc(100vw - 1.5rem));
    max-height: calc(100dvh - 2rem);
    /* What has the keyboard is not under the buttons that stay at the foot. */
    scroll-padding-block: 0.5rem 5.5rem;
  }
  th,
  td {
    text-align: start;
    font-weight: 400;
    padding: 0.3rem 0.625rem;
    border-bottom: 1px solid var(--line);
    vertical-align: top;
  }
  thead th {
    font-weight: 600;
    font-size: 0.8125rem;
    background: var(--plan);
    vertical-align: bottom;
  }
  td.number,
  th.number {
    text-align: end;
  }
  tbody tr:last-child > * {
    border-bottom: 0;
  }
  /* Long ones scroll; what can be done stays in sight. */
  .ends {
    position: sticky;
    bottom: -1.25rem;
    margin: 0 -1.25rem -1.25rem;
    padding: 0.75rem 1.25rem 1.25rem;
    background: var(--paper);
    border-top: 1px solid var(--line);
  }
  .ends .note {
    margin-inline-end: auto;
    color: var(--quiet);
  }
  h2:focus-visible {
    outline: none;
  }
  .less {
    color: var(--problem);
    font-weight: 600;
  }
  summary {
    cursor: pointer;
    width: fit-content;
    text-decoration: underline;
    text-underline-offset: 2px;
  }
  @media (max-width: 34rem) {
    table {
      font-size: 0.8125rem;
    }
    thead th {
      font-size: 0.75rem;
    }
    th,
    td {
      padding-inline: 0.375rem;
    }
  }
  .says {
    display: grid;
    gap: 0.25rem;
  }
  .outcome:not(:has(p)) {
    position: absolute;
  }
`;

/** A dialog that an action of a sheet opens. It opens itself, and says `croft-dialog-done` when it closes. */
export abstract class ActionDialog extends LitElement {
  static override styles = [base, tableStyles, dialogStyles];

  @query('dialog') protected dialog!: HTMLDialogElement;
  readonly #book = new BookController(this);
  #say: DialogDone['say'] = null;
  #live: LiveBook | null = null;

  /** The book as it was when the dialog opened; another one taking its place closes the dialog. */
  protected get live(): LiveBook | null {
    this.#live ??= this.#book.live;
    return this.#live;
  }

  /** In English: it is told in the language spoken when it is shown. */
  protected abstract heading: string;

  /** What stands in it, its buttons included. */
  protected abstract content(live: LiveBook): TemplateResult;

  protected override firstUpdated(_changed: PropertyValues): void {
    openModal(this.dialog);
  }

  protected override updated(): void {
    if (this.#live !== null && this.#book.live !== this.#live) this.close();
  }

  protected override render() {
    const { live } = this;
    return html`<dialog aria-labelledby="heading" @close=${this.#closed}>
      <div class="stack">
        <h2 id="heading" tabindex="-1" autofocus>${spoken(this.heading)}</h2>
        ${live ? this.content(live) : ''}
      </div>
    </dialog>`;
  }

  /** Closes it, with something to be said under the sheet. */
  protected close(say: DialogDone['say'] = null): void {
    this.#say = say;
    this.dialog.close();
  }

  /** Buttons at its foot: leaving, and the one thing to do; `note` stands beside them. */
  protected foot(act?: { readonly label: string; readonly run: () => void }, note = ''): TemplateResult {
    return html`<div class="row ends">
      ${note === '' ? '' : html`<p class="note small">${note}</p>`}
      <button class="button ${act ? '' : 'first'}" type="button" @click=${() => this.close()}>
        ${act ? say`Cancel` : say`Close`}
      </button>
      ${act ? html`<button class="button first" type="button" @click=${act.run}>${act.label}</button>` : ''}
    </div>`;
  }

  /** The line that says what came of the last thing done, on the page at all times so that readers hear it. */
  protected outcome(said: Problem | string | null): TemplateResult {
    return html`<div role="status" class="outcome small">
      ${said === null ? '' : html`<p class=${typeof said === 'string' ? '' : 'problem'}>${inWords(said)}</p>`}
    </div>`;
  }

  /** After another view has taken the place of the one shown: its beginning is seen, and read out. */
  protected async toTop(): Promise<void> {
    await this.updateComplete;
    this.dialog.scrollTop = 0;
    this.renderRoot.querySelector<HTMLElement>('h2')?.focus();
  }

  readonly #closed = (): void => {
    const detail: DialogDone = { say: this.#say };
    this.dispatchEvent(new CustomEvent('croft-dialog-done', { detail, bubbles: true }));
  };
}
