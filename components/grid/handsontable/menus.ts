import { type Command, isFormula, type Raw } from '../../../src/book/index.js';
import type { ColumnView } from '../../../src/live/columns.js';
import { clearBlocks } from './clipboard.js';
import type { GridContext } from './context.js';
import { fillDown } from './fill.js';
import { replay } from './keys.js';
import { cellLookItems, columnLookItems, groupItems } from './menu-looks.js';
import { bookRow, cellAt, focusedPlace, selectedBlock } from './places.js';

interface Item {
  readonly name: string | (() => string);
  readonly callback?: () => void;
  readonly hidden?: () => boolean;
  readonly disabled?: () => boolean;
}

export type Items = Record<string, Item | { readonly name: string }>;

const line = { name: '---------' };

/** Which columns and rows a menu's deeds are about. */
function about({ hot, binding }: GridContext) {
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

const many = (count: number, one: string, more: string): string => (count === 1 ? one : `${more} (${count})`);

/** What a new row is given so that it stands in the same group as the row beside it. */
function groupCells({ host, binding, groups }: GridContext, beside: string | null): Record<string, Raw> {
  const column = beside === null ? undefined : binding.column(groups.by ?? '');
  if (!column || column.role === 'planning') return {};
  const typed = host.live.typed(binding.sheet, beside!, column.id);
  return typed === null || isFormula(typed) ? {} : { [column.id]: typed };
}

function rowItems(context: GridContext): Items {
  const { host, binding, hot } = context;
  const { sheet } = binding;
  const onRows = (): boolean => (focusedPlace(hot)?.row ?? -1) >= 0;
  const insert = (below: boolean): void => {
    const { block } = about(context);
    if (!block) return;
    const at = bookRow(hot, below ? block.bottom : block.top) + (below ? 1 : 0);
    const beside = binding.lines[bookRow(hot, below ? block.bottom : block.top)]?.id ?? null;
    const outcome = host.live.insertRows(sheet, [groupCells(context, beside)], binding.lines[at]?.id ?? null);
    host.say(outcome.ok ? null : outcome.problem);
    const row = outcome.rows[0];
    if (outcome.ok && row !== undefined) {
      const seen = hot.toVisualRow(binding.indexOfRow(row));
      if (seen !== null) hot.selectCell(seen, block.left);
    }
  };
  return {
    insert_above: { name: 'Insert a row above', callback: () => insert(false), hidden: () => !onRows() },
    insert_below: {
      name: 'Insert a row below',
      callback: () => insert(true),
      hidden: () => !onRows(),
      disabled: () => about(context).rows.length === 0,
    },
    rows_remove: {
      name: () => many(about(context).rows.length, 'Remove this row', 'Remove these rows'),
      callback: () => {
        const { rows } = about(context);
        context.edits.remove(
          { do: 'remove rows', sheet, rows },
          `${rows.length === 1 ? 'One row' : `${rows.length} rows`} removed. Undo brings ${rows.length === 1 ? 'it' : 'them'} back.`,
        );
      },
      hidden: () => !onRows(),
      disabled: () => about(context).rows.length === 0,
    },
  };
}

function columnItems(context: GridContext): Items {
  const { host, binding, edits } = context;
  const { sheet } = binding;
  const ask = (before: string | null): void => host.ask({ ask: 'add column', before });
  const column = (): ColumnView | undefined => about(context).column;
  const describeAll = (
    columns: readonly ColumnView[],
    as: { hidden?: boolean; pinned?: boolean },
  ): Command => ({
    do: 'all',
    of: columns.map(({ id }): Command => ({ do: 'describe column', sheet, column: id, as })),
  });
  /** Hidden columns beside and among the chosen ones. */
  const hiddenHere = (): ColumnView[] => {
    const chosen = about(context).columns;
    const from = binding.letterIndex(chosen[0]?.id ?? '');
    const to = binding.letterIndex(chosen.at(-1)?.id ?? '');
    if (from < 0) return [];
    let [start, end] = [from, to];
    while (binding.all[start - 1]?.hidden) start--;
    while (binding.all[end + 1]?.hidden) end++;
    return binding.all.slice(start, end + 1).filter(({ hidden }) => hidden);
  };
  const pinnedHere = (): boolean => column()?.pinned === true;
  return {
    column_before: { name: 'Add a column before', callback: () => ask(column()?.id ?? null) },
    column_after: {
      name: 'Add a column after',
      callback: () => {
        const last = about(context).columns.at(-1);
        ask(binding.all[binding.letterIndex(last?.id ?? '') + 1]?.id ?? null);
      },
    },
    column_rename: {
      name: 'Rename this column…',
      callback: () => {
        const id = column()?.id;
        if (id) host.ask({ ask: 'rename column', column: id });
      },
    },
    column_formula: {
      name: 'Formula for the whole column…',
      callback: () => {
        const id = column()?.id;
        if (id) host.ask({ ask: 'column formula', column: id });
      },
      hidden: () => column()?.role !== 'own',
    },
    column_hide: {
      name: () => many(about(context).columns.length, 'Hide this column', 'Hide these columns'),
      callback: () => edits.do(describeAll(about(context).columns, { hidden: true })),
      disabled: () => about(context).columns.length >= binding.columns.length,
    },
    columns_show: {
      name: () => many(hiddenHere().length, 'Show the hidden column here', 'Show the hidden columns here'),
      callback: () => edits.do(describeAll(hiddenHere(), { hidden: false })),
      hidden: () => hiddenHere().length === 0,
    },
    columns_show_all: {
      name: 'Show all hidden columns',
      callback: () =>
        edits.do(
          describeAll(
            binding.all.filter(({ hidden }) => hidden),
            { hidden: false },
          ),
        ),
      hidden: () => !binding.all.some(({ hidden }) => hidden),
    },
    column_freeze: {
      name: () => (pinnedHere() ? 'Let columns scroll again' : 'Keep columns up to here in sight'),
      callback: () => {
        const upTo = pinnedHere() ? -1 : binding.letterIndex(column()?.id ?? '');
        edits.do({
          do: 'all',
          of: binding.all
            .map((each, i): [ColumnView, boolean] => [each, i <= upTo])
            .filter(([each, pinned]) => each.pinned !== pinned)
            .map(([{ id }, pinned]) => ({ do: 'describe column', sheet, column: id, as: { pinned } })),
        });
      },
    },
    column_remove: {
      name: () => many(about(context).columns.length, 'Remove this column', 'Remove these columns'),
      callback: () => {
        const columns = about(context).columns.map(({ id }) => id);
        edits.remove({ do: 'remove columns', sheet, columns }, 'Column removed. Undo brings it back.');
      },
      hidden: () => {
        const { columns } = about(context);
        return columns.length === 0 || columns.some(({ role, taken }) => role !== 'own' && !taken);
      },
    },
  };
}

function sortItems(context: GridContext): Items {
  const { views, host } = context;
  const sort = (ascending: boolean | null): void => {
    const { column } = about(context);
    if (!column) return;
    views.sort(column.id, ascending);
    host.say(
      ascending === null
        ? 'Rows stand as they were entered.'
        : `Sorted by “${column.title}”. The book keeps its own order.`,
    );
  };
  return {
    sort_up: { name: 'Sort smallest or earliest first', callback: () => sort(true) },
    sort_down: { name: 'Sort largest or latest first', callback: () => sort(false) },
    sort_none: {
      name: 'As entered',
      callback: () => sort(null),
      hidden: () => views.look.sort === null,
    },
    filter_none: {
      name: 'Show all rows again',
      callback: () => views.clearFilters(),
      hidden: () => views.look.filteredOut === 0,
    },
  };
}

/** Leaves out, on a cell, what the column's own menu has; that menu would grow longer than a screen. */
function forHeaders(items: Items, onCell: () => boolean, also: readonly string[]): Items {
  return Object.fromEntries(
    Object.entries(items).map(([key, item]) => {
      const { hidden } = item as Item;
      const outside = (): boolean => onCell() && !also.includes(key);
      return [key, { ...item, hidden: () => outside() || hidden?.() === true }];
    }),
  );
}

/** The menu of cells and row headers. An allow-list: what is not here is not offered. */
export function cellMenu(context: GridContext): Items {
  const { hot, host, binding } = context;
  const focused = () => {
    const place = focusedPlace(hot);
    return place && cellAt(hot, binding, place.row, place.col);
  };
  const onCell = (): boolean => (focusedPlace(hot)?.row ?? -1) >= 0;
  return {
    working: {
      name: 'Show the working',
      callback: () => {
        const cell = focused();
        if (cell) host.ask({ ask: 'working', cell });
      },
      hidden: () => {
        const cell = focused();
        return !cell || binding.column(cell.column)?.role !== 'planning';
      },
    },
    copy_cells: { name: 'Copy', callback: () => hot.getPlugin('copyPaste').copy(), hidden: () => !onCell() },
    cut_cells: { name: 'Cut', callback: () => hot.getPlugin('copyPaste').cut(), hidden: () => !onCell() },
    paste_hint: {
      name: 'Paste…',
      callback: () =>
        host.say('To paste, press Ctrl and V (⌘ and V on a Mac): the browser allows no other way.'),
      hidden: () => !onCell(),
    },
    clear: {
      name: 'Blank these cells',
      callback: () => {
        const { block } = about(context);
        if (block) clearBlocks(context, [block]);
      },
      hidden: () => !onCell(),
    },
    fill_down: {
      name: 'Fill down',
      callback: () => {
        const { block } = about(context);
        if (block) fillDown(context, block);
      },
      hidden: () => !onCell(),
    },
    ...cellLookItems(context),
    line_1: line,
    ...rowItems(context),
    ...groupItems(context),
    line_2: line,
    ...forHeaders(columnItems(context), onCell, ['column_after', 'column_remove']),
    line_3: line,
    ...forHeaders(
      columnLookItems(context, () => about(context).column),
      onCell,
      [],
    ),
    line_4: line,
    ...forHeaders(sortItems(context), onCell, []),
    line_5: line,
    step_back: {
      name: () => `Undo ${host.live.undoLabel ?? ''}`.trim(),
      callback: () => replay(context, 'undo'),
      disabled: () => host.live.undoLabel === undefined,
    },
    step_again: {
      name: () => `Do again ${host.live.redoLabel ?? ''}`.trim(),
      callback: () => replay(context, 'redo'),
      disabled: () => host.live.redoLabel === undefined,
    },
  };
}

/** The menu of a column's header, with its filter. */
export function columnMenu(context: GridContext): Items {
  const filter = [
    'filter_by_condition',
    'filter_operators',
    'filter_by_condition2',
    'filter_by_value',
    'filter_action_bar',
  ];
  return {
    ...sortItems(context),
    line_1: line,
    ...columnItems(context),
    line_2: line,
    ...columnLookItems(context, () => about(context).column),
    ...groupItems(context),
    line_3: line,
    ...Object.fromEntries(filter.map((key) => [key, {} as Item])),
  };
}
