import { css, html, nothing, type TemplateResult } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import type { TurnedFormula } from '../../src/live/doings/formulas-turned.js';
import type { LiveBook } from '../../src/live/live-book.js';
import { phrase, say, spoken } from '../../src/words/index.js';
import { ActionDialog } from './actions/action-dialog.js';

/** More than these are counted, not shown. */
const MOST = 20;

/** Says what becomes of formulas before the household goes over to other measures, and does it. */
@customElement('croft-measures-dialog')
export class MeasuresDialog extends ActionDialog {
  static override styles = [
    ...ActionDialog.styles,
    css`
      dl {
        display: grid;
        gap: 0.5rem;
      }
      dd {
        overflow-wrap: anywhere;
      }
      section {
        display: grid;
        gap: 0.5rem;
      }
    `,
  ];

  /** As chosen: the measures to go over to. */
  @property() measures = '';
  @property({ attribute: false }) formulas: readonly TurnedFormula[] = [];

  protected override heading: string = phrase('Go over to other measures?');

  protected override content(live: LiveBook): TemplateResult {
    const turned = this.formulas.filter(({ becomes }) => becomes !== null);
    const left = this.formulas.filter(({ becomes }) => becomes === null);
    return html`
      <p>${say`The household will read and write in these measures: ${spoken(this.measures)}. Numbers that were written in the others are turned, so that they mean what they meant. So are formulas.`}</p>
      ${listed(say`These are written anew, and give the same as before:`, turned)}
      ${listed(say`These cannot be turned. They stay as they are, and are marked under ‘Formulas and errors…’ until somebody has looked at them:`, left)}
      ${this.foot({ label: say`Go over`, run: () => this.#go(live) }, say`Undo brings everything back.`)}
    `;
  }

  #go(live: LiveBook): void {
    const outcome = live.apply({ do: 'set setting', setting: 'measures', typed: this.measures });
    this.close(outcome.ok ? null : outcome.problem);
  }
}

function listed(heading: string, formulas: readonly TurnedFormula[]): TemplateResult | typeof nothing {
  if (formulas.length === 0) return nothing;
  const more = formulas.length - MOST;
  return html`<section>
    <p><strong>${heading}</strong></p>
    <dl>
      ${formulas.slice(0, MOST).map(
        ({ place, was, becomes, count }) => html`<div>
          <dt class="small">${count > 1 ? say`${place}, in ${count} cells` : place}</dt>
          <dd><code>${was}</code>${becomes === null ? nothing : html` → <code>${becomes}</code>`}</dd>
        </div>`,
      )}
    </dl>
    ${more > 0 ? html`<p class="small">${say`And ${more} more.`}</p>` : nothing}
  </section>`;
}

declare global {
  interface HTMLElementTagNameMap {
    'croft-measures-dialog': MeasuresDialog;
  }
}
