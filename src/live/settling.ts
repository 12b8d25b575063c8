import {
  type BookState,
  type CellAddress,
  type CellValue,
  type Change,
  declaredIn,
  isFormula,
  type Raw,
  type SheetState,
  type StateLayout,
  toEngine,
} from '../book/index.js';
import type { CalcEngine } from '../engine/calc-engine.js';
import type { DayNumber, RowPlan } from '../planning/types.js';
import { say } from '../words/index.js';
import { byRow, keyOf, type RowsBySheet, rowsOf, sameValue } from './addresses.js';
import { EngineSync, storedRaw } from './engine-sync.js';
import { holdsFormulas, planningOfIdleSheets } from './look-through.js';
import { PlanBook } from './plan-book.js';
import { planFed } from './plan-fed.js';
import { TakenColumns } from './taken-columns.js';
import type { ReadKind } from './typed-rows.js';

const MOST_ROUNDS = 3;
/** Names of rows worked out from figures of rows named before them: so long may such a chain be. */
const MOST_PASSES = 200;
const PENDING: CellValue = null;

const ON_ITSELF: CellValue = {
  error: '#CYCLE!',
  get message() {
    return say`This cell depends on a planning figure that depends on this cell. Point its formula at something else.`;
  },
};

/**
 * Brings everything that follows from a change to rest: the engine's formulas, then the plans, then the
 * formulas that read the plans, and once more where those feed the plans; at most three times.
 */
export class Settling {
  #plan: PlanBook;
  #taken: TakenColumns;
  /** Nothing has been planned yet. */
  #waits = true;
  #sync: EngineSync | null = null;
  #engine: CalcEngine | null = null;
  #context = '';
  readonly #onThemselves = new Map<string, CellAddress>();
  /** Cells that read as blank for now. */
  #held: ReadonlySet<string> & { clear(): void } = new Set<string>();
  /** Does any cell hold a formula? Null: not looked for since the last change. */
  #hasFormulas: boolean | null = null;

  constructor(
    readonly state: BookState,
    readonly layout: StateLayout,
    readonly today: () => DayNumber,
    /** Called when figures were worked out because something needed them. */
    readonly planned: () => void = () => {},
  ) {
    this.#plan = this.#newPlan();
    this.#taken = this.#newTaken();
  }

  /** The planning columns that stand on sheets of one's own. */
  get taken(): TakenColumns {
    this.#planIfNeedBe();
    return this.#taken;
  }

  get plan(): PlanBook {
    this.#planIfNeedBe();
    return this.#plan;
  }

  get isPlanned(): boolean {
    return !this.#waits;
  }

  /** The day that the figures are for; known before they are worked out. */
  get day(): DayNumber {
    return this.#plan.household.asOf;
  }

  /** The sheet of a kind that counts; known before anything is worked out. */
  sheetOfKind(kind: ReadKind): SheetState | undefined {
    return this.#plan.rows.sheet(kind);
  }

