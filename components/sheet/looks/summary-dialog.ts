import { css, html, type TemplateResult } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import { SUMMARIES, type Summary } from '../../../src/book/index.js';
import type { LiveBook } from '../../../src/live/live-book.js';
import { phrase, say, spoken } from '../../../src/words/index.js';
import { ActionDialog } from '../actions/action-dialog.js';
import { SUMMARY_WORDS } from '../column-parts.js';

/** Chooses what stands under a column. */
@customElement('croft-summary-dialog')
export class SummaryDialog extends ActionDialog {
  static override styles = [
    ...ActionDialog.styles,
    css`
      dialog {
        width: min(24rem, calc(100vw - 1.5rem));
      }
      fieldset {
        display: grid;
        gap: 0.25rem;
      }
      legend {
        padding: 0 0 0.25rem;
      }
      label {
        display: flex;
        align-items: center;
        gap: 0.5rem;
        min-height: 2.25rem;
        font-weight: 400;
        font-size: 0.9375rem;
      }
    `,
  ];

  @property() sheet = '';
  @property() column = '';
  protected override heading = phrase('Under the column');

  protected override content(live: LiveBook): TemplateResult {
    const column = live.column(this.sheet, this.column);
    const one = (summary: Summary | '', label: string): TemplateResult => html`<label>
      <input type="radio" name="summary" value=${summary} .checked=${(column?.summary ?? '') === summary} />
      ${label}
    </label>`;
    return html`<fieldset>
        <legend class="quiet small">
          ${say`What stands under “${column?.title ?? ''}”. It follows every edit and every filter.`}
        </legend>
        ${one('', say`Nothing`)} ${SUMMARIES.map((summary) => one(summary, spoken(SUMMARY_WORDS[summary])))}
      </fieldset>
      ${this.foot({ label: say`Keep`, run: () => this.#keep(live) })}`;
  }

  #keep(live: LiveBook): void {
    const chosen = this.renderRoot.querySelector<HTMLInputElement>('input:checked')?.value ?? '';
    const summary = SUMMARIES.find((each) => each === chosen) ?? null;
    const { sheet, column } = this;
    const done = live.apply({ do: 'describe column', sheet, column, as: { summary } });
    this.close(done.ok ? null : done.problem);
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'croft-summary-dialog': SummaryDialog;
  }
}
