import type { ColumnView } from '../../../src/live/columns.js';
import type { GridContext } from './context.js';
import { bookRow, focusedPlace, selectedBlock } from './places.js';

/** A line of a menu, as the grid library takes it. */
export interface Item {
  readonly name: string | (() => string);
  readonly callback?: () => void;
  readonly hidden?: () => boolean;
  readonly disabled?: () => boolean;
}

/** A menu, by keys of our own. */
export type Items = Record<string, Item | { readonly name: string }>;

/** Between parts of a menu. */
export const line = { name: '---------' };

/** Which columns and rows a menu's deeds are about. */
export function about({ hot, binding }: GridContext) {
  const block = selectedBlock(hot);
  const place = focusedPlace(hot);
  const range = hot.getSelectedRangeActive();
  const left = block?.left ?? place?.col ?? -1;
  const right = block?.right ?? range?.getBottomEndCorner().col ?? left;
  const columns = left < 0 ? [] : binding.columns.slice(left, Math.max(left, right) + 1);
  const rows: string[] = [];
  if (block) {
    for (let row = block.top; row <= block.bottom; row++) {
      const id = binding.lines[bookRow(hot, row)]?.id;
      if (id) rows.push(id);
    }
  }
  return { block, place, columns, rows, column: columns[0] as ColumnView | undefined };
}

/** One thing, or so many of them. */
export const many = (count: number, one: string, more: string): string =>
  count === 1 ? one : `${more} (${count})`;
