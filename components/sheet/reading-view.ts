import { html, LitElement, nothing, type PropertyValues } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import { guard } from 'lit/directives/guard.js';
import { repeat } from 'lit/directives/repeat.js';
import type { BookChange, LiveBook } from '../../src/live/live-book.js';
import { firstRowInMind } from '../../src/live/week-in-mind.js';
import { say } from '../../src/words/index.js';
import type { GridCell } from '../grid/grid-view.js';
import { base } from '../look/base.js';
import { colourStyles } from '../look/colours.js';
import { ArrowKeys } from './arrow-keys.js';
import { cellAt } from './cell-at.js';
import { colourKey, colourKeyStyles } from './colour-key.js';
import { ROWS_WORTH_FINDING_IN } from './find-rows.js';
import { FitsPaper } from './paper-width.js';
import { readingFoot } from './reading-foot.js';
import { readingLooks } from './reading-looks.js';
import { lineUnder, underRows } from './reading-paper.js';
import { readingPrint } from './reading-print.js';
import { headerCell, readingRow } from './reading-row.js';
import { groupHeading, type Section, sectionsOf, tableFoot } from './reading-sections.js';
import { readingStyles } from './reading-styles.js';
import { ShownRows } from './shown-rows.js';
import { hidesUsedUp, rememberUsedUp, usedUpLots } from './used-up.js';

/** More rows than these wait until someone asks for them (or prints). */
const FIRST_ROWS = 300;

/** What the reading view tells the sheet around it. */
export interface ReadingEvents {
  choose: CustomEvent<{ readonly cell: GridCell; readonly byKey: boolean }>;
  edit: CustomEvent<{ readonly cell: GridCell; readonly text: string | null }>;
}

/** Inside `<croft-sheet>`: a sheet as a plain table, for reading, printing and screen readers. */
@customElement('croft-reading-view')
export class ReadingView extends LitElement {
  static override styles = [base, colourKeyStyles, readingStyles, readingPrint, readingLooks, colourStyles];

  @property({ attribute: false }) live!: LiveBook;
  @property() sheet = '';
  @property() caption = '';
  @property({ type: Boolean }) pending = false;
  @property({ type: Boolean }) editable = false;
  /** Only these columns, by id or title; all that are not hidden where empty. */
  @property({ attribute: false }) only: readonly string[] = [];
  @property({ attribute: false }) chosen: GridCell | null = null;
  @state() private words = '';
  /** Every row at once, however many. */
  @property({ type: Boolean }) everything = false;
  /** As it goes onto paper. */
  @property({ type: Boolean }) paper = false;
  /** Lots of the Shelf of which nothing is left are left out; the row that is chosen never is. */
  @state() private hideUsedUp = hidesUsedUp(true);
  /** Groups whose rows are not shown, by their names. */
  @state() private folded: ReadonlySet<string> = new Set();
  #rows: ShownRows | undefined;
  readonly #keys = new ArrowKeys(this);
  protected readonly fitsPaper = new FitsPaper(this, ReadingView.styles);

  /** The rows and columns now shown, for moving about by keys. */
  get shownRows(): readonly string[] {
    return this.#sections(this.#found()).flatMap(({ rows }) => rows);
  }

  get shownColumns(): readonly string[] {
    return this.#rows!.columns.map(({ id }) => id);
  }

  /** To be called with every change of the book. */
  heed(change: BookChange): void {
    this.#rows?.heed(change);
    this.requestUpdate();
  }

  /** First cell that is in sight, where nothing is chosen: what a grid that opens here should show. */
  firstInSight(): GridCell | null {
    const frame = this.renderRoot.querySelector('.frame');
    if (!frame) return null;
    const top = frame.getBoundingClientRect().top + (frame.querySelector('thead')?.clientHeight ?? 0);
    for (const cell of frame.querySelectorAll<HTMLElement>('tbody th')) {
      if (cell.getBoundingClientRect().bottom > top + 4) return cellAt(cell);
    }
    return null;
  }

