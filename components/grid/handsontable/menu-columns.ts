import type { Command } from '../../../src/book/index.js';
import type { ColumnView } from '../../../src/live/columns.js';
import { say } from '../../../src/words/index.js';
import type { GridContext } from './context.js';
import { about, type Items, many } from './menu-items.js';

/** Adding, naming, hiding, pinning and removing columns. */
export function columnItems(context: GridContext): Items {
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
    column_before: { name: () => say`Add a column before`, callback: () => ask(column()?.id ?? null) },
    column_after: {
      name: () => say`Add a column after`,
      callback: () => {
        const last = about(context).columns.at(-1);
        ask(binding.all[binding.letterIndex(last?.id ?? '') + 1]?.id ?? null);
      },
    },
    column_rename: {
      name: () => say`Rename this column…`,
      callback: () => {
        const id = column()?.id;
        if (id) host.ask({ ask: 'rename column', column: id });
      },
    },
    column_formula: {
      name: () => say`Formula for the whole column…`,
      callback: () => {
        const id = column()?.id;
        if (id) host.ask({ ask: 'column formula', column: id });
      },
      hidden: () => column()?.role !== 'own',
    },
    column_hide: {
      name: () => many(about(context).columns.length, say`Hide this column`, say`Hide these columns`),
      callback: () => edits.do(describeAll(about(context).columns, { hidden: true })),
      disabled: () => about(context).columns.length >= binding.columns.length,
    },
    columns_show: {
      name: () =>
        many(hiddenHere().length, say`Show the hidden column here`, say`Show the hidden columns here`),
      callback: () => edits.do(describeAll(hiddenHere(), { hidden: false })),
      hidden: () => hiddenHere().length === 0,
    },
    columns_show_all: {
      name: () => say`Show all hidden columns`,
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
      name: () => (pinnedHere() ? say`Let columns scroll again` : say`Keep columns up to here in sight`),
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
      name: () => many(about(context).columns.length, say`Remove this column`, say`Remove these columns`),
      callback: () => {
        const columns = about(context).columns.map(({ id }) => id);
        edits.remove({ do: 'remove columns', sheet, columns }, say`Column removed. Undo brings it back.`);
      },
      hidden: () => {
        const { columns } = about(context);
        return columns.length === 0 || columns.some(({ role, taken }) => role !== 'own' && !taken);
      },
    },
  };
}

/** Rows in another order, and all of them again. */
export function sortItems(context: GridContext): Items {
  const { views, host } = context;
  const sort = (ascending: boolean | null): void => {
    const { column } = about(context);
    if (!column) return;
    views.sort(column.id, ascending);
    host.say(
      ascending === null
        ? say`Rows stand as they were entered.`
        : say`Sorted by “${column.title}”. The book keeps its own order.`,
    );
  };
  return {
    sort_up: { name: () => say`Sort smallest or earliest first`, callback: () => sort(true) },
    sort_down: { name: () => say`Sort largest or latest first`, callback: () => sort(false) },
    sort_none: {
      name: () => say`As entered`,
      callback: () => sort(null),
      hidden: () => views.look.sort === null,
    },
    filter_none: {
      name: () => say`Show all rows again`,
      callback: () => views.clearFilters(),
      hidden: () => views.look.filteredOut === 0,
    },
  };
}
