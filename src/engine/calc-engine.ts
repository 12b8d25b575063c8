import type { CellValue } from '../book/types.js';
import type { FunctionContext } from '../formulas/declare.js';

/** What an engine cell is given: a value, or a formula in engine form (sheets by id). Null is blank. */
export type EngineInput =
  | null
  | number
  | boolean
  | { readonly text: string }
  | { readonly day: string }
  | { readonly formula: string };

export interface EnginePlace {
  readonly sheet: string;
  readonly row: number;
  readonly column: number;
}

export interface EngineEdit extends EnginePlace {
  readonly input: EngineInput;
}

/**
 * The formula engine as the book uses it: sheets by id, rows and columns by position in the book's own
 * order. It keeps no history and knows no views. No method throws for what a person can type.
 */
export interface CalcEngine {
  /** Starts with these sheets, and forgets any others. */
  open(sheets: readonly { readonly id: string; readonly cells: readonly (readonly EngineInput[])[] }[]): void;
  addSheet(id: string, cells: readonly (readonly EngineInput[])[]): void;
  removeSheet(id: string): void;
  insertRows(sheet: string, at: number, count: number): void;
  removeRows(sheet: string, at: number, count: number): void;
  insertColumns(sheet: string, at: number, count: number): void;
  removeColumns(sheet: string, at: number, count: number): void;
  /** Sets cells in one go and recalculates once. Answers where a formula's value may now be another. */
  set(edits: readonly EngineEdit[]): readonly EnginePlace[];
  value(place: EnginePlace): CellValue;
  /** The formula that stands in a cell, as the engine writes it. */
  formula(place: EnginePlace): string | undefined;
  /** One formula worked out as if it stood in a sheet, without leaving anything behind. */
  evaluate(formula: string): CellValue;
  /** The day, basis and so on that functions reckon with from now on: set again the formulas that call them. */
  setContext(context: FunctionContext): void;
  close(): void;
}
