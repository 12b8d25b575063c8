/** Croftsheet without a page: books, formulas and plans in Node or a worker. Needs no DOM. */
import type { BookDoc } from './book/index.js';
import { type EvaluateOptions, openWithEngine } from './live/evaluate.js';
import type { LiveBook } from './live/live-book.js';

export type {
  BookDoc,
  CellError,
  CellValue,
  Change,
  Command,
  Outcome,
  Parsed,
  Raw,
  Typed,
} from './book/index.js';
export { blankBook, isCellError, parseBook } from './book/index.js';
export type { FunctionDeclaration } from './formulas/declare.js';
export { functions } from './formulas/index.js';
export * as lessons from './lessons/index.js';
export { type Embed, type EmbedOptions, embedOf, type ShownTable } from './live/embed/index.js';
export { type EvaluateOptions, evaluate } from './live/evaluate.js';
export type { BookChange, LiveBook } from './live/live-book.js';
export type { Working } from './planning/types.js';
export type { Problem, Where } from './problem.js';
export { PROBLEM_CODES } from './problem-codes.js';
export { LANGUAGES, speak } from './words/index.js';

/**
 * Opens a book that `parseBook` read, with its formula engine: `value`, `set`, row and column operations,
 * `undo`, `redo`, `toJSON` and `on('change', …)`. Close it when done.
 */
export const openBook = (book: BookDoc, options: Omit<EvaluateOptions, 'book'> = {}): LiveBook =>
  openWithEngine(book, options);
