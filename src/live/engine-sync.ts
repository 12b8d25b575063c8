import {
  type BookState,
  type CellAddress,
  type CellError,
  type CellValue,
  declaredIn,
  explained,
  isCellError,
  isFormula,
  type Raw,
  referencesOf,
  type SheetState,
  type StateLayout,
  standardOneValue,
  toEngine,
} from '../book/index.js';
import type { CalcEngine, EngineEdit, EngineInput } from '../engine/calc-engine.js';
import { type FunctionContext, isListArgument } from '../formulas/declare.js';
import { functionNamed } from '../formulas/index.js';
import { rewriting } from './row-sequence.js';

/** What a planning column shows in a cell, for formulas that refer to it. */
export type PlannedValue = (sheet: string, row: string, column: string) => CellValue;

interface Shape {
  /** A sheet that was replaced as a whole, or is of another kind now, is another object. */
  readonly of: SheetState;
  readonly rows: readonly string[];
  readonly columns: readonly string[];
  /** What fills the blank cells of a column, or all of them: its formula, or the planning column it shows. */
  readonly fills: ReadonlyMap<string, string>;
}

/** Of our own functions the declaration says it; of the others a list does. */
export const takesOneValue = (name: string, argument: number): boolean => {
  const declared = functionNamed(name)?.arguments[argument];
  return declared ? !isListArgument(declared) : standardOneValue(name, argument);
};

const DAY = /^\d{4}-\d{2}-\d{2}$/;
const keyOf = (a: CellAddress): string => `${a.sheet}/${a.row}/${a.column}`;

/**
 * Keeps an engine holding the same as the book: the same rows and columns in the book's own order, raw cells
 * and formulas, and the planning columns as plain values. It works from the difference between what the
 * engine has and what the book has now, so undo, redo and merges need nothing of their own.
 */
export class EngineSync {
  readonly #shapes = new Map<string, Shape>();
  /** Every formula cell with its stored text, also those that a column's formula fills. */
  readonly #formulas = new Map<string, { address: CellAddress; stored: string }>();

  /** Errors in words, until something changes. */
  readonly #words = new Map<string, CellError>();

