import { css, html, type TemplateResult } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import { phrase } from '../../src/words/index.js';
import { fillsTelephone } from '../look/dialog-styles.js';
import { ActionDialog } from '../sheet/actions/action-dialog.js';
import './croft-lists.js';

/** A week's lists over the Week sheet. */
@customElement('croft-lists-dialog')
export class ListsDialog extends ActionDialog {
  static override styles = [
    ...ActionDialog.styles,
    css`
      dialog {
        width: min(80rem, calc(100vw - 1.5rem));
      }
      /* The lists have a heading of their own. */
      @media print {
        #heading {
          display: none;
        }
      }
    `,
    fillsTelephone,
  ];

  /** Any day of the week to show first. */
  @property() week = '';

  protected override heading = phrase('Lists');

  protected override content(): TemplateResult {
    return html`<croft-lists week=${this.week}></croft-lists>
      ${this.foot()}`;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'croft-lists-dialog': ListsDialog;
  }
}
