import { missingInWords } from '../../book/formula/explain.js';
import { nameOfRow, rowInWords } from '../../book/formula/gone.js';
import { missingIn } from '../../book/formula/missing.js';
import { type CellAddress, titleOfColumn, titleOfSheet, type Use } from '../../book/index.js';
import { quoted, say } from '../../words/index.js';
import type { BookReading } from '../book-reading.js';
import { areaOf } from './formula-areas.js';
import type { FormulaLine } from './formula-lines.js';

/** A place of the book in words, and the cell to go to. */
export interface PlaceInBook {
  readonly words: string;
  /** Null where there is nothing to go to: it is gone, or has no row. */
  readonly cell: CellAddress | null;
}

/** Puts places into words, as seen from the sheet `home` (blank: with the names of rows). */
export class Places {
  readonly #live: BookReading;

  constructor(live: BookReading) {
    this.#live = live;
  }

  columnWords(sheet: string, column: string, home: string): string {
    const state = this.#live.inside.state.sheets.get(sheet);
    if (!state) return '';
    const title = titleOfColumn(state, column);
    return sheet === home || home === '' ? quoted(title) : say`“${title}” of ${titleOfSheet(state)}`;
  }

  ofCell(cell: CellAddress, home: string): PlaceInBook {
    const { layout } = this.#live.inside;
    const row = layout.rowIndex(cell.sheet, cell.row) + 1;
    return { words: say`${this.columnWords(cell.sheet, cell.column, home)}, row ${row}`, cell };
  }

  ofLine({ sheet, column, rows, whole }: FormulaLine, home: string): PlaceInBook {
    const title = this.columnWords(sheet, column, home);
    const cell = rows[0] === undefined ? null : { sheet, row: rows[0], column };
    if (whole) return { words: title, cell };
    const { state, layout } = this.#live.inside;
    const first = layout.rowIndex(sheet, rows[0]!) + 1;
    const words =
      rows.length > 1
        ? say`rows ${first} to ${first + rows.length - 1}`
        : home === ''
          ? rowInWords(nameOfRow(state.sheets.get(sheet)!, rows[0]!))
          : say`row ${first}`;
    return { words: `${title}, ${words}`, cell };
  }

  ofUse(use: Use, home: string): PlaceInBook {
    const { state, layout } = this.#live.inside;
    const area = areaOf(use, layout);
    const sheet = state.sheets.get(use.sheet);
    if (!area || !sheet) {
      const [gone] = missingIn(use.text, home, layout);
      return { words: gone ? missingInWords(gone, home, this.#live.inside) : say`what is gone`, cell: null };
    }
    const [row, column] = [sheet.rowOrder.ids[area.top], sheet.columnOrder.ids[area.left]];
    const cell = row === undefined || column === undefined ? null : { sheet: use.sheet, row, column };
    const other = use.sheet === home ? '' : say` of ${titleOfSheet(sheet)}`;
    const title = (at: number): string => {
      const id = sheet.columnOrder.ids[at];
      return id === undefined ? '' : quoted(titleOfColumn(sheet, id));
    };
    const rows =
      area.bottom === Number.POSITIVE_INFINITY
        ? ''
        : area.top === area.bottom
          ? say`row ${area.top + 1}`
          : say`rows ${area.top + 1} to ${area.bottom + 1}`;
    const columns =
      area.right === Number.POSITIVE_INFINITY
        ? ''
        : area.left === area.right
          ? title(area.left)
          : say`${title(area.left)} to ${title(area.right)}`;
    return { words: `${[columns, rows].filter(Boolean).join(', ')}${other}`, cell };
  }
}
