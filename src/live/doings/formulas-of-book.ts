import { missingIn } from '../../book/formula/missing.js';
import {
  type CellAddress,
  type CellError,
  type CellValue,
  declarationOf,
  isCellError,
  usesOf,
} from '../../book/index.js';
import type { Problem } from '../../problem.js';
import type { BookReading } from '../book-reading.js';
import { type Area, areaOf, LineIndex, meet, usersOf } from './formula-areas.js';

import { type FormulaLine, formulaLines } from './formula-lines.js';
import { type PlaceInBook, Places } from './formula-places.js';
import { RingSearch } from './formula-rings.js';

/** One error of a line: the rows that show it, and what is behind it. */
export interface LineError {
  readonly error: CellError;
  readonly rows: readonly string[];
  /** Of what depends on itself: the cells of the ring, in the order in which each uses the next. */
  readonly ring: readonly PlaceInBook[];
  /** Where the error comes from, if the formula itself is right. */
  readonly from: PlaceInBook | null;
}

/** A formula of the book as it is listed. */
export interface ListedFormula extends FormulaLine {
  /** What it gives in its first row. */
  readonly value: CellValue;
  readonly place: PlaceInBook;
  readonly errors: readonly LineError[];
  readonly uses: readonly PlaceInBook[];
  readonly usedBy: readonly PlaceInBook[];
  /** Units in it that do not go together, in the first row where they do not; null where nothing is known to. */
  readonly units: Problem | null;
  /** The plan is worked out from this column. */
  readonly feedsPlan: boolean;
}

/** Entries of one column with the same thing wrong. */
export interface ListedEntry {
  readonly key: string;
  readonly sheet: string;
  readonly column: string;
  readonly rows: readonly string[];
  readonly place: PlaceInBook;
  /** As typed, in the first of the rows. */
  readonly typed: string;
  readonly problem: Problem;
}

export interface ListedSheet {
  readonly id: string;
  readonly title: string;
  readonly formulas: readonly ListedFormula[];
  readonly entries: readonly ListedEntry[];
}

export type { PlaceInBook };

const MOST_PLACES = 12;
const MOST_LOOKS = 10_000;
/** Units vary by row, but hardly from the two hundredth on. */
const MOST_ROWS_FOR_UNITS = 200;
const UNITS: ReadonlySet<string> = new Set(['unlike-units', 'convert-units', 'formula-of-other-measures']);

/** What the book's formulas are, what they give, and what is wrong. */
export class FormulasOfBook {
  readonly #live: BookReading;
  readonly #rings: RingSearch;
  readonly #places: Places;
  /** Where errors begin is looked for so often and no more: thousands that use one another would take minutes. */
  #looks = MOST_LOOKS;

  constructor(live: BookReading) {
    this.#live = live;
    this.#rings = new RingSearch(live);
    this.#places = new Places(live);
  }

  /**
   * Every formula and every entry with something wrong, sheet by sheet; sheets with neither are left out.
   *
   * @param isNote problems that only say what is worth knowing
   */
  read(isNote: (problem: Problem) => boolean = () => false): ListedSheet[] {
    const live = this.#live;
    this.#looks = MOST_LOOKS;
    const lines = formulaLines(live);
    const index = new LineIndex(lines, live);
    const users = usersOf(lines, live, index);
    return live
      .sheets()
      .map(({ id, title }): ListedSheet => {
        const own = lines.filter(({ sheet }) => sheet === id);
        return {
          id,
          title,
          formulas: own.map((line) => this.#listed(line, users.get(line.key) ?? [], index)),
          entries: this.#entries(id, isNote),
        };
      })
      .filter(({ formulas, entries }) => formulas.length + entries.length > 0);
  }

  #listed(line: FormulaLine, users: readonly FormulaLine[], index: LineIndex): ListedFormula {
    const live = this.#live;
    const { sheet, column, rows, stored } = line;
    const kind = live.inside.state.sheets.get(sheet)!.kind;
    return {
      ...line,
      value: rows[0] === undefined ? null : live.value(sheet, rows[0], column),
      place: this.#places.ofLine(line, ''),
      errors: this.#errors(line, index),
      uses: distinct(usesOf(stored, sheet).map((use) => this.#places.ofUse(use, sheet))).slice(
        0,
        MOST_PLACES,
      ),
      usedBy: users.slice(0, MOST_PLACES).map((user) => this.#places.ofLine(user, sheet)),
      units: this.#units(line),
      feedsPlan: declarationOf(kind, column)?.role === 'kept',
    };
  }

  #units({ sheet, column, rows }: FormulaLine): Problem | null {
    for (const row of rows.slice(0, MOST_ROWS_FOR_UNITS)) {
      const found = this.#live.problem(sheet, row, column);
      if (found && UNITS.has(found.code)) return found;
    }
    return null;
  }

  #errors(line: FormulaLine, index: LineIndex): LineError[] {
    const found = new Map<string, { error: CellError; rows: string[] }>();
    const { layout } = this.#live.inside;
    for (const row of line.rows) {
      const value = this.#live.value(line.sheet, row, line.column);
      if (!isCellError(value)) continue;
      const key = `${value.error} ${value.message}`;
      const same = found.get(key);
      if (same) same.rows.push(row);
      else found.set(key, { error: value, rows: [row] });
    }
    const misses = found.size > 0 && missingIn(line.stored, line.sheet, layout).length > 0;
    return [...found.values()].map(({ error, rows }) => {
      const cell = { sheet: line.sheet, row: rows[0]!, column: line.column };
      const cycle = error.error === '#CYCLE!';
      return {
        error,
        rows,
        ring: cycle ? this.#ring(cell) : [],
        from: cycle || misses ? null : this.#origin(line, cell, error, index),
      };
    });
  }

