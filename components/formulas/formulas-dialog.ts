import { css, html, type TemplateResult } from 'lit';
import { customElement } from 'lit/decorators.js';
import { bookAround } from '../book/find-book.js';
import { type ShowEvent, showCell } from '../pictures/show.js';
import { ActionDialog } from '../sheet/actions/action-dialog.js';
import './croft-formulas.js';
import { phrase } from '../../src/words/index.js';

/** The book's formulas and errors, from its menu. Going to a cell closes it. */
@customElement('croft-formulas-dialog')
export class FormulasDialog extends ActionDialog {
  static override styles = [
    ...ActionDialog.styles,
    css`
      dialog {
        width: min(56rem, calc(100vw - 1.5rem));
      }
      croft-formulas {
        min-height: min(20rem, 50vh);
      }
    `,
  ];

  protected override heading = phrase('Formulas and errors');

  protected override content(): TemplateResult {
    return html`<croft-formulas bare @croft-show=${this.#go}></croft-formulas>${this.foot()}`;
  }

  /** The page hears of it once the dialog is gone and the keyboard is back, so that the cell can take it. */
  readonly #go = (event: ShowEvent): void => {
    event.stopPropagation();
    const root = this.getRootNode();
    const from = root instanceof ShadowRoot ? (root.host as HTMLElement) : (this.parentElement ?? this);
    const book = bookAround(this);
    this.close();
    setTimeout(() => showCell(from, book, event.detail));
  };
}

declare global {
  interface HTMLElementTagNameMap {
    'croft-formulas-dialog': FormulasDialog;
  }
}
