import * as Y from 'yjs';
import type { Json } from '../book/types.js';
import { type LeafMap, unstore } from './leaves.js';
import { sameJson } from './plain.js';
import type { Touched } from './remote.js';
import type { Shadow } from './shadow.js';

/** A value that two copies set, each its own way and neither knowing of the other. */
export interface Conflict {
  readonly path: readonly string[];
  readonly mine: Json | undefined;
  readonly theirs: Json | undefined;
}

interface Clash {
  readonly mine: Json | undefined;
  readonly theirs: Json | undefined;
}

const held = (item: Y.Item): Json | undefined => unstore(item.content.getContent().at(-1));

/**
 * Whether what an update did to a key met an edit that its author had not seen. The library keeps a key's
 * values in a chain: whoever sets it anew names the value that stood there. A new value that names an older
 * one than was there was set without knowing of it; `known`, where it is given, says outright what the author
 * had seen. Asked while the change is told, for after that the value that lost is gone.
 */
export function clashAt(
  event: Y.YMapEvent<unknown>,
  key: string,
  known?: ReadonlyMap<number, number>,
): Clash | undefined {
  const top = event.target._map.get(key);
  if (!top) return undefined;
  if (!event.adds(top)) {
    // Ours stands last; an added one before it lost.
    const lost = top.left;
    if (!lost || !event.adds(lost) || top.deleted) return undefined;
    return differing(held(top), held(lost));
  }
  let first: Y.Item = top;
  while (first.left && event.adds(first.left)) first = first.left;
  const before = first.left;
  if (!before || !event.deletes(before)) return undefined;

  const seen = known
    ? before.id.clock < (known.get(before.id.client) ?? 0)
    : first.origin !== null && Y.compareIDs(first.origin, before.lastId);
  return seen || top.deleted ? undefined : differing(held(before), held(top));
}

const differing = (mine: Json | undefined, theirs: Json | undefined): Clash | undefined =>
  mine === undefined || theirs === undefined || sameJson(mine, theirs) ? undefined : { mine, theirs };

/** Fields that place or count, and are nobody's words: either copy's will do. */
const INDIFFERENT = new Set(['order', 'width', 'version', 'references', 'id', 'format', 'allotted', 'gone']);

/** Of a path of single values. */
export const isIndifferent = (path: readonly string[]): boolean =>
  path[0] === 'sheets'
    ? path[4] !== 'cells' && path.length !== 4 && INDIFFERENT.has(path.at(-1)!)
    : path.length === 1 && INDIFFERENT.has(path[0]!);

/** A clash in the book's own terms; none where it is a mark, or a matter of looks. */
export function asConflict(map: LeafMap, ids: readonly string[], clash: Clash): Conflict[] {
  const [a, b, c] = ids as [string, string?, string?];
  const at = (path: readonly string[], field: string | undefined): Conflict[] =>
    field === undefined || INDIFFERENT.has(field) ? [] : [{ path, ...clash }];
  if (map === 'book') return at([a], a);
  if (map === 'settings') return [{ path: ['settings', a], ...clash }];
  if (map === 'sheets') return at(['sheets', a, b!], b);
  if (map === 'cells')
    return c === undefined ? [] : [{ path: ['sheets', a, 'rows', b!, 'cells', c], ...clash }];
  return at(['sheets', a, map, b!, c!], c);
}

/** Rows that merged leaves belong to. */
export function rowsTouched(touched: readonly Omit<Touched, 'value'>[]): (readonly [string, string])[] {
  const rows = new Map<string, readonly [string, string]>();
  for (const { map, ids } of touched) {
    const [sheet, row] = ids;
    if ((map === 'rows' || map === 'cells') && sheet !== undefined && row !== undefined)
      rows.set(`${sheet}/${row}`, [sheet, row]);
  }
  return [...rows.values()];
}

/** Rows that one copy removed and the other edited: they are there, with the edit. `before`: whether each was there. */
export function removalClashes(
  shadow: Shadow,
  rows: readonly (readonly [string, string])[],
  before: readonly boolean[],
): Conflict[] {
  return rows.flatMap(([sheet, id], i) => {
    const row = shadow.row(sheet, id);
    if (row === undefined || typeof shadow.read('rows', [sheet, id]) !== 'string') return [];
    const path = ['sheets', sheet, 'rows', id];
    return [before[i] ? { path, mine: row, theirs: undefined } : { path, mine: undefined, theirs: row }];
  });
}
