import { DetailedCellError, HyperFormula, type RawCellContent } from 'hyperformula';
import { sheetInEngine } from '../book/index.js';
import type { CellValue } from '../book/types.js';
import type { FunctionContext } from '../formulas/declare.js';
import { toIsoDay } from '../planning/dates.js';
import { say } from '../words/index.js';
import type { CalcEngine, EngineEdit, EngineInput, EnginePlace } from './calc-engine.js';
import { type ContextHolder, EPOCH, registerFunctions } from './function-plugin.js';
import { guardEvaluation } from './guard-evaluation.js';
import { plainMessage } from './messages.js';

const SCRATCH = '_scratch_';

/** Text is marked as text, or the engine would make numbers and dates of what looks like them. */
function content(input: EngineInput): RawCellContent {
  if (input === null || typeof input !== 'object') return input;
  if ('formula' in input) return input.formula;
  return 'day' in input ? input.day : `'${input.text}`;
}

const unreadable = (formula: string): CellValue => ({
  error: '#ERROR!',
  message: say`The formula is too long or too deep to be worked out: “${formula.slice(0, 40)}…”. Work out a part of it in a cell of its own and refer to that.`,
});

const outOfRange = (): CellValue => ({
  error: '#NUM!',
  message: say`The answer is too small or too large a number to show. Check the numbers in the formula.`,
});

/** Stands in the engine for a refused formula, so that those that refer to it show an error and not a blank. */
const REFUSED = '=#VALUE!';

/** `CalcEngine` by HyperFormula: GPLv3 or its own licence, by the key that the page gives. */
export class HyperFormulaEngine implements CalcEngine {
  readonly #key: string;
  readonly #context: ContextHolder;
  #hf!: HyperFormula;
  /** Cells whose formula the engine could not even take in. */
  readonly #refused = new Map<string, CellValue>();
  /** Ids of sheets by the engine's name for them. */
  readonly #ids = new Map<string, string>();

  constructor(context: FunctionContext, licenceKey = 'gpl-v3') {
    this.#key = licenceKey;
    this.#context = { current: context };
    registerFunctions();
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
    guardEvaluation(this.#hf);
    this.#hf.addSheet(SCRATCH);
    this.#ids.clear();
    for (const { id } of sheets) this.#add(id);
    this.#together(() => {
      for (const { id, cells } of sheets) this.#fill(id, cells);
    });
  }

  addSheet(id: string, cells: readonly (readonly EngineInput[])[]): void {
    this.#add(id);
    this.#together(() => this.#fill(id, cells));
  }

  removeSheet(id: string): void {
    this.#forgetRefused(id);
    this.#hf.removeSheet(this.#sheet(id));
    this.#ids.delete(sheetInEngine(id));
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
    const changes = this.#together(() => {
      for (const edit of edits) this.#setOne(edit);
    });
    const places: EnginePlace[] = [];
    for (const change of changes) {
      if (!('address' in change)) continue;
      const { sheet, row, col } = change.address;
      const id = this.#ids.get(this.#hf.getSheetName(sheet) ?? '');
      if (id !== undefined) places.push({ sheet: id, row, column: col });
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
    const sheet = this.#hf.getSheetId(SCRATCH)!;
    try {
      this.#hf.setCellContents({ sheet, row: 0, col: 0 }, formula);
      return this.#read(sheet, 0, 0);
    } catch {
      return unreadable(formula);
    } finally {
      this.#hf.clearSheet(sheet);
    }
  }

  setContext(context: FunctionContext): void {
    this.#context.current = context;
  }

  close(): void {
    // A book may be closed before it was ever given to the engine.
    this.#hf?.destroy();
  }

  #add(id: string): void {
    const name = this.#hf.addSheet(sheetInEngine(id));
    this.#ids.set(name, id);
  }

  /**
   * Makes several edits and recalculates once. (The engine's own `batch` keeps undo entries, and looks
   * through all of them at every edit: 10,000 cells took half a minute.)
   */
  #together(edits: () => void): ReturnType<HyperFormula['resumeEvaluation']> {
    this.#hf.suspendEvaluation();
    try {
      edits();
    } catch (error) {
      this.#hf.resumeEvaluation();
      throw error;
    }
    return this.#hf.resumeEvaluation();
  }

  #sheet(id: string): number {
    const sheet = this.#hf.getSheetId(sheetInEngine(id));
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
    } catch {
      this.#hf.setCellContents(address, REFUSED);
      this.#refused.set(key, unreadable(isFormulaInput(input) ? input.formula : ''));
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
    if (typeof value === 'number' && !Number.isFinite(value)) return outOfRange();
    if (typeof value === 'number' && this.#hf.getCellValueDetailedType(address) === 'NUMBER_DATE') {
      const day = Math.floor(value) - EPOCH;
      return day > -100_000 && day < 200_000 ? toIsoDay(day) : value;
    }
    return value;
  }
}

const isFormulaInput = (input: EngineInput): input is { readonly formula: string } =>
  typeof input === 'object' && input !== null && 'formula' in input;

const keyOf = ({ sheet, row, column }: EnginePlace): string => `${sheet}!${row}:${column}`;
