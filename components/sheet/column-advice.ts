import { columnLetters } from '../../src/book/index.js';
import type { ColumnView } from '../../src/live/columns.js';
import { say } from '../../src/words/index.js';

/** A better way to write a formula, and why. */
export interface Advice {
  readonly why: string;
  /** The formula to use instead; null where only the person can say. */
  readonly instead: string | null;
}

/** A reference such as G2, neither fixed by $ nor part of a range or of a longer name. */
const CELL = /(?<![\p{L}\p{N}_.$!:'])([A-Z]{1,3})([1-9]\d{0,5})(?![\p{L}\p{N}_.(:!$])/giu;
/** Rows that a person means who counts the header as row 1, or does not. */
const FIRST_ROWS = new Set(['1', '2']);

const escaped = (text: string): string => text.replace(/[.*+?^${}()|[\]\\]/g, '\\$&');

/** Applies `change` to what stands outside of quoted text. */
const outsideQuotes = (formula: string, change: (part: string) => string): string =>
  formula
    .split(/("(?:[^"]|"")*")/)
    .map((part, i) => (i % 2 === 0 ? change(part) : part))
    .join('');

/** The formula with titles such as “Weeks of supply” written as formulas call them: Weeks_of_supply. */
export function withNames(formula: string, columns: readonly ColumnView[]): string {
  const titled = columns
    .filter(({ title, name }) => title.toLowerCase() !== name.toLowerCase() && /\s/.test(title))
    .sort((a, b) => b.title.length - a.title.length);
  return outsideQuotes(formula, (part) =>
    titled.reduce((text, { title, name }) => {
      const spaced = title.trim().split(/\s+/).map(escaped).join('\\s+');
      return text.replace(new RegExp(`(?<![\\p{L}\\p{N}_])${spaced}(?![\\p{L}\\p{N}_])`, 'giu'), name);
    }, part),
  );
}

/** What is likely meant otherwise in a column's formula; null where nothing is. `columns`: all of the sheet, in order. */
export function adviceOn(formula: string, columns: readonly ColumnView[]): Advice | null {
  const named = withNames(formula, columns);
  if (named !== formula) return { why: say`Names of columns are written without spaces.`, instead: named };
  const byLetter = new Map(columns.map(({ name }, i) => [columnLetters(i), name]));
  let cell = '';
  let known = true;
  const instead = outsideQuotes(formula, (part) =>
    part.replace(CELL, (reference: string, letters: string, row: string) => {
      const name = byLetter.get(letters.toUpperCase());
      if (name === undefined) return reference;
      cell ||= reference.toUpperCase();
      known &&= FIRST_ROWS.has(row);
      return name;
    }),
  );
  if (cell === '') return null;
  return {
    why: say`${cell} is the same cell in every row. A column’s name takes each row’s own value.`,
    instead: known ? instead : null,
  };
}
