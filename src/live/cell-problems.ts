import { type CellAddress, type CellValue, isCellError, isFormula, isUnturned } from '../book/index.js';
import type { RowPlan } from '../planning/types.js';
import { excerpt, type Problem } from '../problem.js';
import { say } from '../words/index.js';
import type { ColumnView } from './columns.js';
import { foodKey } from './food-key.js';
import type { FormulaWorkings } from './formula-working.js';
import { secondRow, unlistedFood } from './notes.js';
import { ownProblem } from './own-problems.js';
import type { Settling } from './settling.js';

/** Longest part of a message, in characters. */
const MOST = 600;

/** What must be known of a book to say what is wrong in it. */
export interface ShownCells {
  value(sheet: string, row: string, column: string): CellValue;
  column(sheet: string, column: string): ColumnView | undefined;
}

/** What is wrong at the cells of a book, and how to mend it. */
export class CellProblems {
  readonly #shown: ShownCells;
  readonly #settling: Settling;
  readonly #formulas: FormulaWorkings;
  #listed: ReadonlyMap<string, string> | null = null;

  constructor(shown: ShownCells, settling: Settling, formulas: FormulaWorkings) {
    this.#shown = shown;
    this.#settling = settling;
    this.#formulas = formulas;
  }

  /** What comes first of what is wrong at a cell; undefined when nothing is. */
  at(where: CellAddress): Problem | undefined {
    const { sheet, row, column } = where;
    const value = this.#shown.value(sheet, row, column);
    if (isCellError(value))
      return { code: `formula ${value.error}`, message: value.message, mend: '', where };
    const found =
      this.#own(where, value) ??
      this.#planned(where) ??
      this.#ofFood(where) ??
      this.#ofMeasures(where) ??
      this.#ofUnits(where);
    // A message that quotes what was written must not be as long as that.
    return (
      found && { ...found, message: excerpt(found.message, MOST), mend: excerpt(found.mend, MOST), where }
    );
  }

  /** To be called after every change: what is remembered between changes is looked up again. */
  forget(): void {
    this.#listed = null;
  }

  /** In an own column: a name that no row has, or an entry that is not what the column holds. */
  #own(where: CellAddress, value: CellValue): Problem | undefined {
    const view = this.#shown.column(where.sheet, where.column);
    const named = view?.taken && this.#settling.taken.problem(where);
    if (named || view?.role !== 'own') return named || undefined;
    return ownProblem(view, value, isFormula(this.#settling.raw(where)));
  }

  /** What could not be read, or kept a figure from being planned. */
  #planned({ sheet, row, column }: CellAddress): Problem | undefined {
    const { plan } = this.#settling;
    const planned = plan.planOf(sheet, row) as RowPlan<Record<string, unknown>>;
    return plan.readProblem(sheet, row, column) ?? planned.problems?.[column] ?? planned.kept?.[column];
  }

  #ofFood({ sheet, row, column }: CellAddress): Problem | undefined {
    const { rows, lines } = this.#settling.plan;
    const kind = rows.kindOf(sheet);
    if (kind === 'foods' && column === 'food' && lines.isSecond(row)) return secondRow;
    if (column !== 'food' || (kind !== 'shelf' && kind !== 'draws')) return undefined;
    const name = this.#shown.value(sheet, row, column);
    this.#listed ??= this.#listedFoods();
    return typeof name === 'string' && this.#listed.size > 0 ? unlistedFood(name, this.#listed) : undefined;
  }

  /** What of the units in a formula does not go together; not known before the engine is there. */
  /** A formula that nobody has looked at since the household went over to other measures. */
  #ofMeasures({ sheet, row, column }: CellAddress): Problem | undefined {
    const state = this.#settling.state.sheets.get(sheet);
    if (!state || !isUnturned(state, row, column)) return undefined;
    return {
      code: 'formula-of-other-measures',
      message: say`This formula was written when the household used other measures, and could not be turned.`,
      mend: say`See whether it still gives what it should, and change it or say that it is right.`,
    };
  }

  #ofUnits(where: CellAddress): Problem | undefined {
    const raw = this.#settling.raw(where);
    return isFormula(raw) && !this.#settling.needsEngine ? this.#formulas.unitProblem(where, raw) : undefined;
  }

  /** Names of the foods that Foods lists, by the form in which they are compared. */
  #listedFoods(): Map<string, string> {
    const foods = this.#settling.plan.rows.sheet('foods');
    const names = (foods?.rowOrder.ids ?? []).map((id) =>
      String(this.#shown.value(foods!.id, id, 'food') ?? ''),
    );
    return new Map(names.filter((name) => name !== '').map((name) => [foodKey(name), name]));
  }
}
