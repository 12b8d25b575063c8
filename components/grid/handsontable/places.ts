import type { GridCell } from '../grid-view.js';
import type { SheetBinding } from './binding.js';
import type { Line } from './line.js';
import type { Hot } from './registry.js';

/** Corners of a block of cells as seen, both included; sorting and filtering counted in. */
export interface Block {
  readonly top: number;
  readonly left: number;
  readonly bottom: number;
  readonly right: number;
}

/** The selected block without its headers, or null. */
export function selectedBlock(hot: Hot): Block | null {
  const range = hot.getSelectedRangeActive();
  if (!range) return null;
  const from = range.getTopStartCorner();
  const to = range.getBottomEndCorner();
  if ((to.row ?? -1) < 0 || (to.col ?? -1) < 0) return null;
  return {
    top: Math.max(0, from.row ?? 0),
    left: Math.max(0, from.col ?? 0),
    bottom: to.row!,
    right: to.col!,
  };
}

/** Every selected block: with the control key several can be. */
export function selectedBlocks(hot: Hot): Block[] {
  return (hot.getSelectedRange() ?? []).flatMap((range) => {
    const from = range.getTopStartCorner();
    const to = range.getBottomEndCorner();
    if ((to.row ?? -1) < 0 || (to.col ?? -1) < 0) return [];
    return [
      { top: Math.max(0, from.row ?? 0), left: Math.max(0, from.col ?? 0), bottom: to.row!, right: to.col! },
    ];
  });
}

/** Index in the book's own order of the line seen at a place; `rowCount` for the blank line. */
export const bookRow = (hot: Hot, row: number): number => hot.toPhysicalRow(row);

export const lineAt = (hot: Hot, binding: SheetBinding, row: number): Line | undefined =>
  binding.lines[bookRow(hot, row)];

/** The cell of the book at a place; null on headers and on the blank line. */
export function cellAt(hot: Hot, binding: SheetBinding, row: number, column: number): GridCell | null {
  if (row < 0 || column < 0) return null;
  const id = lineAt(hot, binding, row)?.id;
  const view = binding.columns[column];
  return id && view ? { row: id, column: view.id } : null;
}

/** The cell that has the focus within the selection. */
export function focusedPlace(hot: Hot): { row: number; col: number } | null {
  const highlight = hot.getSelectedRangeActive()?.highlight;
  return highlight && highlight.row !== null && highlight.col !== null
    ? { row: highlight.row, col: highlight.col }
    : null;
}
