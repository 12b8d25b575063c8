import { colourField, noteField } from '../book/own-column.js';
import type { Json } from '../book/types.js';
import type { LeafMap, Mark } from './leaves.js';
import { digestOf, put } from './plain.js';

/** A sheet, column or row: its mark and its own fields. */
interface Thing {
  mark: Mark | undefined;
  readonly fields: Map<string, Json>;
}
interface Row extends Thing {
  readonly cells: Map<string, Json>;
}
interface Sheet extends Thing {
  readonly columns: Map<string, Thing>;
  readonly rows: Map<string, Row>;
}

const thing = (): Thing => ({ mark: undefined, fields: new Map() });
const row = (): Row => ({ ...thing(), cells: new Map() });
const sheet = (): Sheet => ({ ...thing(), columns: new Map(), rows: new Map() });

function at<T>(map: Map<string, T>, id: string, make: () => T): T {
  let found = map.get(id);
  if (!found) {
    found = make();
    map.set(id, found);
  }
  return found;
}

function plain(map: ReadonlyMap<string, Json>): Record<string, Json> {
  const object: Record<string, Json> = {};
  for (const [key, value] of map) put(object, key, value);
  return object;
}

function plainOf<T>(
  map: ReadonlyMap<string, T>,
  view: (item: T, id: string) => Json | undefined,
): Record<string, Json> {
  const object: Record<string, Json> = {};
  for (const [key, item] of map) {
    const value = view(item, key);
    if (value !== undefined) put(object, key, value);
  }
  return object;
}

const everyView = {
  column: (column: Thing): Json => plain(column.fields),
  row: (row: Row): Json => ({ ...plain(row.fields), cells: plain(row.cells) }),
  sheet: (sheet: Sheet): Json => ({
    ...plain(sheet.fields),
    columns: plainOf(sheet.columns, (column, id) => columnSeen(sheet, id, column)),
    rows: plainOf(sheet.rows, (row) => seen(row, everyView.row)),
  }),
};

/** What the thing looks like, or undefined when it was never there or is removed and unchanged since. */
function seen<T extends Thing>(item: T | undefined, view: (item: T) => Json): Json | undefined {
  if (item?.mark === undefined) return undefined;
  if (item.mark === true) return view(item);
  const value = view(item);
  return item.mark === markOf(value) ? undefined : value;
}

/**
 * The same of a column. One of the person's own that was removed is there all the same while a row holds
 * something in it (an entry, a note, a colour): what somebody else wrote there, not knowing of the removal.
 */
function columnSeen(of: Sheet, id: string, column: Thing | undefined): Json | undefined {
  const view = seen(column, everyView.column);
  if (view !== undefined || column?.mark === undefined || column.fields.get('own') !== true) return view;
  for (const each of of.rows.values())
    if (holdsIn(each, id) && seen(each, everyView.row) !== undefined) return everyView.column(column);
  return undefined;
}

/** An entry, a note or a colour. */
const holdsIn = ({ cells, fields }: Row, column: string): boolean =>
  cells.has(column) || fields.has(noteField(column)) || fields.has(colourField(column));

const look = <T extends Thing>(item: T | undefined, view: (item: T) => Json, removed: boolean) =>
  removed && item ? view(item) : seen(item, view);

/** The mark of a thing removed when it looked like this. */
export const markOf = (view: Json): Mark => digestOf(view, 12);

/** The leaves of the mirror as a tree in memory: the shared maps can find a leaf, but not a row's leaves. */
export class Shadow {
  readonly fields = new Map<string, Json>();
  readonly settings = new Map<string, Json>();
  readonly sheets = new Map<string, Sheet>();

  /** Sets a leaf (removes it, when undefined). `ids` as in the map's keys; other lengths are let go. */
  write(map: LeafMap, ids: readonly string[], value: Json | undefined): void {
    const [s, b, c] = ids;
    if (s === undefined) return;
    if (map === 'book' || map === 'settings') set(map === 'book' ? this.fields : this.settings, s, value);
    else if (map === 'cells') {
      if (b !== undefined && c !== undefined) set(at(at(this.sheets, s, sheet).rows, b, row).cells, c, value);
    } else if (map === 'sheets') writeThing(at(this.sheets, s, sheet), b, value);
    else if (b !== undefined) {
      const of = at(this.sheets, s, sheet);
      writeThing(map === 'rows' ? at(of.rows, b, row) : at(of.columns, b, thing), c, value);
    }
  }

  read(map: LeafMap, ids: readonly string[]): Json | undefined {
    const [s, b, c] = ids as [string, string, string];
    if (map === 'book') return this.fields.get(s);
    if (map === 'settings') return this.settings.get(s);
    const of = this.sheets.get(s);
    if (map === 'sheets') return readThing(of, b);
    if (map === 'cells') return of?.rows.get(b)?.cells.get(c);
    return readThing((map === 'rows' ? of?.rows : of?.columns)?.get(b), c);
  }

  /** What a sheet looks like, undefined when it is not there; with `removed`, also what it held when removed. */
  sheet(id: string, removed = false): Json | undefined {
    return look(this.sheets.get(id), everyView.sheet, removed);
  }

  column(sheetId: string, id: string, removed = false): Json | undefined {
    const of = this.sheets.get(sheetId);
    const column = of?.columns.get(id);
    return removed || !of ? look(column, everyView.column, removed) : columnSeen(of, id, column);
  }

  /** Columns that were removed, whether or not something brought them back. */
  columnsRemoved(sheetId: string): string[] {
    const columns = this.sheets.get(sheetId)?.columns ?? [];
    return [...columns].flatMap(([id, { mark }]) => (typeof mark === 'string' ? [id] : []));
  }

  row(sheetId: string, id: string, removed = false): Json | undefined {
    return look(this.sheets.get(sheetId)?.rows.get(id), everyView.row, removed);
  }

  /** Whether a row that is there holds something in a column. */
  rowHolds(sheetId: string, id: string, column: string): boolean {
    const found = this.sheets.get(sheetId)?.rows.get(id);
    return found !== undefined && holdsIn(found, column) && this.hasRow(sheetId, id);
  }

  /** Whether it is there; only what was once removed must be looked at whole. */
  hasSheet(id: string): boolean {
    return this.sheets.get(id)?.mark === true || this.sheet(id) !== undefined;
  }

  hasRow(sheetId: string, id: string): boolean {
    return this.sheets.get(sheetId)?.rows.get(id)?.mark === true || this.row(sheetId, id) !== undefined;
  }

  /** A fresh plain copy of everything that is there. */
  book(): Record<string, Json> {
    return {
      ...plain(this.fields),
      settings: plain(this.settings),
      sheets: plainOf(this.sheets, (sheet) => seen(sheet, everyView.sheet)),
    };
  }
}

const set = (map: Map<string, Json>, key: string, value: Json | undefined): void => {
  if (value === undefined) map.delete(key);
  else map.set(key, value);
};

function writeThing(item: Thing, field: string | undefined, value: Json | undefined): void {
  if (field !== undefined) set(item.fields, field, value);
  else item.mark = value === true || typeof value === 'string' ? value : undefined;
}

const readThing = (item: Thing | undefined, field: string | undefined): Json | undefined =>
  field === undefined ? item?.mark : item?.fields.get(field);
