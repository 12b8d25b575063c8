import {
  type BookDoc,
  BookState,
  type CellAddress,
  type CellValue,
  type Change,
  type Command,
  declarationOf,
  describe,
  History,
  isCellError,
  isFormula,
  newId,
  type Outcome,
  perform,
  put,
  type Raw,
  StateLayout,
  type Typed,
  toShown,
  toStored,
} from '../book/index.js';
import type { CalcEngine } from '../engine/calc-engine.js';
import type { DayNumber, Household, RowPlan, Working } from '../planning/types.js';
import type { Problem } from '../problem.js';
import { type Choice, choicesOf } from './choices.js';
import { type ColumnView, columnViews } from './columns.js';
import { foodKey } from './food-key.js';
import { todayHere } from './household.js';
import { lotLabel, secondRow, unlistedFood } from './notes.js';
import { forgotten, postings } from './post-draws.js';
import { Settling } from './settling.js';
import { workingOf } from './workings.js';

/** What a change came to, for views to repaint and storage to keep. */
export interface BookChange {
  /** `remote`: from another copy of the book; not in this one's history. */
  readonly origin: 'local' | 'undo' | 'redo' | 'remote' | 'engine';
  readonly changes: readonly Change[];
  /** Cells that may show something else: what was written, and what follows from it. */
  readonly cells: readonly CellAddress[];
  /** Sheets whose rows, columns or titles changed. */
  readonly sheets: ReadonlySet<string>;
  readonly settings: boolean;
  /** In words, for 'Undo …' and the live region. */
  readonly label: string;
}

export interface LiveBookOptions {
  /** Needed for own formulas; without it they show as pending until `attachEngine`. */
  readonly engine?: CalcEngine;
  /** Today as a day number; the device's civil day unless given. */
  readonly today?: () => DayNumber;
}

type Listener = (change: BookChange) => void;

/**
 * A book that is open: it takes commands, lets the engine recalculate, runs the planners, and says what
 * changed. Knows no grid, no page and no storage.
 */
export class LiveBook {
  readonly #state: BookState;
  readonly #layout: StateLayout;
  readonly #history = new History();
  readonly #settling: Settling;
  readonly #listeners = new Set<Listener>();

  constructor(doc: BookDoc, { engine, today = () => todayHere() }: LiveBookOptions = {}) {
    this.#state = new BookState(doc);
    this.#layout = new StateLayout(this.#state);
    this.#settling = new Settling(this.#state, this.#layout, today);
    if (engine) this.#settling.attach(engine);
  }

  get id(): string {
    return this.#state.id;
  }

  get title(): string {
    return this.#state.title;
  }

  get household(): Household {
    return this.#settling.plan.household;
  }

