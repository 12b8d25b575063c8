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

/** For each line, the lines that use its cells. */
export function usersOf(lines: readonly FormulaLine[], live: BookReading): Map<string, FormulaLine[]> {
  const { layout } = live.inside;
  const bySheet = new Map<string, { line: FormulaLine; area: Area }[]>();
  for (const line of lines) {
    for (const area of usedAreas(line, live)) {
      const there = bySheet.get(area.sheet) ?? [];
      there.push({ line, area });
      bySheet.set(area.sheet, there);
    }
  }
  return new Map(
    lines.map((line) => {
      const own = areaOfLine(line, layout);
      const users = (bySheet.get(line.sheet) ?? []).filter(({ area }) => meet(area, own));
      return [line.key, [...new Set(users.map((user) => user.line))]];
    }),
  );
}
