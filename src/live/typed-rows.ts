import {
  type BookState,
  type CellAddress,
  type CellValue,
  isFormula,
  KINDS,
  type RowDoc,
  type SheetKind,
  type SheetState,
} from '../book/index.js';
import type { Draw } from '../planning/types.js';
import type { Problem } from '../problem.js';
import { READERS, type ReadRow, type TypedRow } from './readers.js';

/** A kind of sheet whose rows planners read. */
export type ReadKind = Exclude<SheetKind, 'own'>;
export const READ_KINDS = Object.keys(READERS) as ReadKind[];

export type ComputedValue = (address: CellAddress) => CellValue;

/** Rows by sheet id; null: every row of every sheet. */
export type Touched = ReadonlyMap<string, ReadonlySet<string>> | null;

interface Store<K extends ReadKind> {
  readonly rows: Map<string, ReadRow<TypedRow[K]> & { readonly order: string }>;
  /** Rows to be read every time: a formula gives one of their cells. */
  readonly volatile: Set<string>;
  /** Goes up whenever a row is read again. */
  readings: number;
  /** Rows read again, or gone, since somebody last took note of it. */
  reread: Set<string>;
}

/** The book's rows as planners read them, read again only where they changed. */
export class TypedRows {
  readonly #state: BookState;
  readonly #computed: ComputedValue;
  readonly #stores: { readonly [K in ReadKind]: Store<K> };
  readonly #sheets = new Map<ReadKind, SheetState>();
  #sheetsVersion = -1;

  constructor(state: BookState, computed: ComputedValue) {
    this.#state = state;
    this.#computed = computed;
    const empty = () => ({
      rows: new Map(),
      volatile: new Set<string>(),
      readings: 0,
      reread: new Set<string>(),
    });
    this.#stores = Object.fromEntries(READ_KINDS.map((kind) => [kind, empty()])) as never;
  }

  /** The sheet of a kind; the first in order where a book has several. */
  sheet(kind: ReadKind): SheetState | undefined {
    if (this.#sheetsVersion !== this.#state.sheetsVersion) {
      this.#sheets.clear();
      this.#sheetsVersion = this.#state.sheetsVersion;
    }
    const known = this.#sheets.get(kind);
    if (known) return known;
    let found: SheetState | undefined;
    for (const sheet of this.#state.sheets.values()) {
      if (sheet.kind === kind && (!found || isBefore(sheet, found))) found = sheet;
    }
    if (found) this.#sheets.set(kind, found);
    return found;
  }

  kindOf(sheetId: string): ReadKind | undefined {
    const kind = this.#state.sheets.get(sheetId)?.kind;
    return kind !== undefined && kind !== 'own' && this.sheet(kind)?.id === sheetId ? kind : undefined;
  }

  /** Another text as soon as a row of the kind may have changed, in any cell. */
  version(kind: ReadKind): string {
    return `${this.sheet(kind)?.id ?? ''}/${this.#stores[kind].readings}`;
  }

  /** Rows of a kind that were read again, or are gone, since this was last asked. */
  takeReread(kind: ReadKind): ReadonlySet<string> {
    const { reread } = this.#stores[kind];
    this.#stores[kind].reread = new Set();
    return reread;
  }

  get<K extends ReadKind>(kind: K, id: string): TypedRow[K] | undefined {
    return this.#stores[kind].rows.get(id)?.typed;
  }

  problem(kind: ReadKind, id: string, column: string): Problem | undefined {
    return this.#stores[kind].rows.get(id)?.problems[column];
  }

  /** Rows of a kind, in no order that means anything. */
  values<K extends ReadKind>(kind: K): TypedRow[K][] {
    return [...this.#stores[kind].rows.values()].map(({ typed }) => typed as TypedRow[K]);
  }

  /** Rows of a kind in the order of the sheet. */
  inOrder<K extends ReadKind>(kind: K): TypedRow[K][] {
    const { rows } = this.#stores[kind];
    return (this.sheet(kind)?.rowOrder.ids ?? []).flatMap((id) => {
      const row = rows.get(id);
      return row ? [row.typed as TypedRow[K]] : [];
    });
  }

  /** Reads the rows of a kind that may have changed; answers those that are other, new or gone now. */
  reread(kind: ReadKind, touched: Touched): Set<string> {
    const sheet = this.sheet(kind);
    const store = this.#stores[kind];
    const ids =
      touched === null
        ? [...store.rows.keys(), ...(sheet?.rows.keys() ?? [])]
        : [...((sheet && touched.get(sheet.id)) ?? []), ...store.volatile];
    const changed = new Set<string>();
    if (touched === null || ids.length > 0) store.readings++;
    for (const id of ids) store.reread.add(id);
    for (const id of new Set(ids)) if (this.#readOne(kind, sheet, id)) changed.add(id);
    return changed;
  }

  #readOne(kind: ReadKind, sheet: SheetState | undefined, id: string): boolean {
    const store = this.#stores[kind] as Store<ReadKind>;
    const row = sheet?.rows.get(id);
    if (!sheet || !row) {
      store.volatile.delete(id);
      return store.rows.delete(id);
    }
    if (KINDS[kind].columns.some(({ id: column, role }) => role === 'kept' && isFormula(row.cells[column]))) {
      store.volatile.add(id);
    } else store.volatile.delete(id);
    const read = readRow(kind, id, row, (column) => this.#computed({ sheet: sheet.id, row: id, column }));
    const was = store.rows.get(id);
    const { order } = row;
    // An equal row keeps its identity, so that what hangs on it need not be planned again. One that moved is
    // another: the first of two Foods rows counts, and what a meal needs is named in the order of its dishes.
    const same = was?.order === order && JSON.stringify(was.typed) === JSON.stringify(read.typed);
    store.rows.set(id, same ? { ...read, order, typed: was.typed } : { ...read, order });
    return !same;
  }
}

/** Ties by id, as sheets are shown. */
const isBefore = (a: SheetState, b: SheetState): boolean =>
  a.order === b.order ? a.id < b.id : a.order < b.order;

const readRow = (
  kind: ReadKind,
  id: string,
  row: RowDoc,
  cells: (column: string) => CellValue,
): ReadRow<TypedRow[ReadKind]> => READERS[kind](id, cells, row.allotted ?? null);

/** A draw that leaves its food or way to be told by the rest of the book, whether or not it has an amount yet. */
export const hangsOnOthers = (draw: Draw): boolean =>
  draw.food === null ? draw.lot !== null : draw.way === null;
