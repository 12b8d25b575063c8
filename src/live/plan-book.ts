import {
  type BookState,
  type CellAddress,
  type CellValue,
  isFormula,
  KINDS,
  type SheetState,
} from '../book/index.js';
import type { DayNumber, Draw, FoodRow, Household, Lot, RowPlan } from '../planning/types.js';
import type { Problem } from '../problem.js';
import { type ReadHousehold, readHousehold } from './household.js';
import { Lines, type PlannedKind, type PlannedLine } from './lines.js';
import { type Person, type ReadRow, readDraw, readFood, readLot, readPerson } from './read-rows.js';

type AnyPlan = RowPlan<object>;
type Typed = Lot | Draw | FoodRow | Person;
type ReadKind = PlannedKind | 'household';

interface Entry extends ReadRow<Typed> {
  /** The row's document when it was read: another object means that it changed. */
  readonly row: object;
}

export type ComputedValue = (address: CellAddress) => CellValue;

const PLANNED: readonly PlannedKind[] = ['shelf', 'draws', 'foods'];
const NO_PLAN: AnyPlan = { figures: {} };

/**
 * Runs the planners over the book and remembers what they answered, row by row. Reads only rows that changed,
 * plans only the lines concerned, and says which planning cells now show something else.
 */
export class PlanBook {
  readonly #read: Record<ReadKind, Map<string, Entry>> = {
    shelf: new Map(),
    draws: new Map(),
    foods: new Map(),
    household: new Map(),
  };
  readonly #plans: Record<ReadKind, Map<string, AnyPlan>> = {
    shelf: new Map(),
    draws: new Map(),
    foods: new Map(),
    household: new Map(),
  };
  /** Rows that must be read every time: a formula gives one of their cells, or their line hangs on others. */
  readonly #volatile: Record<ReadKind, Set<string>> = {
    shelf: new Set(),
    draws: new Set(),
    foods: new Set(),
    household: new Set(),
  };
  readonly #lines: Lines;
  readonly #sheets = new Map<ReadKind, SheetState>();
  #household: ReadHousehold;
  #householdKey = '';

  constructor(
    readonly state: BookState,
    readonly computed: ComputedValue,
    readonly today: () => DayNumber,
  ) {
    this.#lines = new Lines((id) => this.sheet('foods')?.rowOrder.indexOf(id) ?? -1);
    this.#household = readHousehold(state, today(), { shares: 1, ledgerFrom: null });
  }

  get household(): Household {
    return this.#household.household;
  }

  get settingProblems(): Readonly<Record<string, Problem>> {
    return this.#household.problems;
  }

  get lines(): Lines {
    return this.#lines;
  }

  /** The sheet of a kind; the first in order where a book has several. */
  sheet(kind: ReadKind): SheetState | undefined {
    const known = this.#sheets.get(kind);
    if (known && this.state.sheets.get(known.id) === known) return known;
    let found: SheetState | undefined;
    for (const sheet of this.state.sheets.values()) {
      if (sheet.kind === kind && (!found || sheet.order < found.order)) found = sheet;
    }
    if (found) this.#sheets.set(kind, found);
    return found;
  }

  kindOf(sheetId: string): ReadKind | undefined {
    const kind = this.state.sheets.get(sheetId)?.kind;
    return kind !== undefined && kind !== 'own' && this.sheet(kind)?.id === sheetId ? kind : undefined;
  }

  planOf(sheetId: string, rowId: string): AnyPlan {
    const kind = this.kindOf(sheetId);
    return (kind && this.#plans[kind].get(rowId)) ?? NO_PLAN;
  }

  /** What could not be read in a kept cell. */
  readProblem(sheetId: string, rowId: string, column: string): Problem | undefined {
    const kind = this.kindOf(sheetId);
    return kind && this.#read[kind].get(rowId)?.problems[column];
  }

  lineOf(sheetId: string, rowId: string): PlannedLine | undefined {
    const kind = this.kindOf(sheetId);
    return kind && kind !== 'household' ? this.#lines.lineOf(kind, rowId) : undefined;
  }

  /**
   * Plans again after rows changed (null: everything is to be read again). Answers the planning cells that
   * show something else than before, and cells whose problem may be another.
   */
  replan(touched: ReadonlyMap<string, ReadonlySet<string>> | null): CellAddress[] {
    for (const kind of ['shelf', 'foods', 'draws', 'household'] as const) this.#reread(kind, touched);
    this.#rereadHousehold();
    const changed: CellAddress[] = this.#planPeople();
    for (const { before, after } of this.#lines.plan(this.household)) this.#take(before, after, changed);
    return changed;
  }

  #reread(kind: ReadKind, touched: ReadonlyMap<string, ReadonlySet<string>> | null): void {
    const sheet = this.sheet(kind);
    const read = this.#read[kind];
    const ids =
      touched === null
        ? [...read.keys(), ...(sheet?.rows.keys() ?? [])]
        : [...((sheet && touched.get(sheet.id)) ?? []), ...this.#volatile[kind]];
    for (const id of new Set(ids)) this.#readOne(kind, sheet, id);
  }

  #readOne(kind: ReadKind, sheet: SheetState | undefined, id: string): void {
    const row = sheet?.rows.get(id);
    if (!sheet || !row) {
      this.#read[kind].delete(id);
      this.#volatile[kind].delete(id);
      this.#plans[kind].delete(id);
      if (kind !== 'household') this.#lines.place(kind, id, null);
      return;
    }
    const fromFormula = KINDS[kind].columns.some(
      (column) => column.role === 'kept' && isFormula(row.cells[column.id]),
    );
    const cells = (column: string): CellValue => this.computed({ sheet: sheet.id, row: id, column });
    const entry: Entry = { row, ...readAs(kind, id, cells, row.allotted ?? null) };
    const hangs = kind === 'draws' && hangsOnOthers(entry.typed as Draw);
    if (fromFormula || hangs) this.#volatile[kind].add(id);
    else this.#volatile[kind].delete(id);
    const was = this.#read[kind].get(id);
    // An equal row keeps its identity, so that its line need not be planned again.
    const typed = was && JSON.stringify(was.typed) === JSON.stringify(entry.typed) ? was.typed : entry.typed;
    this.#read[kind].set(id, { ...entry, typed });
    if (kind === 'draws') this.#placeDraw(id, typed as Draw);
    else if (kind !== 'household') this.#lines.place(kind, id, typed as Lot | FoodRow);
  }

  /** A draw that names its lot, or a food kept in one way only, need not say the rest. */
  #placeDraw(id: string, draw: Draw): void {
    let { food, way } = draw;
    const lot = draw.lot === null ? undefined : (this.#read.shelf.get(draw.lot)?.typed as Lot | undefined);
    if (lot && food === null) food = lot.food;
    if (lot && way === null && lot.food === food) way = lot.way;
    if (food !== null && way === null) way = this.#lines.onlyWayOf(food) ?? null;
    const full = food === draw.food && way === draw.way ? draw : this.#completed(id, draw, food, way);
    this.#lines.place('draws', id, full);
  }

  readonly #completions = new Map<string, { from: Draw; full: Draw }>();

  #completed(id: string, from: Draw, food: Draw['food'], way: Draw['way']): Draw {
    const known = this.#completions.get(id);
    if (known?.from === from && known.full.food === food && known.full.way === way) return known.full;
    const full = { ...from, food, way };
    this.#completions.set(id, { from, full });
    return full;
  }

  #rereadHousehold(): void {
    let ledgerFrom: DayNumber | null = null;
    for (const { typed } of this.#read.draws.values()) {
      const { date } = typed as Draw;
      if (date !== null && (ledgerFrom === null || date < ledgerFrom)) ledgerFrom = date;
    }
    let shares = 0;
    for (const { typed } of this.#read.household.values()) shares += (typed as Person).share ?? 0;
    this.#household = readHousehold(this.state, this.today(), { shares: shares || 1, ledgerFrom });
    const key = JSON.stringify(this.household);
    if (key !== this.#householdKey) this.#lines.allDirty();
    this.#householdKey = key;
  }

  #planPeople(): CellAddress[] {
    const sheet = this.sheet('household');
    if (!sheet) return [];
    const people = [...this.#read.household.values()].map(({ typed }) => typed as Person);
    const all = people.reduce((sum, { share }) => sum + (share ?? 0), 0);
    const changed: CellAddress[] = [];
    for (const { id, share } of people) {
      const part = share === null || all === 0 ? null : (share / all) * 100;
      this.#keep('household', sheet.id, id, { figures: { part_of_table: part } }, changed);
    }
    return changed;
  }

  #take(before: PlannedLine | undefined, after: PlannedLine | undefined, changed: CellAddress[]): void {
    for (const kind of PLANNED) {
      const sheet = this.sheet(kind);
      if (!sheet) continue;
      const now = rowPlans(kind, after);
      for (const [id, plan] of now) this.#keep(kind, sheet.id, id, plan, changed);
      for (const [id] of rowPlans(kind, before)) {
        if (now.has(id) || this.#lines.keyOf(kind, id) !== undefined) continue;
        this.#keep(kind, sheet.id, id, NO_PLAN, changed);
      }
    }
  }

  #keep(kind: ReadKind, sheet: string, row: string, plan: AnyPlan, changed: CellAddress[]): void {
    const was = (this.#plans[kind].get(row) ?? NO_PLAN) as RowPlan<Record<string, unknown>>;
    const now = plan as RowPlan<Record<string, unknown>>;
    this.#plans[kind].set(row, plan);
    for (const { id: column, role } of KINDS[kind].columns) {
      if (role !== 'planning') continue;
      const same =
        (was.figures[column] ?? null) === (now.figures[column] ?? null) &&
        was.units?.[column] === now.units?.[column] &&
        was.problems?.[column]?.message === now.problems?.[column]?.message;
      if (!same) changed.push({ sheet, row, column });
    }
  }
}

function readAs(
  kind: ReadKind,
  id: string,
  cells: (column: string) => CellValue,
  allotted: Readonly<Record<string, number>> | null,
): ReadRow<Typed> {
  switch (kind) {
    case 'shelf':
      return readLot(id, cells);
    case 'draws':
      return readDraw(id, cells, allotted);
    case 'foods':
      return readFood(id, cells);
    case 'household':
      return readPerson(id, cells);
  }
}

const hangsOnOthers = (draw: Draw): boolean =>
  draw.amount !== null && (draw.way === null || draw.food === null);

function rowPlans(kind: PlannedKind, line: PlannedLine | undefined): ReadonlyMap<string, AnyPlan> {
  if (!line) return new Map();
  if (kind === 'shelf') return line.plan.lots;
  if (kind === 'draws') return line.plan.draws;
  const { row } = line.input;
  return row && line.plan.food ? new Map([[row.id, line.plan.food]]) : new Map();
}
