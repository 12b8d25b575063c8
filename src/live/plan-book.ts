import { type BookState, type CellAddress, measuresOf } from '../book/index.js';
import type { DayNumber, Draw, Household } from '../planning/types.js';
import type { Problem } from '../problem.js';
import { type MeasureSystem, measureIn } from '../units/index.js';
import { GARDEN_KINDS, type GardenPlans, GardenStage } from './garden-stage.js';
import { type ReadHousehold, readHousehold } from './household.js';
import { Lines, type PlannedKind, type PlannedLine } from './lines.js';
import { type AnyPlan, NO_PLAN, PlanStore } from './plan-store.js';
import { type ComputedValue, hangsOnOthers, type ReadKind, type Touched, TypedRows } from './typed-rows.js';
import { WEEK_KINDS, type WeekPlans, WeekStage } from './week-stage.js';

const PLANNED: readonly PlannedKind[] = ['shelf', 'foods', 'draws'];

/**
 * Runs the planners over the book and remembers what they answered, row by row. Reads only rows that changed,
 * plans only the lines concerned, and says which planning cells now show something else.
 */
export class PlanBook {
  readonly rows: TypedRows;
  readonly lines: Lines;
  readonly #garden: GardenStage;
  readonly #week: WeekStage;
  readonly #plans = new PlanStore();
  readonly #state: BookState;
  readonly #today: () => DayNumber;
  /** Draws that leave their food or way to the rest of the book. */
  readonly #hanging = new Set<string>();
  readonly #completions = new Map<string, { from: Draw; full: Draw }>();
  #household: ReadHousehold;
  #householdKey = '';
  #measures: MeasureSystem = 'US customary';

  constructor(state: BookState, computed: ComputedValue, today: () => DayNumber) {
    this.#state = state;
    this.#today = today;
    this.rows = new TypedRows(state, computed);
    this.#garden = new GardenStage(state, this.rows);
    this.#week = new WeekStage(this.rows);
    this.lines = new Lines((id) => this.rows.sheet('foods')?.rowOrder.indexOf(id) ?? -1);
    this.#household = readHousehold(state, today(), { shares: 1, ledgerFrom: null });
  }

  get household(): Household {
    return this.#household.household;
  }

  get settingProblems(): Readonly<Record<string, Problem>> {
    return this.#household.problems;
  }

  planOf(sheetId: string, rowId: string): AnyPlan {
    const kind = this.rows.kindOf(sheetId);
    return kind ? this.#plans.get(kind, rowId) : NO_PLAN;
  }

  /** What could not be read in a kept cell. */
  readProblem(sheetId: string, rowId: string, column: string): Problem | undefined {
    const kind = this.rows.kindOf(sheetId);
    return kind && this.rows.problem(kind, rowId, column);
  }

  lineOf(sheetId: string, rowId: string): PlannedLine | undefined {
    const kind = this.rows.kindOf(sheetId);
    return isPlanned(kind) ? this.lines.lineOf(kind, rowId) : undefined;
  }

