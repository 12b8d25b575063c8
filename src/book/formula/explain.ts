import { excerpt } from '../../problem.js';
import { andList } from '../../units/index.js';
import { phrase, quoted, say, spoken } from '../../words/index.js';
import type { BookState } from '../state.js';
import { type StateLayout, titleOfColumn, titleOfSheet } from '../state-layout.js';
import type { CellError } from '../types.js';
import { nameOfRow, rememberedName, rowInWords } from './gone.js';
import { type Missing, missingIn } from './missing.js';
import { likelyOnes } from './suggest.js';

interface Book {
  readonly state: BookState;
  readonly layout: StateLayout;
}

/** A sheet as it is called now, cut where that is long. */
const titled = (id: string, state: BookState): string => {
  const sheet = state.sheets.get(id);
  return sheet ? excerpt(titleOfSheet(sheet)) : '';
};

/** What is missing, in words: 'the column “Price”', 'the row 3 (Carrots) of “Shelf”'. */
export function missingInWords(missing: Missing, home: string, { state }: Book): string {
  const of = (sheet: string): string => (sheet === home ? '' : say` of “${titled(sheet, state)}”`);
  const name = rememberedName(state, home, missing);
  switch (missing.what) {
    case 'sheet':
      return name === undefined ? say`a sheet` : say`the sheet “${excerpt(name)}”`;
    case 'column':
      return `${name === undefined ? say`a column` : say`the column “${excerpt(name)}”`}${of(missing.sheet)}`;
    case 'row':
      return `${name === undefined ? say`a row` : excerpt(rowInWords(name))}${of(missing.sheet)}`;
    case 'name':
      return missing.sheet === home
        ? quoted(excerpt(missing.name))
        : say`“${excerpt(missing.name)}” of “${titled(missing.sheet, state)}”`;
    case 'sheet title':
      return say`the sheet “${excerpt(missing.name)}”`;
    case 'function':
      return say`the function “${excerpt(missing.name)}”`;
  }
}

/** Something that can stand in the place of what is missing. */
export interface Candidate {
  readonly id: string;
  readonly label: string;
}

const MOST_ROWS = 500;

/** Everything of its sort that could stand in its place, in the book's order. */
export function candidatesFor(
  missing: Missing,
  { state }: Book,
  functionNames: readonly string[] = [],
): Candidate[] {
  switch (missing.what) {
    case 'sheet':
    case 'sheet title':
      return state.sheetIds().map((id) => ({ id, label: titleOfSheet(state.sheets.get(id)!) }));
    case 'column':
    case 'name': {
      const sheet = state.sheets.get(missing.sheet);
      return (sheet?.columnOrder.ids ?? []).map((id) => ({ id, label: titleOfColumn(sheet!, id) }));
    }
    case 'row': {
      const sheet = state.sheets.get(missing.sheet);
      const ids = sheet?.rowOrder.ids.slice(0, MOST_ROWS) ?? [];
      return ids.map((id) => ({ id, label: rowInWords(nameOfRow(sheet!, id)) }));
    }
    case 'function':
      return functionNames.map((name) => ({ id: name, label: name }));
  }
}

/** In whichever language the row is called so. */
const withoutNumber = (row: string): string => row.replace(/^\p{L}+ \d+ \((.*)\)$/su, '$1');

/** The candidates that are likely meant, the likeliest first. */
export function likelyFor(
  missing: Missing,
  home: string,
  among: readonly Candidate[],
  { state }: Book,
): Candidate[] {
  const name = 'name' in missing ? missing.name : rememberedName(state, home, missing);
  if (name === undefined) return [];
  // A row that was called by nothing but its number is like no other.
  if (missing.what === 'row' && !name.includes('(')) return [];
  const plain = missing.what === 'row' ? withoutNumber : (text: string) => text;
  return likelyOnes(plain(name), among, ({ label }) => plain(label)).slice(0, 3);
}

const isGone = ({ what }: Missing): boolean => what === 'sheet' || what === 'column' || what === 'row';

const INHERITED: Readonly<Record<string, string>> = {
  '#REF!': phrase('Something that the formula uses shows #REF!. Mend it there.'),
  '#NAME?': phrase('Something that the formula uses shows #NAME?. Mend it there.'),
};

/**
 * An error of a formula in words that name what it misses. The engine knows positions only; the stored
 * formula knows what stood there.
 */
export function explained(error: CellError, stored: string, home: string, book: Book): CellError {
  if (!['#REF!', '#NAME?', '#ERROR!'].includes(error.error)) return error;
  const missing = missingIn(stored, home, book.layout);
  const gone = missing.filter(isGone);
  if (gone.length > 0) {
    const names = andList(gone.map((each) => missingInWords(each, home, book)));
    return {
      error: '#REF!',
      message:
        gone.length === 1
          ? say`The formula uses ${names}, which is not there any more. Choose something else in its place, or write the formula again.`
          : say`The formula uses ${names}, which are not there any more. Choose something else in their place, or write the formula again.`,
    };
  }
  const unknown = missing.find(({ what }) => what === 'name' || what === 'sheet title');
  if (unknown) {
    const [likely] = likelyFor(unknown, home, candidatesFor(unknown, book), book);
    const meant = likely ? say` Did you mean “${excerpt(shownName(unknown, likely, book))}”?` : '';
    return unknown.what === 'sheet title'
      ? {
          error: '#REF!',
          message: `${say`There is no sheet called “${excerpt(unknown.name)}”.`}${meant || say` Look at its title.`}`,
        }
      : { error: '#NAME?', message: noName(unknown, home, meant, book) };
  }
  if (error.error === '#ERROR!' || stored.includes(error.error) || hasPlace(stored)) return error;
  const inherited = INHERITED[error.error];
  // An unknown function says so itself, in whichever language.
  return inherited && !/called|function|Funktion/.test(error.message)
    ? { ...error, message: spoken(inherited) }
    : error;
}

/** Whether it has a cell by its place in it, as a formula keeps one that is far beyond the sheet. */
const hasPlace = (stored: string): boolean =>
  /(?<![\w@.])\$?[A-Za-z]{1,3}\$?\d{1,7}(?![\w(])/.test(stored.replace(/"[^"]*"|\[[^\]]*\]/g, ''));

/** As one types it: a column by its name in formulas. */
const shownName = (missing: Missing, { id, label }: Candidate, { layout }: Book): string =>
  missing.what === 'name' ? (layout.nameOf(missing.sheet, id) ?? label) : label;

function noName(missing: Missing, home: string, meant: string, { state }: Book): string {
  const { name, sheet } = missing as Extract<Missing, { what: 'name' }>;
  if (sheet !== home) {
    return `${say`“${excerpt(name)}” is no column of “${titled(sheet, state)}”.`}${meant || say` A column is named by its title with _ for spaces.`}`;
  }
  const help = say` Text goes in quotation marks; a column is named by its title with _ for spaces.`;
  return `${say`“${excerpt(name)}” is neither a column of this sheet nor a function.`}${meant}${help}`;
}
