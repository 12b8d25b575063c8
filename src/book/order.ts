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
export const isOrderKey = (key: string): boolean => /^[0-9A-Za-z]{2,200}$/.test(key) && isKey(key);

/**
 * `count` order keys that fall just before `before` (or at the end, when null). Two copies edited apart can
 * both have used the same key; the new ones then go before the whole group of equals, for there is no room
 * inside it.
 */
export function keysBefore(ordered: OrderedIds, before: string | null, count: number): string[] {
  const { ids } = ordered;
  let place = before === null ? ids.length : ordered.indexOf(before);
  if (place < 0) place = ids.length;
  const upper = place < ids.length ? ordered.order(ids[place]!)! : null;
  while (place > 0 && ordered.order(ids[place - 1]!) === upper) place--;
  const lower = place > 0 ? ordered.order(ids[place - 1]!)! : null;
  return generateNKeysBetween(lower, upper, count);
}