  /**
   * Plans again after rows changed (null: everything is to be read again). Answers the planning cells that
   * show something else than before.
   */
  replan(written: Touched): CellAddress[] {
    const touched = this.#sayMeasures() ? null : written;
    const foods = this.#rereadPlanned(touched);
    const draws = this.rows.reread('draws', touched);
    // What a row showed is remembered as long as it stands: only so is it seen that it shows something else.
    for (const id of this.rows.reread('household', touched))
      if (!this.rows.get('household', id)) this.#plans.forget('household', id);
    const household = this.#rereadHousehold();
    const garden = this.#rereadSimple(GARDEN_KINDS, touched);
    const { figures, windows } = this.#garden.begin(this.household, garden);
    if (figures) this.lines.allDirty();
    // Those that are gone must be placed too, that is taken out of their lines.
    this.#placeFoods(windows ? [...foods, ...this.rows.values('foods').map(({ id }) => id)] : foods);
    for (const id of [...draws, ...this.#hanging]) this.#placeDraw(id, this.rows.get('draws', id));
    const week = this.#rereadSimple(WEEK_KINDS, touched);
    if (week.size > 0 || (this.lines.hasDirty && this.rows.values('week').length > 0)) {
      this.lines.setWeekAverages(
        this.#week.averages(() => this.lines.inputs(), this.household, this.#garden.guide),
      );
    }
    const changed: CellAddress[] = this.#planPeople();
    this.#plans.turn((kind) => this.rows.sheet(kind)?.id, changed);
    const planned = this.lines.plan(this.household, this.#garden.guide);
    for (const { before, after } of planned) this.#take(before, after, changed);
    // Where there is no food line, none tells that the table, the day or a figure is another.
    if (planned.length > 0 || household || windows || garden.size > 0) this.#planGarden(changed);
    if (planned.length > 0 || household || figures || week.size > 0) this.#planWeek(changed);
    return changed;
  }

  /** What the garden's planners answered last; null before the first plan. */
  get garden(): GardenPlans | null {
    return this.#garden.plans;
  }

  /** Every food line, in an order that does not hang on how rows came to be. */
  plannedLines(): PlannedLine[] {
    return [...this.lines.all()].sort((a, b) =>
      a.input.food === b.input.food
        ? a.input.way < b.input.way
          ? -1
          : 1
        : a.input.food < b.input.food
          ? -1
          : 1,
    );
  }

  /** What the planners of the week's table answered last; null before the first plan. */
  get week(): WeekPlans | null {
    return this.#week.plans;
  }

  /** Reads kinds whose rows stand for themselves; answers the kinds of which a row changed. */
  #rereadSimple<K extends ReadKind>(kinds: readonly K[], touched: Touched): Set<K> {
    const changed = new Set<K>();
    for (const kind of kinds) {
      const ids = this.rows.reread(kind, touched);
      if (ids.size > 0) changed.add(kind);
      for (const id of ids) if (!this.rows.get(kind, id)) this.#plans.forget(kind, id);
    }
    return changed;
  }

  #planWeek(changed: CellAddress[]): void {
    const drawIds = this.rows.sheet('draws')?.rows.keys() ?? [];
    this.#keepRows(
      this.#week.finish(this.plannedLines(), drawIds, this.household, this.#garden.guide),
      changed,
    );
  }

