import {
  type BookState,
  type CellAddress,
  type CellValue,
  isCellError,
  isFormula,
  isNamedKind,
  type NamedKind,
  type SheetState,
  type TakenColumn,
  takeableColumns,
  takenIn,
} from '../book/index.js';
import type { RowPlan } from '../planning/types.js';
import type { Problem } from '../problem.js';
import { say } from '../words/index.js';
import { unitShown } from './columns.js';
import { NameBook } from './name-book.js';
import type { PlanBook } from './plan-book.js';
import type { KindNames } from './taken-names.js';
import type { ComputedValue, Touched } from './typed-rows.js';

/** A planning figure as it stands on a sheet of one's own. */
export interface TakenFigure {
  readonly value: CellValue;
  readonly unit: string | undefined;
  /** The cell on the sheet of its kind; null where no row is named. */
  readonly from: CellAddress | null;
  /** What the figure's own row says of it. */
  readonly problem: Problem | undefined;
  /** Why no row is named, to be worded when asked for; null where the naming cell is blank, or one is. */
  readonly unnamed: 'no column' | 'error' | 'text' | null;
  /** What the naming cell says. */
  readonly text: string;
}

interface TakenSheet {
  readonly key: string;
  readonly columns: readonly { readonly id: string; readonly taken: TakenColumn }[];
  readonly figures: Map<string, ReadonlyMap<string, TakenFigure>>;
  /** Rows named by a formula: looked at every time. */
  readonly volatile: Set<string>;
}

const BLANK: TakenFigure = {
  value: null,
  unit: undefined,
  from: null,
  problem: undefined,
  unnamed: null,
  text: '',
};

/**
 * The planning columns that stand on sheets of one's own. A figure is that of the row which the naming cell
 * beside it names; it is looked up, never stored, and never read by planners.
 */
export class TakenColumns {
  readonly #state: BookState;
  readonly #plan: PlanBook;
  readonly #computed: ComputedValue;
  readonly #sheets = new Map<string, TakenSheet>();
  readonly #names: NameBook;

  constructor(state: BookState, plan: PlanBook, computed: ComputedValue) {
    this.#state = state;
    this.#plan = plan;
    this.#computed = computed;
    this.#names = new NameBook(plan, computed);
  }

  at({ sheet, row, column }: CellAddress): TakenFigure | undefined {
    return this.#sheets.get(sheet)?.figures.get(row)?.get(column);
  }

  /** Why a cell shows no figure, and how to mend it; else what its own row says of it. */
  problem(address: CellAddress): Problem | undefined {
    const figure = this.at(address);
    if (!figure) return undefined;
    const taken = this.#sheets.get(address.sheet)?.columns.find(({ id }) => id === address.column)?.taken;
    if (figure.unnamed === null || !taken || !isNamedKind(taken.kind)) return figure.problem;
    if (figure.unnamed === 'text') return this.namesOf(taken.kind).problem(figure.text);
    return figure.unnamed === 'error' ? NAMED_BY_ERROR : NO_NAMING_COLUMN;
  }

  /** What cells of a naming column may say, for a list to choose from; undefined where the column names nothing. */
  namesFor(sheet: string, column: string): readonly string[] | undefined {
    const taken = this.#sheets.get(sheet)?.columns.find((each) => each.taken.by === column)?.taken;
    return taken && isNamedKind(taken.kind) ? this.namesOf(taken.kind).all() : undefined;
  }

