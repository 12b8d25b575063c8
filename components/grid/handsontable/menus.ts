import { say } from '../../../src/words/index.js';
import { clearBlocks, copyByMenu } from './clipboard.js';
import type { GridContext } from './context.js';
import { fillDown } from './fill.js';
import { replay } from './keys.js';
import { columnItems, sortItems } from './menu-columns.js';
import { about, type Item, type Items, line } from './menu-items.js';
import { cellLookItems, columnLookItems, groupItems } from './menu-looks.js';
import { rowItems } from './menu-rows.js';
import { cellAt, focusedPlace } from './places.js';

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
      name: () => say`Show the working`,
      callback: () => {
        const cell = focused();
        if (cell) host.ask({ ask: 'working', cell });
      },
      hidden: () => {
        const cell = focused();
        return !cell || binding.column(cell.column)?.role !== 'planning';
      },
    },
    copy_cells: {
      name: () => say`Copy`,
      callback: () => copyByMenu(context, 'copy'),
      hidden: () => !onCell(),
    },
    cut_cells: {
      name: () => say`Cut`,
      callback: () => copyByMenu(context, 'cut'),
      hidden: () => !onCell(),
    },
    paste_hint: {
      name: () => say`Paste…`,
      callback: () =>
        host.say(say`To paste, press Ctrl and V (⌘ and V on a Mac): the browser allows no other way.`),
      hidden: () => !onCell(),
    },
    clear: {
      name: () => say`Blank these cells`,
      callback: () => {
        const { block } = about(context);
        if (block) clearBlocks(context, [block]);
      },
      hidden: () => !onCell(),
    },
    fill_down: {
      name: () => say`Fill down`,
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
      name: () => {
        const { undoLabel } = host.live;
        return undoLabel ? say`Undo ${undoLabel}` : say`Undo`;
      },
      callback: () => replay(context, 'undo'),
      disabled: () => host.live.undoLabel === undefined,
    },
    step_again: {
      name: () => {
        const { redoLabel } = host.live;
        return redoLabel ? say`Do again ${redoLabel}` : say`Do again`;
      },
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
