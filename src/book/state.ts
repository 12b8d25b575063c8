import { columnOrderOf } from './kinds/index.js';
import { OrderedIds } from './ordered-ids.js';
import {
  type BookDoc,
  type Change,
  type ColumnDoc,
  type Json,
  type Raw,
  type RowDoc,
  SHEET_KINDS,
  type SheetDoc,
  type SheetKind,
} from './types.js';

/**
 * One sheet in memory. Rows and columns are replaced, never changed in place, so that identity tells what
 * is new: planners keep what they read from a row until the row is another object.
 */
export interface SheetState {
  readonly id: string;
  readonly kind: SheetKind;
  title: string;
  order: string;
  readonly columns: Map<string, ColumnDoc>;
  readonly rows: Map<string, RowDoc>;
  readonly rowOrder: OrderedIds;
  /** Every column of the sheet, those of its kind among them. */
  readonly columnOrder: OrderedIds;
  /** Fields that this version does not know. */
  readonly rest: Record<string, unknown>;
}

type Record_ = Readonly<Record<string, unknown>>;
const own = (record: object, key: string): boolean => Object.hasOwn(record, key);

function sheetState(id: string, doc: SheetDoc): SheetState {
  const { kind, title, order, columns, rows, ...rest } = doc;
  return {
    id,
    kind,
    title,
    order,
    rest,
    columns: new Map(Object.entries(columns)),
    rows: new Map(Object.entries(rows)),
    rowOrder: new OrderedIds(Object.entries(rows).map(([rowId, row]) => [rowId, row.order] as const)),
    columnOrder: new OrderedIds(columnOrderOf(kind, columns)),
  };
}

function sheetDoc(sheet: SheetState): SheetDoc {
  const rows: Record<string, RowDoc> = {};
  for (const id of sheet.rowOrder.ids) rows[id] = sheet.rows.get(id)!;
  return {
    kind: sheet.kind,
    title: sheet.title,
    order: sheet.order,
    ...sheet.rest,
    columns: Object.fromEntries(sheet.columns),
    rows,
  };
}

/** A copy of `record` with one key set, or removed when `value` is undefined. */
function withKey<T extends object>(record: T, key: string, value: unknown): T {
  const { [key]: _, ...others } = record as Record_;
  return (value === undefined ? others : { ...(record as Record_), [key]: value }) as T;
}

/** The whole book in memory, changed only by `apply`. Knows nothing of formulas, plans or history. */
export class BookState {
  readonly id: string;
  title: string;
  readonly version: number;
  settings: Readonly<Record<string, Raw>>;
  readonly sheets = new Map<string, SheetState>();
  /** Goes up when sheets come, go, or change their place or kind. */
  sheetsVersion = 0;
  readonly #rest: Record<string, unknown>;

  constructor(doc: BookDoc) {
    const { format: _, version, id, title, settings, sheets, ...rest } = doc;
    this.id = id;
    this.title = title;
    this.version = version;
    this.settings = settings;
    this.#rest = rest;
    for (const [sheetId, sheet] of Object.entries(sheets))
      this.sheets.set(sheetId, sheetState(sheetId, sheet));
  }

  /** Sheets in their order. */
  sheetIds(): string[] {
    return [...new OrderedIds([...this.sheets.values()].map((s) => [s.id, s.order] as const)).ids];
  }

  raw(sheetId: string, rowId: string, columnId: string): Raw | undefined {
    const cells = this.sheets.get(sheetId)?.rows.get(rowId)?.cells;
    return cells && own(cells, columnId) ? cells[columnId] : undefined;
  }

  /** What stands at a path now, for the `was` of a change. */
  at(path: readonly string[]): Json | undefined {
    const [head, a, part, b, field, c] = path;
    if (head === 'title') return this.title;
    if (head === 'settings') return own(this.settings, a!) ? this.settings[a!] : undefined;
    const sheet = this.sheets.get(a!);
    if (!sheet) return undefined;
    if (part === undefined) return sheetDoc(sheet) as unknown as Json;
    if (part === 'title' || part === 'order' || part === 'kind') return sheet[part];
    if (part === 'columns' || part === 'rows') {
      const item: Record_ | undefined = part === 'columns' ? sheet.columns.get(b!) : sheet.rows.get(b!);
      if (!item || field === undefined) return item as Json | undefined;
      if (part === 'rows' && field === 'cells') return this.raw(a!, b!, c!);
      return own(item, field) ? (item[field] as Json) : undefined;
    }
    return sheet.rest[part] as Json | undefined;
  }

