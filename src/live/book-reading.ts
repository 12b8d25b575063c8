import {
  type BookDoc,
  BookState,
  type CellAddress,
  type CellValue,
  declaredIn,
  isFormula,
  measuresOf,
  type NamedKind,
  type Raw,
  StateLayout,
  titleOfSheet,
  toShown,
  toStored,
} from '../book/index.js';
import type { DayNumber, Household, Working } from '../planning/types.js';
import { workingInWords } from '../planning/working/in-words.js';
import type { Problem } from '../problem.js';
import { type MeasureSystem, measureIn } from '../units/index.js';
import { CellProblems } from './cell-problems.js';
import { type Choice, choicesOf } from './choices.js';
import { type ColumnView, columnViews } from './columns.js';
import { FormulaWorkings } from './formula-working.js';
import type { GardenPlans } from './garden-stage.js';
import type { KnownFigures } from './known-figures.js';
import type { PlannedKind, PlannedLine } from './lines.js';
import { lotLabel } from './notes.js';
import type { TypedRow } from './readers.js';
import { Settling } from './settling.js';
import type { KindNames } from './taken-names.js';
import type { ReadKind } from './typed-rows.js';
import type { WeekPlans } from './week-stage.js';
import { withPlaces } from './working-places.js';
import { workingOf } from './workings.js';

/** What an open book shows: cells, columns, problems and workings. Reading changes nothing. */
export class BookReading {
  protected readonly state: BookState;
  protected readonly layout: StateLayout;
  protected readonly settling: Settling;
  readonly #columns = new Map<string, readonly ColumnView[]>();
  readonly #problems: CellProblems;
  readonly #formulas = new FormulaWorkings(this, (stored) => this.settling.evaluate(stored));

  #shownSoFar = false;
  /** The measures that titles of columns name. */
  #titledIn: MeasureSystem = 'US customary';

