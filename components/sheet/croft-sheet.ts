import { html, LitElement, nothing, type PropertyValues } from 'lit';
import { customElement, property, query, state } from 'lit/decorators.js';
import { KINDS, type Outcome, type SheetKind } from '../../src/book/index.js';
import type { BookChange, LiveBook } from '../../src/live/live-book.js';
import type { Problem } from '../../src/problem.js';
import { BookController } from '../book/find-book.js';
import type { GridCell, GridRequest } from '../grid/grid-view.js';
import { base } from '../look/base.js';
import { icons } from '../look/icons.js';
import { problemList } from '../look/problems.js';
import '../working/croft-working.js';
import './add-lots.js';
import './column-dialog.js';
import './columns-dialog.js';
import './grid-pane.js';
import './reading-view.js';
import './settings-form.js';
import type { AddLots } from './add-lots.js';
import { cautionsOf, cautionsView } from './cautions.js';
import type { ColumnDialog } from './column-dialog.js';
import type { ColumnsDialog } from './columns-dialog.js';
import { emptyState, type FirstStep } from './empty-state.js';
import type { GridPane, GridStart, PaneHost } from './grid-pane.js';
import type { ReadingEvents, ReadingView } from './reading-view.js';
import { sheetCalled } from './sheet-called.js';
import { sheetStyles } from './sheet-styles.js';
import { statusLine } from './status-line.js';
import { type ToolbarActions, toolbar } from './toolbar.js';

type Sheet = NonNullable<ReturnType<typeof sheetCalled>>;
const AT_START: GridStart = { cell: null, text: null, focus: false };

/**
 * One sheet of a book: a table to read, or, where the page allows it, a grid to edit. Its planning columns
 * stand out; choosing one of their figures shows how it is worked out.
 *
 * @element croft-sheet
 * @attr sheet - Id, kind (`shelf`, `foods`, `draws`, `household`) or title of the sheet.
 * @attr view - `read` (usual) or `edit`: the grid opens at once.
 * @attr book - Id of the `<croft-book>`; the one around it unless given.
 * @attr columns - Columns of the reading view, by id or title, with commas between; all unless given.
 * @attr read-only - No grid is offered.
 * @attr bare - Without the sheet's title and what it is for.
 * @attr theme - `light`, `dark` or `auto`; else the page's `color-scheme` counts.
 * @csspart table - The table of the reading view's frame.
 * @csspart toolbar - Tools of the editing view.
 * @csspart cautions - Food-safety words.
 * @csspart status - Line of notes and of what is saved.
 * @csspart empty - What an empty sheet says.
 * @cssprop --croft-paper - Background; likewise `--croft-raised`, `--croft-ink`, `--croft-quiet-ink`,
 *   `--croft-line`, `--croft-accent`, `--croft-on-accent`, `--croft-planning`, `--croft-planning-line`,
 *   `--croft-own-mark`, `--croft-problem`, `--croft-problem-paper`, `--croft-focus`.
 * @cssprop --croft-font - Font; likewise `--croft-font-title`, `--croft-font-figures`.
 * @cssprop --croft-radius - Rounding of corners.
 * @cssprop --croft-sheet-height - Greatest height of the table, height of the grid.
 */
@customElement('croft-sheet')
export class CroftSheet extends LitElement {
  static override styles = [base, sheetStyles];

  @property() sheet = 'shelf';
  @property({ reflect: true }) view: 'read' | 'edit' = 'read';
  @property({ converter: { fromAttribute: (value) => value?.split(',').map((name) => name.trim()) ?? [] } })
  columns: readonly string[] = [];
  @property({ type: Boolean, attribute: 'read-only' }) readOnly = false;
  @property({ type: Boolean }) bare = false;
  @property({ reflect: true }) theme: string | null = null;
  @state() private mounted = false;
  @state() private workingOpen = false;
  @state() private addingLots = false;
  @state() private said: Problem | string | null = null;
  @state() private cell: GridCell | null = null;
  @query('croft-grid-pane') private pane!: GridPane | null;
  @query('croft-reading-view') private reading!: ReadingView | null;
  @query('croft-column-dialog') private columnDialog!: ColumnDialog;
  @query('croft-columns-dialog') private columnsDialog!: ColumnsDialog;
  readonly #book = new BookController(this, (change) => this.#heed(change));
  #start: GridStart = AT_START;
  #shown: LiveBook | null = null;