  #ring(cell: CellAddress): PlaceInBook[] {
    const ring = this.#rings.ringOf(cell);
    if (!ring) return [];
    const { sheet } = cell;
    const cells = ring.cells.map((each) => this.#places.ofCell(each, sheet));
    const planning = ring.planning && {
      words: this.#places.columnWords(ring.planning.sheet, ring.planning.column, sheet),
      cell: null,
    };
    return [...cells, ...(planning ? [planning] : []), cells[0]!];
  }

  /** The cell with the same error that a formula uses, followed to where it begins. */
  #origin(line: FormulaLine, cell: CellAddress, error: CellError, index: LineIndex): PlaceInBook | null {
    const { layout } = this.#live.inside;
    let [at, here]: [FormulaLine, CellAddress | null] = [line, null];
    const seen = new Set([line]);
    search: for (;;) {
      if (this.#looks <= 0) return null;
      const areas = usesOf(at.stored, at.sheet).flatMap((use) => areaOf(use, layout) ?? []);
      for (const area of areas) {
        for (const other of index.meeting(area)) {
          if (this.#looks-- <= 0) return null;
          if (seen.has(other)) continue;
          const found = this.#withError(other, error, areas, here ?? cell);
          if (!found) continue;
          seen.add(other);
          [at, here] = [other, found];
          continue search;
        }
      }
      return here && this.#places.ofCell(here, line.sheet);
    }
  }

  /** A cell of the line that shows the error and is used; the same row first. */
  #withError(line: FormulaLine, { error }: CellError, areas: readonly Area[], by: CellAddress) {
    const { layout } = this.#live.inside;
    const { sheet, column } = line;
    const at = layout.columnIndex(sheet, column);
    const rows = line.rows.includes(by.row) ? [by.row, ...line.rows] : line.rows;
    for (const row of rows.slice(0, 200)) {
      const y = layout.rowIndex(sheet, row);
      const place = { sheet, top: y, bottom: y, left: at, right: at };
      if (!areas.some((area) => meet(area, place))) continue;
      const value = this.#live.value(sheet, row, column);
      if (isCellError(value) && value.error === error) return { sheet, row, column };
    }
    return null;
  }

  #entries(sheet: string, isNote: (problem: Problem) => boolean): ListedEntry[] {
    const live = this.#live;
    const found = new Map<string, ListedEntry & { rows: string[] }>();
    for (const { id: column, role, title } of live.columns(sheet)) {
      if (role === 'planning') continue;
      for (const row of live.rowIds(sheet)) {
        if (live.isFormula(sheet, row, column)) continue;
        const problem = live.problem(sheet, row, column);
        if (!problem || isNote(problem)) continue;
        const typed = String(live.typed(sheet, row, column) ?? '');
        const key = `${sheet}/${column}/${problem.code}/${typed === '' ? problem.message : ''}`;
        const same = found.get(key);
        if (same) same.rows.push(row);
        else
          found.set(key, {
            key,
            sheet,
            column,
            rows: [row],
            place: { words: `“${title}”`, cell: { sheet, row, column } },
            typed,
            problem,
          });
      }
    }
    return [...found.values()];
  }
}

const distinct = (places: readonly PlaceInBook[]): PlaceInBook[] => [
  ...new Map(places.map((place) => [place.words, place])).values(),
];

/** Everything that formulas of the book are and give, and what is wrong with entries. */
export const formulasOfBook = (live: BookReading, isNote?: (problem: Problem) => boolean): ListedSheet[] =>
  new FormulasOfBook(live).read(isNote);