  constructor(
    doc: BookDoc,
    today: () => DayNumber,
    /** Figures that are known from elsewhere until they are worked out here. */
    readonly known: KnownFigures = () => undefined,
  ) {
    this.state = new BookState(doc);
    this.layout = new StateLayout(this.state);
    this.settling = new Settling(this.state, this.layout, today, () => {
      if (this.#shownSoFar) this.workedOut();
    });
    this.#problems = new CellProblems(this, this.settling, this.#formulas);
  }

  get id(): string {
    return this.state.id;
  }

  get title(): string {
    return this.state.title;
  }

  /** The book as it is stored and where things stand in it, for what looks through its formulas; only to be read. */
  get inside(): { readonly state: BookState; readonly layout: StateLayout } {
    return { state: this.state, layout: this.layout };
  }

  get household(): Household {
    return this.settling.plan.household;
  }

  /**
   * Whether figures have been worked out. Where a book was opened to do so later, the first question that needs
   * one does it; what paints before that asks for no figures, says so by `showsSoFar`, and hears of them.
   */
  get isPlanned(): boolean {
    return this.settling.isPlanned;
  }

  /** Called by what paints cells without their figures: it will hear a change once they are there. */
  showsSoFar(): void {
    this.#shownSoFar = true;
  }

  /** Figures were worked out, and cells were shown without them. */
  protected workedOut(): void {}

  /** The day that the figures are for; known before they are worked out. */
  get day(): DayNumber {
    return this.settling.day;
  }

  /** Sheets in their order. */
  sheets(): { readonly id: string; readonly kind: string; readonly title: string }[] {
    return this.state.sheetIds().map((id) => {
      const sheet = this.state.sheets.get(id)!;
      return { id, kind: sheet.kind, title: titleOfSheet(sheet) };
    });
  }

  rowIds(sheet: string): readonly string[] {
    return this.state.sheets.get(sheet)?.rowOrder.ids ?? [];
  }

  columns(sheet: string): readonly ColumnView[] {
    this.#measure();
    let views = this.#columns.get(sheet);
    if (!views) {
      views = columnViews(this.state, this.layout, sheet);
      this.#columns.set(sheet, views);
    }
    return views;
  }

  /** What this book shows is in its own measures, whichever book was read before. */
  #measure(): void {
    const measures = measuresOf(this.state);
    measureIn(measures);
    if (measures === this.#titledIn) return;
    this.#titledIn = measures;
    this.layout.forgetNames();
    this.#columns.clear();
  }

  column(sheet: string, column: string): ColumnView | undefined {
    return this.columns(sheet).find(({ id }) => id === column);
  }

  setting(id: string): Raw | undefined {
    return this.state.settings[id];
  }

  settingProblem(id: string): Problem | undefined {
    return this.settling.plan.settingProblems[id];
  }

  /** What a cell shows: a number, text, true or false, an ISO date, null when blank, or an error. */
  value(sheet: string, row: string, column: string): CellValue {
    return this.settling.value({ sheet, row, column });
  }

  /** What editing a cell begins with: its formula as shown, or its value as typed. */
  typed(sheet: string, row: string, column: string): Raw | null {
    const raw = this.settling.raw({ sheet, row, column });
    if (raw === undefined) return null;
    if (!isFormula(raw)) return raw;
    this.#measure();
    return toShown(raw, sheet, this.layout);
  }

  isFormula(sheet: string, row: string, column: string): boolean {
    return isFormula(this.settling.raw({ sheet, row, column }));
  }

  /** The unit of a planning figure, which may vary by row ('quarts' of what a lot holds), or of an own column. */
  unit(sheet: string, row: string, column: string): string | undefined {
    const view = this.column(sheet, column);
    if (view?.taken) return this.settling.taken.at({ sheet, row, column })?.unit;
    if (view?.role === 'own') return view.measure;
    const units = this.settling.plan.planOf(sheet, row).units as
      | Record<string, string | undefined>
      | undefined;
    return units?.[column] ?? view?.unit;
  }

  /** What the garden's planners answered last: windows of harvest, beds, batches; null before the first plan. */
  get garden(): GardenPlans | null {
    return this.settling.plan.garden;
  }

  /** What the planners of dishes and meals answered last; null before the first plan. */
  get weekPlans(): WeekPlans | null {
    return this.settling.plan.week;
  }

  /** Rows of a kind as planners read them, in the order of the sheet. */
  typedRows<K extends ReadKind>(kind: K): TypedRow[K][] {
    return this.settling.plan.rows.inOrder(kind);
  }

  /** The food line to which a row of Shelf, Draws or Foods belongs. */
  lineOf(kind: PlannedKind, row: string): PlannedLine | undefined {
    return this.settling.plan.lines.lineOf(kind, row);
  }

  /** Every food line as planned. */
  get foodLines(): readonly PlannedLine[] {
    return this.settling.plan.plannedLines();
  }

  /** What is wrong at a cell and how to mend it; undefined when nothing is. */
  problem(sheet: string, row: string, column: string): Problem | undefined {
    return this.#problems.at({ sheet, row, column });
  }

  /** How a planning figure, or what a formula gives, came to be; undefined for cells that the person fills. */
  working(sheet: string, row: string, column: string): Working | undefined {
    const from = this.sourceOf(sheet, row, column);
    if (from) {
      this.#measure();
      const found = workingOf(this.settling.plan, from);
      return found && workingInWords(withPlaces(this, from, found));
    }
    const raw = this.settling.raw({ sheet, row, column });
    return isFormula(raw) ? this.#formulas.working({ sheet, row, column }, raw) : undefined;
  }

  /**
   * Where a planning figure belongs: the cell itself, or the one on the sheet of its kind of which a column of an
   * own sheet shows the figure. Undefined for cells that the person fills, and where no row is named.
   */
  sourceOf(sheet: string, row: string, column: string): CellAddress | undefined {
    if (this.#declared(sheet, column)?.role !== 'planning') return undefined;
    const address = { sheet, row, column };
    return this.column(sheet, column)?.taken ? (this.settling.taken.at(address)?.from ?? undefined) : address;
  }

  /** Known values of a cell, for a dropdown; undefined where there are none. */
  choices(sheet: string, row: string | null, column: string): readonly Choice[] | undefined {
    const view = this.column(sheet, column);
    if (view?.role === 'own') {
      const names =
        view.type === 'choice' && view.listed.length > 0
          ? view.listed
          : this.settling.taken.namesFor(sheet, column);
      return names?.map((name) => ({ value: name, label: name }));
    }
    const source = this.#declared(sheet, column)?.choices;
    if (!source) return undefined;
    const { settling } = this;
    const food = row === null ? '' : String(this.value(sheet, row, 'food') ?? '');
    const lots =
      source === 'lots'
        ? [...settling.plan.lines.all()]
            .flatMap(({ input }) => input.lots)
            .map((lot) => ({ lot, label: this.lotLabel(lot.id) }))
        : [];
    return choicesOf(
      source,
      {
        shelf: settling.sheetOfKind('shelf'),
        foods: settling.sheetOfKind('foods'),
        draws: settling.sheetOfKind('draws'),
        beds: settling.sheetOfKind('beds'),
        dishes: settling.sheetOfKind('dishes'),
      },
      lots,
      food,
      row === null ? undefined : this.value(sheet, row, column),
    );
  }

  /** A lot in words: 'Tomatoes, quart jar, 2025-08-30, top shelf'. */
  lotLabel(lot: string): string {
    const shelf = this.settling.sheetOfKind('shelf');
    return shelf ? lotLabel((column) => this.value(shelf.id, lot, column), lot) : lot;
  }

  /** The sheet of a kind ('shelf', 'foods', …), if the book has one. */
  sheetOfKind(kind: ReadKind): string | undefined {
    return this.settling.sheetOfKind(kind)?.id;
  }

  /** What the rows of a kind are called, for a cell of another sheet to name one of them. */
  namesOfKind(kind: NamedKind): KindNames {
    return this.settling.taken.namesOf(kind);
  }

  /** True while formulas wait for an engine. */
  get needsEngine(): boolean {
    return this.settling.needsEngine;
  }

  /** One formula worked out against this book, as typed, leaving nothing behind. */
  evaluate(formula: string): CellValue {
    return this.settling.evaluate(
      toStored(formula.startsWith('=') ? formula : `=${formula}`, '', this.layout),
    );
  }

  /** The document: what was entered, and nothing computed. */
  toJSON(): BookDoc {
    return this.state.toJSON();
  }

  #declared(sheet: string, column: string) {
    const found = this.state.sheets.get(sheet);
    return found && declaredIn(found, column);
  }

  /** Every cell, planning cells among them. */
  protected everyCell(): CellAddress[] {
    const cells: CellAddress[] = [];
    for (const { id: sheet, rows, columnOrder } of this.state.sheets.values())
      for (const row of rows.keys()) for (const column of columnOrder.ids) cells.push({ sheet, row, column });
    return cells;
  }

  /** To be called after every change: what is remembered between changes is looked up again. */
  protected forgetReadings(): void {
    this.#problems.forget();
    this.#columns.clear();
    this.#formulas.forget();
  }
}