  override connectedCallback(): void {
    super.connectedCallback();
    window.addEventListener('beforeprint', this.#showAll);
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    window.removeEventListener('beforeprint', this.#showAll);
  }

  protected override willUpdate(changed: PropertyValues<ReadingView>): void {
    if (['live', 'sheet', 'pending', 'only'].some((name) => changed.has(name as keyof ReadingView))) {
      this.#rows = new ShownRows(this.live, this.sheet, this.pending, this.only);
    }
  }

  protected override updated(changed: PropertyValues<ReadingView>): void {
    if ((changed.has('live') || changed.has('sheet')) && !this.chosen && !this.everything)
      this.#showWeekInMind();
  }

  /** A plan of many weeks opens at the one that is cooked from, as the grid does; those before it stay above. */
  #showWeekInMind(): void {
    const [column] = this.shownColumns;
    const row = this.live.sheetOfKind('week') === this.sheet ? firstRowInMind(this.live) : null;
    const frame = this.renderRoot.querySelector('.frame');
    const cell = row !== null && column !== undefined && this.#keys.elementOf({ row, column });
    if (!frame || !cell) return;
    const head = frame.querySelector('thead th')!.getBoundingClientRect().bottom;
    frame.scrollTop += cell.getBoundingClientRect().top - head;
  }

  protected override render() {
    const rows = this.#rows!;
    const found = this.#found();
    const sections = this.#sections(found);
    const shown = sections.flatMap(({ rows: ids }) => ids);
    const { columns } = rows;
    const under = this.paper
      ? underRows(
          columns,
          shown.map((id) => rows.row(id)),
        )
      : new Set<string>();
    const beside = columns.filter(({ id }) => !under.has(id));
    const tab = this.#keys.at(shown, this.shownColumns);
    return html`
      ${this.#legend(found.length)}
      <span id="how" hidden>${say`Shows how this figure is worked out`}</span>
      <div class="frame" part="frame">
        <table part="table" @click=${this.#click} @keydown=${this.#keys.pressed}>
          <caption class="unseen">
            ${this.caption}
          </caption>
          <thead>
            <tr>
              ${beside.map((column) => headerCell(column, rows.long.has(column.id)))}
            </tr>
          </thead>
          ${repeat(
            sections,
            ({ key }) => key,
            (section) => html`<tbody>
              ${groupHeading(this.live, this.sheet, beside, section, () => this.#fold(section.key))}
              ${repeat(
                section.rows,
                (id) => id,
                (id) => {
                  const row = rows.row(id);
                  const here = tab?.row === id ? tab.column : undefined;
                  const chosen = this.chosen?.row === id ? this.chosen.column : undefined;
                  return guard([row, here, chosen, columns, under.size], () => [
                    readingRow(row, columns, here, chosen, rows.long, under),
                    under.size > 0 ? lineUnder(row, columns, under) : nothing,
                  ]);
                },
              )}
            </tbody>`,
          )}
          ${tableFoot(this.live, this.sheet, beside, found)}
        </table>
      </div>
      ${this.#foot(found, shown)}
    `;
  }

  /** The rows in their groups; what is looked for is never folded away. */
  #sections(found: readonly string[]): readonly Section[] {
    const most = this.everything ? Number.POSITIVE_INFINITY : FIRST_ROWS;
    const folded = this.words === '' ? this.folded : new Set<string>();
    return sectionsOf(this.live, this.sheet, found, most, folded);
  }

  #fold(key: string): void {
    const folded = new Set(this.folded);
    if (!folded.delete(key)) folded.add(key);
    this.folded = folded;
  }

  #found(): readonly string[] {
    const found = this.#rows!.matching(this.words);
    if (!this.hideUsedUp) return found;
    const hidden = new Set(usedUpLots(this.live, this.sheet));
    return hidden.size === 0 ? found : found.filter((id) => !hidden.has(id) || id === this.chosen?.row);
  }

  readonly #toggleUsedUp = (event: Event): void => {
    this.hideUsedUp = (event.target as HTMLInputElement).checked;
    rememberUsedUp(this.hideUsedUp);
  };

  #usedUp() {
    const { length } = usedUpLots(this.live, this.sheet);
    return length === 0
      ? nothing
      : html`<label class="used-up">
          <input type="checkbox" .checked=${this.hideUsedUp} @change=${this.#toggleUsedUp} />
          ${say`Hide used-up lots (${length})`}
        </label>`;
  }

  #legend(found: number) {
    const { columns } = this.#rows!;
    const all = this.live.rowIds(this.sheet).length;
    return html`<div class="legend small">
      ${colourKey(columns)}
      <span class="end">
        ${this.#usedUp()}
        ${
          all < ROWS_WORTH_FINDING_IN
            ? nothing
            : html`<span class="find">
                ${this.words ? html`<span class="quiet" role="status">${say`${found} of ${all} rows`}</span>` : nothing}
                <input
                  type="search"
                  aria-label=${say`Find rows`}
                  placeholder=${say`Find rows`}
                  .value=${this.words}
                  @input=${this.#find}
                />
              </span>`
        }
        <slot></slot>
      </span>
    </div>`;
  }

  #foot(found: readonly string[], shown: readonly string[]) {
    return readingFoot({
      live: this.live,
      sheet: this.sheet,
      problems: this.#rows!.problems(shown),
      notes: this.#rows!.notes(shown),
      waiting: this.everything ? 0 : Math.max(0, found.length - FIRST_ROWS),
      found: found.length,
      showAll: this.#showAll,
      lookAt: (cell) => this.#lookAt(cell),
    });
  }

  readonly #showAll = (): void => {
    this.everything = true;
    this.drawNow();
  };

  /** What goes onto paper does not wait for the usual update. */
  drawNow(): void {
    if (this.isUpdatePending) this.performUpdate();
  }

  readonly #find = (event: Event): void => {
    this.words = (event.target as HTMLInputElement).value;
  };

  /** Puts the keyboard on a cell. */
  goTo(cell: GridCell): Promise<void> {
    if (!this.#found().includes(cell.row)) this.words = '';
    if (this.folded.size > 0 && !this.shownRows.includes(cell.row)) this.folded = new Set();
    return this.#keys.moveTo(cell);
  }

  /** Where a cell is in the window. */
  boxOf(cell: GridCell): DOMRect | undefined {
    return this.#keys.elementOf(cell)?.getBoundingClientRect();
  }

  #lookAt(cell: GridCell): void {
    void this.goTo(cell);
    this.#tell('choose', { cell, byKey: false });
  }

  readonly #click = (event: MouseEvent): void => {
    const cell = cellAt(event.target as HTMLElement);
    if (!cell) return;
    this.#keys.stay(cell);
    this.#tell('choose', { cell, byKey: event.detail === 0 });
  };

  /** A key pressed on a cell that is not one for moving about. */
  editFrom(cell: GridCell, text: string | null): void {
    this.#tell('edit', { cell, text });
  }

  #tell<K extends keyof ReadingEvents>(name: K, detail: ReadingEvents[K]['detail']): void {
    this.dispatchEvent(new CustomEvent(name, { detail }));
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'croft-reading-view': ReadingView;
  }
}
