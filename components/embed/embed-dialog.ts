import { css, html, nothing, type PropertyValues, type TemplateResult } from 'lit';
import { customElement, state } from 'lit/decorators.js';
import type { ColumnView } from '../../src/live/columns.js';
import { canOpen, type Embed, embedOf } from '../../src/live/embed/index.js';
import type { LiveBook } from '../../src/live/live-book.js';
import { phrase, say } from '../../src/words/index.js';
import { download } from '../book/copies.js';
import { bookAround } from '../book/find-book.js';
import { ActionDialog } from '../sheet/actions/action-dialog.js';
import { SCRIPT_AT, waysStyles, waysToPaste } from './ways-to-paste.js';

/** What may change without another embed being made. */
const BESIDE: ReadonlySet<PropertyKey> = new Set(['scriptAt', 'fileAt', 'said']);

/** Makes one sheet ready for a web page: which columns, what readers may try, and the HTML to paste. */
@customElement('croft-embed-dialog')
export class EmbedDialog extends ActionDialog {
  static override styles = [
    ...ActionDialog.styles,
    waysStyles,
    css`
      .columns td:first-child {
        width: 100%;
      }
      .columns :is(td, th):not(:first-child) {
        text-align: center;
      }
      .scroll {
        max-height: 15rem;
        overflow-y: auto;
      }
      label.row {
        flex-wrap: nowrap;
      }
    `,
  ];

  @state() private sheet = '';
  @state() private title_ = '';
  @state() private shown: ReadonlySet<string> = new Set();
  @state() private open: ReadonlySet<string> = new Set();
  @state() private grid = false;
  @state() private scriptAt = SCRIPT_AT;
  /** Where the file will lie; empty for an address made of the title. */
  @state() private fileAt = '';
  @state() private said = '';

  /** What was made last, while nothing is chosen otherwise and the book stays as it is. */
  #embed: Embed | null = null;

  protected override heading = phrase('For a web page');

  protected override willUpdate(changed: PropertyValues): void {
    super.willUpdate(changed);
    const { live } = this;
    const keys = [...changed.keys()];
    if (keys.length === 0 || keys.some((key) => !BESIDE.has(key))) this.#embed = null;
    if (live && this.sheet === '') this.#choose(live, firstFilled(live));
  }

  protected override content(live: LiveBook): TemplateResult {
    const embed = this.#embed ?? embedOf(live, this.sheet, this.#options(live));
    this.#embed = embed;
    const key = bookAround(this)?.gridLicenceKey;
    return html`
      <div class="row">
        <label class="field">
          ${say`Sheet`}
          <select @change=${(event: Event) => this.#choose(live, (event.target as HTMLSelectElement).value)}>
            ${live.sheets().map(({ id, title }) => html`<option value=${id} ?selected=${id === this.sheet}>${title}</option>`)}
          </select>
        </label>
        <label class="field">
          ${say`Title over it`}
          <input
            .value=${this.title_}
            @input=${(event: Event) => {
              this.title_ = (event.target as HTMLInputElement).value;
            }}
          />
        </label>
      </div>
      ${this.#columns(live)}
      ${
        key
          ? html`<label class="row">
              <input type="checkbox" .checked=${this.grid} @change=${() => {
                this.grid = !this.grid;
              }} />
              ${say`Readers may open it as a grid, under this page’s licence for it`}
            </label>`
          : nothing
      }
      ${goesAlong(embed)}
      ${waysToPaste(embed, {
        scriptAt: this.scriptAt,
        fileAt: this.fileAt || `/${fileName(embed)}`,
        moved: (which, to) => {
          if (which === 'script') this.scriptAt = to || SCRIPT_AT;
          else this.fileAt = to;
          this.said = '';
        },
        copy: this.#copy,
        save: () => this.#save(embed),
      })}
      <div class="row ends">
        <p class="note small" role="status">${this.said}</p>
        <button class="button" type="button" @click=${() => this.close()}>${say`Close`}</button>
      </div>
    `;
  }

