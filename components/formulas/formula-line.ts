import { html, LitElement, nothing, type PropertyValues, type TemplateResult } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import { saysUnknownFunction } from '../../src/engine/messages.js';
import type { LineError, ListedFormula } from '../../src/live/doings/formulas-of-book.js';
import { type MendOffer, mendsFor } from '../../src/live/doings/mend-references.js';
import type { LiveBook } from '../../src/live/live-book.js';
import type { Problem } from '../../src/problem.js';
import { base } from '../look/base.js';
import { shownCell } from '../sheet/shown.js';
import './formula-edit.js';
import { lineStyles } from './formulas-styles.js';
import { goTo, placeLink, placeLinks } from './go-to.js';
import './mend-choice.js';
import { say, spoken } from '../../src/words/index.js';

/** Errors behind which something may be missing. */
const MENDABLE: ReadonlySet<string> = new Set(['#REF!', '#NAME?', '#ERROR!']);

const cells = (count: number): string => (count === 1 ? say`1 row` : say`${count} rows`);

/** Inside `<croft-formulas>`: one formula, what it gives, what it uses, and what is wrong with it. */
@customElement('croft-formula-line')
export class FormulaLineView extends LitElement {
  static override styles = [base, lineStyles];

  @property({ attribute: false }) live!: LiveBook;
  @property({ attribute: false }) line!: ListedFormula;
  @property() licenceKey = 'gpl-v3';
  /** Without ways to change anything. */
  @property({ type: Boolean }) readOnly = false;
  @state() private editing = false;
  #offers: readonly MendOffer[] = [];

  protected override willUpdate(changed: PropertyValues): void {
    if (!changed.has('line')) return;
    const { live, line } = this;
    const wrong = line.errors.filter(({ error, from }) => from === null && MENDABLE.has(error.error));
    const unknownFunction = wrong.some(({ error }) => saysUnknownFunction(error.message));
    this.#offers = wrong.length > 0 ? mendsFor(live, line, unknownFunction) : [];
  }

  protected override render() {
    const { line } = this;
    return html`<div class="line">
      <div class="what">
        <span
          >${
            line.place.cell
              ? html`<button class="place" type="button" title=${say`Go there`} @click=${() => goTo(this, line.place)}>
                  ${line.place.words}
                </button>`
              : html`<strong>${line.place.words}</strong>`
          }
          <span class="quiet small">${this.#fills()}</span></span
        >
        ${this.#value()}
      </div>
      ${this.editing ? this.#edit() : this.#formula()} ${line.errors.map((error) => this.#error(error))}
      ${line.units ? this.#units(line.units) : nothing}
      ${line.uses.length === 0 ? nothing : html`<p class="small"><span class="quiet">${say`Uses`}</span> ${placeLinks(this, line.uses)}</p>`}
      ${this.#usedBy()}
    </div>`;
  }

  #units(problem: Problem) {
    const unturned = problem.code === 'formula-of-other-measures';
    return html`<div class="row small">
      <p><strong>${unturned ? say`Other measures.` : say`Units differ.`}</strong> ${spoken(problem.message)} ${spoken(problem.mend)}</p>
      ${unturned && !this.readOnly ? html`<button class="button" type="button" @click=${this.#lookedAt}>${say`It is right`}</button>` : nothing}
    </div>`;
  }

  readonly #lookedAt = (): void => {
    const { sheet, column, rows } = this.line;
    this.live.apply({
      do: 'mark cells',
      sheet,
      cells: rows.map((row) => ({ row, column })),
      lookedAt: true,
    });
  };

  #fills(): string {
    const { whole, rows } = this.line;
    if (!whole) return '';
    return rows.length === 0 ? say`fills no row` : say`fills ${cells(rows.length)}`;
  }

  #value(): TemplateResult | typeof nothing {
    const { live, line } = this;
    const column = live.column(line.sheet, line.column);
    const [row] = line.rows;
    if (!column || row === undefined) return nothing;
    const { text, unit, kind } = shownCell(live, line.sheet, row, column, live.needsEngine);
    const first = line.rows.length > 1 ? html`<span class="quiet small">${say`first row:`} </span>` : nothing;
    return html`<span class="value figures"
      >${first}<span class=${kind === 'error' ? 'problem' : ''}>${text || html`<span class="quiet">${say`blank`}</span>`}</span> ${unit}</span
    >`;
  }

  #formula(): TemplateResult {
    return html`<div class="formula">
      <code>${this.line.shown}</code>
      ${
        this.readOnly
          ? nothing
          : html`<button
              class="link small"
              id="change"
              type="button"
              aria-label=${say`Change the formula of ${this.line.place.words}`}
              @click=${() => {
                this.editing = true;
              }}
            >
              ${say`Change`}
            </button>`
      }
    </div>`;
  }

  #edit(): TemplateResult {
    const close = async (): Promise<void> => {
      this.editing = false;
      await this.updateComplete;
      this.renderRoot.querySelector<HTMLElement>('#change')?.focus();
    };
    return html`<croft-formula-edit
      .live=${this.live}
      .line=${this.line}
      .licenceKey=${this.licenceKey}
      @close=${close}
    ></croft-formula-edit>`;
  }

  #error({ error, rows, ring, from }: LineError): TemplateResult {
    const where = this.line.rows.length > 1 ? ` ${say`in ${cells(rows.length)}`}` : '';
    const offers = from === null && MENDABLE.has(error.error) && !this.readOnly ? this.#offers : [];
    return html`<div class="fault">
      <p class="small"><strong class="problem">${error.error}${where}</strong> ${spoken(error.message)}</p>
      ${from ? html`<p class="small">${say`It comes from`} ${placeLink(this, from)}.</p>` : nothing}
      ${
        ring.length === 0
          ? nothing
          : html`<ol class="ring small" aria-label=${say`Each uses the next`}>
              ${ring.map((place) => html`<li>${placeLink(this, place)}</li>`)}
            </ol>`
      }
      ${offers.map(
        (offer) =>
          html`<croft-mend-choice .live=${this.live} .line=${this.line} .offer=${offer}></croft-mend-choice>`,
      )}
    </div>`;
  }

  #usedBy() {
    const { usedBy, feedsPlan } = this.line;
    if (usedBy.length === 0 && !feedsPlan) return nothing;
    return html`<p class="small">
      <span class="quiet">${say`Used by`}</span> ${placeLinks(this, usedBy)}${
        feedsPlan ? (usedBy.length > 0 ? say`, and the plan` : say`the plan`) : nothing
      }
    </p>`;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'croft-formula-line': FormulaLineView;
  }
}
