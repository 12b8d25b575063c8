import { html, LitElement, nothing, type PropertyValues } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import { KINDS, type SheetKind } from '../../src/book/index.js';
import type { LiveBook } from '../../src/live/live-book.js';
import type { Problem } from '../../src/problem.js';
import { phrase, say, spoken } from '../../src/words/index.js';
import type { CroftBook } from '../book/croft-book.js';
import { BookController } from '../book/find-book.js';
import type { GridCell } from '../grid/grid-view.js';
import { base } from '../look/base.js';
import { listTold, type Several, tickTold } from '../told-as-text.js';
import '../notices/croft-book-notices.js';
import '../working/croft-working.js';
import './add-lots.js';
import './figures-day.js';
import './column-dialog.js';
import './columns-dialog.js';
import './grid-pane.js';
import './reading-view.js';
import './settings-form.js';
import './what-it-takes.js';
import { cautionsOf, cautionsView } from './cautions.js';
import { colourKey, colourKeyStyles } from './colour-key.js';
import { ROWS_WORTH_FINDING_IN } from './find-rows.js';
import { NotesAbove } from './notes-above.js';
import { RestedReading } from './rested-reading.js';
import { type Sheet, sheetCalled } from './sheet-called.js';
import { SheetDoings } from './sheet-doings.js';
import { sheetStyles } from './sheet-styles.js';
import { stage, withoutBook } from './stage.js';
import { statusLine } from './status-line.js';
import { toolbar } from './toolbar.js';

/** Least height in pixels of a grid that takes the place of something else. */
const LEAST = 240;

const KEY_MISSING: Problem = {
  code: 'grid-key-missing',
  message: phrase('This page gives no licence key for the grid, so it cannot open.'),
  mend: phrase('Whoever keeps the page writes it as grid-licence-key on croft-book.'),
};

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
 * @attr bare - Without the sheet's title, what it is for and the day of its figures (see croft-figures-day).
 * @attr theme - `light`, `dark` or `auto`; else the page's `color-scheme` counts.
 * @fires croft-show - In a working, a person chose a number that stands in a cell: `detail` is `{ sheet, row, column }`.
 * @csspart frame - What scrolls the table of the reading view.
 * @csspart table - The table of the reading view.
 * @csspart grid - The grid of the editing view.
 * @csspart working - The box that shows how a figure is worked out.
 * @csspart toolbar - Tools of the editing view.
 * @csspart cautions - Food-safety words.
 * @csspart status - Line of notes and of what is saved.
 * @csspart empty - What an empty sheet says.
 */
@customElement('croft-sheet')
export class CroftSheet extends LitElement {
  static override styles = [base, colourKeyStyles, sheetStyles];