  /** Opens the editing view in place, on `cell` or what is in sight; `text` begins an edit there. */
  openGrid(cell: GridCell | null = null, text: string | null = null): void {
    const at = cell ?? this.cell ?? this.reading?.firstInSight() ?? null;
    this.#start = { cell: at, text, focus: true };
    this.view = 'edit';
  }

  /** Goes back to the table to read. */
  closeGrid(): void {
    this.view = 'read';
  }

  /** A refusal or a note for the line under the sheet. */
  say(message: Problem | string | null): void {
    this.said = message;
  }

  protected override willUpdate(changed: PropertyValues<CroftSheet>): void {
    const { live, book } = this.#book;
    if (live !== this.#shown || changed.has('sheet')) {
      this.#shown = live;
      this.cell = null;
      this.workingOpen = false;
      this.addingLots = false;
      this.mounted = false;
      this.said = null;
      if (!this.hasUpdated || live) this.#start = AT_START;
    }
    if (live && this.view === 'edit' && !book?.gridLicenceKey) {
      this.view = 'read';
      this.said = {
        code: 'grid-key-missing',
        message: 'This page gives no licence key for the grid, so it cannot open.',
        mend: 'Whoever keeps the page writes it as grid-licence-key on croft-book.',
      };
    }
    if (this.view === 'read') {
      this.mounted = false;
      this.addingLots = false;
    }
  }

