import { css, html, nothing, type PropertyValues, type TemplateResult } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import type { Command } from '../../src/book/index.js';
import type { ChangedFigures, Dependent, Dependents } from '../../src/live/doings/dependents.js';
import type { LiveBook } from '../../src/live/live-book.js';
import { phrase, say } from '../../src/words/index.js';
import { bookAround } from '../book/find-book.js';
import { ActionDialog } from '../sheet/actions/action-dialog.js';
import { figuresChangedBy } from './trial-copy.js';

/** More places than these are counted, not named. */
const MOST_NAMED = 12;

const inRows = (count: number): string => (count === 1 ? say`1 row` : say`${count} rows`);

/** Says which figures would break before something goes on which they depend, and lets the person choose. */
@customElement('croft-removal-dialog')
export class RemovalDialog extends ActionDialog {
  static override styles = [
    ...ActionDialog.styles,
    css`
      dialog {
        width: min(34rem, calc(100vw - 1.5rem));
      }
      .places {
        list-style: disc;
        padding-inline-start: 1.25rem;
      }
      .part {
        display: grid;
        gap: 0.25rem;
      }
    `,
  ];

  @property({ attribute: false }) command!: Command;
  @property({ attribute: false }) found!: Dependents;
  /** Said once it is removed. */
  @property() note = '';
  /** Undefined: not looked at yet; null: not known. */
  @state() private figures: readonly ChangedFigures[] | null | undefined;

  protected override heading: string = phrase('Remove it?');

  protected override willUpdate(changed: PropertyValues): void {
    if (changed.has('found')) this.heading = say`Remove ${this.found.of}?`;
  }

  protected override firstUpdated(changed: PropertyValues): void {
    super.firstUpdated(changed);
    const { live } = this;
    if (!this.found.feedsPlan || !live) return;
    const key = bookAround(this)?.engineLicenceKey ?? '';
    figuresChangedBy(live, this.command, key).then(
      (figures) => {
        this.figures = figures;
      },
      () => {
        this.figures = null;
      },
    );
  }

  protected override content(live: LiveBook): TemplateResult {
    const { of, formulas, broken, smaller, taken, further } = this.found;
    const use =
      formulas === 1
        ? say`1 formula uses ${of} and would show #REF!:`
        : say`${formulas} formulas use ${of} and would show #REF!:`;
    return html`
      ${places(use, broken)}
      ${places(say`These would go on without ${of}, and give something else:`, smaller)}
      ${places(say`These planning columns are shown by the names in ${of}, and would stay blank:`, taken)}
      ${
        further === 0
          ? nothing
          : html`<p>${further === 1 ? say`1 more formula hangs on those.` : say`${further} more formulas hang on those.`}</p>`
      }
      ${this.found.feedsPlan ? this.#plan() : nothing}
      <p class="quiet small">${say`Undo brings everything back.`}</p>
      <div class="row ends">
        <button class="button first" type="button" @click=${() => this.close()}>${say`Leave it`}</button>
        <button class="button" type="button" @click=${() => this.#remove(live)}>${say`Remove anyway`}</button>
      </div>
    `;
  }

  #plan(): TemplateResult {
    const { figures } = this;
    if (figures === undefined) return html`<p role="status">${say`Looking at what the plan would lose…`}</p>`;
    if (figures === null)
      return html`<p>${say`The plan is worked out from some of them: its figures would change.`}</p>`;
    const lost = figures.filter((each) => each.lost > 0);
    const other = figures.filter((each) => each.lost === 0 && each.other > 0);
    if (lost.length + other.length === 0)
      return html`<p role="status">${say`The plan’s figures would stay as they are.`}</p>`;
    return html`<div class="part" role="status">
      <p>${say`The plan is worked out from some of them.`}</p>
      ${lost.length === 0 ? nothing : html`<p>${say`Figures that would be blank: ${named(lost, 'lost')}.`}</p>`}
      ${other.length === 0 ? nothing : html`<p>${say`Figures that would be others: ${named(other, 'other')}.`}</p>`}
    </div>`;
  }

  #remove(live: LiveBook): void {
    const outcome = live.apply(this.command);
    this.close(outcome.ok ? this.note || null : outcome.problem);
  }
}

const moreColumns = (n: number): string => say`${n} more columns`;

const named = (figures: readonly ChangedFigures[], which: 'lost' | 'other'): string =>
  [
    ...figures
      .slice(0, MOST_NAMED)
      .map((each) => `${each.sheetTitle}, “${each.columnTitle}” (${inRows(each[which])})`),
    ...(figures.length > MOST_NAMED ? [moreColumns(figures.length - MOST_NAMED)] : []),
  ].join('; ');

function places(words: string, some: readonly Dependent[]) {
  if (some.length === 0) return nothing;
  const more = some.length - MOST_NAMED;
  return html`<div class="part">
    <p>${words}</p>
    <ul class="places">
      ${some.slice(0, MOST_NAMED).map(({ sheetTitle, columnTitle, cells }) => {
        const where =
          cells === null ? say`the whole column` : cells === 1 ? say`one cell` : say`${cells} cells`;
        return html`<li>${say`${sheetTitle}, column “${columnTitle}”: ${where}`}</li>`;
      })}
      ${more > 0 ? html`<li>${moreColumns(more)}</li>` : nothing}
    </ul>
  </div>`;
}

declare global {
  interface HTMLElementTagNameMap {
    'croft-removal-dialog': RemovalDialog;
  }
}
