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

/** What is named on one sheet and called so on others. */
export type Renamable = 'foods' | 'dishes';

/** Column of its own sheet in which each is named. */
export const NAME_COLUMN: Readonly<Record<Renamable, string>> = { foods: 'food', dishes: 'dish' };

/** What is called otherwise. */
export interface Renaming {
  readonly kind: Renamable;
  readonly from: string;
  readonly to: string;
}

/** Cells of one sheet with the old name, each with what it says under the new one. */
export interface NamingCells {
  readonly sheet: string;
  readonly title: string;
  readonly cells: readonly TypedCell[];
}

/** Columns of a sheet with such names: those declared so, and what names the rows of taken columns. */
function namingColumns(sheet: SheetState, kind: Renamable, sources: readonly string[]): Set<string> {
  const declared = KINDS[sheet.kind as SheetKind].columns.filter(
    ({ id, choices }) => sources.includes(choices ?? '') || (sheet.kind === kind && id === NAME_COLUMN[kind]),
  );
  const taken = [...sheet.columns.keys()].flatMap((column) => {
    const found = takenIn(sheet, column);
    return found?.kind === kind ? [found.by] : [];
  });
  return new Set([...declared.map(({ id }) => id), ...taken]);
}

/** What a cell says under the new name: 'tomatoes, canned' keeps its way. Null where it names something else. */
function renamed(text: string, from: string, to: string): string | null {
  if (foodKey(text) === from) return to;
  const { food } = withWay(text) ?? {};
  if (food === undefined || foodKey(food) !== from) return null;
  const at = text.toLowerCase().indexOf(food.toLowerCase());
  return at < 0 ? null : text.slice(0, at) + to + text.slice(at + food.length);
}

/**
 * Every cell that has the old name, by sheet, with what is to stand there. What a formula says is left to the formula.
 */
export function namingCells(live: BookReading, { kind, from, to }: Renaming): NamingCells[] {
  const key = foodKey(from);
  if (key === '' || to.trim() === '') return [];
  // A dish may be a food of another dish; where a food has the same name, that is what is meant.
  const alsoFoods = kind === 'dishes' && live.namesOfKind('foods').find(from).is === 'none';
  const sources = alsoFoods ? ['dishes', 'foods'] : [kind];
  return live.sheets().flatMap(({ id, title }) => {
    const sheet = live.inside.state.sheets.get(id)!;
    const cells: TypedCell[] = [];
    for (const column of namingColumns(sheet, kind, sources)) {
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

/** Writes the new name wherever the old one stands: one step of undo. */
export const rename = (places: readonly NamingCells[]): Command => ({
  do: 'all',
  called: say`renaming`,
  of: places.map(({ sheet, cells }) => ({ do: 'set cells', sheet, cells })),
});
