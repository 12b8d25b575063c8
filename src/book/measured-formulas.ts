import type { MeasureSystem } from '../units/index.js';
import { inMeasure } from './formula/in-measure.js';
import type { TakesOneValue } from './formula/one-value.js';
import { placedTree } from './formula/placed-tree.js';
import { type Turn, type TurnOfReference, turnOf } from './formula/same-measure.js';
import { isFormula, usesOf } from './formula/stored.js';
import { declarationOf } from './kinds/index.js';
import { factorOf, keptUnit, measuresOf, ownValueUnit, WEIGHED } from './measures.js';
import { takenDeclaration } from './own-column.js';
import type { BookState, SheetState } from './state.js';
import type { Raw } from './types.js';

/** Where a formula stands: in a cell, or (without a row) as the formula of an own column. */
export interface FormulaPlace {
  readonly sheet: string;
  readonly column: string;
  readonly row?: string;
}

/** A formula that must be written anew so that it means what it meant; `to` is null where that cannot be done. */
export interface FormulaTurning {
  readonly place: FormulaPlace;
  readonly was: string;
  readonly to: string | null;
}

/**
 * What becomes of the book’s formulas when the household goes over to other measures. Cells in a measure give the
 * same amount in the new one: what is added up from such cells does by itself, numbers that stand in a formula are
 * wrapped into CONVERT. All other formulas give the same number as before, but for those of own columns without a
 * unit that only add up cells of one measure: they go with those.
 */
export function formulaTurnings(
  state: BookState,
  to: MeasureSystem,
  takesOne: TakesOneValue,
): FormulaTurning[] {
  if (measuresOf(state) === to) return [];
  const turns = new BookTurns(state, to === 'metric' ? 1 : -1);
  const found: FormulaTurning[] = [];
  const look = (sheet: SheetState, place: FormulaPlace, was: string): void => {
    const { wanted, follows } = turns.goal(sheet, place);
    const ofReference = turns.ofReference(sheet.id);
    const then =
      wanted === undefined ? undefined : inMeasure(was, wanted, follows, { ofReference, takesOne });
    // What cannot be read, and has to do with no measure, is let be.
    if (then === undefined && wanted === 1 && !turns.concern(was, sheet.id)) return;
    if (then !== was) found.push({ place, was, to: then ?? null });
  };
  for (const sheet of state.sheets.values()) {
    for (const [column, { formula }] of sheet.columns)
      if (isFormula(formula) && !declarationOf(sheet.kind, column))
        look(sheet, { sheet: sheet.id, column }, formula);
    for (const [row, { cells }] of sheet.rows)
      for (const [column, raw] of Object.entries(cells))
        if (isFormula(raw) && sheet.columnOrder.has(column) && !isPlanning(sheet, column))
          look(sheet, { sheet: sheet.id, row, column }, raw);
  }
  return found;
}

/** Where the book holds it. */
export const pathOfFormula = ({ sheet, column, row }: FormulaPlace): readonly string[] =>
  row === undefined
    ? ['sheets', sheet, 'columns', column, 'formula']
    : ['sheets', sheet, 'rows', row, 'cells', column];

/**
 * Field of a row that holds the formula of one of its cells as long as nobody has looked whether it means in the
 * household’s measures what it meant in the others. Once the cell holds another formula, it says nothing.
 */
export const unturnedField = (column: string): string => `measures:${column}`;

/** The same field of an own column, for the formula of all its rows. */
export const UNTURNED = 'measures';

/** Where it says of a formula that it could not be turned. */
export const pathOfUnturned = ({ sheet, column, row }: FormulaPlace): readonly string[] =>
  row === undefined
    ? ['sheets', sheet, 'columns', column, UNTURNED]
    : ['sheets', sheet, 'rows', row, unturnedField(column)];

/** Does the formula that stands there still wait for somebody to look at it? */
export function isUnturned(sheet: SheetState, row: string, column: string): boolean {
  const { cells, ...fields } = sheet.rows.get(row) ?? { cells: {} as Record<string, Raw> };
  const raw = Object.hasOwn(cells, column) ? cells[column] : undefined;
  if (raw !== undefined)
    return isFormula(raw) && (fields as Record<string, unknown>)[unturnedField(column)] === raw;
  const whole = sheet.columns.get(column);
  return isFormula(whole?.formula) && whole[UNTURNED] === whole.formula;
}

const isPlanning = (sheet: SheetState, column: string): boolean =>
  declarationOf(sheet.kind, column)?.role === 'planning' ||
  takenDeclaration(sheet.columns.get(column)) !== undefined;

/** By how much cells of the book are multiplied. */
class BookTurns {
  readonly #state: BookState;
  readonly #by: 1 | -1;
  readonly #columns = new Map<string, Turn>();
  readonly #formulas = new Map<string, Turn>();

  constructor(state: BookState, by: 1 | -1) {
    this.#state = state;
    this.#by = by;
  }

