import { html, nothing, type TemplateResult } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import type { NamedKind } from '../../src/book/index.js';
import { nameAnew, namingColumns, takeColumns, unnamedColumns } from '../../src/live/doings/take-columns.js';
import type { LiveBook } from '../../src/live/live-book.js';
import { takeable } from '../../src/live/taken-kinds.js';
import { phrase, say, spoken } from '../../src/words/index.js';
import { inWords } from '../look/problems.js';
import { ActionDialog } from '../sheet/actions/action-dialog.js';
import { figuresChoice } from './figures-choice.js';
import { sheetsStyles } from './sheets-styles.js';

/** Asks which planning columns to show on a sheet of one's own, and which column names the rows. */
@customElement('croft-take-dialog')
export class TakeDialog extends ActionDialog {
  static override styles = [...ActionDialog.styles, sheetsStyles];

  protected override heading = phrase('Take a planning column');
  @property() sheet = '';
  @state() private kind: NamedKind = 'foods';
  @state() private chosen: ReadonlySet<string> = new Set();
  @state() private by: string | null = null;
  @state() private wrong = '';

  protected override content(live: LiveBook): TemplateResult {
    const kinds = takeable();
    const { columns, named } = kinds.find(({ kind }) => kind === this.kind)!;
    const naming = namingColumns(live, this.sheet);
    const by = this.by ?? naming[0]?.id ?? '';
    const count = this.chosen.size;
    return html`<p>
        ${say`Figures of the plan can stand on this sheet beside the names you write. They follow the plan, and nobody can type over them.`}
      </p>
      <div class="pair">
        <div class="field">
          <label for="kind">${say`Figures of`}</label>
          <select
            id="kind"
            @change=${(event: Event) => {
              this.kind = (event.target as HTMLSelectElement).value as NamedKind;
              this.chosen = new Set();
              this.wrong = '';
            }}
          >
            ${kinds.map(({ kind, title }) => html`<option value=${kind} .selected=${kind === this.kind}>${spoken(title)}</option>`)}
          </select>
        </div>
        <div class="field">
          <label for="by">${say`Rows are named by`}</label>
          <select
            id="by"
            aria-describedby="named"
            @change=${(event: Event) => {
              this.by = (event.target as HTMLSelectElement).value;
            }}
          >
            ${naming.map(({ id, title }) => html`<option value=${id} .selected=${id === by}>${title}</option>`)}
            <option value="" .selected=${by === ''}>${say`A new column`}</option>
          </select>
          <p id="named" class="quiet small">${say`In it: ${named}.`}</p>
        </div>
      </div>
      ${this.#unnamed(live, by)}
      ${figuresChoice(say`Figures to show`, columns, this.chosen, (next) => {
        this.chosen = next;
        this.wrong = '';
      })}
      <p class="problem small" role="alert">${this.wrong}</p>
      ${this.foot({
        label: count > 1 ? say`Show ${count} columns` : say`Show the column`,
        run: () => this.#take(live, by),
      })}`;
  }

  /** Columns taken before that have lost the column of their names. */
  #unnamed(live: LiveBook, by: string): TemplateResult | typeof nothing {
    const lost = unnamedColumns(live, this.sheet);
    if (lost.length === 0) return nothing;
    const titles = lost.map(({ title }) => `“${title}”`).join(', ');
    return html`<div class="row">
      <p class="problem">${say`The column that named the rows of ${titles} is gone.`}</p>
      <button
        class="button"
        type="button"
        ?disabled=${by === ''}
        @click=${() => {
          const done = live.apply(nameAnew(lost, this.sheet, by));
          this.wrong = done.ok ? '' : inWords(done.problem);
          this.requestUpdate();
        }}
      >
        ${say`Name them by the column chosen above`}
      </button>
    </div>`;
  }

  #take(live: LiveBook, by: string): void {
    if (this.chosen.size === 0) {
      this.wrong = say`No figure is chosen yet. Choose one or more of the list.`;
      this.renderRoot.querySelector<HTMLElement>('#figures input')?.focus();
      return;
    }
    const { sheet, kind } = this;
    const taken = takeColumns(live, { sheet, kind, columns: [...this.chosen], by: by || null });
    const done = live.apply(taken.command);
    if (!done.ok) {
      this.wrong = inWords(done.problem);
      return;
    }
    const unnamed = live.rowIds(sheet).filter((row) => {
      const code = live.problem(sheet, row, taken.first)?.code ?? '';
      return code.startsWith('names-') || code === 'named-by-error';
    }).length;
    const title = takeable().find((each) => each.kind === kind)!.title;
    this.close(
      unnamed === 0
        ? say`The figures stand in columns of their own now. Undo takes them off again.`
        : unnamed === 1
          ? say`The figures are there. One row names nothing in ${title}: its cell says what is near.`
          : say`The figures are there. ${unnamed} rows name nothing in ${title}: their cells say what is near.`,
    );
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'croft-take-dialog': TakeDialog;
  }
}
