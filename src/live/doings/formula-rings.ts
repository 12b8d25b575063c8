import { oneValueAt } from '../../book/formula/one-value.js';
import { type CellAddress, declarationOf, isCellError, isFormula, usesOf } from '../../book/index.js';
import type { BookReading } from '../book-reading.js';
import { storedRaw, takesOneValue } from '../engine-sync.js';
import { type Area, areaOf } from './formula-areas.js';

/** Cells that depend on one another in a ring, and what closes it. */
export interface Ring {
  /** In the order in which each uses the next; the last uses the first again. */
  readonly cells: readonly CellAddress[];
  /** The planning column by which the ring closes: it is worked out from the first cell. */
  readonly planning: { readonly sheet: string; readonly column: string } | null;
}

/** Cells looked at before a search is given up. */
const MOST_VISITED = 300;
/** Cells of a range that are looked at one by one. */
const MOST_IN_AREA = 2000;

const keyOf = ({ sheet, row, column }: CellAddress): string => `${sheet}/${row}/${column}`;

/** Looks for rings among the cells that show #CYCLE!. */
export class RingSearch {
  readonly #live: BookReading;

  constructor(live: BookReading) {
    this.#live = live;
  }

  /** The ring that a cell is on or, if it is on none, one on which it depends; null where none is found. */
  ringOf(start: CellAddress): Ring | null {
    const parents = this.#reach(start);
    if (parents.ring) return { cells: parents.ring, planning: null };
    for (const cell of parents.seen) {
      const planning = this.#planningUsedBy(cell);
      if (planning) return { cells: parents.path(cell), planning };
    }
    for (const cell of parents.seen.slice(1, 40)) {
      const { ring } = this.#reach(cell);
      if (ring) return { cells: ring, planning: null };
    }
    return null;
  }

  #reach(start: CellAddress) {
    const from = new Map<string, CellAddress | null>([[keyOf(start), null]]);
    const seen = [start];
    const path = (cell: CellAddress): CellAddress[] => {
      const back = [cell];
      for (let at = from.get(keyOf(cell)); at; at = from.get(keyOf(at))) back.unshift(at);
      return back;
    };
    let ring: CellAddress[] | null = null;
    for (let i = 0; i < seen.length && i < MOST_VISITED && !ring; i++) {
      const cell = seen[i]!;
      for (const used of this.#inRings(cell)) {
        if (keyOf(used) === keyOf(start)) {
          ring = path(cell);
          break;
        }
        if (from.has(keyOf(used))) continue;
        from.set(keyOf(used), cell);
        seen.push(used);
      }
    }
    return { ring, seen, path };
  }

  #stored({ sheet, row, column }: CellAddress): string | undefined {
    const state = this.#live.inside.state.sheets.get(sheet);
    const raw = state && storedRaw(state, row, column);
    return isFormula(raw) ? raw : undefined;
  }

  #areas(cell: CellAddress): Area[] {
    const stored = this.#stored(cell);
    if (stored === undefined) return [];
    const { layout } = this.#live.inside;
    const one = oneValueAt(stored, takesOneValue);
    return usesOf(stored, cell.sheet).flatMap((use) => {
      const area = areaOf(use, layout);
      if (!area) return [];
      const ownRow = use.byName && use.sheet === cell.sheet && one(use.at, use.text.length);
      const row = layout.rowIndex(cell.sheet, cell.row);
      return [ownRow ? { ...area, top: row, bottom: row } : area];
    });
  }

  /** Cells with #CYCLE! that a cell uses. */
  *#inRings(cell: CellAddress): Generator<CellAddress> {
    const { state } = this.#live.inside;
    for (const area of this.#areas(cell)) {
      const sheet = state.sheets.get(area.sheet)!;
      const rows = sheet.rowOrder.ids.slice(area.top, area.bottom + 1);
      const columns = sheet.columnOrder.ids.slice(area.left, area.right + 1);
      let looked = 0;
      for (const row of rows) {
        for (const column of columns) {
          if (++looked > MOST_IN_AREA) return;
          const value = this.#live.value(area.sheet, row, column);
          if (isCellError(value) && value.error === '#CYCLE!') yield { sheet: area.sheet, row, column };
        }
      }
    }
  }

  #planningUsedBy(cell: CellAddress): Ring['planning'] {
    for (const { sheet: id, left, right } of this.#areas(cell)) {
      const sheet = this.#live.inside.state.sheets.get(id)!;
      const planning = sheet.columnOrder.ids
        .slice(left, right + 1)
        .find((column) => declarationOf(sheet.kind, column)?.role === 'planning');
      if (planning !== undefined) return { sheet: id, column: planning };
    }
    return null;
  }
}