  /** Works the figures out for the first time, unless they are. */
  planFirst(): void {
    if (!this.#waits) return;
    this.#waits = false;
    this.#plan.replan(null);
    this.#taken.refresh(null, []);
  }

  #planIfNeedBe(): void {
    if (!this.#waits) return;
    this.planFirst();
    this.planned();
  }

  /** Everything from nothing, for what was begun may have been left half done. */
  startOver(): void {
    this.#plan = this.#newPlan();
    this.#taken = this.#newTaken();
    this.#onThemselves.clear();
    this.#held.clear();
    this.#hasFormulas = null;
    // Formulas read as blank until the engine holds the book again.
    this.#sync = null;
    this.#waits = true;
    this.planFirst();
    if (this.#engine) this.attach(this.#engine);
  }

  #newPlan(): PlanBook {
    return new PlanBook(this.state, (address) => this.value(address), this.today);
  }

  #newTaken(): TakenColumns {
    return new TakenColumns(this.state, this.#plan, (address) => this.value(address));
  }

  get needsEngine(): boolean {
    if (this.#sync) return false;
    this.#hasFormulas ??= holdsFormulas(this.state);
    return this.#hasFormulas;
  }

  /** Answers every cell that may show something else now that formulas are worked out. */
  attach(engine: CalcEngine): CellAddress[] {
    this.planFirst();
    this.#engine = engine;
    engine.setContext(this.#functionContext());
    this.#sync = new EngineSync(
      engine,
      this.state,
      this.layout,
      (sheet, row, column) => this.#planned({ sheet, row, column }) ?? null,
    );
    const formulas = [...this.#sync.formulas()].map(({ address }) => address);
    return [...formulas, ...this.#rounds(byRow(formulas))];
  }

  raw({ sheet, row, column }: CellAddress): Raw | undefined {
    const state = this.state.sheets.get(sheet);
    return state && storedRaw(state, row, column);
  }

  value(address: CellAddress): CellValue {
    const planned = this.#planned(address);
    if (planned !== undefined) return planned;
    const raw = this.raw(address);
    if (raw === undefined) return null;
    if (!isFormula(raw)) return typeof raw === 'string' && raw.startsWith("'") ? raw.slice(1) : raw;
    const key = keyOf(address);
    if (this.#held.has(key)) return null;
    if (this.#onThemselves.has(key)) return ON_ITSELF;
    return this.#sync?.value(address) ?? PENDING;
  }

  evaluate(stored: string): CellValue {
    if (!this.#engine) return { error: '#NAME?', message: say`Formulas are not loaded.` };
    return this.#engine.evaluate(toEngine(stored, '', this.layout));
  }

  /** Everything that follows from changes already made to the state. Answers the cells that may show something else. */
  settle(changes: readonly Change[]): CellAddress[] {
    this.#hasFormulas = null;
    const written: CellAddress[] = [];
    const reshaped = new Set<string>();
    const touched: RowsBySheet = new Map();
    for (const { path } of changes) {
      const [head, sheet, part, row, field, column] = path;
      if (head !== 'sheets' || sheet === undefined) continue;
      const isCell = part === 'rows' && field === 'cells';
      if (isCell) written.push({ sheet, row: row!, column: column! });
      else if (part === 'group' || (part === 'rows' && isLook(field))) continue;
      else if (!(part === 'rows' && field === 'allotted') && part !== 'title') reshaped.add(sheet);
      if (part === 'rows') rowsOf(touched, sheet).add(row!);
      else if (part === undefined) {
        for (const id of this.state.sheets.get(sheet)?.rows.keys() ?? []) rowsOf(touched, sheet).add(id);
      }
    }
    // Which sheet of a kind counts may be another now.
    const whole = changes.some(
      ({ path }) => path[0] === 'sheets' && (path.length === 2 || path[2] === 'order' || path[2] === 'kind'),
    );
    const freed = [...this.#onThemselves.values()];
    this.#onThemselves.clear();
    const emptied = whole && this.#sync ? planningOfIdleSheets(this.state, this.plan.rows) : [];
    const recalculated = this.#sync?.update(reshaped, [...written, ...freed, ...emptied]) ?? [];
    for (const { sheet, row } of recalculated) rowsOf(touched, sheet).add(row);
    return [...written, ...freed, ...emptied, ...recalculated, ...this.#rounds(whole ? null : touched)];
  }

  close(): void {
    this.#engine?.close();
    this.#engine = null;
    this.#sync = null;
  }

  #rounds(first: ReadonlyMap<string, ReadonlySet<string>> | null): readonly CellAddress[] {
    const fed = this.#sync ? planFed(this.#sync.formulas(), this.plan, this.state) : [];
    const passes = Math.min(fed.length + 2, MOST_PASSES);
    // Cells that plans feed start from blank, so that where they end does not hang on where they were.
    this.#held = new Set(fed.map(keyOf));
    let all = this.#planOnce(first, passes).changed;
    this.#held.clear();
    if (fed.length === 0) return all;
    const settled = this.#untilAtRest(fed, passes);
    all = [...all, ...settled.changed];
    // First those that go on changing; then, where others go on changing without them, all.
    for (let restless = settled.restless; restless.length > 0; ) {
      for (const address of restless) this.#onThemselves.set(keyOf(address), address);
      const blocked = this.#sync?.block(restless) ?? [];
      const next = this.#untilAtRest(fed, passes);
      all = [...all, ...blocked, ...next.changed];
      restless = next.restless.length === 0 || restless.length === fed.length ? [] : fed;
    }
    return [...all, ...fed];
  }

  /** Plans until nothing changes, in a few rounds; else answers the cells among `fed` that go on changing. */
  #untilAtRest(
    fed: readonly CellAddress[],
    passes: number,
  ): { readonly changed: readonly CellAddress[]; readonly restless: readonly CellAddress[] } {
    let all: readonly CellAddress[] = [];
    let restless: readonly CellAddress[] = fed;
    for (let round = 0; round < MOST_ROUNDS; round++) {
      const before = fed.map((address) => this.value(address));
      const { changed, last } = this.#planOnce(byRow(fed), passes);
      if (changed.length === 0) return { changed: all, restless: [] };
      all = [...all, ...changed];
      const named = new Set(last.map(({ sheet, row }) => `${sheet}/${row}`));
      restless = fed.filter(
        (address, i) =>
          named.has(`${address.sheet}/${address.row}`) || !sameValue(this.value(address), before[i]!),
      );
      if (last.length > 0 || restless.length === 0) break;
    }
    return { changed: all, restless };
  }

  /**
   * Plans, and lets the formulas and the figures on own sheets follow: these once more where a formula names
   * their rows, at most so many times. Answers as `last` the figures that would go on changing.
   */
  #planOnce(
    touched: ReadonlyMap<string, ReadonlySet<string>> | null,
    passes: number,
  ): { readonly changed: readonly CellAddress[]; readonly last: readonly CellAddress[] } {
    const planned = this.plan.replan(touched);
    const changed = [...planned];
    if (this.#sync) changed.push(...this.#sync.update(new Set(), planned), ...this.#newContext());
    let taken = this.#taken.refresh(touched, planned);
    for (let pass = 0; taken.length > 0; pass++) {
      for (const address of taken) changed.push(address);
      if (!this.#sync) break;
      for (const address of this.#sync.update(new Set(), taken)) changed.push(address);
      if (pass === passes) return { changed, last: taken };
      taken = this.#taken.refresh(NOTHING_TOUCHED, []);
    }
    return { changed, last: [] };
  }

  /** Functions reckon with the household's day and basis; when those change, every formula is worked out again. */
  #newContext(): CellAddress[] {
    const context = this.#functionContext();
    const key = JSON.stringify(context);
    if (key === this.#context || !this.#sync) return [];
    this.#context = key;
    return this.#sync.setContext(context);
  }

  #functionContext() {
    const { asOf, basis } = this.plan.household;
    return { asOf, basis };
  }

  /** The value of a planning cell; undefined where the column is none. */
  #planned(address: CellAddress): CellValue | undefined {
    const { sheet, row, column } = address;
    const at = this.state.sheets.get(sheet);
    if (!at || declaredIn(at, column)?.role !== 'planning') return undefined;
    this.#planIfNeedBe();
    if (at.kind === 'own') return this.#taken.at(address)?.value ?? null;
    const figures = (this.plan.planOf(sheet, row) as RowPlan<Record<string, CellValue>>).figures;
    return figures[column] ?? null;
  }
}

const NOTHING_TOUCHED: ReadonlyMap<string, ReadonlySet<string>> = new Map();

/** A note on a cell or its colour: nothing follows from it. */
const isLook = (field: string | undefined): boolean => /^(note|colour):/.test(field ?? '');