  protected override render() {
    const { live, book } = this.#book;
    if (!live) return this.#withoutBook();
    const sheet = sheetCalled(live, this.sheet);
    if (!sheet) {
      return html`<p class="no-book">This book has no sheet called “${this.sheet}”.</p>`;
    }
    const kind = KINDS[sheet.kind as SheetKind];
    const editing = this.view === 'edit' && !this.readOnly;
    return html`
      ${this.#head(sheet, kind.help)}
      ${
        sheet.kind === 'household'
          ? html`<croft-settings-form
              .live=${live}
              .readonly=${!editing}
              @say=${(event: CustomEvent<Problem | null>) => this.say(event.detail)}
            ></croft-settings-form>`
          : nothing
      }
      ${editing ? toolbar(this.#tools(live, sheet), this.#actions) : nothing}
      ${
        this.addingLots
          ? html`<croft-add-lots .live=${live} .sheet=${sheet.id} @done=${this.#lotsDone}></croft-add-lots>`
          : nothing
      }
      <div class="body ${this.workingOpen ? 'with-working' : ''}">
        <div class="stage">${this.#stage(live, sheet, editing)}</div>
        ${
          this.workingOpen
            ? html`<croft-working
                sheet=${sheet.id}
                closable
                @croft-close=${this.#closeWorking}
              ></croft-working>`
            : nothing
        }
      </div>
      ${statusLine(this.said, editing || book?.keep != null ? (book?.status ?? null) : null, () => this.say(null))}
      ${cautionsView(cautionsOf(live, sheet.id, sheet.kind))}
      <croft-column-dialog
        .live=${live}
        .sheet=${sheet.id}
        .ensureEngine=${() => book?.ensureEngine() ?? Promise.resolve()}
        @done=${(event: CustomEvent<Outcome>) => this.#noted(event.detail)}
      ></croft-column-dialog>
      <croft-columns-dialog .live=${live} .sheet=${sheet.id}></croft-columns-dialog>
    `;
  }

  #withoutBook() {
    const { book } = this.#book;
    if (book && book.problems.length > 0) {
      return html`<div class="no-book" role="alert">
        <h3>The book could not be opened</h3>
        ${problemList(book.problems)}
      </div>`;
    }
    return html`<p class="opening quiet" aria-busy="true">Opening the book…</p>`;
  }

  #head(sheet: Sheet, help: string) {
    if (this.bare) return nothing;
    return html`<div class="head">
      <h2>${sheet.title}</h2>
      <p class="quiet small">${help}</p>
    </div>`;
  }

  #stage(live: LiveBook, sheet: Sheet, editing: boolean) {
    const columns = live.columns(sheet.id).filter(({ hidden }) => !hidden);
    if (live.rowIds(sheet.id).length === 0 || columns.length === 0) {
      return emptyState(KINDS[sheet.kind as SheetKind].empty, this.#firstSteps(sheet, columns.length > 0));
    }
    const label = `${sheet.title}, ${live.title}`;
    return html`
      ${
        editing && this.mounted
          ? nothing
          : html`<croft-reading-view
              .live=${live}
              .sheet=${sheet.id}
              .caption=${label}
              .pending=${!(this.#book.book?.engineReady ?? true)}
              .editable=${!this.readOnly}
              .only=${this.columns}
              .chosen=${this.cell}
              ?inert=${editing}
              @choose=${this.#chosen}
              @edit=${this.#editFrom}
              >${
                this.readOnly || editing
                  ? nothing
                  : html`<button class="button" type="button" @click=${() => this.openGrid()}>
                      ${icons.grid}Open as a grid
                    </button>`
              }</croft-reading-view
            >`
      }
      ${
        editing
          ? html`<croft-grid-pane
              class=${this.mounted ? '' : 'waiting'}
              .live=${live}
              .sheet=${sheet.id}
              .label=${label}
              .host=${this.#paneHost}
              .start=${this.#start}
              @mounted=${this.#gridOpen}
              @failed=${this.#gridFailed}
            ></croft-grid-pane>`
          : nothing
      }
    `;
  }

  #firstSteps(sheet: Sheet, hasColumns: boolean): FirstStep[] {
    if (this.readOnly) return [];
    if (!hasColumns)
      return [
        { label: 'Add a column', act: () => void this.columnDialog.ask({ task: 'add', before: null }) },
      ];
    const row = {
      label: `Write the first ${KINDS[sheet.kind as SheetKind].row}`,
      act: () => this.#actions.addRow(),
    };
    return sheet.kind === 'shelf' && !this.addingLots
      ? [{ label: 'Add lots', act: () => this.#actions.addLots() }, row]
      : [row];
  }

  #tools(live: LiveBook, sheet: Sheet) {
    const look = this.pane?.look ?? null;
    return {
      live,
      kind: sheet.kind,
      row: KINDS[sheet.kind as SheetKind].row,
      look,
      sortedBy: look?.sort ? (live.column(sheet.id, look.sort.column)?.title ?? '') : '',
      addingLots: this.addingLots,
      workingOpen: this.workingOpen,
    };
  }

  readonly #actions: ToolbarActions = {
    undo: () => void this.#book.book?.undo(),
    redo: () => void this.#book.book?.redo(),
    addRow: () => this.#addRow(),
    addColumn: () => void this.columnDialog.ask({ task: 'add', before: null }),
    addLots: () => void this.#toggleLots(),
    columns: () => this.columnsDialog.open(),
    working: () => void (this.workingOpen ? this.#closeWorking() : this.#openWorking(true)),
    unsort: () => {
      const { sort } = this.pane?.look ?? {};
      if (sort) this.pane?.view?.sort(sort.column, null);
      this.requestUpdate();
    },
    showAllRows: () => {
      this.pane?.view?.clearFilters();
      this.requestUpdate();
    },
    read: () => this.closeGrid(),
  };

  readonly #paneHost: PaneHost = Object.defineProperty(
    {
      licenceKey: '',
      ensureEngine: () => this.#book.book?.ensureEngine() ?? Promise.resolve(),
      say: (message: Problem | string | null) => this.say(message),
      selected: (cell: GridCell | null) => this.#select(cell),
      lookChanged: () => this.requestUpdate(),
      ask: (what: GridRequest) => this.#asked(what),
    },
    'licenceKey',
    { get: () => this.#book.book?.gridLicenceKey ?? '' },
  );

  #asked(what: GridRequest): void {
    switch (what.ask) {
      case 'add column':
        return void this.columnDialog.ask({ task: 'add', before: what.before });
      case 'rename column':
        return void this.columnDialog.ask({ task: 'rename', column: what.column });
      case 'column formula':
        return void this.columnDialog.ask({ task: 'formula', column: what.column });
      case 'working':
        this.#select(what.cell);
        return void this.#openWorking(true);
    }
  }

  #select(cell: GridCell | null): void {
    const { live, book } = this.#book;
    const sheet = live && sheetCalled(live, this.sheet)?.id;
    if (!live || !sheet || !cell) return;
    this.cell = cell;
    book?.select({ sheet, ...cell });
    if (live.working(sheet, cell.row, cell.column)) this.workingOpen = true;
  }

  readonly #chosen = (event: ReadingEvents['choose']): void => {
    const { cell, byKey } = event.detail;
    this.#select(cell);
    if (byKey && this.workingOpen) void this.#openWorking(true);
  };

  readonly #editFrom = (event: ReadingEvents['edit']): void => {
    this.openGrid(event.detail.cell, event.detail.text);
  };

  async #openWorking(focus: boolean): Promise<void> {
    this.workingOpen = true;
    await this.updateComplete;
    const panel = this.renderRoot.querySelector('croft-working');
    await panel?.updateComplete;
    if (focus) panel?.focus();
    panel?.scrollIntoView({ block: 'nearest' });
  }

  readonly #closeWorking = (): void => {
    this.workingOpen = false;
    if (this.pane?.view) this.pane.view.focus(this.cell ?? undefined);
    else if (this.cell) void this.reading?.goTo(this.cell);
  };

  async #toggleLots(): Promise<void> {
    this.view = 'edit';
    this.addingLots = !this.addingLots;
    await this.updateComplete;
    // Once more where the view had to change first.
    await this.updateComplete;
    this.renderRoot.querySelector<AddLots>('croft-add-lots')?.focus();
  }

  readonly #lotsDone = (): void => {
    this.addingLots = false;
    this.pane?.view?.focus();
  };

  #addRow(): void {
    const { live } = this.#book;
    const sheet = live && sheetCalled(live, this.sheet)?.id;
    if (!live || !sheet) return;
    const made = live.insertRows(sheet, [{}]);
    if (!made.ok) {
      this.say(made.problem);
      return;
    }
    const column = live.columns(sheet).find(({ hidden }) => !hidden)?.id;
    const cell = column === undefined ? null : { row: made.rows[0]!, column };
    if (this.pane?.view) this.pane.view.focus(cell ?? undefined);
    else this.openGrid(cell);
  }

  readonly #gridOpen = (): void => {
    this.mounted = true;
  };

  readonly #gridFailed = (): void => {
    this.view = 'read';
    this.say({
      code: 'grid-not-loaded',
      message: 'The grid could not be loaded.',
      mend: 'Check the connection and try again. Reading works as before.',
    });
  };

  #noted(outcome: Outcome): void {
    if (outcome.ok && outcome.notes[0]) this.say(outcome.notes[0]);
  }

  #heed(change: BookChange): void {
    this.reading?.heed(change);
    this.renderRoot.querySelector('croft-settings-form')?.requestUpdate();
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'croft-sheet': CroftSheet;
  }
}
