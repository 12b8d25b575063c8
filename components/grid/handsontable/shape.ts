import type { GridCell } from '../grid-view.js';
import { columnSettings, frozenColumns } from './columns.js';
import type { GridContext } from './context.js';
import { cellAt } from './places.js';

/** A selected range by ids; null where it ends on a header or on the blank line. */
interface Held {
  readonly from: GridCell | null;
  readonly to: GridCell | null;
  readonly places: readonly [number, number, number, number];
}

function held({ hot, binding }: GridContext): Held[] {
  return (hot.getSelectedRange() ?? []).map(({ from, to }) => ({
    from: cellAt(hot, binding, from.row ?? -1, from.col ?? -1),
    to: cellAt(hot, binding, to.row ?? -1, to.col ?? -1),
    places: [from.row ?? 0, from.col ?? 0, to.row ?? 0, to.col ?? 0],
  }));
}

/** Where a cell is seen now, or null where it is gone or hidden. */
export function placeOf({ hot, binding }: GridContext, cell: GridCell): [number, number] | null {
  const index = binding.indexOfRow(cell.row);
  const column = binding.indexOfColumn(cell.column);
  const row = index < 0 ? null : hot.toVisualRow(index);
  return row === null || row === undefined || column < 0 ? null : [row, column];
}

function hold(context: GridContext, ranges: readonly Held[]): void {
  if (ranges.length === 0) return;
  const { hot } = context;
  const clamp = (row: number, column: number): [number, number] => [
    Math.min(row, hot.countRows() - 1),
    Math.min(column, hot.countCols() - 1),
  ];
  const places = ranges.map(({ from, to, places: [r1, c1, r2, c2] }): [number, number, number, number] => [
    ...((from && placeOf(context, from)) ?? clamp(r1, c1)),
    ...((to && placeOf(context, to)) ?? clamp(r2, c2)),
  ]);
  const moved = places.some((place, i) => place.some((n, at) => n !== ranges[i]!.places[at]));
  if (moved) hot.selectCells(places, false, false);
}

/**
 * Brings the grid to the sheet's rows and columns as they are now, keeping the selection on its cells and
 * the rows in the order seen. Answers whether it painted.
 */
export function reshape(context: GridContext): boolean {
  const { hot, binding, views, painter, groups } = context;
  const ranges = held(context);
  const standing = views.standing();
  const { rows, columns } = binding.read();
  const { narrowed } = binding.widths;
  const frozen = frozenColumns(binding, hot.rootElement.clientWidth);
  const refrozen = frozen !== hot.getSettings().fixedColumnsStart || narrowed !== binding.widths.narrowed;
  const regrouped = groups.isStale;
  if (!rows && !columns && !refrozen && !regrouped) return false;
  hot.batch(() => {
    if (columns || refrozen)
      hot.updateSettings({ columns: columnSettings(binding, painter), fixedColumnsStart: frozen });
    if (rows) hot.updateData([...binding.lines]);
    // Telling the library of columns puts the rows back into their own order.
    if (rows || columns || refrozen) views.restore(standing);
    if (rows || columns || refrozen || regrouped) groups.apply();
    hold(context, ranges);
  });
  hot.rootElement.setAttribute('aria-rowcount', String(binding.lines.length + 1));
  return true;
}

/** Puts rows in their groups anew, keeping the selection on its cells. */
export function regroup(context: GridContext): void {
  if (context.groups.by === undefined) return;
  const ranges = held(context);
  context.hot.batch(() => {
    context.groups.apply();
    hold(context, ranges);
  });
}
