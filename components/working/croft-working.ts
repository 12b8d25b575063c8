import { html, LitElement, nothing } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import type { Working } from '../../src/planning/types.js';
import { n } from '../../src/planning/working/closing.js';
import { say } from '../../src/words/index.js';
import { BookController } from '../book/find-book.js';
import { base } from '../look/base.js';
import { icons } from '../look/icons.js';
import { showCell } from '../pictures/show.js';
import { sheetCalled } from '../sheet/sheet-called.js';
import { tickTold } from '../told-as-text.js';
import { workingStyles } from './working-styles.js';
import { workingView } from './working-view.js';

/**
 * The working of one planning figure, or of what a formula gives: its rule in words, the numbers that went in
 * with the cell or source that each came from, the steps with their units, what would change it, and a planning
 * figure as a formula for a column of one's own. Units that do not go together are said. Shows the figure last
 * selected in its book, or the one named by `sheet`, `row` and `column`.
 *
 * @element croft-working
 * @attr book - Id of the `<croft-book>`; the one around it unless given.
 * @attr sheet - Id, kind or title of a sheet: only figures of that sheet are shown.
 * @attr row - Id of a row, to show one figure always.
 * @attr column - Id of a column, to show one figure always.
 * @attr closable - Has a button that closes it.
 * @attr theme - `light`, `dark` or `auto`.
 * @fires croft-close - The person closed it.
 * @fires croft-show - A person chose a number that stands in a cell: `detail` is `{ sheet, row, column }`, for
 *   the page to bring that cell into view.
 * @csspart panel - The box.
 */
@customElement('croft-working')
export class CroftWorking extends LitElement {
  static override styles = [base, workingStyles];

  @property() sheet: string | null = null;
  @property() row: string | null = null;
  @property() column: string | null = null;
  @property({ type: Boolean, converter: tickTold }) closable = false;
  @property({ reflect: true }) theme: string | null = null;
  @state() private copied = false;
  readonly #book = new BookController(this, () => this.#forget());
  #shown: { readonly key: string; readonly working: Working | undefined } | undefined;

  /** Puts the keyboard on the panel, so that it is read out from its title on. */
  override focus(): void {
    this.renderRoot.querySelector<HTMLElement>('h2')?.focus();
  }

  protected override render() {
    const shown = this.#working();
    return html`<section part="panel" aria-labelledby="title" @keydown=${this.#key}>
      <header>
        <h2 id="title" tabindex="-1">
          ${shown ? shown.working.title : say`How a figure is worked out`}
          ${shown?.of ? html`<span class="of">${shown.of}</span>` : nothing}
        </h2>
        ${
          this.closable
            ? html`<button class="button plain" type="button" aria-label=${say`Close`} @click=${this.#close}>
                ${icons.close}
              </button>`
            : nothing
        }
      </header>
      ${
        shown
          ? workingView(shown.working, this.#formula(shown.working.formula), (cell) =>
              showCell(this, this.#book.book, cell),
            )
          : html`<p class="quiet">
              ${say`Choose a figure in a tinted column, or a cell with a formula: its working stands here.`}
            </p>`
      }
      <p class="unseen" role="status">${shown ? announced(shown.working, shown.of) : ''}</p>
    </section>`;
  }

  #formula(formula: string | undefined) {
    if (!formula) return nothing;
    return html`<div>
      <h3>${say`As a formula`}</h3>
      <code>${formula}</code>
      <button class="button" type="button" @click=${() => this.#copy(formula)}>
        ${this.copied ? icons.check : icons.copy}
        <span role="status">${this.copied ? say`Copied` : say`Copy`}</span>
      </button>
      <p class="small quiet">${say`Paste it into a column of your own, and change it as you like.`}</p>
    </div>`;
  }

  #working(): { readonly working: Working; readonly of: string } | undefined {
    const { live, book } = this.#book;
    if (!live) return undefined;
    const only = this.sheet === null ? undefined : sheetCalled(live, this.sheet)?.id;
    if (this.sheet !== null && only === undefined) return undefined;
    const fixed =
      only !== undefined && this.row !== null && this.column !== null
        ? { sheet: only, row: this.row, column: this.column }
        : null;
    const cell = fixed ?? book?.selected ?? null;
    if (!cell || (only !== undefined && cell.sheet !== only)) return undefined;
    const key = `${cell.sheet}/${cell.row}/${cell.column}`;
    if (this.#shown?.key !== key) {
      this.copied = false;
      this.#shown = { key, working: live.working(cell.sheet, cell.row, cell.column) };
    }
    const { working } = this.#shown;
    return (
      working && {
        working,
        of: rowName(...NAMES.map((column) => live.value(cell.sheet, cell.row, column))),
      }
    );
  }

  #forget(): void {
    this.#shown = undefined;
  }

  async #copy(formula: string): Promise<void> {
    try {
      await navigator.clipboard.writeText(formula);
      this.copied = true;
    } catch {
      // No clipboard here: the formula is selected instead, for the person's own copy key.
      const code = this.renderRoot.querySelector('code');
      if (code) getSelection()?.selectAllChildren(code);
    }
  }

  readonly #key = (event: KeyboardEvent): void => {
    if (event.key !== 'Escape' || !this.closable) return;
    event.preventDefault();
    event.stopPropagation();
    this.#close();
  };

  readonly #close = (): void => {
    this.dispatchEvent(new CustomEvent('croft-close', { bubbles: true, composed: true }));
  };
}

/** What is read out when another cell is chosen: the figure, and how many steps lead to it. */
function announced({ title, value, unit, steps, problems = [] }: Working, of: string): string {
  const figure =
    value === null ? say`blank` : typeof value === 'number' ? `${n(value)} ${unit}`.trim() : value;
  const count = steps.length === 1 ? say`1 step` : say`${steps.length} steps`;
  const units = problems.length > 0 ? say` Units do not go together.` : '';
  return say`Working of ${title}${of === '' ? '' : `, ${of}`}: ${figure}, ${count}.${units}`;
}

/** Columns that name a row, on one kind of sheet or another. */
const NAMES = ['name', 'food', 'way', 'crop', 'variety', 'item', 'figure', 'dish'] as const;

const rowName = (...parts: readonly unknown[]): string =>
  parts.filter((part) => typeof part === 'string' && part !== '').join(', ');

export type { CroftEvents } from '../events.js';

declare global {
  interface HTMLElementTagNameMap {
    'croft-working': CroftWorking;
  }
}