  #columns(live: LiveBook): TemplateResult {
    return html`<div class="scroll">
      <table class="columns">
        <caption class="unseen">${say`Columns`}</caption>
        <thead>
          <tr>
            <th scope="col">${say`Column`}</th>
            <th scope="col">${say`Show`}</th>
            <th scope="col">${say`Readers may try`}</th>
          </tr>
        </thead>
        <tbody>
          ${live.columns(this.sheet).map(
            (column) => html`<tr>
              <th scope="row">${column.title}</th>
              <td>${this.#tick(say`Show ${column.title}`, this.shown, column, (next) => {
                this.shown = next;
              })}</td>
              <td>
                ${
                  canOpen(column) && this.shown.has(column.id)
                    ? this.#tick(say`Readers may try ${column.title}`, this.open, column, (next) => {
                        this.open = next;
                      })
                    : nothing
                }
              </td>
            </tr>`,
          )}
        </tbody>
      </table>
    </div>`;
  }

  #tick(
    label: string,
    among: ReadonlySet<string>,
    { id }: ColumnView,
    set: (next: ReadonlySet<string>) => void,
  ): TemplateResult {
    const toggle = (): void => {
      const next = new Set(among);
      if (!next.delete(id)) next.add(id);
      this.said = '';
      set(next);
    };
    return html`<input type="checkbox" aria-label=${label} .checked=${among.has(id)} @change=${toggle} />`;
  }

  #choose(live: LiveBook, sheet: string): void {
    this.sheet = sheet;
    this.title_ = live.sheets().find(({ id }) => id === sheet)?.title ?? '';
    const filled = live
      .columns(sheet)
      .filter(
        ({ id, hidden }) => !hidden && live.rowIds(sheet).some((row) => live.value(sheet, row, id) !== null),
      );
    this.shown = new Set(filled.filter(({ id }) => id !== 'note' && id !== 'place').map(({ id }) => id));
    this.open = new Set();
    this.said = '';
  }

  #options(live: LiveBook) {
    const ids = live.columns(this.sheet).map(({ id }) => id);
    const key = this.grid ? bookAround(this)?.gridLicenceKey : undefined;
    return {
      title: this.title_.trim(),
      columns: ids.filter((id) => this.shown.has(id)),
      open: ids.filter((id) => this.open.has(id) && this.shown.has(id)),
      ...(key && { gridLicenceKey: key }),
    };
  }

  readonly #copy = async (from: HTMLTextAreaElement): Promise<void> => {
    try {
      await navigator.clipboard.writeText(from.value);
      this.said = say`Copied.`;
    } catch {
      // Refused by the browser: it is chosen, so that a key stroke copies it.
      from.select();
      this.said = say`Press Ctrl or Cmd and C to copy what is chosen.`;
    }
  };

  #save(embed: Embed): void {
    download({ name: fileName(embed), blob: new Blob([embed.json], { type: 'application/json' }) });
    this.said = say`Saved: put the file on your site, where src names it.`;
  }
}

const fileName = ({ table: { title } }: Embed): string => {
  const words = title
    .toLowerCase()
    .replace(/[^\p{Letter}\p{Number}]+/gu, '-')
    .replace(/^-+|-+$/g, '');
  return `${words || 'sheet'}.json`;
};

const firstFilled = (live: LiveBook): string => {
  const sheets = live.sheets();
  return (sheets.find(({ id, kind }) => kind === 'shelf' && live.rowIds(id).length > 0) ??
    sheets.find(({ id }) => live.rowIds(id).length > 0) ??
    sheets[0])!.id;
};

const goesAlong = ({ goesAlong: titles }: Embed): TemplateResult =>
  titles.length === 0
    ? html`<p class="small quiet">${say`Only what the table shows goes into the page.`}</p>`
    : html`<p class="small">
        ${say`So that the figures can follow, this goes into the page too, for everyone to read: ${titles.join(', ')}. Notes, places and names of people stay at home unless a figure needs them.`}
      </p>`;

declare global {
  interface HTMLElementTagNameMap {
    'croft-embed-dialog': EmbedDialog;
  }
}
