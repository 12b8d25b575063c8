import { DetailedCellError, HyperFormula, type RawCellContent } from 'hyperformula';
import type { CellValue } from '../book/types.js';
import type { FunctionContext } from '../formulas/declare.js';
import { toIsoDay } from '../planning/dates.js';
import type { CalcEngine, EngineEdit, EngineInput, EnginePlace } from './calc-engine.js';
import { type ContextHolder, EPOCH, registerFunctions } from './function-plugin.js';
import { plainMessage } from './messages.js';

const SCRATCH = '_scratch_';

/** Text is marked as text, or the engine would make numbers and dates of what looks like them. */
function content(input: EngineInput): RawCellContent {
  if (input === null || typeof input !== 'object') return input;
  if ('formula' in input) return input.formula;
  return 'day' in input ? input.day : `'${input.text}`;
}

const unreadable = (formula: string, error: unknown): CellValue => ({
  error: '#ERROR!',
  message: `The formula cannot be worked out (${String(error instanceof Error ? error.message : error).slice(0, 80)}). Make it shorter: ${formula.slice(0, 40)}`,
});

/** `CalcEngine` by HyperFormula: GPLv3 or its own licence, by the key that the page gives. */
export class HyperFormulaEngine implements CalcEngine {
  readonly #key: string;
  readonly #context: ContextHolder;
  #hf!: HyperFormula;
  /** Cells whose formula the engine could not even take in. */
  readonly #refused = new Map<string, CellValue>();

  constructor(context: FunctionContext, licenceKey = 'gpl-v3') {
    this.#key = licenceKey;
    this.#context = { current: context };
    registerFunctions();
    this.open([]);
  }

  open(sheets: readonly { id: string; cells: readonly (readonly EngineInput[])[] }[]): void {
    this.#hf?.destroy();
    this.#refused.clear();
    this.#hf = HyperFormula.buildEmpty({
      licenseKey: this.#key,
      useArrayArithmetic: false,
      dateFormats: ['YYYY-MM-DD'],
      maxRows: 101_000,
      maxColumns: 1_000,
      // Undo is the book's own; the engine must keep nothing for it.
      undoLimit: 0,
      context: this.#context,
    });
    this.#hf.addSheet(SCRATCH);
    for (const { id } of sheets) this.#hf.addSheet(id);
    this.#hf.suspendEvaluation();
    for (const { id, cells } of sheets) this.#fill(id, cells);
    this.#hf.resumeEvaluation();
  }

  addSheet(id: string, cells: readonly (readonly EngineInput[])[]): void {
    this.#hf.addSheet(id);
    this.#fill(id, cells);
  }

  removeSheet(id: string): void {
    this.#hf.removeSheet(this.#sheet(id));
  }

  insertRows(sheet: string, at: number, count: number): void {
    this.#forgetRefused(sheet);
    this.#hf.addRows(this.#sheet(sheet), [at, count]);
  }

  removeRows(sheet: string, at: number, count: number): void {
    this.#forgetRefused(sheet);
    this.#hf.removeRows(this.#sheet(sheet), [at, count]);
  }

  insertColumns(sheet: string, at: number, count: number): void {
    this.#forgetRefused(sheet);
    this.#hf.addColumns(this.#sheet(sheet), [at, count]);
  }

  removeColumns(sheet: string, at: number, count: number): void {
    this.#forgetRefused(sheet);
    this.#hf.removeColumns(this.#sheet(sheet), [at, count]);
  }

  set(edits: readonly EngineEdit[]): readonly EnginePlace[] {
    if (edits.length === 0) return [];
    const changes = this.#hf.batch(() => {
      for (const edit of edits) this.#setOne(edit);
    });
    const places: EnginePlace[] = [];
    for (const change of changes) {
      if (!('address' in change)) continue;
      const { sheet, row, col } = change.address;
      const name = this.#hf.getSheetName(sheet);
      if (name !== undefined && name !== SCRATCH) places.push({ sheet: name, row, column: col });
    }
    return places;
  }

  value(place: EnginePlace): CellValue {
    return this.#refused.get(keyOf(place)) ?? this.#read(this.#sheet(place.sheet), place.row, place.column);
  }

  formula({ sheet, row, column }: EnginePlace): string | undefined {
    return this.#hf.getCellFormula({ sheet: this.#sheet(sheet), row, col: column });
  }

  evaluate(formula: string): CellValue {
    const sheet = this.#sheet(SCRATCH);
    try {
      this.#hf.setCellContents({ sheet, row: 0, col: 0 }, formula);
      return this.#read(sheet, 0, 0);
    } catch (error) {
      return unreadable(formula, error);
    } finally {
      this.#hf.clearSheet(sheet);
    }
  }

  setContext(context: FunctionContext): void {
    this.#context.current = context;
  }

  close(): void {
    this.#hf.destroy();
  }

  #sheet(id: string): number {
    const sheet = this.#hf.getSheetId(id);
    if (sheet === undefined) throw new Error(`The engine has no sheet ${id}`);
    return sheet;
  }

  /** Positions shift; the book sets again what the engine lacks, and what it refuses is refused again there. */
  #forgetRefused(sheet: string): void {
    for (const key of this.#refused.keys()) if (key.startsWith(`${sheet}!`)) this.#refused.delete(key);
  }

  #fill(id: string, cells: readonly (readonly EngineInput[])[]): void {
    const sheet = this.#sheet(id);
    try {
      this.#hf.setSheetContent(
        sheet,
        cells.map((row) => row.map(content)),
      );
    } catch {
      // One cell spoils the whole; cell by cell, only that one shows its error.
      for (const [row, line] of cells.entries()) {
        for (const [column, input] of line.entries())
          if (input !== null) this.#setOne({ sheet: id, row, column, input });
      }
    }
  }

  #setOne({ sheet, row, column, input }: EngineEdit): void {
    const address = { sheet: this.#sheet(sheet), row, col: column };
    const key = keyOf({ sheet, row, column });
    this.#refused.delete(key);
    try {
      this.#hf.setCellContents(address, content(input));
    } catch (error) {
      this.#hf.setCellContents(address, null);
      this.#refused.set(
        key,
        unreadable(typeof input === 'object' && input && 'formula' in input ? input.formula : '', error),
      );
    }
  }

  #read(sheet: number, row: number, col: number): CellValue {
    const address = { sheet, row, col };
    const value = this.#hf.getCellValue(address);
    if (value === undefined || value === null) return null;
    if (value instanceof DetailedCellError) {
      return {
        error: value.value,
        message: plainMessage(value.value, value.message, this.#hf.getRegisteredFunctionNames()),
      };
    }
    if (typeof value === 'number' && this.#hf.getCellValueDetailedType(address) === 'NUMBER_DATE') {
      const day = Math.floor(value) - EPOCH;
      return day > -100_000 && day < 200_000 ? toIsoDay(day) : value;
    }
    return value;
  }
}

const keyOf = ({ sheet, row, column }: EnginePlace): string => `${sheet}!${row}:${column}`;
