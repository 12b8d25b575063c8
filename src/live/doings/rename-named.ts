import {
  type Command,
  isFormula,
  KINDS,
  type SheetKind,
  type SheetState,
  type TypedCell,
  takenIn,
} from '../../book/index.js';
import { say } from '../../words/index.js';
import type { BookReading } from '../book-reading.js';
import { foodKey } from '../food-key.js';
import { withWay } from '../food-with-way.js';

/** Cells of one sheet that name a food, each with what it says once the food is called otherwise. */
export interface NamingCells {
  readonly sheet: string;
  readonly title: string;
  readonly cells: readonly TypedCell[];
}

/** Columns of a sheet in which foods are named: those declared so, and what names the rows of taken columns. */
function namingColumns(sheet: SheetState): Set<string> {
  const declared = KINDS[sheet.kind as SheetKind].columns.filter(
    ({ id, choices }) => choices === 'foods' || (sheet.kind === 'foods' && id === 'food'),
  );
  const taken = [...sheet.columns.keys()].flatMap((column) => {
    const { kind, by } = takenIn(sheet, column) ?? {};
    return kind === 'foods' && by !== undefined ? [by] : [];
  });
  return new Set([...declared.map(({ id }) => id), ...taken]);
}

/** What a cell says once `from` is called `to`: 'tomatoes, canned' keeps its way. Null where it names another food. */
function renamed(text: string, from: string, to: string): string | null {
  if (foodKey(text) === from) return to;
  const { food } = withWay(text) ?? {};
  if (food === undefined || foodKey(food) !== from) return null;
  const at = text.toLowerCase().indexOf(food.toLowerCase());
  return at < 0 ? null : text.slice(0, at) + to + text.slice(at + food.length);
}

/**
 * Every cell that names the food `from`, by sheet, with what is to stand there when it is called `to`. What a formula
 * says is left to the formula.
 */
export function namingCells(live: BookReading, from: string, to: string): NamingCells[] {
  const key = foodKey(from);
  if (key === '' || to.trim() === '') return [];
  return live.sheets().flatMap(({ id, title }) => {
    const sheet = live.inside.state.sheets.get(id)!;
    const cells: TypedCell[] = [];
    for (const column of namingColumns(sheet)) {
      for (const [row, { cells: written }] of sheet.rows) {
        const text = written[column];
        if (typeof text !== 'string' || isFormula(text)) continue;
        const typed = renamed(text.trim(), key, to.trim());
        if (typed !== null && typed !== text) cells.push({ row, column, typed });
      }
    }
    return cells.length === 0 ? [] : [{ sheet: id, title, cells }];
  });
}

/** Calls a food otherwise wherever it is named: one step of undo. */
export const renameFood = (places: readonly NamingCells[]): Command => ({
  do: 'all',
  called: say`renaming a food`,
  of: places.map(({ sheet, cells }) => ({ do: 'set cells', sheet, cells })),
});