  /** Applies changes in order. A change to a row or sheet that is gone (removed in another copy) is let go. */
  apply(changes: readonly Change[]): void {
    for (const change of changes) this.#applyOne(change);
  }

  toJSON(): BookDoc {
    const sheets: Record<string, SheetDoc> = {};
    for (const id of this.sheetIds()) sheets[id] = sheetDoc(this.sheets.get(id)!);
    return {
      format: 'croftsheet-book',
      version: this.version,
      id: this.id,
      title: this.title,
      ...this.#rest,
      settings: this.settings,
      sheets,
    };
  }

  #applyOne({ path, to }: Change): void {
    const [head, a, part, b, field, c] = path;
    if (head === 'title') this.title = String(to);
    else if (head === 'settings') this.settings = withKey(this.settings, a!, to);
    else if (head === 'sheets') {
      if (part === undefined) {
        this.sheetsVersion++;
        if (to === undefined) this.sheets.delete(a!);
        else this.sheets.set(a!, sheetState(a!, to as unknown as SheetDoc));
        return;
      }
      const sheet = this.sheets.get(a!);
      if (!sheet) return;
      if (part === 'rows') this.#applyToRow(sheet, b!, field, c, to);
      else if (part === 'columns') this.#applyToColumn(sheet, b!, field, to);
      else if (part === 'title') sheet.title = String(to);
      else if (part === 'order') {
        sheet.order = String(to);
        this.sheetsVersion++;
      } else if (part === 'kind') this.#setKind(sheet, to);
      else if (to === undefined) delete sheet.rest[part];
      else sheet.rest[part] = to;
    }
  }

  /** Only another copy can send this; a kind that this version does not know is let go. */
  #setKind(sheet: SheetState, to: Json | undefined): void {
    const kind = SHEET_KINDS.find((each) => each === to);
    if (kind === undefined) return;
    this.sheets.set(sheet.id, sheetState(sheet.id, { ...sheetDoc(sheet), kind }));
    this.sheetsVersion++;
  }

  #applyToRow(
    sheet: SheetState,
    id: string,
    field: string | undefined,
    cell: string | undefined,
    to: Json | undefined,
  ) {
    if (field === undefined) {
      if (to === undefined) {
        sheet.rows.delete(id);
        sheet.rowOrder.remove(id);
      } else {
        const row = to as unknown as RowDoc;
        sheet.rows.set(id, row);
        sheet.rowOrder.set(id, row.order);
      }
      return;
    }
    const row = sheet.rows.get(id);
    if (!row) return;
    const changed =
      field === 'cells' ? { ...row, cells: withKey(row.cells, cell!, to) } : withKey(row, field, to);
    sheet.rows.set(id, changed);
    if (field === 'order') sheet.rowOrder.set(id, String(to));
  }

  #applyToColumn(sheet: SheetState, id: string, field: string | undefined, to: Json | undefined) {
    const column = sheet.columns.get(id);
    if (field === undefined) {
      if (to === undefined) sheet.columns.delete(id);
      else sheet.columns.set(id, to as unknown as ColumnDoc);
    } else {
      const changed = withKey(column ?? {}, field, to);
      // A column of the kind about which nothing is said any more needs no entry.
      if (Object.keys(changed).length === 0) sheet.columns.delete(id);
      else sheet.columns.set(id, changed);
    }
    if (field === undefined || field === 'order') this.#placeColumn(sheet, id);
  }

  #placeColumn(sheet: SheetState, id: string) {
    const entry = columnOrderOf(sheet.kind, Object.fromEntries(sheet.columns)).find(
      ([columnId]) => columnId === id,
    );
    if (entry) sheet.columnOrder.set(id, entry[1]);
    else sheet.columnOrder.remove(id);
  }
}
