import { html, nothing, type TemplateResult } from 'lit';
import { customElement, state } from 'lit/decorators.js';
import type { LiveBook } from '../../src/live/live-book.js';
import { download } from '../book/copies.js';
import { BookController } from '../book/find-book.js';
import { sheetInSight } from '../book/sheet-in-sight.js';
import { icons } from '../look/icons.js';
import { ActionDialog } from '../sheet/actions/action-dialog.js';
import { sheetCalled } from '../sheet/sheet-called.js';
import { many } from './findings-view.js';
import { tablesStyles } from './tables-styles.js';
import { type Form, type TakenOut, type TakeOutChoices, takeOut } from './take-out.js';

const FORMS: readonly (readonly [Form, string, string])[] = [
  ['csv', 'Separated values (CSV)', 'One sheet as plain text that nearly every program reads.'],
  ['tsv', 'Separated by tabs (TSV)', 'The same with tabs between the fields.'],
  [
    'workbook',
    'Workbook (.xlsx)',
    'One sheet or all of them, with types, widths, and formulas where they translate.',
  ],
];

/** Takes a sheet, or all of them, out of the book as files for other programs. */
@customElement('croft-take-out-dialog')
export class TakeOutDialog extends ActionDialog {
  static override styles = [...ActionDialog.styles, tablesStyles];

  protected override heading = 'Take out tables';
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
        <legend>As</legend>
        <div class="pieces">
          ${FORMS.map(
            ([id, label, help]) => html`<label class="tick">
              <input type="radio" name="form" .checked=${id === form} @change=${() => this.#form(live, id)} />
              <span>${label}<br /><span class="quiet small">${help}</span></span>
            </label>`,
          )}
        </div>
      </fieldset>
      <div class="fields wide">
        <div class="field">
          <label for="sheet">What</label>
          <select
            id="sheet"
            @change=${(event: Event) => {
              const { value } = event.target as HTMLSelectElement;
              this.#choose({ sheet: value === '' ? null : value });
            }}
          >
            ${form === 'workbook' ? html`<option value="" .selected=${sheet === null}>All sheets of the book</option>` : nothing}
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
            With the planning columns that are shown
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
                  <span>With a mark for UTF-8, where a program shows letters with accents wrongly</span>
                </label>`
          }
        </div>
      </div>
      ${
        form === 'workbook'
          ? nothing
          : html`<p class="quiet small">
              Text that a program might take for a formula (after = + − @) goes out with an apostrophe before it. Numbers
              and dates are untouched: dates are written year first, numbers with a point.
            </p>`
      }
      ${this.failed ? html`<p class="problem" role="alert">The file could not be made. Load the page again, then try once more.</p>` : nothing}
      ${this.share === null ? nothing : this.#progress(this.share)} ${this.made ? this.#files(this.made) : nothing}
      ${this.made || this.share !== null ? this.foot() : this.foot({ label: 'Make the file', run: () => void this.#make(live) })}`;
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
      <label for="progress">Reading the cells: ${Math.round(share * 100)} %</label>
      <progress id="progress" max="1" .value=${share}></progress>
      <div class="row"><button class="button" type="button" @click=${() => this.#choose({})}>Stop</button></div>
    </div>`;
  }

  #files({ files, rows, says }: TakenOut): TemplateResult {
    return html`<section class="stack-small made" aria-labelledby="made">
      <div role="status"><h3 id="made">${many(rows, 'row')}, ready to save</h3></div>
      <ul class="pieces">
        ${files.map(
          (file) => html`<li class="piece">
            <button class="button" type="button" @click=${() => download(file)}>${icons.save}Save ${file.name}</button>
            <span class="quiet small">${file.what}</span>
          </li>`,
        )}
      </ul>
      ${says.length > 0 ? html`<ul class="list small">${says.map((say) => html`<li>${say}</li>`)}</ul>` : nothing}
    </section>`;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'croft-take-out-dialog': TakeOutDialog;
  }
}
