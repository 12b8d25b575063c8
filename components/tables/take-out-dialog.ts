import { html, nothing, type TemplateResult } from 'lit';
import { customElement, state } from 'lit/decorators.js';
import type { LiveBook } from '../../src/live/live-book.js';
import { phrase, say, spoken } from '../../src/words/index.js';
import { download } from '../book/copies.js';
import { BookController } from '../book/find-book.js';
import { sheetInSight } from '../book/sheet-in-sight.js';
import { icons } from '../look/icons.js';
import { ActionDialog } from '../sheet/actions/action-dialog.js';
import { sheetCalled } from '../sheet/sheet-called.js';
import { inFigures } from './findings-view.js';
import { tablesStyles } from './tables-styles.js';
import { type Form, type TakenOut, type TakeOutChoices, takeOut } from './take-out.js';

const FORMS: readonly (readonly [Form, string, string])[] = [
  [
    'csv',
    phrase('Separated values (CSV)'),
    phrase('One sheet as plain text that nearly every program reads.'),
  ],
  ['tsv', phrase('Separated by tabs (TSV)'), phrase('The same with tabs between the fields.')],
  [
    'workbook',
    phrase('Workbook (.xlsx)'),
    phrase('One sheet or all of them, with types, widths, and formulas where they translate.'),
  ],
];

/** Takes a sheet, or all of them, out of the book as files for other programs. */
@customElement('croft-take-out-dialog')
export class TakeOutDialog extends ActionDialog {
  static override styles = [...ActionDialog.styles, tablesStyles];

  protected override heading = phrase('Take out tables');
  @state() private choices: TakeOutChoices | null = null;
  @state() private made: TakenOut | null = null;
  @state() private share: number | null = null;
  @state() private failed = false;
  readonly #beside = new BookController(this);
  #stop = new AbortController();

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    this.#stop.abort();
  }

  protected override content(live: LiveBook): TemplateResult {
    const sheets = live.sheets();
    const first =
      sheetCalled(live, sheetInSight(this.#beside.book) ?? 'shelf') ??
      sheets.find(({ kind }) => kind === 'shelf') ??
      sheets[0];
    this.choices ??= { sheet: first?.id ?? null, form: 'csv', planning: false, mark: false };
    const { form, sheet, planning, mark } = this.choices;
    return html`<fieldset>
        <legend>${say`As`}</legend>
        <div class="pieces">
          ${FORMS.map(
            ([id, label, help]) => html`<label class="tick">
              <input type="radio" name="form" .checked=${id === form} @change=${() => this.#form(live, id)} />
              <span>${spoken(label)}<br /><span class="quiet small">${spoken(help)}</span></span>
            </label>`,
          )}
        </div>
      </fieldset>
      <div class="fields wide">
        <div class="field">
          <label for="sheet">${say`What`}</label>
          <select
            id="sheet"
            @change=${(event: Event) => {
              const { value } = event.target as HTMLSelectElement;
              this.#choose({ sheet: value === '' ? null : value });
            }}
          >
            ${form === 'workbook' ? html`<option value="" .selected=${sheet === null}>${say`All sheets of the book`}</option>` : nothing}
            ${sheets.map(({ id, title }) => html`<option value=${id} .selected=${id === sheet}>${title}</option>`)}
          </select>
        </div>
        <div class="pieces">
          <label class="tick">
            <input
              type="checkbox"
              .checked=${planning}
              @change=${(event: Event) => this.#choose({ planning: (event.target as HTMLInputElement).checked })}
            />
            ${say`With the planning columns that are shown`}
          </label>
          ${
            form === 'workbook'
              ? nothing
              : html`<label class="tick">
                  <input
                    type="checkbox"
                    .checked=${mark}
                    @change=${(event: Event) => this.#choose({ mark: (event.target as HTMLInputElement).checked })}
                  />
                  <span>${say`With a mark for UTF-8, where a program shows letters with accents wrongly`}</span>
                </label>`
          }
        </div>
      </div>
      ${
        form === 'workbook'
          ? nothing
          : html`<p class="quiet small">
              ${say`Text that a program might take for a formula (after = + − @) goes out with an apostrophe before it. Numbers and dates are untouched: dates are written year first, numbers with a point.`}
            </p>`
      }
      ${this.failed ? html`<p class="problem" role="alert">${say`The file could not be made. Load the page again, then try once more.`}</p>` : nothing}
      ${this.share === null ? nothing : this.#progress(this.share)} ${this.made ? this.#files(this.made) : nothing}
      ${this.made || this.share !== null ? this.foot() : this.foot({ label: say`Make the file`, run: () => void this.#make(live) })}`;
  }

  #form(live: LiveBook, form: Form): void {
    const sheet = this.choices?.sheet ?? null;
    this.#choose({ form, sheet: form === 'workbook' ? sheet : (sheet ?? live.sheets()[0]?.id ?? null) });
  }

  #choose(change: Partial<TakeOutChoices>): void {
    this.#stop.abort();
    this.choices = { ...this.choices!, ...change };
    this.made = null;
    this.share = null;
    this.failed = false;
  }

  async #make(live: LiveBook): Promise<void> {
    this.#stop = new AbortController();
    const { signal } = this.#stop;
    this.share = 0;
    this.failed = false;
    try {
      // Cells with formulas are blank until the engine is there.
      if (live.needsEngine) await this.#beside.book?.ensureEngine();
      const made = await takeOut(live, this.choices!, {
        signal,
        onProgress: (share) => {
          if (!signal.aborted) this.share = share;
        },
      });
      if (signal.aborted) return;
      this.made = made;
      this.share = null;
      await this.updateComplete;
      this.renderRoot.querySelector<HTMLElement>('.made button')?.focus();
    } catch (error) {
      console.error(error);
      this.share = null;
      this.failed = true;
    }
  }

  #progress(share: number): TemplateResult {
    return html`<div class="stack-small">
      <label for="progress">${say`Reading the cells: ${Math.round(share * 100)} %`}</label>
      <progress id="progress" max="1" .value=${share}></progress>
      <div class="row"><button class="button" type="button" @click=${() => this.#choose({})}>${say`Stop`}</button></div>
    </div>`;
  }

  #files({ files, rows, says }: TakenOut): TemplateResult {
    return html`<section class="stack-small made" aria-labelledby="made">
      <div role="status"><h3 id="made">${rows === 1 ? say`1 row, ready to save` : say`${inFigures(rows)} rows, ready to save`}</h3></div>
      <ul class="pieces">
        ${files.map(
          (file) => html`<li class="piece">
            <button class="button" type="button" @click=${() => download(file)}>${icons.save}${say`Save ${file.name}`}</button>
            <span class="quiet small">${file.what}</span>
          </li>`,
        )}
      </ul>
      ${says.length > 0 ? html`<ul class="list small">${says.map((each) => html`<li>${each}</li>`)}</ul>` : nothing}
    </section>`;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'croft-take-out-dialog': TakeOutDialog;
  }
}
