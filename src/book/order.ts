import { generateKeyBetween, generateNKeysBetween } from 'fractional-indexing';
import type { OrderedIds } from './ordered-ids.js';

/** Keys for `count` things placed one after another from the start. */
export const firstKeys = (count: number): string[] => generateNKeysBetween(null, null, count);

/** Keys for `count` things placed after `last`. */
export const keysAfter = (last: string | null, count: number): string[] =>
  generateNKeysBetween(last, null, count);

const isKey = (key: string): boolean => {
  try {
    generateKeyBetween(key, null);
    return true;
  } catch {
    return false;
  }
};

/** True for an order key that keys can be made between. */
export const isOrderKey = (key: string): boolean => /^[0-9A-Za-z]{2,5000}$/.test(key) && isKey(key);

/** Keys longer than this are made short again, by giving neighbours new ones too. */
const LONG_KEY = 40;

export interface Placing {
  /** Keys of the things placed, in their order. */
  readonly keys: readonly string[];
  /** Neighbours that get another key, so that there is room: they keep their order. */
  readonly others: readonly (readonly [id: string, key: string])[];
}

/**
 * Order keys for `count` things that come just before `before` (or at the end, when null). Things that
 * `moving` names are the ones placed. Keys grow where things are placed in one spot again and again (a row
 * above the total, day after day); there the neighbours are spread out anew. Two copies edited apart can
 * both have used the same key; the new ones then go before the whole group of equals, for there is no room
 * inside it.
 */
export function placing(
  ordered: OrderedIds,
  before: string | null,
  count: number,
  moving: ReadonlySet<string> = new Set(),
): Placing {
  const place = before === null ? -1 : ordered.indexOf(before);
  const plain = keysBefore(ordered, place < 0 ? ordered.ids.length : place, count);
  if (plain?.every((key) => key.length <= LONG_KEY)) return { keys: plain, others: [] };
  const ids = ordered.ids.filter((id) => !moving.has(id));
  const at = place < 0 ? ids.length : ids.indexOf(before!);
  for (let reach = 8; ; reach *= 2) {
    const from = Math.max(0, at - reach);
    const to = Math.min(ids.length, at + reach);
    const all = from === 0 && to === ids.length;
    // When it comes to all of them, where they stood before no longer matters.
    const low = from > 0 && !all ? ordered.order(ids[from - 1]!)! : null;
    const high = to < ids.length && !all ? ordered.order(ids[to]!)! : null;
    const keys = keysBetween(low, high, to - from + count);
    if (!keys || (!all && keys.some((key) => key.length > LONG_KEY / 2))) continue;
    const left = at - from;
    return {
      keys: keys.slice(left, left + count),
      others: ids.slice(from, to).map((id, i) => [id, keys[i < left ? i : i + count]!] as const),
    };
  }
}

/** Keys that leave every other one as it is; undefined where there is no room. */
function keysBefore(ordered: OrderedIds, at: number, count: number): string[] | undefined {
  const { ids } = ordered;
  let place = at;
  const upper = place < ids.length ? ordered.order(ids[place]!)! : null;
  while (place > 0 && ordered.order(ids[place - 1]!) === upper) place--;
  const lower = place > 0 ? ordered.order(ids[place - 1]!)! : null;
  return keysBetween(lower, upper, count);
}

/** Undefined where two neighbours have one key, or one that is no key (from another copy). */
function keysBetween(low: string | null, high: string | null, count: number): string[] | undefined {
  try {
    return generateNKeysBetween(low, high, count);
  } catch {
    return undefined;
  }
}
