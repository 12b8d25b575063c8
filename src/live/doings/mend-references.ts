import { type Candidate, candidatesFor, likelyFor, missingInWords } from '../../book/formula/explain.js';
import { rememberedName } from '../../book/formula/gone.js';
import {
  type Missing,
  missingIn,
  missingKey,
  type Replacement,
  withReplacement,
} from '../../book/formula/missing.js';
import { likelyOnes } from '../../book/formula/suggest.js';
import { type Command, isFormula } from '../../book/index.js';
import { functions, standardFunctions } from '../../formulas/index.js';
import { say } from '../../words/index.js';
import type { BookReading } from '../book-reading.js';
import type { FormulaLine } from './formula-lines.js';

export type { Candidate, Missing };

/** Something that a formula misses, and what could stand in its place. */
export interface MendOffer {
  readonly missing: Missing;
  readonly key: string;
  /** In words: 'the column “Price”'. */
  readonly words: string;
  /** Likely meant, the likeliest first. */
  readonly likely: readonly Candidate[];
  /** Everything of its sort, in the book's order. */
  readonly all: readonly Candidate[];
  /** How many formulas of the book miss the same: a column's own counts once. */
  readonly formulas: number;
}

/** Where one formula is stored: in a cell, or (row null) with its column. */
interface Home {
  readonly sheet: string;
  readonly row: string | null;
  readonly column: string;
  readonly stored: string;
}

const FUNCTION_NAMES = [...functions, ...standardFunctions].map(({ name }) => name);
const known = new Set(FUNCTION_NAMES);

function* everyFormula(live: BookReading): Generator<Home> {
  for (const sheet of live.inside.state.sheets.values()) {
    for (const [column, { formula }] of sheet.columns)
      if (formula !== undefined) yield { sheet: sheet.id, row: null, column, stored: formula };
    for (const [row, { cells }] of sheet.rows) {
      for (const column in cells) {
        const stored = cells[column];
        if (isFormula(stored)) yield { sheet: sheet.id, row, column, stored };
      }
    }
  }
}

function ofLine({ sheet, column, rows, whole, stored }: FormulaLine, live: BookReading): Home[] {
  if (whole) return [{ sheet, row: null, column, stored }];
  return rows.map((row) => ({
    sheet,
    row,
    column,
    stored: String(live.inside.state.raw(sheet, row, column)),
  }));
}

/** A cheap look before the formula is read: does the text hold what is missing? */
const mentions = (stored: string, missing: Missing): boolean => {
  const text = 'id' in missing ? missing.id : missing.what === 'sheet' ? missing.sheet : missing.name;
  return stored.toLowerCase().includes(text.toLowerCase());
};

/** Functions are many more than we list; one that the engine knows is never missing. */
const isMissing = (home: Home, missing: Missing, live: BookReading): boolean =>
  mentions(home.stored, missing) &&
  missingIn(home.stored, home.sheet, live.inside.layout, (name) => known.has(name)).some(
    (each) => missingKey(each) === missingKey(missing),
  );

const missing = (home: Home, unknownFunction: boolean, live: BookReading): Missing[] =>
  missingIn(
    home.stored,
    home.sheet,
    live.inside.layout,
    unknownFunction ? (name) => known.has(name) : undefined,
  );

/**
 * What the formulas of a line miss, with what could stand in its place. `unknownFunction`: the engine says
 * that there is no such function.
 */
export function mendsFor(live: BookReading, line: FormulaLine, unknownFunction = false): MendOffer[] {
  const found = new Map<string, Missing>();
  for (const home of ofLine(line, live))
    for (const each of missing(home, unknownFunction, live)) found.set(missingKey(each), each);
  return [...found].map(([key, each]): MendOffer => {
    const all = candidatesFor(each, live.inside, FUNCTION_NAMES);
    let formulas = 0;
    for (const home of everyFormula(live)) if (isMissing(home, each, live)) formulas++;
    return {
      missing: each,
      key,
      words: missingInWords(each, line.sheet, live.inside),
      likely: likelyFor(each, line.sheet, all, live.inside),
      all,
      formulas,
    };
  });
}

/** Columns by their titles and rows by what they were called, for a sheet in the place of one that is gone. */
function inPlaceOfSheet(gone: string, id: string, home: string, live: BookReading): Replacement {
  const { inside } = live;
  const find = (what: 'column' | 'row', old: string): string => {
    const name = rememberedName(inside.state, home, { what, sheet: gone, id: old });
    const among = candidatesFor({ what, sheet: id, id: old }, inside);
    if (name === undefined) return old;
    const number = /^row \d+/.exec(name)?.[0];
    const [best] = likelyOnes(name, among, ({ label }) => label);
    return (best ?? among.find(({ label }) => number !== undefined && label.startsWith(number)))?.id ?? old;
  };
  return { id, column: (old) => find('column', old), row: (old) => find('row', old) };
}

/**
 * Puts something else in the place of what is missing, in the formulas of `line`, or (null) in every formula
 * of the book that misses it, as one step.
 *
 * @param id id of the sheet, column or row, or name of the function, that takes its place
 */
export function mendReferences(
  live: BookReading,
  offer: Pick<MendOffer, 'missing' | 'words'>,
  id: string,
  line: FormulaLine | null,
): Command {
  const { inside } = live;
  const homes = line ? ofLine(line, live) : [...everyFormula(live)];
  const cells = new Map<string, { row: string; column: string; typed: string }[]>();
  const of: Command[] = [];
  for (const home of homes) {
    if (!isMissing(home, offer.missing, live)) continue;
    const { sheet, row, column, stored } = home;
    const by: Replacement =
      offer.missing.what === 'sheet' ? inPlaceOfSheet(offer.missing.sheet, id, sheet, live) : { id };
    const typed = withReplacement(stored, sheet, offer.missing, by, inside.layout);
    if (row === null) of.push({ do: 'describe column', sheet, column, as: { formula: typed } });
    else cells.set(sheet, [...(cells.get(sheet) ?? []), { row, column, typed }]);
  }
  for (const [sheet, some] of cells) of.push({ do: 'set cells', sheet, cells: some });
  return { do: 'all', of, called: say`another in place of ${offer.words}` };
}
