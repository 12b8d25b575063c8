import { css, html, type TemplateResult } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import { COLOURS, type Colour } from '../../../src/book/index.js';
import type { LiveBook } from '../../../src/live/live-book.js';
import { phrase, say, spoken } from '../../../src/words/index.js';
import type { GridCell } from '../../grid/grid-view.js';
import { colourStyles } from '../../look/colours.js';
import { ActionDialog } from '../actions/action-dialog.js';

/** Marks cells with one of the colours, or takes the colour away. */
@customElement('croft-colour-dialog')
export class ColourDialog extends ActionDialog {
  static override styles = [
    ...ActionDialog.styles,
    colourStyles,
    css`
      dialog {
        width: min(26rem, calc(100vw - 1.5rem));
      }
      .colours {
        display: grid;
        grid-template-columns: repeat(auto-fill, minmax(6.5rem, 1fr));
        gap: 0.5rem;
      }
      .colours button {
        min-height: 2.75rem;
        padding: 0.25rem 0.75rem;
        border: 1px solid var(--line);
        border-radius: var(--radius);
      }
      .colours button[aria-pressed='true'] {
        border: 2px solid var(--accent);
        font-weight: 650;
      }
      .colours .tint::before {
        margin-inline-end: 0.375rem;
      }
      .colours .none {
        background: var(--raised);
      }
    `,
  ];

  @property() sheet = '';
  @property({ attribute: false }) cells: readonly GridCell[] = [];
  protected override heading = phrase('Colour');

  protected override content(live: LiveBook): TemplateResult {
    const { cells, sheet } = this;
    const now = cells[0] && live.colourOf(sheet, cells[0].row, cells[0].column);
    const one = (colour: Colour | null): TemplateResult => html`<button
      type="button"
      class=${colour ? `tint tint-inline tint-${colour}` : 'none'}
      aria-pressed=${String((now ?? null) === colour)}
      @click=${() => this.#mark(live, colour)}
    >${colour ? spoken(colour) : say`none`}</button>`;
    return html`<p class="quiet small">
        ${cells.length === 1 ? say`For this cell.` : say`For these ${cells.length} cells.`}
        ${say`A colour chosen here goes before the column’s colour rules. Each colour has a sign of its own as well.`}
      </p>
      <div class="colours" role="group" aria-label=${say`Colours`}>${[...COLOURS, null].map(one)}</div>
      ${this.foot()}`;
  }

  #mark(live: LiveBook, colour: Colour | null): void {
    const done = live.apply({ do: 'mark cells', sheet: this.sheet, cells: this.cells, colour });
    this.close(done.ok ? marked(this.cells.length, colour) : done.problem);
  }
}

function marked(n: number, colour: Colour | null): string {
  if (colour === null)
    return n === 1
      ? say`One cell is without a colour of its own.`
      : say`${n} cells are without a colour of their own.`;
  return n === 1
    ? say`One cell marked ${colour}. Undo takes it back.`
    : say`${n} cells marked ${colour}. Undo takes it back.`;
}

declare global {
  interface HTMLElementTagNameMap {
    'croft-colour-dialog': ColourDialog;
  }
}
