import { cropCalled, isForeignName } from '../facts/crops.js';
import { findCrop } from '../facts/index.js';
import { pluralOf } from '../facts/names.js';
import { foodKey } from '../live/food-key.js';
import { containerWithId, unitWithId } from '../units/index.js';
import { decimalSign, formOf, messages, phrase, say, spoken } from '../words/index.js';
import { type Exact, ends, mixed, written } from './exact.js';
import type { AnswerUnit } from './types.js';

/** Longest name of a food, crop or dish that stands in a question; longer ones are cut. */
const LONGEST_NAME = 32;
/** Longest word of one: a longer one would not break at the end of a line. */
const LONGEST_WORD = 20;

/** A name as it stands inside a sentence: short enough for a line, and without a capital of its own. */
export function nameFor(written: string): string {
  const words = written.trim().replace(/\s+/g, ' ').split(' ');
  const short = words.map((word) =>
    word.length > LONGEST_WORD ? `${word.slice(0, LONGEST_WORD - 1)}…` : word,
  );
  let name = short.join(' ');
  if (name.length > LONGEST_NAME) name = `${name.slice(0, LONGEST_NAME - 1).trimEnd()}…`;
  const crop = findCrop(written);
  const isProper = crop.ok && /^\p{Lu}/u.test(crop.value.name);
  return isProper || /^\p{Lu}(?:\p{Lu}|$)/u.test(name) ? name : name.charAt(0).toLowerCase() + name.slice(1);
}

/** A container or unit in words; null for an id that is neither. */
export function measureUnit(id: string): AnswerUnit | null {
  const unit = unitWithId(id);
  if (unit) return { one: unit.id, many: unit.plural, measure: unit.id };
  const box = containerWithId(id);
  return box ? { one: box.id, many: box.plural } : null;
}

/** A unit of `src/units` as what an answer is in. */
export const unitOf = (id: string): AnswerUnit => measureUnit(id) ?? { one: id, many: `${id}s` };

/** Things that are only counted. */
export const counted = (one: string, many = `${one}s`): AnswerUnit => ({ one, many });

export const BASKETS = counted(phrase('basket'), phrase('baskets'));
export const BUSHELS = counted('bushel', 'bushels');
export const DAYS = counted(phrase('day'), phrase('days'));
export const PLANTS = counted(phrase('plant'), phrase('plants'));
export const ROWS = counted(phrase('row'), phrase('rows'));
export const SEEDS = counted(phrase('seed'), phrase('seeds'));
export const SHARES = counted(phrase('share'), phrase('shares'));
export const SQUARES = counted(phrase('square'), phrase('squares'));
export const TIMES = counted(phrase('time'), phrase('times'));
export const WEEKS = counted(phrase('week'), phrase('weeks'));
export const YEARS = counted(phrase('year'), phrase('years'));

/** A rate: '4 pounds a week'. */
export const rateOf = (of: AnswerUnit, per: string): AnswerUnit => ({ ...of, per });

/** What somebody called a food, a crop or a unit, as it stands in a sentence in the language spoken now. */
export function named(name: string): string {
  const said = messages();
  if (said === null || said.has(name)) return spoken(name);
  const crop = isForeignName(name) ? null : cropCalled(name);
  if (crop) return spoken(name !== crop.name && /s$/.test(name) ? crop.plural : crop.name);
  // Names that are none of ours keep the capital with which they were written.
  return sentence(name);
}

/** The word for so many: 'quart' of 1, and of a part of one. */
export const wordFor = (n: Exact, { one, many, per }: AnswerUnit): string => {
  const forms = messages()?.get(many);
  const word =
    typeof forms === 'object' ? formOf(forms, n.valueOf()) : named(n.gt(0) && n.lte(1) ? one : many);
  if (per === undefined) return word;
  return /^[aeio]/.test(per) ? say`${word} an ${named(per)}` : say`${word} a ${named(per)}`;
};

/** Cups, spoons and bushels are told in fractions, all else in decimals. */
const IN_FRACTIONS: ReadonlySet<string> = new Set(['cup', 'tablespoon', 'teaspoon', 'bushel']);

/** The word for several, without what it is told for: 'quarts'. */
export const manyOf = ({ many }: AnswerUnit): string => named(many);

/** The number as it is written with this unit: '½' of a cup, '12.5' pounds. */
export const numberIn = (n: Exact, unit: AnswerUnit | null): string =>
  unit && IN_FRACTIONS.has(unit.one) && n.d <= 8n ? mixed(n) : written(n);

/** '3 quarts', '½ cup', '12.5 pounds'. */
export const amount = (n: Exact, unit: AnswerUnit): string => `${numberIn(n, unit)} ${wordFor(n, unit)}`;

/** '= 3' or '≈ 1.33': a value on the way to an answer. */
export const roughly = (n: Exact): string =>
  ends(n, 2) ? `= ${written(n)}` : `≈ ${written(n.round(n.abs().lt(1) ? 3 : 2))}`;

/** Several of a crop: 'tomatoes', 'green beans', 'garlic'. */
export function cropMany(crop: string): string {
  const known = findCrop(crop);
  if (crop.endsWith('…') || (known.ok && known.value.plural === crop)) return named(crop);
  if (known.ok && known.value.name === crop) return named(known.value.plural);
  // The plural of a name that is none of ours is not known in other languages.
  return messages() === null ? pluralOf(crop) : named(crop);
}

const isPieces = (unit: AnswerUnit): boolean => unit.one === 'piece' || unit.one === 'each';

/** '8 quart freezer bags of tomatoes', '20 pounds of carrots', '4 pumpkins'. */
export const amountOfFood = (n: Exact, unit: AnswerUnit, food: string): string =>
  isPieces(unit) ? `${written(n)} ${named(food)}` : `${amount(n, unit)} ${say`of ${named(food)}`}`;

/** 'quart freezer bags of tomatoes', 'pumpkins': of what to ask how many. */
export const unitOfFood = (unit: AnswerUnit, food: string): string =>
  isPieces(unit) ? named(food) : `${manyOf(unit)} ${say`of ${named(food)}`}`;

/** What an answer is in: the food's own name where it is counted by the piece. */
export const unitForFood = (unit: AnswerUnit, food: string): AnswerUnit =>
  isPieces(unit) ? counted(oneOf(food), food) : unit;

/** One of several, for foods that are counted: 'pumpkin'. */
const oneOf = (food: string): string => (food.endsWith('s') ? foodKey(food) || food : food);

/** Numbers one after another: parted so that no decimal sign is taken for what parts them. */
export const inARow = (numbers: readonly string[]): string =>
  numbers.join(decimalSign() === ',' ? '; ' : ', ');

/** The sentence with a capital. */
export const sentence = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);
