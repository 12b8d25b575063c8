import { css, html, type TemplateResult } from 'lit';
import { customElement } from 'lit/decorators.js';
import { phrase, say } from '../../src/words/index.js';
import { ActionDialog } from '../sheet/actions/action-dialog.js';
import './croft-wish-list.js';

/** The wish list, over Foods or Beds. */
@customElement('croft-wish-dialog')
export class WishDialog extends ActionDialog {
  static override styles = [
    ...ActionDialog.styles,
    css`
      dialog {
        width: min(60rem, calc(100vw - 1.5rem));
      }
    `,
  ];

  protected override heading = phrase('Wish list');

  protected override content(): TemplateResult {
    return html`<p class="quiet small">
        ${say`What the draws of a year and the meals planned say of the next: to bear in mind as beds and batches are planned.`}
      </p>
      <croft-wish-list bare></croft-wish-list>
      ${this.foot()}`;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'croft-wish-dialog': WishDialog;
  }
}