  readonly #factor = (unit: string | undefined): number => (factorOf(unit) ?? 1) ** this.#by;

  /** What a formula in this place is to give: so many times as much, or what follows from its cells. */
  goal(sheet: SheetState, { column, row }: FormulaPlace): { wanted: number | undefined; follows: boolean } {
    if (!declarationOf(sheet.kind, column)) {
      const unit = sheet.columns.get(column)?.measure;
      return { wanted: 1, follows: unit === undefined };
    }
    return { wanted: this.#ofKept(sheet, column, row), follows: false };
  }

  #ofKept(sheet: SheetState, column: string, row: string | undefined): number | undefined {
    if (WEIGHED.has(`${sheet.kind}/${column}`)) return undefined;
    if (sheet.kind === 'facts' && column === 'own_value')
      return row === undefined ? undefined : this.#factor(ownValueUnit(sheet, row));
    return this.#factor(keptUnit(sheet.kind, column));
  }

  readonly ofReference =
    (home: string): TurnOfReference =>
    ({ reference: { from, to } }) => {
      const sheet = this.#state.sheets.get(from.sheet ?? home);
      if (!sheet) return undefined;
      if (!to && from.row !== undefined && from.column !== undefined)
        return this.#ofCell(sheet, from.row, from.column);
      const turns = columnsBetween(sheet, from.column, (to ?? from).column).map((column) =>
        this.#ofColumn(sheet, column),
      );
      return turns.reduce((one, other) => together(one, other), 'any');
    };

  #ofCell(sheet: SheetState, row: string, column: string): Turn {
    const declared = declarationOf(sheet.kind, column);
    if (declared?.role === 'kept') return this.#ofKept(sheet, column, row);
    if (declared || isPlanning(sheet, column)) return this.#ofColumn(sheet, column);
    return this.#ofOwn(sheet, column, sheet.rows.get(row)?.cells[column]);
  }

  #ofOwn(sheet: SheetState, column: string, raw: Raw | undefined): Turn {
    const { formula, measure } = sheet.columns.get(column) ?? {};
    const stored = raw ?? formula;
    if (stored === undefined) return 'any';
    if (!isFormula(stored) || measure !== undefined) return 1;
    return this.#ofFormula(sheet.id, stored);
  }

  #ofFormula(home: string, stored: string): Turn {
    const key = `${home}${stored}`;
    if (this.#formulas.has(key)) return this.#formulas.get(key);
    // One that uses itself gives an error whatever is thought of it here.
    this.#formulas.set(key, 1);
    const tree = placedTree(stored);
    // Where parts go different ways the formula is rewritten, and gives what it gave.
    const turn = (tree && turnOf(tree, this.ofReference(home))) ?? 1;
    this.#formulas.set(key, turn);
    return turn;
  }

  #ofColumn(sheet: SheetState, column: string): Turn {
    const key = `${sheet.id}/${column}`;
    if (this.#columns.has(key)) return this.#columns.get(key);
    this.#columns.set(key, 1);
    const turn = this.#findColumn(sheet, column);
    this.#columns.set(key, turn);
    return turn;
  }

  #findColumn(sheet: SheetState, column: string): Turn {
    const declared = declarationOf(sheet.kind, column) ?? takenDeclaration(sheet.columns.get(column));
    if (declared?.role === 'planning') {
      // What a published figure is counted in stands in its row.
      if (sheet.kind === 'facts' && declared.unit === undefined && declared.type === 'number')
        return undefined;
      return this.#factor(declared.unit);
    }
    if (declared) {
      if (sheet.kind === 'facts' && column === 'own_value') return undefined;
      return this.#ofKept(sheet, column, undefined);
    }
    let turn: Turn = 'any';
    for (const { cells } of sheet.rows.values()) {
      turn = together(turn, this.#ofOwn(sheet, column, cells[column]));
      if (turn === undefined) return undefined;
    }
    return turn;
  }

  /** Does it name anything that is turned? */
  concern(stored: string, home: string): boolean {
    return usesOf(stored, home).some(({ sheet, from, to }) => {
      const there = this.#state.sheets.get(sheet);
      const columns = there ? columnsBetween(there, from.column, to.column) : [];
      return columns.some((column) => {
        const turn = this.#ofColumn(there!, column);
        return turn === undefined || (turn !== 'any' && turn !== 1);
      });
    });
  }
}

const together = (one: Turn, other: Turn): Turn => {
  if (one === 'any') return other;
  return other === 'any' || one === other ? one : undefined;
};

/** Columns of a range in the book’s order; all of them for whole rows. */
function columnsBetween(
  { columnOrder }: SheetState,
  from: string | undefined,
  to: string | undefined,
): readonly string[] {
  const { ids } = columnOrder;
  if (from === undefined || to === undefined) return ids;
  const [a, b] = [columnOrder.indexOf(from), columnOrder.indexOf(to)];
  return a < 0 || b < 0 ? ids : ids.slice(Math.min(a, b), Math.max(a, b) + 1);
}
