import { css, html, LitElement, nothing, type TemplateResult } from 'lit';
import { customElement, state } from 'lit/decorators.js';
import type { Problem } from '../../src/problem.js';
import { say, spoken } from '../../src/words/index.js';
import { BookController } from '../book/find-book.js';
import { base } from '../look/base.js';
import { icons } from '../look/icons.js';

/**
 * What the person must know about how the book is kept, with what to do right there: storage that is full,
 * cleared, refused or damaged, and what two copies changed differently. Empty while there is nothing to say.
 *
 * @element croft-book-notices
 * @attr book - Id of the `<croft-book>`, where it does not stand around this element.
 */
@customElement('croft-book-notices')
export class CroftBookNotices extends LitElement {
  static override styles = [
    base,
    css`
      .notice {
        display: grid;
        grid-template-columns: auto 1fr;
        gap: 0.25rem 0.625rem;
        margin-block: 0.5rem;
        padding: 0.625rem 0.75rem;
        border: 1px solid var(--problem);
        border-inline-start-width: 4px;
        border-radius: var(--radius);
        background: var(--problem-paper);
      }
      .notice > svg {
        margin-top: 0.2em;
        color: var(--problem);
      }
      .row {
        grid-column: 2;
        margin-top: 0.25rem;
      }
      @media print {
        :host {
          display: none;
        }
      }
    `,
  ];

  @state() private dialog: TemplateResult | null = null;
  @state() private said = '';
  readonly #book = new BookController(this);

  protected override render() {
    const { book } = this.#book;
    if (!book || book.keep === null || !book.live) return nothing;
    const open = book.past?.conflicts.length ?? 0;
    return html`
      ${book.notices.map((problem) => this.#notice(problem))}
      ${
        open === 0
          ? nothing
          : html`<section class="notice" aria-label=${say`Two copies differ`}>
              ${icons.care}
              <p>
                <strong>${open === 1 ? say`One thing was changed on two copies, each its own way.` : say`${open} things were changed on two copies, each its own way.`}</strong>
                ${say`One of the two stands in the book; the other waits to be decided.`}
              </p>
              <div class="row"><button class="button" type="button" @click=${this.#decide}>${say`Decide…`}</button></div>
            </section>`
      }
      ${
        this.dialog === null
          ? nothing
          : html`<div
              @croft-dialog-done=${() => {
                this.dialog = null;
              }}
            >
              ${this.dialog}
            </div>`
      }
    `;
  }

  #notice(problem: Problem): TemplateResult {
    const book = this.#book.book!;
    // What goes on losing edits stays in sight until it has passed.
    const passing = book.status.state === 'could not save' || book.status.state === 'saving';
    const stays = passing && book.status.problem?.code === problem.code;
    return html`<section class="notice" aria-label=${say`How the book is kept`}>
      ${icons.care}
      <p><strong>${spoken(problem.message)}</strong> ${spoken(problem.mend)}</p>
      <div class="row">
        <button class="button first" type="button" @click=${() => void book.saveACopy()}>${icons.save}${say`Save a copy`}</button>
        ${
          stays
            ? html`<button class="button" type="button" @click=${this.#tryAgain}>${say`Try again`}</button>`
            : nothing
        }
        ${
          stays
            ? nothing
            : html`<button class="button" type="button" @click=${() => book.dismiss(problem)}>${say`I have read it`}</button>`
        }
        <span class="small" role="status">${this.said}</span>
      </div>
    </section>`;
  }

  readonly #tryAgain = async (): Promise<void> => {
    this.said = say`Trying…`;
    const saved = await this.#book.book?.tryAgain();
    this.said = saved ? '' : say`Still not saved.`;
  };

  readonly #decide = async (): Promise<void> => {
    await import('../merging/merge-dialog.js');
    this.dialog = html`<croft-merge-dialog></croft-merge-dialog>`;
  };
}

declare global {
  interface HTMLElementTagNameMap {
    'croft-book-notices': CroftBookNotices;
  }
}
