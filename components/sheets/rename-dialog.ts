import { html, type TemplateResult } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import type { LiveBook } from '../../src/live/live-book.js';
import { phrase, say } from '../../src/words/index.js';
import { inWords } from '../look/problems.js';
import { ActionDialog } from '../sheet/actions/action-dialog.js';
import { onEnter } from './title-keys.js';

/** Asks for another title of a sheet. */
@customElement('croft-rename-sheet-dialog')
export class RenameSheetDialog extends ActionDialog {
  protected override heading = phrase('Rename this sheet');
  @property() sheet = '';
  @state() private wrong = '';

  protected override content(live: LiveBook): TemplateResult {
    const title = live.sheets().find(({ id }) => id === this.sheet)?.title ?? '';
    return html`<div class="field">
        <label for="title">${say`Title`}</label>
        <input
          id="title"
          maxlength="60"
          autocomplete="off"
          .value=${title}
          aria-invalid=${this.wrong !== ''}
          aria-describedby="wrong"
          @keydown=${(event: KeyboardEvent) => onEnter(event, () => this.#rename(live))}
        />
        <p id="wrong" class="problem small" role="alert">${this.wrong}</p>
      </div>
      ${this.foot({ label: say`Rename`, run: () => this.#rename(live) })}`;
  }

  #rename(live: LiveBook): void {
    const field = this.renderRoot.querySelector<HTMLInputElement>('#title')!;
    const done = live.apply({ do: 'rename sheet', sheet: this.sheet, title: field.value });
    if (done.ok) {
      this.close();
      return;
    }
    this.wrong = inWords(done.problem);
    field.focus();
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'croft-rename-sheet-dialog': RenameSheetDialog;
  }
}
