import { css, html, nothing, type TemplateResult } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import type { LiveBook } from '../../src/live/live-book.js';
import { rowName } from '../../src/live/row-name.js';
import { watchedOf } from '../../src/live/what-if-figures.js';
import { columnOffers, firstVaried, settingOffers } from '../../src/live/what-if-offers.js';
import { phrase, say, spoken } from '../../src/words/index.js';
import { ActionDialog } from '../sheet/actions/action-dialog.js';
import './croft-what-if.js';
import { putInWords } from './put-view.js';

const SETTING = 'setting:';

/** What if this were otherwise? Values of the book to try, and what the plan would then say. */
@customElement('croft-what-if-dialog')
export class WhatIfDialog extends ActionDialog {
  static override styles = [
    ...ActionDialog.styles,
    css`
      dialog {
        width: min(62rem, calc(100vw - 1.5rem));
      }
      #of {
        width: auto;
      }
      .choose {
        display: grid;
        grid-template-columns: repeat(auto-fit, minmax(min(11rem, 100%), 1fr));
        gap: 0.5rem 0.75rem;
        align-items: end;
      }
    `,
  ];

  /** Id of the sheet at hand; '' in the menu of the book. */
  @property() sheet = '';
  /** Id of the chosen row. */
  @property({ attribute: false }) row: string | null = null;
  @state() private vary: readonly string[] | null = null;
  @state() private of: string | null = null;
  @state() private what = '';
  @state() private where = '';

  protected override heading = phrase('What if…');

  protected override content(live: LiveBook): TemplateResult {
    const sheet = this.#home(live);
    this.vary ??= firstVaried(live, sheet, this.row);
    this.of ??= this.#figuresOf(live, sheet);
    const all = watchedOf(live);
    const sheets = all.ok ? all.value : [];
    return html`<p>
        ${say`Try other values on a copy: the figures that would change show below. Nothing is written into the book unless you put it there.`}
      </p>
      ${this.#chooser(live, sheet)}
      <div class="row">
        <label for="of">${say`Figures of`}</label>
        <select
          id="of"
          @change=${(event: Event) => {
            this.of = (event.target as HTMLSelectElement).value;
          }}
        >
          ${sheets.map((each) => html`<option value=${each.sheet} .selected=${each.sheet === this.of}>${each.title}</option>`)}
          <option value="" .selected=${this.of === ''}>${say`all sheets`}</option>
        </select>
      </div>
      <croft-what-if
        .vary=${this.vary.join('; ')}
        .sheet=${this.of}
        .removable=${true}
        @croft-vary-less=${(event: CustomEvent<string>) => {
          this.vary = (this.vary ?? []).filter((key) => key !== event.detail);
        }}
        @croft-what-if-put=${(event: CustomEvent<{ readonly values: number }>) => {
          const { values } = event.detail;
          this.close(putInWords(values));
        }}
      ></croft-what-if>
      ${this.foot()}`;
  }

  /** What else to vary: a setting, or a column and one of its rows. */
  #chooser(live: LiveBook, sheet: string): TemplateResult {
    const columns = columnOffers(live, sheet);
    const title = live.sheets().find(({ id }) => id === sheet)?.title ?? '';
    const isSetting = this.what === '' || this.what.startsWith(SETTING);
    return html`<div class="choose">
      <div class="field">
        <label for="what">${say`Something else to vary`}</label>
        <select
          id="what"
          @change=${(event: Event) => {
            this.what = (event.target as HTMLSelectElement).value;
          }}
        >
          <option value="" .selected=${this.what === ''}>${say`Choose…`}</option>
          <optgroup label=${say`The household`}>
            ${settingOffers().map(({ key, label }) => {
              const value = `${SETTING}${key}`;
              return html`<option value=${value} .selected=${value === this.what}>${spoken(label)}</option>`;
            })}
          </optgroup>
          <optgroup label=${title}>
            ${columns.map(({ key, label }) => html`<option value=${key} .selected=${key === this.what}>${spoken(label)}</option>`)}
          </optgroup>
        </select>
      </div>
      ${
        isSetting
          ? nothing
          : html`<div class="field">
              <label for="where">${say`of`}</label>
              <select
                id="where"
                @change=${(event: Event) => {
                  this.where = (event.target as HTMLSelectElement).value;
                }}
              >
                ${live
                  .rowIds(sheet)
                  .map(
                    (id) =>
                      html`<option value=${id} .selected=${id === this.#row(live, sheet)}>${rowName(live, sheet, id)}</option>`,
                  )}
              </select>
            </div>`
      }
      <div><button class="button" type="button" ?disabled=${this.what === ''} @click=${() => this.#add(live, sheet)}>${say`Add`}</button></div>
    </div>`;
  }

  #add(live: LiveBook, sheet: string): void {
    const row = this.#row(live, sheet);
    const key = this.what.startsWith(SETTING)
      ? this.what.slice(SETTING.length)
      : row === undefined
        ? null
        : `${sheet} / ${row} / ${this.what}`;
    if (key !== null) this.vary = [...new Set([...(this.vary ?? []), key])];
    this.what = '';
  }

  #row(live: LiveBook, sheet: string): string | undefined {
    const rows = live.rowIds(sheet);
    return [this.where, this.row].find((id): id is string => id !== null && rows.includes(id)) ?? rows[0];
  }

  #home(live: LiveBook): string {
    const sheets = live.sheets();
    const found = sheets.find(({ id }) => id === this.sheet) ?? sheets.find(({ kind }) => kind === 'foods');
    return (found ?? sheets[0])?.id ?? '';
  }

  /** What a household decides shows on every sheet. */
  #figuresOf(live: LiveBook, sheet: string): string {
    const { kind } = live.sheets().find(({ id }) => id === sheet) ?? {};
    return kind === 'household' ? '' : sheet;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'croft-what-if-dialog': WhatIfDialog;
  }
}
