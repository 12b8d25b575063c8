import { css, html, LitElement, nothing } from 'lit';
import { customElement, property, query, state } from 'lit/decorators.js';
import type { LiveBook } from '../../src/live/live-book.js';
import { say } from '../../src/words/index.js';
import { base } from '../look/base.js';
import { openModal } from '../look/modal.js';

/** Inside `<croft-sheet>`: shows and hides columns. Takes effect at once, and undo takes it back. */
@customElement('croft-columns-dialog')
export class ColumnsDialog extends LitElement {
  static override styles = [
    base,
    css`
      ul {
        display: grid;
        grid-template-columns: repeat(auto-fill, minmax(13rem, 1fr));
        gap: 0.25rem 1rem;
        max-height: min(60vh, 30rem);
        overflow: auto;
        padding: 0.25rem;
      }
      li label {
        display: flex;
        gap: 0.5rem;
        align-items: center;
        font-weight: 400;
        font-size: 0.875rem;
        padding: 0.25rem 0.375rem;
        border-inline-start: 4px solid transparent;
      }
      .planning {
        background: var(--plan);
        border-color: var(--plan-line);
      }
      .own {
        border-color: var(--own);
      }
    `,
  ];

  @property({ attribute: false }) live!: LiveBook;
  @property() sheet = '';
  @state() private shown = false;
  @query('dialog') private dialog!: HTMLDialogElement;

  async open(): Promise<void> {
    this.shown = true;
    await this.updateComplete;
    openModal(this.dialog);
  }

  protected override render() {
    if (!this.shown) return nothing;
    return html`<dialog aria-labelledby="heading" @close=${this.#closed}>
      <form method="dialog">
        <h2 id="heading">${say`Columns`}</h2>
        <ul>
          ${this.live.columns(this.sheet).map(
            ({ id, title, role, help, hidden }) => html`<li>
              <label class=${role} title=${help}>
                <input type="checkbox" .checked=${!hidden} @change=${(event: Event) => this.#show(id, event)} />
                ${title}
              </label>
            </li>`,
          )}
        </ul>
        <div class="row ends"><button class="button first">${say`Done`}</button></div>
      </form>
    </dialog>`;
  }

  readonly #closed = (): void => {
    this.shown = false;
  };

  #show(column: string, event: Event): void {
    const { checked } = event.target as HTMLInputElement;
    // A column that its kind hides needs `false` said outright, which a plain description would drop.
    const hidden = !checked;
    this.live.apply({ do: 'describe column', sheet: this.sheet, column, as: { hidden } });
    this.requestUpdate();
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'croft-columns-dialog': ColumnsDialog;
  }
}
