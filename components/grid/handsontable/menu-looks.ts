import type { ColumnView } from '../../../src/live/columns.js';
import { say } from '../../../src/words/index.js';
import type { GridCell } from '../grid-view.js';
import type { GridContext } from './context.js';
import type { Items } from './menu-items.js';
import { cellAt, focusedPlace, selectedBlocks } from './places.js';

/** Every selected cell of the book's rows, the focused one first. */
export function chosenCells({ hot, binding }: GridContext): readonly GridCell[] {
  const place = focusedPlace(hot);
  const first = place && cellAt(hot, binding, place.row, place.col);
  const cells = new Map<string, GridCell>();
  const add = (cell: GridCell | null): void => {
    if (cell) cells.set(`${cell.row}/${cell.column}`, cell);
  };
  add(first);
  for (const { top, left, bottom, right } of selectedBlocks(hot))
    for (let row = top; row <= bottom; row++)
      for (let column = left; column <= right; column++) add(cellAt(hot, binding, row, column));
  return [...cells.values()];
}

/** Colours and notes of the chosen cells. */
export function cellLookItems(context: GridContext): Items {
  const { hot, host } = context;
  const onCell = (): boolean => (focusedPlace(hot)?.row ?? -1) >= 0;
  const ask = (what: 'colour' | 'note') => (): void => {
    const cells = chosenCells(context);
    if (cells.length > 0) host.ask({ ask: what, cells });
  };
  const none = (): boolean => chosenCells(context).length === 0;
  return {
    cell_colour: {
      name: () => say`Colour…`,
      callback: ask('colour'),
      hidden: () => !onCell(),
      disabled: none,
    },
    cell_note: { name: () => say`Note…`, callback: ask('note'), hidden: () => !onCell(), disabled: none },
  };
}

/** How a column is looked at: its note, its colours, what stands under it, rows in groups by it. */
export function columnLookItems(
  { host, binding, edits }: GridContext,
  column: () => ColumnView | undefined,
): Items {
  const { sheet } = binding;
  const withColumn = (act: (column: ColumnView) => void) => (): void => {
    const chosen = column();
    if (chosen) act(chosen);
  };
  const by = (): string | undefined => host.live.groupOf(sheet);
  const group = (column: string | null): void => {
    edits.do(
      { do: 'group rows', sheet, by: column },
      column === null
        ? say`Rows stand without groups.`
        : say`Rows stand in groups. The book keeps its own order; Undo or “No groups” ends it.`,
    );
  };
  return {
    column_holds: {
      name: () => say`What this column holds…`,
      callback: withColumn(({ id }) => host.ask({ ask: 'describe column', column: id, field: 'type' })),
      hidden: () => column()?.role !== 'own',
    },
    column_note: {
      name: () => say`Note on this column…`,
      callback: withColumn(({ id }) => host.ask({ ask: 'describe column', column: id, field: 'note' })),
      hidden: () => column()?.role === 'own',
    },
    column_rules: {
      name: () => say`Colour rules…`,
      callback: withColumn(({ id }) => host.ask({ ask: 'colour rules', column: id })),
    },
    column_summary: {
      name: () => say`Sum or mean under it…`,
      callback: withColumn(({ id }) => host.ask({ ask: 'summary', column: id })),
    },
    column_group: {
      name: () => say`Show in groups by this column`,
      callback: withColumn(({ id }) => group(id)),
      hidden: () => column() === undefined || by() === column()?.id,
    },
    groups_end: { name: () => say`No groups`, callback: () => group(null), hidden: () => by() === undefined },
  };
}

/** Folding of groups, by keys and in menus. */
export function groupItems({ groups, hot, binding, host }: GridContext): Items {
  const here = () => {
    const place = focusedPlace(hot);
    const cell = place && cellAt(hot, binding, place.row, place.col);
    return cell ? groups.groupOfRow(cell.row) : undefined;
  };
  const none = (): boolean => groups.by === undefined;
  return {
    group_fold: {
      name: () => {
        const label = here()?.group.label;
        return label ? say`Fold the group ${label}` : say`Fold the group`;
      },
      callback: () => {
        const band = here();
        if (!band) return;
        groups.fold(band.key, true);
        const { label, count } = band.group;
        host.say(count === 1 ? say`${label}: 1 row folded away.` : say`${label}: ${count} rows folded away.`);
      },
      hidden: () => none() || here() === undefined,
    },
    groups_fold: {
      name: () => say`Fold all groups`,
      callback: () => groups.foldAll(true),
      hidden: () => none() || groups.all.every(({ folded }) => folded),
    },
    groups_unfold: {
      name: () => say`Unfold all groups`,
      callback: () => groups.foldAll(false),
      hidden: () => none() || !groups.all.some(({ folded }) => folded),
    },
  };
}
