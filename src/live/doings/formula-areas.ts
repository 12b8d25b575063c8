import { type StateLayout, type Use, usesOf } from '../../book/index.js';
import type { BookReading } from '../book-reading.js';
import type { FormulaLine } from './formula-lines.js';

/** Cells by where they stand now; a whole column or row reaches to no end. */
export interface Area {
  readonly sheet: string;
  readonly top: number;
  readonly bottom: number;
  readonly left: number;
  readonly right: number;
}

const between = (a: number, b: number): readonly [number, number] => (a <= b ? [a, b] : [b, a]);

/** Where a use lies; undefined where it is gone. */
export function areaOf({ sheet, from, to }: Use, layout: StateLayout): Area | undefined {
  if (layout.titleOf(sheet) === undefined) return undefined;
  let [top, bottom]: readonly [number, number] = [0, Number.POSITIVE_INFINITY];
  let [left, right]: readonly [number, number] = [0, Number.POSITIVE_INFINITY];
  if (from.row !== undefined || to.row !== undefined)
    [top, bottom] = between(layout.rowIndex(sheet, from.row ?? ''), layout.rowIndex(sheet, to.row ?? ''));
  if (from.column !== undefined || to.column !== undefined)
    [left, right] = between(
      layout.columnIndex(sheet, from.column ?? ''),
      layout.columnIndex(sheet, to.column ?? ''),
    );
  return top < 0 || left < 0 ? undefined : { sheet, top, bottom, left, right };
}

export const meet = (a: Area, b: Area): boolean =>
  a.sheet === b.sheet && a.top <= b.bottom && b.top <= a.bottom && a.left <= b.right && b.left <= a.right;

/** The cells in which a line's formulas stand. */
export function areaOfLine({ sheet, column, rows, whole }: FormulaLine, layout: StateLayout): Area {
  const at = layout.columnIndex(sheet, column);
  const ends = whole
    ? { top: 0, bottom: Number.POSITIVE_INFINITY }
    : { top: layout.rowIndex(sheet, rows[0]!), bottom: layout.rowIndex(sheet, rows.at(-1)!) };
  return { sheet, ...ends, left: at, right: at };
}

const around = (a: Area, b: Area): Area => ({
  sheet: a.sheet,
  top: Math.min(a.top, b.top),
  bottom: Math.max(a.bottom, b.bottom),
  left: Math.min(a.left, b.left),
  right: Math.max(a.right, b.right),
});

/** The cells that a line's formulas use, from its first row to its last. */
export function usedAreas(line: FormulaLine, live: BookReading): Area[] {
  const { state, layout } = live.inside;
  const { sheet, column, rows, whole, stored } = line;
  const last = whole ? undefined : state.raw(sheet, rows.at(-1)!, column);
  const ends = rows.length > 1 && typeof last === 'string' ? usesOf(last, sheet) : [];
  return usesOf(stored, sheet).flatMap((use, i) => {
    const [first, other] = [areaOf(use, layout), ends[i] && areaOf(ends[i], layout)];
    if (!first) return [];
    return [other && other.sheet === first.sheet ? around(first, other) : first];
  });
}

interface Column {
  whole: FormulaLine | undefined;
  /** Lines of cells from top to bottom; no two have a row in common. */
  readonly runs: { readonly line: FormulaLine; readonly area: Area }[];
}

/** Finds lines by where they stand. */
export class LineIndex {
  readonly #columns = new Map<string, Column>();
  readonly #live: BookReading;

  constructor(lines: readonly FormulaLine[], live: BookReading) {
    this.#live = live;
    for (const line of lines) {
      const area = areaOfLine(line, live.inside.layout);
      const key = `${area.sheet}/${area.left}`;
      const column = this.#columns.get(key) ?? { whole: undefined, runs: [] };
      if (line.whole) column.whole = line;
      else column.runs.push({ line, area });
      this.#columns.set(key, column);
    }
  }

  /** Lines with a cell in the area. */
  *meeting({ sheet, top, bottom, left, right }: Area): Generator<FormulaLine> {
    const last = this.#live.inside.state.sheets.get(sheet)!.columnOrder.ids.length - 1;
    for (let at = left; at <= Math.min(right, last); at++) {
      const column = this.#columns.get(`${sheet}/${at}`);
      if (!column) continue;
      if (column.whole) yield column.whole;
      for (let i = firstAtOrBelow(column.runs, top); i < column.runs.length; i++) {
        const { line, area } = column.runs[i]!;
        if (area.top > bottom) break;
        yield line;
      }
    }
  }
}

/** Place of the first run that ends at a row or below it. */
function firstAtOrBelow(runs: Column['runs'], row: number): number {
  let [low, high] = [0, runs.length];
  while (low < high) {
    const middle = (low + high) >> 1;
    if (runs[middle]!.area.bottom < row) low = middle + 1;
    else high = middle;
  }
  return low;
}

/** For each line (by its key), the lines that use its cells. */
export function usersOf(
  lines: readonly FormulaLine[],
  live: BookReading,
  index = new LineIndex(lines, live),
): Map<string, FormulaLine[]> {
  const users = new Map<string, Set<FormulaLine>>(lines.map(({ key }) => [key, new Set()]));
  for (const line of lines)
    for (const area of usedAreas(line, live))
      for (const used of index.meeting(area)) users.get(used.key)!.add(line);
  return new Map([...users].map(([key, of]) => [key, [...of]]));
}
