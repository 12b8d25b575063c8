import { KINDS, type SheetKind } from '../../src/book/index.js';
import type { BookChange, LiveBook } from '../../src/live/live-book.js';
import { firstRowInMind } from '../../src/live/week-in-mind.js';
import type { Problem } from '../../src/problem.js';
import { say, spoken } from '../../src/words/index.js';
import type { BookController } from '../book/find-book.js';
import type { GridCell, GridRequest } from '../grid/grid-view.js';
import type { SheetAction } from './actions/action.js';
import { actionsOf } from './actions/actions.js';
import { RunningActions } from './actions/running.js';
import { AddingLots } from './adding-lots.js';
import { type Answering, answerRequest, type ColumnTask } from './answer-request.js';
import type { ColumnDone } from './column-dialog.js';
import type { CroftSheet } from './croft-sheet.js';
import type { FirstStep } from './empty-state.js';
import { Finding } from './finding.js';
import type { GridPane, GridStart, PaneHost } from './grid-pane.js';
import type { ReadingEvents, ReadingView } from './reading-view.js';
import { SaidBelow } from './said-below.js';
import { type Sheet, sheetCalled } from './sheet-called.js';
import type { StageDoings } from './stage.js';
import { GRID_NOT_LOADED } from './status-line.js';
import type { ToolbarActions } from './toolbar.js';
import { hidesUsedUp, rememberUsedUp } from './used-up.js';
import { isWide, keepInSight } from './wide.js';
import { WorkingPanel } from './working-panel.js';

const AT_START: GridStart = { cell: null, text: null, focus: false };

/** What a person does with one sheet, by whatever way, and what stands open because of it. */
export class SheetDoings implements ToolbarActions, StageDoings {
  cell: GridCell | null = null;
  start: GridStart = AT_START;
  /** The grid is there. */
  mounted = false;
  hideUsedUp = hidesUsedUp(false);
  readonly below = new SaidBelow();
  readonly #element: CroftSheet;
  readonly #book: BookController;
  readonly #panel: WorkingPanel;

  readonly finding = new Finding({
    drawn: () => this.#drawn(),
    line: () => this.#find('croft-find-rows'),
    view: () => this.pane?.view,
    back: () => this.pane?.view?.focus(this.cell ?? undefined),
    goTo: (cell) => void this.goTo(cell),
  });

  readonly lots = new AddingLots({
    drawn: () => {
      this.#element.view = 'edit';
      return this.#drawn();
    },
    requestUpdate: () => this.#element.requestUpdate(),
    panel: () => this.#find('croft-add-lots'),
    view: () => this.pane?.view,
    goTo: (cell) => this.goTo(cell),
    lastRow: () => {
      const { live, sheet } = this.#here();
      return live && sheet ? live.rowIds(sheet.id).at(-1) : undefined;
    },
  });

  /** What is done that belongs to the kind of sheet. */
  readonly actions = new RunningActions({
    here: () => {
      const { live, sheet } = this.#here();
      if (!live || !sheet) return null;
      const { row = null } = this.cell ?? {};
      return { live, sheet: sheet.id, row: row !== null && live.rowIds(sheet.id).includes(row) ? row : null };
    },
    say: (message) => this.say(message),
    requestUpdate: () => this.#element.requestUpdate(),
    refocus: () => this.pane?.view?.focus(this.cell ?? undefined),
  });

  constructor(element: CroftSheet, book: BookController) {
    this.#element = element;
    this.#book = book;
    this.#panel = new WorkingPanel(element);
  }

  /** Another book or sheet is shown: nothing stands open in it. */
  startOver(): void {
    this.below.say(null);
    this.cell = null;
    this.start = AT_START;
    this.mounted = false;
    this.#panel.isOpen = false;
    this.lots.isOpen = false;
    this.finding.isOpen = false;
    this.actions.clear();
  }

  get pane(): GridPane | null {
    return this.#find('croft-grid-pane');
  }

  get reading(): ReadingView | null {
    return this.#find('croft-reading-view');
  }

  say(message: Problem | string | null): void {
    this.below.say(message);
    this.#element.requestUpdate();
  }

  readonly dismiss = (): void => this.say(null);

  readonly undo = (): void => this.#step('undo');
  readonly redo = (): void => this.#step('redo');