  constructor(
    readonly engine: CalcEngine,
    readonly state: BookState,
    readonly layout: StateLayout,
    readonly planned: PlannedValue,
  ) {
    const sheets = [...state.sheets.values()].map((sheet) => ({ id: sheet.id, cells: this.#cellsOf(sheet) }));
    engine.open(sheets);
    for (const sheet of state.sheets.values()) this.#remember(sheet);
  }

  /** Cells that hold formulas, for listing them and for knowing what depends on the engine. */
  formulas(): Iterable<{ readonly address: CellAddress; readonly stored: string }> {
    return this.#formulas.values();
  }

  isFormulaCell(address: CellAddress): boolean {
    return this.#formulas.has(keyOf(address));
  }

  value({ sheet, row, column }: CellAddress): CellValue {
    const place = {
      sheet,
      row: this.layout.rowIndex(sheet, row),
      column: this.layout.columnIndex(sheet, column),
    };
    if (place.row < 0 || place.column < 0) return null;
    const value = this.engine.value(place);
    if (!isCellError(value)) return value;
    const formula = this.#formulas.get(keyOf({ sheet, row, column }));
    return formula ? this.#explained(value, formula.stored, sheet) : value;
  }

  /** In words once for all cells of a column's formula: they are read again and again. */
  #explained(error: CellError, stored: string, sheet: string): CellError {
    const key = `${sheet} ${error.error} ${error.message} ${stored}`;
    let words = this.#words.get(key);
    if (!words) {
      words = explained(error, stored, sheet, this);
      this.#words.set(key, words);
    }
    return words;
  }

  /** Works out again the formulas that call our own functions. */
  setContext(context: FunctionContext): CellAddress[] {
    this.engine.setContext(context);
    const calling = [...this.#formulas.values()].filter(({ stored }) => callsOurs(stored));
    return this.#addresses(
      this.engine.set(
        calling.map(({ address, stored }) => ({
          ...this.#place(address),
          input: { formula: this.#inEngine(stored, address) },
        })),
      ),
    );
  }

  /**
   * Brings the engine up to the book after changes: `sheets` whose rows, columns or column formulas changed,
   * and single `cells`. Answers the formula cells whose value may be another now.
   */
  update(sheets: ReadonlySet<string>, cells: Iterable<CellAddress>): CellAddress[] {
    this.#words.clear();
    const edits: EngineEdit[] = [];
    let reshaped = false;
    for (const id of sheets) reshaped = this.#reshape(id, edits) || reshaped;
    for (const address of cells) this.#edit(address, edits);
    if (reshaped) this.#rewriteFormulas(sheets, edits);
    return this.#addresses(this.engine.set(edits));
  }

  /** Makes formula cells show that they depend on themselves, to those that refer to them too, until next updated. */
  block(cells: readonly CellAddress[]): CellAddress[] {
    return this.#addresses(
      this.engine.set(cells.map((address) => ({ ...this.#place(address), input: { formula: '=#CYCLE!' } }))),
    );
  }

  #reshape(id: string, edits: EngineEdit[]): boolean {
    const sheet = this.state.sheets.get(id);
    const shape = this.#shapes.get(id);
    if (!sheet) {
      if (!shape) return false;
      this.engine.removeSheet(id);
      this.#forget(id);
      return true;
    }
    if (!shape) {
      this.engine.addSheet(id, this.#cellsOf(sheet));
      this.#remember(sheet);
      return true;
    }
    const rows = rewriting(shape.rows, sheet.rowOrder.ids);
    const columns = rewriting(shape.columns, sheet.columnOrder.ids);
    for (const { at, count } of rows.removals) this.engine.removeRows(id, at, count);
    for (const { at, count } of columns.removals) this.engine.removeColumns(id, at, count);
    for (const { at, count } of columns.insertions) this.engine.insertColumns(id, at, count);
    for (const { at, count } of rows.insertions) this.engine.insertRows(id, at, count);
    const now = shapeOf(sheet);
    this.#shapes.set(id, now);
    for (const [key, { address }] of this.#formulas) {
      if (address.sheet === id && !(sheet.rows.has(address.row) && sheet.columnOrder.has(address.column)))
        this.#formulas.delete(key);
    }
    // What fills a column stands in cells of every row, so such columns are written again too.
    const filling = sheet.columnOrder.ids.filter(
      (column) => shape.fills.get(column) !== now.fills.get(column) || columns.fresh.has(column),
    );
    for (const row of sheet.rowOrder.ids) {
      const among = shape.of !== sheet || rows.fresh.has(row) ? sheet.columnOrder.ids : filling;
      for (const column of among) this.#edit({ sheet: id, row, column }, edits);
    }
    return (
      rows.removals.length + rows.insertions.length + columns.removals.length + columns.insertions.length > 0
    );
  }

  /** After rows or columns shifted, sets again each formula that the engine did not shift as the book means it. */
  #rewriteFormulas(sheets: ReadonlySet<string>, edits: EngineEdit[]): void {
    for (const { address, stored } of this.#formulas.values()) {
      const touched =
        sheets.has(address.sheet) ||
        // `Shelf!D99` typed before there was such a row names no row, yet the engine shifts it.
        stored.includes('!') ||
        referencesOf(stored, address.sheet).some((r) => sheets.has(r.sheet));
      if (!touched) continue;
      const place = this.#place(address);
      const formula = this.#inEngine(stored, address);
      if (this.engine.formula(place) !== formula) edits.push({ ...place, input: { formula } });
    }
  }

  #edit(address: CellAddress, edits: EngineEdit[]): void {
    const sheet = this.state.sheets.get(address.sheet);
    if (!sheet?.rows.has(address.row) || !sheet.columnOrder.has(address.column)) return;
    edits.push({ ...this.#place(address), input: this.#input(sheet, address) });
  }

  #place({ sheet, row, column }: CellAddress) {
    return { sheet, row: this.layout.rowIndex(sheet, row), column: this.layout.columnIndex(sheet, column) };
  }

  #input(sheet: SheetState, address: CellAddress): EngineInput {
    const raw = storedRaw(sheet, address.row, address.column);
    const key = keyOf(address);
    if (isFormula(raw)) {
      this.#formulas.set(key, { address, stored: raw });
      return { formula: this.#inEngine(raw, address) };
    }
    this.#formulas.delete(key);
    return inputOf(raw ?? plain(this.planned(sheet.id, address.row, address.column)));
  }

  #inEngine(stored: string, { sheet, row }: CellAddress): string {
    return toEngine(stored, sheet, this.layout, row, takesOneValue);
  }

  #cellsOf(sheet: SheetState): EngineInput[][] {
    return sheet.rowOrder.ids.map((row) =>
      sheet.columnOrder.ids.map((column) => this.#input(sheet, { sheet: sheet.id, row, column })),
    );
  }

  #remember(sheet: SheetState): void {
    this.#shapes.set(sheet.id, shapeOf(sheet));
  }

  #forget(id: string): void {
    this.#shapes.delete(id);
    for (const [key, { address }] of this.#formulas) if (address.sheet === id) this.#formulas.delete(key);
  }

  #addresses(places: readonly { sheet: string; row: number; column: number }[]): CellAddress[] {
    const found: CellAddress[] = [];
    for (const { sheet, row, column } of places) {
      const [rowId, columnId] = [this.layout.rowAt(sheet, row), this.layout.columnAt(sheet, column)];
      if (rowId === undefined || columnId === undefined) continue;
      const address = { sheet, row: rowId, column: columnId };
      if (this.#formulas.has(keyOf(address))) found.push(address);
    }
    return found;
  }
}

function shapeOf(sheet: SheetState): Shape {
  const fills = new Map<string, string>();
  for (const [id, { formula, plan }] of sheet.columns) {
    if (formula !== undefined) fills.set(id, formula);
    if (plan !== undefined) fills.set(id, JSON.stringify(plan));
  }
  return { of: sheet, rows: [...sheet.rowOrder.ids], columns: [...sheet.columnOrder.ids], fills };
}

const callsOurs = (stored: string): boolean =>
  [...stored.matchAll(/([A-Z][A-Z0-9_]*)\(/g)].some(([, name]) => functionNamed(name!) !== undefined);

/**
 * What a cell stores, or the formula with which its own column fills blank cells. What a file holds under a
 * planning column counts for nothing, and a column of the kind is filled by nothing.
 */
export function storedRaw(sheet: SheetState, row: string, column: string): Raw | undefined {
  const declared = declaredIn(sheet, column);
  if (declared?.role === 'planning') return undefined;
  const cells = sheet.rows.get(row)?.cells;
  const raw = cells && Object.hasOwn(cells, column) ? cells[column] : undefined;
  return raw ?? (declared ? undefined : sheet.columns.get(column)?.formula);
}

const plain = (value: CellValue): Raw | null => (typeof value === 'object' ? null : value);

function inputOf(raw: Raw | null): EngineInput {
  if (typeof raw !== 'string') return raw;
  if (DAY.test(raw)) return { day: raw };
  return { text: raw.startsWith("'") ? raw.slice(1) : raw };
}
