import { css, html, LitElement, nothing } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import { SETTINGS, type SettingDeclaration, settingOf, type Typed } from '../../src/book/index.js';
import { formulasTurned, type TurnedFormula } from '../../src/live/doings/formulas-turned.js';
import type { LiveBook } from '../../src/live/live-book.js';
import type { Problem } from '../../src/problem.js';
import { measureSystem, turnedUnit } from '../../src/units/index.js';
import { say, spoken } from '../../src/words/index.js';
import { base } from '../look/base.js';
import { inWords } from '../look/problems.js';
import type { DialogDone } from './actions/action-dialog.js';
import { readAltitude } from './read-altitude.js';
import { shownDay, shownMonthDay, shownNumber } from './shown.js';

/** The unit in which the household reads and writes a setting. */
const unitRead = (unit: string | undefined): string | undefined =>
  unit === undefined ? undefined : (turnedUnit(unit)?.unit ?? unit);

const ISO_DAY = /^\d{4}-\d{2}-\d{2}$/;

/** Inside `<croft-sheet>`, above the people of the table: the household's settings, to write or to read. */
@customElement('croft-settings-form')
export class SettingsForm extends LitElement {
  static override styles = [
    base,
    css`
      :host {
        margin-bottom: 1.25rem;
      }
      form {
        display: grid;
        grid-template-columns: repeat(auto-fill, minmax(13.5rem, 1fr));
        gap: 1rem 1.25rem;
      }
      /* Fields are short: two beside each other, so that the people of the table are not five windows below. */
      @media (max-width: 36rem) {
        form {
          grid-template-columns: repeat(auto-fill, minmax(9.25rem, 1fr));
          gap: 0.875rem 0.75rem;
        }
      }
      .with-unit {
        display: grid;
        grid-template-columns: minmax(0, 1fr) auto;
        gap: 0.5rem;
        align-items: center;
      }
      dl {
        display: flex;
        flex-wrap: wrap;
        gap: 0.5rem 2rem;
      }
      dt {
        font-size: 0.8125rem;
        color: var(--quiet);
      }
      dd {
        font-weight: 600;
      }
    `,
  ];

  @property({ attribute: false }) live!: LiveBook;
  @property({ type: Boolean }) readonly = false;

  /** Measures that were chosen, while it is asked what becomes of formulas. */
  @state() private asking: { readonly measures: string; readonly formulas: readonly TurnedFormula[] } | null =
    null;

  protected override render() {
    return this.readonly ? this.#toRead() : html`${this.#toWrite()}${this.#question()}`;
  }

  #toRead() {
    const written = SETTINGS.filter(({ id }) => this.live.setting(id) !== undefined);
    if (written.length === 0) return nothing;
    return html`<dl>
      ${written.map(({ id, title, type, unit: customary, options }) => {
        const unit = unitRead(customary);
        const value = this.live.setting(id)!;
        const words =
          typeof value === 'number'
            ? shownNumber(value)
            : type === 'month-day'
              ? shownMonthDay(String(value))
              : ISO_DAY.test(String(value))
                ? shownDay(String(value))
                : options
                  ? spoken(String(value))
                  : String(value);
        return html`<div>
          <dt>${spoken(title)}</dt>
          <dd class="figures">${words}${unit ? ` ${spoken(unit)}` : ''}</dd>
        </div>`;
      })}
    </dl>`;
  }

  #toWrite() {
    return html`<form aria-label=${say`Household settings`} @submit=${(event: Event) => event.preventDefault()}>
      ${SETTINGS.map((setting) => this.#field(setting))}
    </form>`;
  }

  #question() {
    if (!this.asking) return nothing;
    const { measures, formulas } = this.asking;
    const done = (event: CustomEvent<DialogDone>) => {
      event.stopPropagation();
      this.asking = null;
      const chosen = this.renderRoot.querySelector<HTMLSelectElement>('#measures');
      if (chosen) {
        chosen.value = String(this.live.setting('measures') ?? settingOf('measures')?.usual ?? '');
        chosen.focus();
      }
      if (event.detail.say) this.#tell(event.detail.say);
    };
    return html`<croft-measures-dialog
      .measures=${measures}
      .formulas=${formulas}
      @croft-dialog-done=${done}
    ></croft-measures-dialog>`;
  }

  /** Formulas may hold numbers in the measures of now: what becomes of them is said before. */
  async #askFirst(measures: string): Promise<void> {
    const formulas = formulasTurned(this.live, measures === 'metric' ? 'metric' : 'US customary');
    if (formulas.length === 0) {
      this.#put('measures', measures);
      return;
    }
    await import('./measures-dialog.js');
    this.asking = { measures, formulas };
  }

  #field(setting: SettingDeclaration) {
    const { id, title, help } = setting;
    const unit = unitRead(setting.unit);
    const problem = this.live.settingProblem(id);
    return html`<div class="field">
      <label for=${id}>${spoken(title)}</label>
      <div class=${unit ? 'with-unit' : ''}>
        ${this.#input(setting, problem)} ${unit ? html`<span class="quiet small" id="${id}-unit">${spoken(unit)}</span>` : nothing}
      </div>
      ${problem ? html`<p class="problem small" id="${id}-problem">${inWords(problem)}</p>` : nothing}
      <p class="quiet small" id="${id}-help">${spoken(help)}</p>
    </div>`;
  }

  #input({ id, type, unit, options, usual }: SettingDeclaration, problem: Problem | undefined) {
    const value = String(this.live.setting(id) ?? '');
    const described = [problem && `${id}-problem`, `${id}-help`, unit && `${id}-unit`]
      .filter(Boolean)
      .join(' ');
    const write = (event: Event) => this.#write(id, (event.target as HTMLInputElement).value);
    if (options) {
      return html`<select id=${id} aria-describedby=${described} @change=${write}>
        ${options.map(
          (option) =>
            html`<option value=${option} .selected=${(value || String(usual)) === option}>${spoken(option)}</option>`,
        )}
      </select>`;
    }
    const kind = type === 'date' && (value === '' || ISO_DAY.test(value)) ? 'date' : 'text';
    return html`<input
      id=${id}
      type=${kind}
      inputmode=${type === 'number' ? 'decimal' : 'text'}
      autocomplete="off"
      placeholder=${usual === undefined ? (type === 'month-day' ? 'MM-DD' : '') : String(usual)}
      aria-describedby=${described}
      aria-invalid=${problem !== undefined}
      .value=${value}
      @change=${write}
    />`;
  }

  #write(setting: string, text: string): void {
    const typed = setting === 'altitude_ft' ? readAltitude(text, measureSystem()) : text.trim();
    if (setting === 'measures') void this.#askFirst(text.trim());
    else this.#put(setting, typed);
  }

  #put(setting: string, typed: Typed): void {
    const outcome = this.live.apply({ do: 'set setting', setting, typed });
    this.#tell(outcome.ok ? (this.live.settingProblem(setting) ?? null) : outcome.problem);
    this.requestUpdate();
  }

  #tell(detail: Problem | string | null): void {
    this.dispatchEvent(new CustomEvent('say', { detail }));
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'croft-settings-form': SettingsForm;
  }
}
