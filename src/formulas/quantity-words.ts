import { CONTAINERS, containerWithId, type NameIndex, nameIndex, UNITS, unitWithId } from '../units/index.js';
import { phrase } from '../words/index.js';
import { DATE, divided, isPlain, type Quantity, quantityOf } from './quantity.js';

/** Things that are counted or timed, which are no units of measure: one, and many. */
const COUNTED: readonly (readonly [one: string, many: string])[] = [
  [phrase('hour'), phrase('hours')],
  [phrase('day'), phrase('days')],
  [phrase('week'), phrase('weeks')],
  [phrase('month'), phrase('months')],
  [phrase('year'), phrase('years')],
  [phrase('season'), phrase('seasons')],
  [phrase('container'), phrase('containers')],
  [phrase('jar'), phrase('jars')],
  [phrase('lid'), phrase('lids')],
  [phrase('lot'), phrase('lots')],
  [phrase('draw'), phrase('draws')],
  [phrase('load'), phrase('loads')],
  [phrase('batch'), phrase('batches')],
  [phrase('plant'), phrase('plants')],
  [phrase('tree'), phrase('trees')],
  [phrase('seed'), phrase('seeds')],
  [phrase('serving'), phrase('servings')],
  [phrase('share'), phrase('shares')],
  [phrase('person'), phrase('people')],
  [phrase('meal'), phrase('meals')],
  [phrase('hen'), phrase('hens')],
  [phrase('egg'), phrase('eggs')],
  [phrase('animal'), phrase('animals')],
  [phrase('pound per square inch'), phrase('pounds per square inch')],
];

interface Named {
  readonly id: string;
  readonly names: readonly string[];
}

const KNOWN: readonly Named[] = [
  ...UNITS.map(({ id, plural, names }) => ({ id, names: [id, plural, ...names] })),
  ...CONTAINERS.map(({ id, plural }) => ({ id, names: [id, plural] })),
  ...COUNTED.map(([one, many]) => ({ id: one, names: [one, many] })),
  { id: DATE, names: ['date'] },
  // Codes of the OpenFormula standard that are no abbreviation of everyday life.
  { id: 'pound', names: ['lbm'] },
  { id: 'ounce', names: ['ozm'] },
];

const index: NameIndex<Named> = nameIndex(KNOWN, ({ names }) => names);
const PLURALS: ReadonlyMap<string, string> = new Map(COUNTED);

/** 'cups, cooked' and 'pounds of flour' are cups and pounds. */
const bare = (words: string): string => words.replace(/,.*$/, '').trim();

function oneOf(words: string): Quantity | undefined {
  const id = index.find(bare(words))?.id ?? index.find(bare(words).replace(/ of .*$/, ''))?.id;
  return id === undefined ? undefined : quantityOf(id);
}

/**
 * What words say of a unit: 'pounds', 'quart jars a week', 'pounds per plant', '%'. Undefined where they
 * say nothing that can be reckoned with; then nothing is checked.
 */
export function readQuantity(words: string): Quantity | undefined {
  // The same few words are read for every row of a column.
  if (read.size > 2000) read.clear();
  if (!read.has(words)) read.set(words, readAnew(words));
  return read.get(words);
}

const read = new Map<string, Quantity | undefined>();

function readAnew(words: string): Quantity | undefined {
  const whole = oneOf(words);
  if (whole) return whole;
  const parts = words.split(/\s+(?:an?|per)\s+|\s*\/\s*/);
  if (parts.length < 2) return undefined;
  let quantity: Quantity | undefined;
  for (const part of parts) {
    const of = oneOf(part);
    if (!of) return undefined;
    quantity = quantity === undefined ? of : divided(quantity, of);
  }
  return quantity;
}

function word(id: string, many: boolean): string {
  if (id === DATE) return many ? 'dates' : 'date';
  const known = unitWithId(id) ?? containerWithId(id);
  if (known) return many ? known.plural : known.id;
  return many ? (PLURALS.get(id) ?? id) : id;
}

const article = (id: string): string => (/^(?:[aeio]|hour)/.test(id) && !/^one/.test(id) ? 'an' : 'a');

/** 'square' and 'cubic' of a unit, which have no name of their own. */
const power = (exponent: number): string => (exponent === 1 ? '' : exponent === 2 ? '²' : `^${exponent}`);

/** A quantity in words: 'pounds a quart jar', 'quart jars × weeks'. Blank for a plain number. `n` chooses one or many. */
export function quantityInWords(q: Quantity, n = 2): string {
  if (isPlain(q)) return '';
  const above = [...q].filter(([, exponent]) => exponent > 0);
  const below = [...q].filter(([, exponent]) => exponent < 0);
  const top =
    above.length === 0
      ? 'times'
      : above.map(([id, exponent]) => `${word(id, Math.abs(n) !== 1)}${power(exponent)}`).join(' × ');
  return [top, ...below.map(([id, exponent]) => `${article(id)} ${word(id, false)}${power(-exponent)}`)].join(
    ' ',
  );
}

/** 'quart jar' of 'quart jars'; words of no unit that is known stay as they are. */
export function singularOf(words: string): string {
  const id = index.find(words)?.id;
  return id === undefined || word(id, true) !== words ? words : id;
}