  /** Sheets in their order. */
  sheets(): { readonly id: string; readonly kind: string; readonly title: string }[] {
    return this.#state.sheetIds().map((id) => {
      const { kind, title } = this.#state.sheets.get(id)!;
      return { id, kind, title };
    });
  }

  rowIds(sheet: string): readonly string[] {
    return this.#state.sheets.get(sheet)?.rowOrder.ids ?? [];
  }

  columns(sheet: string): readonly ColumnView[] {
    return columnViews(this.#state, this.#layout, sheet);
  }

  column(sheet: string, column: string): ColumnView | undefined {
    return this.columns(sheet).find(({ id }) => id === column);
  }

  setting(id: string): Raw | undefined {
    return this.#state.settings[id];
  }

  settingProblem(id: string): Problem | undefined {
    return this.#settling.plan.settingProblems[id];
  }

  /** What a cell shows: a number, text, true or false, an ISO date, null when blank, or an error. */
  value(sheet: string, row: string, column: string): CellValue {
    return this.#settling.value({ sheet, row, column });
  }

  /** What editing a cell begins with: its formula as shown, or its value as typed. */
  typed(sheet: string, row: string, column: string): Raw | null {
    const raw = this.#settling.raw({ sheet, row, column });
    if (raw === undefined) return null;
    return isFormula(raw) ? toShown(raw, sheet, this.#layout) : raw;
  }

  isFormula(sheet: string, row: string, column: string): boolean {
    return isFormula(this.#settling.raw({ sheet, row, column }));
  }

  /** The unit of a planning figure where it varies by row ('quarts' of what a lot holds). */
  unit(sheet: string, row: string, column: string): string | undefined {
    const units = this.#settling.plan.planOf(sheet, row).units as
      | Record<string, string | undefined>
      | undefined;
    return units?.[column] ?? this.#declared(sheet, column)?.unit;
  }

  /** What is wrong at a cell and how to mend it; undefined when nothing is. */
  problem(sheet: string, row: string, column: string): Problem | undefined {
    const { plan } = this.#settling;
    const planned = plan.planOf(sheet, row) as RowPlan<Record<string, unknown>>;
    const value = this.value(sheet, row, column);
    if (isCellError(value)) {
      return {
        code: `formula ${value.error}`,
        message: value.message,
        mend: '',
        where: { sheet, row, column },
      };
    }
    const found =
      plan.readProblem(sheet, row, column) ?? planned.problems?.[column] ?? this.#notes(sheet, row, column);
    return found && { ...found, where: { sheet, row, column } };
  }

  /** How a planning figure came to be; undefined for cells that the person fills. */
  working(sheet: string, row: string, column: string): Working | undefined {
    if (this.#declared(sheet, column)?.role !== 'planning') return undefined;
    return workingOf(this.#settling.plan, { sheet, row, column });
  }

  /** Known values of a cell, for a dropdown; undefined where there are none. */
  choices(sheet: string, row: string | null, column: string): readonly Choice[] | undefined {
    const source = this.#declared(sheet, column)?.choices;
    if (!source) return undefined;
    const { plan } = this.#settling;
    const food = row === null ? '' : String(this.value(sheet, row, 'food') ?? '');
    const lots =
      source === 'lots'
        ? [...plan.lines.all()]
            .flatMap(({ input }) => input.lots)
            .map((lot) => ({ lot, label: this.lotLabel(lot.id) }))
        : [];
    return choicesOf(
      source,
      { shelf: plan.rows.sheet('shelf'), foods: plan.rows.sheet('foods'), draws: plan.rows.sheet('draws') },
      lots,
      food,
    );
  }

  /** A lot in words: 'Tomatoes, quart jar, 2025-08-30, top shelf'. */
  lotLabel(lot: string): string {
    const shelf = this.#settling.plan.rows.sheet('shelf');
    return shelf ? lotLabel((column) => this.value(shelf.id, lot, column), lot) : lot;
  }

  /** The sheet of a kind ('shelf', 'foods', …), if the book has one. */
  sheetOfKind(kind: 'household' | 'shelf' | 'draws' | 'foods'): string | undefined {
    return this.#settling.plan.rows.sheet(kind)?.id;
  }

  get undoLabel(): string | undefined {
    return this.#history.undoLabel;
  }

  get redoLabel(): string | undefined {
    return this.#history.redoLabel;
  }

  /** True while formulas wait for an engine. */
  get needsEngine(): boolean {
    return this.#settling.needsEngine;
  }

  attachEngine(engine: CalcEngine): void {
    this.#tell('engine', [], this.#settling.attach(engine), 'formulas are ready');
  }

  /** Does what a command says, or refuses with the reason and changes nothing. */
  apply(command: Command): Outcome {
    const bench = { state: this.#state, layout: this.#layout };
    const done = perform(command, bench);
    if (!done.ok) return done;
    const written = [...done.value.changes];
    const stale = forgotten(this.#state, this.#settling.plan, written);
    put(stale, bench);
    written.push(...stale);
    const cells = this.#settling.settle(written);
    const posted = postings(this.#state, this.#settling.plan, written);
    if (posted.length > 0) {
      put(posted, bench);
      written.push(...posted);
      cells.push(...this.#settling.settle(posted));
    }
    const label = describe(command);
    this.#history.add(label, written);
    if (written.length > 0) this.#tell('local', written, cells, label);
    return { ok: true, changes: written, notes: done.value.notes };
  }

  /** One cell, as typed. */
  set(sheet: string, row: string, column: string, typed: Typed): Outcome {
    return this.apply({ do: 'set cells', sheet, cells: [{ row, column, typed }] });
  }

  /** New rows before `before` (null: at the end), with their ids. */
  insertRows(
    sheet: string,
    rows: readonly { readonly [column: string]: Typed }[],
    before: string | null = null,
  ): Outcome & { rows: readonly string[] } {
    const made = rows.map((cells) => ({ id: newId('r'), cells }));
    return {
      ...this.apply({ do: 'insert rows', sheet, before, rows: made }),
      rows: made.map(({ id }) => id),
    };
  }

  removeRows(sheet: string, rows: readonly string[]): Outcome {
    return this.apply({ do: 'remove rows', sheet, rows });
  }

  moveRows(sheet: string, rows: readonly string[], before: string | null): Outcome {
    return this.apply({ do: 'move rows', sheet, rows, before });
  }

  addColumn(
    sheet: string,
    title: string,
    { before = null, formula }: { before?: string | null; formula?: string } = {},
  ): Outcome & { column: string } {
    const column = newId('c');
    return {
      ...this.apply({
        do: 'add column',
        sheet,
        column,
        before,
        title,
        ...(formula !== undefined && { formula }),
      }),
      column,
    };
  }

  removeColumns(sheet: string, columns: readonly string[]): Outcome {
    return this.apply({ do: 'remove columns', sheet, columns });
  }

  moveColumns(sheet: string, columns: readonly string[], before: string | null): Outcome {
    return this.apply({ do: 'move columns', sheet, columns, before });
  }

  undo(): boolean {
    return this.#replay('undo');
  }

  redo(): boolean {
    return this.#replay('redo');
  }

  /** Changes from another copy of the book: shown, but not this copy's to undo. */
  applyRemote(changes: readonly Change[]): void {
    if (changes.length === 0) return;
    put(changes, { state: this.#state, layout: this.#layout });
    this.#tell('remote', changes, this.#settling.settle(changes), 'change from another copy');
  }

  /** To be called when the day may have turned: figures for 'today' follow. */
  refreshDay(): void {
    const cells = this.#settling.settle([]);
    if (cells.length > 0) this.#tell('engine', [], cells, 'a new day');
  }

  /** One formula worked out against this book, as typed, leaving nothing behind. */
  evaluate(formula: string): CellValue {
    return this.#settling.evaluate(
      toStored(formula.startsWith('=') ? formula : `=${formula}`, '', this.#layout),
    );
  }

  on(_event: 'change', listener: Listener): () => void {
    this.#listeners.add(listener);
    return () => this.#listeners.delete(listener);
  }

  /** The document: what was entered, and nothing computed. */
  toJSON(): BookDoc {
    return this.#state.toJSON();
  }

  /** Lets the engine go. The book answers no more. */
  close(): void {
    this.#listeners.clear();
    this.#settling.close();
  }

  #declared(sheet: string, column: string) {
    const kind = this.#state.sheets.get(sheet)?.kind;
    return kind && declarationOf(kind, column);
  }

  #notes(sheet: string, row: string, column: string): Problem | undefined {
    const kind = this.#settling.plan.rows.kindOf(sheet);
    if (kind === 'foods' && column === 'food' && this.#settling.plan.lines.isSecond(row)) return secondRow;
    if (column !== 'food' || (kind !== 'shelf' && kind !== 'draws')) return undefined;
    const foods = this.#settling.plan.rows.sheet('foods');
    const name = this.value(sheet, row, column);
    if (!foods || foods.rows.size === 0 || typeof name !== 'string') return undefined;
    return unlistedFood(
      name,
      foodKey,
      foods.rowOrder.ids.map((id) => String(this.value(foods.id, id, 'food') ?? '')),
    );
  }

  #replay(which: 'undo' | 'redo'): boolean {
    const label = which === 'undo' ? this.#history.undoLabel : this.#history.redoLabel;
    const changes = which === 'undo' ? this.#history.undo() : this.#history.redo();
    if (!changes) return false;
    put(changes, { state: this.#state, layout: this.#layout });
    this.#tell(which, changes, this.#settling.settle(changes), label ?? which);
    return true;
  }

  #tell(
    origin: BookChange['origin'],
    changes: readonly Change[],
    cells: readonly CellAddress[],
    label: string,
  ): void {
    const sheets = new Set<string>();
    let settings = false;
    for (const { path } of changes) {
      if (path[0] === 'settings' || path[0] === 'title') settings = true;
      else if (path[2] !== 'rows' || path.length === 4 || path[4] === 'order') sheets.add(path[1]!);
    }
    const event: BookChange = { origin, changes, cells, sheets, settings, label };
    for (const listener of [...this.#listeners]) listener(event);
  }
}

/** Opens a book that `parseBook` has read. */
export const openBook = (book: BookDoc, options: LiveBookOptions = {}): LiveBook =>
  new LiveBook(book, options);