  /** What it took back may stand out of sight, or on another sheet: it is said. */
  #step(which: 'undo' | 'redo'): void {
    const { book, live } = this.#book;
    const label = which === 'undo' ? live?.undoLabel : live?.redoLabel;
    if (!book || !label) return;
    book[which]();
    // What it met on the way has been said.
    if (this.below.said === null)
      this.say(which === 'undo' ? say`Undone: ${label}.` : say`Done again: ${label}.`);
  }

  readonly addRow = (): void => {
    const { live, sheet } = this.#here();
    if (!live || !sheet) return;
    const made = live.insertRows(sheet.id, [{}]);
    if (!made.ok) {
      this.say(made.problem);
      return;
    }
    const column = live.columns(sheet.id).find(({ hidden }) => !hidden)?.id;
    const cell = column === undefined ? null : { row: made.rows[0]!, column };
    if (this.pane?.view) this.pane.view.focus(cell ?? undefined);
    else this.#element.openGrid(cell);
  };

  readonly addColumn = (): void => this.#askColumn({ task: 'add', before: null });
  readonly addLots = (): Promise<void> => this.lots.toggle();

  readonly columns = (): void => void this.#find('croft-columns-dialog')?.open();

  readonly columnDone = (event: CustomEvent<ColumnDone>): void => {
    const { outcome, added } = event.detail;
    if (outcome.ok && outcome.notes[0]) this.say(outcome.notes[0]);
    const { live, sheet } = this.#here();
    const row = this.cell?.row ?? (live && sheet ? live.rowIds(sheet.id)[0] : undefined);
    if (added !== null && row !== undefined) void this.goTo({ row, column: added });
    else this.pane?.view?.focus();
  };

  get workingOpen(): boolean {
    return this.#panel.isOpen;
  }

  readonly working = (): void => {
    if (this.workingOpen) this.closeWorking();
    else void this.#explain();
  };

  /** With the figure in sight that it explains. */
  async #explain(): Promise<void> {
    await this.#panel.open({ focus: true });
    await this.#panel.uncover(() => this.pane?.selectedBox);
  }

  readonly closeWorking = (): void => {
    this.#panel.close();
    if (this.pane?.view) this.pane.view.focus(this.cell ?? undefined);
    else if (this.cell) void this.reading?.goTo(this.cell);
  };

  readonly unsort = (): void => {
    const { look, view } = this.pane ?? {};
    if (look?.sort) view?.sort(look.sort.column, null);
    this.#element.requestUpdate();
  };

  readonly ungroup = (): void => {
    const { live, sheet } = this.#here();
    if (live && sheet) live.apply({ do: 'group rows', sheet: sheet.id, by: null });
  };

  readonly colour = (): void => this.#lookAtChosen('colour');
  readonly note = (): void => this.#lookAtChosen('note');

  #lookAtChosen(ask: 'colour' | 'note'): void {
    const cells = this.pane?.view?.chosenCells ?? [];
    if (cells.length > 0) this.#asked({ ask, cells });
    else this.say(say`Choose a cell first.`);
  }

  readonly toggleUsedUp = (): void => {
    this.hideUsedUp = !this.hideUsedUp;
    rememberUsedUp(this.hideUsedUp);
    this.pane?.view?.leaveOut('left', this.hideUsedUp ? 0 : null);
    this.#element.requestUpdate();
  };

  readonly showAllRows = (): void => {
    if (this.hideUsedUp) rememberUsedUp(false);
    this.hideUsedUp = false;
    this.pane?.view?.clearFilters();
    this.#element.requestUpdate();
  };

  readonly run = (action: SheetAction): void => void this.actions.run(action);

  /** Brings a cell into sight and puts the keyboard on it, in the view that is open. */
  async goTo(cell: GridCell): Promise<void> {
    this.cell = cell;
    this.start = { cell, text: null, focus: true };
    this.#element.requestUpdate();
    await this.#element.updateComplete;
    const { view } = this.pane ?? {};
    if (view) {
      view.layOut();
      if (view.hides(cell.row)) {
        this.showAllRows();
        this.say(say`All rows are shown again: a filter left this one out.`);
      }
      view.focus(cell);
    } else if (this.#element.view === 'read') await this.reading?.goTo(cell);
  }

  /** Shows a cell with its working. */
  readonly look = (cell: GridCell): void => {
    void this.goTo(cell);
    this.#select(cell);
  };

  readonly read = (): void => this.#element.closeGrid();
  readonly openGrid = (): void => this.#element.openGrid();

  readonly chosen = (event: ReadingEvents['choose']): void => {
    const { cell, byKey } = event.detail;
    this.#select(cell);
    if (!this.workingOpen) return;
    if (byKey) void this.#panel.open({ focus: true });
    else void this.#panel.uncover(() => this.reading?.boxOf(cell));
  };

  readonly edit = (event: ReadingEvents['edit']): void => {
    this.#element.openGrid(event.detail.cell, event.detail.text);
  };

  readonly gridOpen = (): void => {
    this.mounted = true;
    if (this.hideUsedUp && this.#here().sheet?.kind === 'shelf') this.pane?.view?.leaveOut('left', 0);
    if (!this.start.cell && this.#element.standIn === null) this.#showWeekInMind();
    this.#element.requestUpdate();
  };

  /** A plan of many weeks opens at the one that is cooked from; those before it stay above. */
  #showWeekInMind(): void {
    const { live, sheet } = this.#here();
    if (!live || sheet?.kind !== 'week') return;
    const row = firstRowInMind(live);
    const column = live.columns(sheet.id).find(({ hidden }) => !hidden)?.id;
    if (row !== null && column !== undefined) this.pane?.view?.show({ row, column }, 'top');
  }

  readonly gridFailed = (): void => {
    this.#element.view = 'read';
    this.say(GRID_NOT_LOADED);
  };

  readonly paneHost: PaneHost = {
    licenceKey: () => this.#book.book?.gridLicenceKey ?? '',
    ensureEngine: () => this.#book.book?.ensureEngine() ?? Promise.resolve(),
    say: (message) => this.say(message),
    selected: (cell) => this.#selectedInGrid(cell),
    lookChanged: () => this.#element.requestUpdate(),
    ask: (what) => this.#asked(what),
  };

  /** First steps offered in an empty sheet. */
  firstSteps(sheet: Sheet, hasColumns: boolean): FirstStep[] {
    if (this.#element.readOnly) return [];
    if (!hasColumns) return [{ label: say`Add a column`, act: this.addColumn }];
    const row = { label: say`Write the first ${KINDS[sheet.kind as SheetKind].row}`, act: this.addRow };
    if (sheet.kind === 'shelf' && !this.lots.isOpen)
      return [{ label: say`Add lots`, act: () => void this.addLots() }, row];
    const own = actionsOf(sheet.kind).filter(({ firstStep }) => firstStep);
    return [
      row,
      ...own.map((action) => ({ label: spoken(action.label), act: () => void this.actions.run(action) })),
    ];
  }

  #asked(what: GridRequest): void {
    const { live, sheet } = this.#here();
    if (live && sheet) answerRequest(what, live, sheet.id, this.#answering);
  }

  readonly #answering: Answering = {
    show: (load) => void this.actions.show(load),
    askColumn: (task) => this.#askColumn(task),
    explain: (cell) => {
      this.#select(cell);
      void this.#explain();
    },
  };

  #askColumn(task: ColumnTask): void {
    void this.#find('croft-column-dialog')?.ask(task);
  }

  #select(cell: GridCell | null): void {
    const { live, sheet } = this.#here();
    if (!live || !sheet || !cell) return;
    this.cell = cell;
    this.#book.book?.select({ sheet: sheet.id, ...cell });
    // By itself only where it takes no room from the sheet.
    const asked = this.#element.view === 'read' || isWide(this.#element);
    if (asked && live.working(sheet.id, cell.row, cell.column)) this.#panel.isOpen = true;
    this.#element.requestUpdate();
  }

  #sayOf(cell: GridCell | null): boolean {
    const { live, sheet } = this.#here();
    return live && sheet && cell ? this.below.sayOf(live, sheet.id, cell) : false;
  }

  /** After a change of the book. */
  heed(change: BookChange): void {
    this.finding.heed(change);
    if (this.below.heed(change.changes.length > 0, () => this.#sayOf(this.cell)))
      this.#element.requestUpdate();
  }

  #selectedInGrid(cell: GridCell | null): void {
    const wasOpen = this.workingOpen;
    this.#select(cell);
    if (this.#sayOf(cell)) this.#element.requestUpdate();
    if (wasOpen || !this.workingOpen) return;
    if (cell) keepInSight(() => this.pane?.view, cell);
  }

  #drawn(): Promise<unknown> {
    this.#element.requestUpdate();
    return this.#element.updateComplete;
  }

  #here(): { live: LiveBook | null; sheet: Sheet | undefined } {
    const { live } = this.#book;
    return { live, sheet: live ? sheetCalled(live, this.#element.sheet) : undefined };
  }

  #find<K extends keyof HTMLElementTagNameMap>(name: K): HTMLElementTagNameMap[K] | null;
  #find<E extends Element>(name: string): E | null;
  #find(name: string): Element | null {
    return this.#element.renderRoot.querySelector(name);
  }
}
