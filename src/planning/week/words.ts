import { andList, asFraction, containerWithId, unitWithId } from '../../units/index.js';
import { say, spoken } from '../../words/index.js';
import { mediumDay } from '../day-words.js';
import { measureName } from '../measure.js';
import type { DayNumber, WayKept } from '../types.js';

/** `1½ quart jars`, in halves, quarters, eighths and thirds where it is near one. */
export function amountWords(n: number, measure: string): string {
  const text = asFraction(n, measure);
  // Nobody cooks to a thousandth of a pound.
  return /^0\.\d{3}/.test(text) && n >= 0.1 ? asFraction(Math.round(n * 100) / 100, measure) : text;
}

/** 'tomatoes (canned)'; the food alone where the way is not said. */
export const foodWords = (name: string, way: WayKept | null): string =>
  way === null ? name : `${name} (${spoken(way)})`;

/** '2 quart jars of tomatoes (canned)'; '3 onions'. */
export function needWords(amount: number, measure: string, name: string, way: WayKept | null): string {
  const counted = isCount(measure);
  const food = foodWords(name, way);
  return counted ? `${asFraction(amount)} ${food}` : say`${amountWords(amount, measure)} of ${food}`;
}

/** Pieces of a thing, which need no word between the number and its name. */
export const isCount = (measure: string): boolean => measure === 'each' || measure === 'piece';

const PERISHES: ReadonlySet<WayKept> = new Set(['canned', 'frozen', 'fermented', 'fresh']);

/** True for ways of keeping that end once the container is opened or thawed; dry and rendered goods keep on. */
export const perishesOpened = (way: WayKept): boolean => PERISHES.has(way);

/** True for what is opened whole: a jar, a can, a bag. */
export function isClosed(container: string): boolean {
  const family = containerWithId(container)?.family;
  return family === 'jar' || family === 'can' || family === 'bag';
}

/**
 * What is left in an opened container, in kitchen measures, exact to the teaspoon: '2 cups', '1 cup and 5
 * teaspoons'. Of a container without a volume, as a part of it.
 */
export function leftoverWords(part: number, container: string): string {
  const holds = containerWithId(container)?.holds;
  const unit = holds ? unitWithId(holds.unit) : undefined;
  if (!holds || unit?.dimension !== 'volume') return `${amountWords(part, container)}`;
  const teaspoon = unitWithId('teaspoon')!.factor;
  const spoons = Math.round((part * holds.amount * unit.factor) / teaspoon);
  const cups = Math.floor(spoons / 48);
  const rest = spoons - cups * 48;
  const words: string[] = [];
  // Quarter cups are measured as readily as cups; what is less is spooned out.
  const quarters = Math.floor(rest / 12);
  const cupsIn = cups + quarters / 4;
  if (cupsIn > 0) words.push(asFraction(cupsIn, 'cup'));
  const small = rest - quarters * 12;
  const tablespoons = Math.floor(small / 3);
  if (tablespoons > 0) words.push(asFraction(tablespoons, 'tablespoon'));
  if (small % 3 > 0) words.push(asFraction(small % 3, 'teaspoon'));
  if (words.length === 0) return say`under a teaspoon`;
  return andList(words);
}

/** A lot in words: 'quart jar put up 2025-08-14, cellar'. */
export function lotWords(
  lot: { readonly container: string; readonly putUpOn: DayNumber | null; readonly place: string },
  name: string,
): string {
  const when = lot.putUpOn === null ? say`undated` : say`put up ${mediumDay(lot.putUpOn)}`;
  const where = lot.place === '' ? '' : `, ${lot.place}`;
  return `${name}, ${measureName(lot.container, 1)}, ${when}${where}`;
}