  /**
   * Looks up what may be another now: rows of own sheets in `touched` (null: all), those whose figure is among
   * `planned`, and all of a kind of which a row is called something else. Answers the cells that show something else.
   */
  refresh(touched: Touched, planned: readonly CellAddress[]): CellAddress[] {
    const changed: CellAddress[] = [];
    // By row alone: what is looked up once too often does no harm.
    const replanned = new Set(planned.map(({ row }) => row));
    const renamed: ReadonlySet<string> = this.#names.renamed();
    for (const id of [...this.#sheets.keys()]) if (!this.#state.sheets.has(id)) this.#sheets.delete(id);
    for (const sheet of this.#state.sheets.values()) {
      if (sheet.kind !== 'own') continue;
      const whole = this.#reshape(sheet) || touched === null;
      const taken = this.#sheets.get(sheet.id);
      if (!taken) continue;
      const all = whole || taken.columns.some((column) => renamed.has(column.taken.kind));
      const rows = touched?.get(sheet.id);
      for (const row of rows ?? []) if (!sheet.rows.has(row)) forgetRow(taken, row);
      if (!all && !rows && replanned.size === 0 && taken.volatile.size === 0) continue;
      for (const row of sheet.rows.keys())
        if (all || rows?.has(row) || this.#mayDiffer(taken, row, replanned))
          this.#lookUp(sheet, taken, row, changed);
      if (taken.figures.size > sheet.rows.size)
        for (const row of [...taken.figures.keys()]) if (!sheet.rows.has(row)) forgetRow(taken, row);
    }
    return changed;
  }

  #mayDiffer(taken: TakenSheet, row: string, replanned: ReadonlySet<string>): boolean {
    const figures = taken.figures.get(row);
    if (!figures || taken.volatile.has(row)) return true;
    if (replanned.size === 0) return false;
    for (const { from } of figures.values()) if (from && replanned.has(from.row)) return true;
    return false;
  }

  /** Keeps in mind which columns are taken; true where they are others than before. */
  #reshape(sheet: SheetState): boolean {
    const columns: { id: string; taken: TakenColumn; there: boolean }[] = [];
    for (const id of sheet.columns.keys()) {
      const taken = takenIn(sheet, id);
      if (taken) columns.push({ id, taken, there: isNaming(sheet, taken.by) });
    }
    const was = this.#sheets.get(sheet.id);
    const key = columns.length === 0 ? '' : JSON.stringify(columns);
    if ((was?.key ?? '') === key) return false;
    if (columns.length === 0) this.#sheets.delete(sheet.id);
    else
      this.#sheets.set(sheet.id, { key, columns, figures: was?.figures ?? new Map(), volatile: new Set() });
    return true;
  }

  /** The names of a kind's rows as they are now. */
  namesOf(kind: NamedKind): KindNames {
    return this.#names.of(kind);
  }

  #lookUp(sheet: SheetState, taken: TakenSheet, row: string, changed: CellAddress[]): void {
    const was = taken.figures.get(row);
    const now = new Map<string, TakenFigure>();
    taken.volatile.delete(row);
    for (const { id: column, taken: what } of taken.columns) {
      if (isFormula(rawOf(sheet, row, what.by))) taken.volatile.add(row);
      const figure = this.#figure(sheet, row, what);
      now.set(column, figure);
      if (!same(was?.get(column) ?? BLANK, figure)) changed.push({ sheet: sheet.id, row, column });
    }
    taken.figures.set(row, now);
  }

  #figure(sheet: SheetState, row: string, { kind, column, by }: TakenColumn): TakenFigure {
    if (!isNaming(sheet, by)) return { ...BLANK, unnamed: 'no column' };
    const value = this.#computed({ sheet: sheet.id, row, column: by });
    if (isCellError(value)) return { ...BLANK, unnamed: 'error' };
    const text = value === null ? '' : String(value).trim();
    if (text === '' || !isNamedKind(kind)) return BLANK;
    const found = this.namesOf(kind).find(text);
    const home = this.#plan.rows.sheet(kind);
    if (found.is !== 'row' || !home) return { ...BLANK, unnamed: 'text', text };
    const plan = this.#plan.planOf(home.id, found.row) as RowPlan<Record<string, CellValue>>;
    return {
      value: plan.figures[column] ?? null,
      unit: plan.units?.[column] ?? unitShown(takeableColumns(kind).find(({ id }) => id === column)?.unit),
      from: { sheet: home.id, row: found.row, column },
      problem: plan.problems?.[column],
      unnamed: null,
      text,
    };
  }
}

/** A column that can name rows: any that the person fills in. */
const isNaming = (sheet: SheetState, by: string): boolean => sheet.columnOrder.has(by) && !takenIn(sheet, by);

const rawOf = (sheet: SheetState, row: string, column: string) => {
  const cells = sheet.rows.get(row)?.cells;
  return (
    (cells && Object.hasOwn(cells, column) ? cells[column] : undefined) ?? sheet.columns.get(column)?.formula
  );
};

function forgetRow({ figures, volatile }: TakenSheet, row: string): void {
  figures.delete(row);
  volatile.delete(row);
}

const same = (a: TakenFigure, b: TakenFigure): boolean =>
  a.value === b.value &&
  a.unit === b.unit &&
  a.from?.row === b.from?.row &&
  a.problem?.message === b.problem?.message &&
  a.unnamed === b.unnamed &&
  (b.unnamed === null || a.text === b.text);

const NAMED_BY_ERROR: Problem = {
  code: 'named-by-error',
  get message() {
    return say`The cell that is to name the row shows an error.`;
  },
  get mend() {
    return say`Mend its formula, or write the name.`;
  },
};

const NO_NAMING_COLUMN: Problem = {
  code: 'no-naming-column',
  get message() {
    return say`The column that named the rows is not on this sheet any more.`;
  },
  get mend() {
    return say`Choose another one under “Take a planning column”, or remove this column.`;
  },
};
