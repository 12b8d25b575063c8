import { differencesAt } from '../book/differences.js';
import type { Change, Json } from '../book/types.js';
import type { LeafMap } from './leaves.js';
import { sameJson } from './plain.js';
import type { Shadow } from './shadow.js';

/** A leaf that a merged update set, and to what. */
export interface Touched {
  readonly map: LeafMap;
  readonly ids: readonly string[];
  readonly value: Json | undefined;
}

interface SheetBefore {
  readonly there: boolean;
  /** The whole sheet; only where it may come or go, for that is costly to look at. */
  readonly whole: Json | undefined;
  readonly fields: Map<string, Json | undefined>;
  readonly columns: Map<string, Json | undefined>;
  readonly rows: Map<string, Json | undefined>;
}

/** Writes merged leaves to the shadow, and says in the book's own terms what that changed. */
export function changesFrom(shadow: Shadow, touched: readonly Touched[]): Change[] {
  const found: Change[] = [];
  const before = new Map<string, SheetBefore>();
  for (const leaf of touched)
    if (leaf.map !== 'book' && leaf.map !== 'settings') remember(shadow, before, leaf, touched);
  for (const { map, ids, value } of touched) {
    if (map === 'book' || map === 'settings') {
      const was = shadow.read(map, ids);
      const path = map === 'settings' ? ['settings', ...ids] : ids;
      if (!sameJson(was, value)) found.push({ path, to: value, was });
    }
    shadow.write(map, ids, value);
  }
  for (const [id, sheet] of before) sheetChanges(shadow, id, sheet, found);
  return found;
}

function remember(
  shadow: Shadow,
  before: Map<string, SheetBefore>,
  leaf: Touched,
  all: readonly Touched[],
): void {
  const [s, b] = leaf.ids;
  if (s === undefined) return;
  let sheet = before.get(s);
  if (!sheet) {
    const mark = shadow.read('sheets', [s]);
    const mayFlip =
      mark !== true || all.some(({ map, ids }) => map === 'sheets' && ids.length === 1 && ids[0] === s);
    const whole = mayFlip ? shadow.sheet(s) : undefined;
    sheet = {
      there: mayFlip ? whole !== undefined : true,
      whole,
      fields: new Map(),
      columns: new Map(),
      rows: new Map(),
    };
    // What comes into a removed column brings it back.
    for (const id of shadow.columnsRemoved(s)) sheet.columns.set(id, shadow.column(s, id));
    before.set(s, sheet);
  }
  if (b === undefined) return;
  if (leaf.map === 'sheets') sheet.fields.set(b, shadow.read('sheets', [s, b]));
  else if (leaf.map === 'columns') sheet.columns.set(b, shadow.column(s, b));
  else sheet.rows.set(b, shadow.row(s, b));
}

function sheetChanges(shadow: Shadow, s: string, before: SheetBefore, found: Change[]): void {
  const path = ['sheets', s];
  const there = shadow.hasSheet(s);
  if (there !== before.there) found.push({ path, to: shadow.sheet(s), was: before.whole });
  if (!there || !before.there) return;
  for (const [field, was] of before.fields) {
    const to = shadow.read('sheets', [s, field]);
    if (!sameJson(was, to)) found.push({ path: [...path, field], to, was });
  }
  for (const [id, was] of before.columns)
    differencesAt([...path, 'columns', id], 'columns', was, shadow.column(s, id), found);
  for (const [id, was] of before.rows)
    differencesAt([...path, 'rows', id], 'rows', was, shadow.row(s, id), found);
}
