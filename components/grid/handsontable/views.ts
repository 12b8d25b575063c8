import type { GridLook } from '../grid-view.js';
import type { SheetBinding } from './binding.js';
import { compareShown } from './compare.js';
import type { Shown } from './line.js';
import type { Hot } from './registry.js';
import { saidValue } from './show.js';

interface Conditions {
  readonly column: string;
  readonly conditions: readonly { readonly name: string; readonly args: unknown[] }[];
  readonly operation: string;
}

/** How the rows are looked at, by ids, to be put back after rows or columns have changed. */
export interface Standing {
  /** Row ids as seen, those that a filter hides at their places too. */
  readonly order: readonly string[];
  readonly hidden: ReadonlySet<string>;
  readonly sort: GridLook['sort'];
  readonly conditions: readonly Conditions[];
}

/**
 * Settings of the sorting plugin: by what the cells show, in the language spoken; blanks last both ways, so that the
 * blank line stays at the end.
 */
export const sortSettings = (binding: SheetBinding) => ({
  headerAction: false,
  sortEmptyCells: true,
  indicator: true,
  compareFunctionFactory: (order: string, { data }: { readonly data?: unknown }) => {
    const column = binding.column(binding.columnOf(data) ?? '');
    const said = (value: Shown): Shown => (column ? saidValue(value, column) : value);
    return (a: Shown, b: Shown) => compareShown(said(a), said(b), order === 'asc');
  },
});

/** Sorting and filtering: views of the rows by the grid library's plugins, never an order of the book. */
export class Views {
  constructor(
    readonly hot: Hot,
    readonly binding: SheetBinding,
    readonly changed: () => void,
  ) {
    hot.addHook('afterFilter', () => {
      this.#showBlankLine();
      this.changed();
    });
    hot.addHook('afterColumnSort', () => this.changed());
  }

  get #sorting() {
    return this.hot.getPlugin('columnSorting');
  }

  get #filters() {
    return this.hot.getPlugin('filters');
  }

  get look(): GridLook {
    return {
      sort: this.#sort(),
      filteredOut: this.#filters.filtersRowsMap?.getTrimmedIndexes().length ?? 0,
    };
  }

  /** A filter leaves the row out. */
  isFilteredOut(row: string): boolean {
    return this.#filters.filtersRowsMap?.getValueAtIndex(this.binding.indexOfRow(row)) === true;
  }

  /** Rows that no filter leaves out; undefined where those are all. */
  shownRows(): readonly string[] | undefined {
    if (this.look.filteredOut === 0) return undefined;
    return this.binding.lines.flatMap(({ id }) => (id === null || this.isFilteredOut(id) ? [] : [id]));
  }

  get isChanged(): boolean {
    const { sort, filteredOut } = this.look;
    return sort !== null || filteredOut > 0;
  }

  sort(column: string, ascending: boolean | null): void {
    const at = this.binding.indexOfColumn(column);
    if (ascending !== null && at < 0) return;
    if (ascending === null) {
      this.#sorting.clearSort();
      this.hot.rowIndexMapper.setIndexesSequence(this.binding.lines.map((_, i) => i));
      this.hot.render();
      return;
    }
    this.#sorting.sort({ column: at, sortOrder: ascending ? 'asc' : 'desc' });
  }

  clearFilters(): void {
    this.#filters.clearConditions();
    this.#filters.filter();
  }

  leaveOut(column: string, value: number | null): void {
    const at = this.binding.indexOfColumn(column);
    if (at < 0) return;
    this.#filters.removeConditions(at);
    if (value !== null) this.#filters.addCondition(at, 'neq', [String(value)], 'conjunction');
    this.#filters.filter();
  }

  isFiltered(column: string): boolean {
    const at = this.binding.indexOfColumn(column);
    return this.#filters.exportConditions().some((each) => each.column === at);
  }

  /** To be asked before the binding reads a new shape. */
  standing(): Standing {
    const { rowIndexMapper: rows } = this.hot;
    const { lines, columns } = this.binding;
    const order: string[] = [];
    const hidden = new Set<string>();
    for (const index of rows.getIndexesSequence()) {
      const id = lines[index]?.id;
      if (id === null || id === undefined) continue;
      order.push(id);
      if (this.isFilteredOut(id)) hidden.add(id);
    }
    const conditions = this.#filters.exportConditions().flatMap((each) => {
      const column = columns[each.column]?.id;
      return column === undefined ? [] : [{ ...each, column }];
    });
    return { order, hidden, sort: this.#sort(), conditions };
  }

  /** Puts rows back as they were seen: new ones beside their neighbours in the book, and never hidden. */
  restore({ order, hidden, sort, conditions }: Standing): void {
    const { rowIndexMapper: rows } = this.hot;
    const { lines, rowCount } = this.binding;
    rows.setIndexesSequence(sort ? [...mergedOrder(order, this.binding), rowCount] : lines.map((_, i) => i));
    this.#filters.importConditions(
      conditions.flatMap((each) => {
        const column = this.binding.indexOfColumn(each.column);
        return column < 0 ? [] : [{ ...each, column }];
      }) as never,
    );
    this.#filters.filtersRowsMap?.setValues(lines.map(({ id }) => id !== null && hidden.has(id)));
    const at = sort ? this.binding.indexOfColumn(sort.column) : -1;
    this.#sorting.setSortConfig(
      at < 0 ? [] : ([{ column: at, sortOrder: sort?.ascending ? 'asc' : 'desc' }] as never),
    );
  }

  #sort(): GridLook['sort'] {
    const [config] = (this.#sorting.getSortConfig() ?? []) as { column: number; sortOrder: string }[];
    const column = config && this.binding.columns[config.column]?.id;
    return config && column !== undefined ? { column, ascending: config.sortOrder === 'asc' } : null;
  }

  #showBlankLine(): void {
    this.#filters.filtersRowsMap?.setValueAtIndex(this.binding.rowCount, false);
  }
}

/** Indexes of the book's rows in the order seen before, with new rows after the row that precedes them. */
function mergedOrder(before: readonly string[], { lines, rowCount }: SheetBinding): number[] {
  const known = new Set(before);
  const following = new Map<string | null, number[]>();
  let last: string | null = null;
  for (let i = 0; i < rowCount; i++) {
    const id = lines[i]!.id!;
    if (known.has(id)) last = id;
    else {
      const list = following.get(last) ?? [];
      list.push(i);
      following.set(last, list);
    }
  }
  const indexes = new Map(lines.map(({ id }, i) => [id, i]));
  const order: number[] = [...(following.get(null) ?? [])];
  for (const id of before) {
    const index = indexes.get(id);
    if (index === undefined) continue;
    order.push(index, ...(following.get(id) ?? []));
  }
  return order;
}