  @property() sheet = 'shelf';
  @property({ reflect: true, useDefault: true }) view: 'read' | 'edit' = 'read';
  @property({ converter: listTold })
  get columns(): readonly string[] {
    return this.#columns;
  }
  set columns(told: Several) {
    this.#columns = listTold(told);
  }
  @property({ type: Boolean, converter: tickTold, attribute: 'read-only' }) readOnly = false;
  @property({ type: Boolean, converter: tickTold }) bare = false;
  @property({ reflect: true }) theme: string | null = null;
  /**
   * Height in pixels of what stands in its place until the grid is there, and that the whole of it is to take:
   * until then nothing is drawn to be read. What stands around it says how it is kept, what is cautioned and how to
   * go back.
   */
  @property({ attribute: false }) standIn: number | null = null;
  @state() private printing = false;
  #columns: readonly string[] = [];
  readonly #book = new BookController(this, (change) => {
    this.#doings.reading?.heed(change);
    this.#doings.heed(change);
    if (change.notes?.[0]) this.say(change.notes[0]);
    for (const each of ['croft-settings-form', 'croft-what-it-takes'] as const)
      this.renderRoot.querySelector(each)?.requestUpdate();
    this.#cautions.heed(change);
    this.#notes.heed(this.#book.live, change);
  });
  readonly #doings = new SheetDoings(this, this.#book);
  readonly #cautions = new RestedReading(this, (live, { id, kind }) => cautionsOf(live, id, kind));
  readonly #notes = new NotesAbove(this);
  #shown: LiveBook | null = null;

  /** Opens the editing view in place, on `cell` or what is in sight; `text` begins an edit there. */
  openGrid(cell: GridCell | null = null, text: string | null = null): void {
    const at = cell ?? this.#doings.cell ?? this.#doings.reading?.firstInSight() ?? null;
    this.#doings.start = { cell: at, text, focus: true };
    this.view = 'edit';
  }

  /** Goes back to the table to read. */
  closeGrid(): void {
    this.view = 'read';
    const { cell } = this.#doings;
    if (cell) void this.updateComplete.then(() => this.#doings.reading?.goTo(cell));
  }

  /** Brings a cell into sight and puts the keyboard on it, in whichever view is open. */
  showCell(cell: GridCell): Promise<void> {
    return this.#doings.goTo(cell);
  }

  /** A refusal or a note for the line under the sheet. */
  say(message: Problem | string | null): void {
    this.#doings.say(message);
  }

  override connectedCallback(): void {
    super.connectedCallback();
    window.addEventListener('beforeprint', this.#print);
    window.addEventListener('afterprint', this.#print);
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    window.removeEventListener('beforeprint', this.#print);
    window.removeEventListener('afterprint', this.#print);
  }

  /** A grid holds only the rows in sight, so paper gets the table: at once, since Firefox prints what then stands. */
  readonly #print = (event: Event): void => {
    this.printing = event.type === 'beforeprint';
    if (!this.printing || !this.isUpdatePending) return;
    this.performUpdate();
    this.renderRoot.querySelector('croft-reading-view')?.drawNow();
  };

  protected override willUpdate(changed: PropertyValues<CroftSheet>): void {
    const { live, book } = this.#book;
    if (changed.has('sheet') && this.hasUpdated) this.#shown = null;
    if (live !== this.#shown) {
      this.#shown = live;
      this.#doings.startOver();
    }
    if (live && this.view === 'edit' && !book?.gridLicenceKey) {
      this.view = 'read';
      this.#doings.below.say(KEY_MISSING);
    }
    // A grid is there before its figures; whoever reads, reads them.
    if (live && !live.isPlanned) {
      if (this.view === 'edit' && !this.readOnly) live.showsSoFar();
      else live.workOut();
    }
    if (this.view === 'read') {
      this.#doings.mounted = false;
      this.#doings.lots.isOpen = false;
      this.#doings.finding.isOpen = false;
    }
  }

  protected override updated(): void {
    const { pane, mounted } = this.#doings;
    if (this.standIn === null || mounted || !pane) return;
    // Before the grid is drawn, so that it is drawn once.
    const around = this.offsetHeight - pane.offsetHeight;
    const height = `${Math.max(LEAST, this.standIn - around)}px`;
    this.style.setProperty('--croft-sheet-height', height);
    // Few rows leave room below them: nothing around it may move as it takes the other's place.
    pane.style.height = height;
  }

  protected override render() {
    const { live, book } = this.#book;
    if (!live) return withoutBook(book);
    const sheet = sheetCalled(live, this.sheet);
    if (!sheet) return html`<p class="no-book">${say`This book has no sheet called “${this.sheet}”.`}</p>`;
    const doings = this.#doings;
    const editing = this.view === 'edit' && !this.readOnly;
    const { workingOpen } = doings;
    return html`
      <croft-book-notices></croft-book-notices>
      ${this.#head(sheet)} ${this.#settings(live, sheet, editing)}
      ${editing && this.standIn === null ? this.#toolbar(live, sheet) : nothing}
      ${
        editing && doings.finding.isOpen
          ? html`<croft-find-rows .live=${live} .sheet=${sheet.id} .hides=${doings.finding.leavesOut} @found=${doings.finding.found} @done=${doings.finding.toggle}></croft-find-rows>`
          : nothing
      }
      ${
        doings.lots.isOpen
          ? html`<croft-add-lots .live=${live} .sheet=${sheet.id} @added=${doings.lots.added} @done=${doings.lots.done}></croft-add-lots>`
          : nothing
      }
      ${
        // Not where it takes the place of a table: what came above the grid would move it while somebody writes.
        this.standIn === null && live.isPlanned ? this.#notes.view(live, sheet, doings.look) : nothing
      }
      <div class="body ${workingOpen ? 'with-working' : ''}">
        <div class="stage">${this.#stage(live, sheet, editing)}</div>
        ${
          workingOpen
            ? html`<croft-working exportparts="panel: working" sheet=${sheet.id} closable @croft-close=${doings.closeWorking}></croft-working>`
            : nothing
        }
      </div>
      ${
        sheet.kind === 'household' ? html`<croft-what-it-takes .live=${live}></croft-what-it-takes>` : nothing
      }
      ${
        // Under the grid, which then stands where the table stood.
        editing && this.standIn !== null ? this.#toolbar(live, sheet) : nothing
      }
      ${editing && (doings.mounted || this.standIn !== null) ? html`<div class="small">${colourKey(live.columns(sheet.id))}</div>` : nothing}
      ${statusLine(doings.below.said, this.#saysKept(book, editing) ? (book?.status ?? null) : null, doings.dismiss)}
      ${this.standIn === null ? cautionsView(this.#cautions.of(live, sheet)) : nothing}
      <croft-column-dialog
        .live=${live}
        .sheet=${sheet.id}
        .engineLicenceKey=${book?.engineLicenceKey ?? ''}
        @done=${doings.columnDone}
      ></croft-column-dialog>
      <croft-columns-dialog .live=${live} .sheet=${sheet.id}></croft-columns-dialog>
      ${doings.actions.dialog}
    `;
  }

  #saysKept(book: CroftBook | null, editing: boolean): boolean {
    return this.standIn === null && (editing || book?.keep != null);
  }

  #head(sheet: Sheet) {
    if (this.bare) return nothing;
    return html`<div class="head">
      <h2>${sheet.title}</h2>
      <p class="quiet small">${spoken(KINDS[sheet.kind as SheetKind].help)}</p>
      <croft-figures-day ?read-only=${this.readOnly}></croft-figures-day>
    </div>`;
  }

  #settings(live: LiveBook, sheet: Sheet, editing: boolean) {
    if (sheet.kind !== 'household') return nothing;
    return html`<croft-settings-form
      .live=${live}
      .readonly=${!editing}
      @say=${(event: CustomEvent<Problem | null>) => this.say(event.detail)}
    ></croft-settings-form>`;
  }

  #toolbar(live: LiveBook, sheet: Sheet) {
    const { lots, workingOpen, pane } = this.#doings;
    const look = pane?.look ?? null;
    const state = {
      live,
      kind: sheet.kind,
      row: spoken(KINDS[sheet.kind as SheetKind].row),
      sheet: sheet.id,
      chosen: this.#doings.cell?.row ?? null,
      look,
      sortedBy: look?.sort ? (live.column(sheet.id, look.sort.column)?.title ?? '') : '',
      groupedBy: live.column(sheet.id, live.groupOf(sheet.id) ?? '')?.title ?? '',
      addingLots: lots.isOpen,
      finding: this.#canFind(live, sheet) ? this.#doings.finding.isOpen : null,
      workingOpen,
      hideUsedUp: this.#doings.hideUsedUp,
      canRead: this.standIn === null,
    };
    return toolbar(state, this.#doings);
  }

  /** Not where it takes the place of a table: a line more would move what stands below it. */
  #canFind(live: LiveBook, { id }: Sheet): boolean {
    return this.standIn === null && live.rowIds(id).length >= ROWS_WORTH_FINDING_IN;
  }

  #stage(live: LiveBook, sheet: Sheet, editing: boolean) {
    const { cell, mounted, start } = this.#doings;
    const state = {
      live,
      sheet,
      editing,
      mounted,
      printing: this.printing,
      cell,
      start,
      readOnly: this.readOnly,
      pending: !(this.#book.book?.engineReady ?? true),
      columns: this.columns,
      standIn: this.standIn !== null,
      firstSteps: (hasColumns: boolean) => this.#doings.firstSteps(sheet, hasColumns),
    };
    return stage(state, this.#doings);
  }
}

export type { CroftEvents } from '../events.js';

declare global {
  interface HTMLElementTagNameMap {
    'croft-sheet': CroftSheet;
  }
}