  #keepRows(plans: ReadonlyMap<ReadKind, ReadonlyMap<string, AnyPlan>>, changed: CellAddress[]): void {
    for (const [kind, rows] of plans) {
      const sheet = this.rows.sheet(kind);
      if (sheet) for (const [id, plan] of rows) this.#plans.keep(kind, sheet.id, id, plan, changed);
    }
  }

  #planGarden(changed: CellAddress[]): void {
    this.#keepRows(this.#garden.finish(this.plannedLines()), changed);
  }

  /** Answers the Foods rows that changed: they are placed once their season is known. */
  #rereadPlanned(touched: Touched): Set<string> {
    for (const id of this.rows.reread('shelf', touched)) {
      const lot = this.rows.get('shelf', id) ?? null;
      this.lines.place('shelf', id, lot);
      if (!lot) this.#plans.forget('shelf', id);
    }
    return this.rows.reread('foods', touched);
  }

  #placeFoods(ids: Iterable<string>): void {
    for (const id of ids) {
      const row = this.rows.get('foods', id);
      this.lines.place('foods', id, row ? this.#garden.completed(row) : null);
      if (row) continue;
      this.#garden.forgetFood(id);
      this.#plans.forget('foods', id);
    }
  }

  /** A draw that names its lot, or a food kept in one way only, need not say the rest. */
  #placeDraw(id: string, draw: Draw | undefined): void {
    if (!draw) {
      this.#hanging.delete(id);
      this.#completions.delete(id);
      this.#plans.forget('draws', id);
      this.lines.place('draws', id, null);
      return;
    }
    if (hangsOnOthers(draw)) this.#hanging.add(id);
    else this.#hanging.delete(id);
    let { food, way } = draw;
    const lot = draw.lot === null ? undefined : this.rows.get('shelf', draw.lot);
    if (lot && food === null) food = lot.food;
    if (lot && way === null && lot.food === food) way = lot.way;
    if (food !== null && way === null) way = this.lines.onlyWayOf(food) ?? null;
    this.lines.place(
      'draws',
      id,
      food === draw.food && way === draw.way ? draw : this.#completed(id, draw, food, way),
    );
  }

  #completed(id: string, from: Draw, food: Draw['food'], way: Draw['way']): Draw {
    const known = this.#completions.get(id);
    if (known?.from === from && known.full.food === food && known.full.way === way) return known.full;
    const full = { ...from, food, way };
    this.#completions.set(id, { from, full });
    return full;
  }

  /** Numbers are read and figures told in the household’s measures; true where those are others than before. */
  #sayMeasures(): boolean {
    const measures = measuresOf(this.#state);
    measureIn(measures);
    const others = measures !== this.#measures;
    this.#measures = measures;
    return others;
  }

  /** Whether it is another one now. */
  #rereadHousehold(): boolean {
    let ledgerFrom: DayNumber | null = null;
    for (const { date } of this.rows.values('draws')) {
      if (date !== null && (ledgerFrom === null || date < ledgerFrom)) ledgerFrom = date;
    }
    let shares = 0;
    for (const { share } of this.rows.values('household')) shares += share ?? 0;
    this.#household = readHousehold(this.#state, this.#today(), { shares: shares || 1, ledgerFrom });
    const key = JSON.stringify(this.household);
    if (key === this.#householdKey) return false;
    this.lines.allDirty();
    this.#householdKey = key;
    return true;
  }

  #planPeople(): CellAddress[] {
    const sheet = this.rows.sheet('household');
    if (!sheet) return [];
    const people = this.rows.values('household');
    const all = people.reduce((sum, { share }) => sum + (share ?? 0), 0);
    const changed: CellAddress[] = [];
    for (const { id, share } of people) {
      const part = share === null || all === 0 ? null : (share / all) * 100;
      this.#plans.keep('household', sheet.id, id, { figures: { part_of_table: part } }, changed);
    }
    return changed;
  }

  #take(before: PlannedLine | undefined, after: PlannedLine | undefined, changed: CellAddress[]): void {
    for (const kind of PLANNED) {
      const sheet = this.rows.sheet(kind);
      if (!sheet) continue;
      const now = rowPlans(kind, after);
      for (const [id, plan] of now) this.#plans.keep(kind, sheet.id, id, plan, changed);
      for (const [id] of rowPlans(kind, before)) {
        if (now.has(id) || this.#planElsewhere(kind, id, after)) continue;
        this.#plans.keep(kind, sheet.id, id, NO_PLAN, changed);
      }
    }
  }

  /** Did another line take the row over, and plan it? Then that line's own plan is the one to keep. */
  #planElsewhere(kind: PlannedKind, id: string, here: PlannedLine | undefined): boolean {
    const line = this.lines.lineOf(kind, id);
    return line !== undefined && line !== here && rowPlans(kind, line).has(id);
  }
}

const isPlanned = (kind: ReadKind | undefined): kind is PlannedKind => PLANNED.includes(kind as PlannedKind);

function rowPlans(kind: PlannedKind, line: PlannedLine | undefined): ReadonlyMap<string, AnyPlan> {
  if (!line) return new Map();
  if (kind === 'shelf') return line.plan.lots;
  if (kind === 'draws') return line.plan.draws;
  const { row } = line.input;
  return row && line.plan.food ? new Map([[row.id, line.plan.food]]) : new Map();
}
