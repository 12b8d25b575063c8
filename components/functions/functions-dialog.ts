import { css, html, type TemplateResult } from 'lit';
import { customElement } from 'lit/decorators.js';
import { ActionDialog } from '../sheet/actions/action-dialog.js';
import './croft-functions.js';
import { phrase } from '../../src/words/index.js';

/** The reference of functions, from the book's menu or from where a formula is written. */
@customElement('croft-functions-dialog')
export class FunctionsDialog extends ActionDialog {
  static override styles = [
    ...ActionDialog.styles,
    css`
      dialog {
        width: min(66rem, calc(100vw - 1.5rem));
      }
      croft-functions {
        min-height: min(24rem, 60vh);
        --croft-list-height: 56vh;
      }
    `,
  ];

  protected override heading = phrase('Functions');

  protected override content(): TemplateResult {
    return html`<croft-functions bare></croft-functions>${this.foot()}`;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'croft-functions-dialog': FunctionsDialog;
  }
}
