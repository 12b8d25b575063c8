import { decimalSign, phrase, spoken } from '../words/index.js';
import { type Exact, exact, ratio } from './exact.js';

/** A number that somebody wrote. */
export interface ReadNumber {
  readonly value: Exact;
  readonly form: 'whole' | 'decimal' | 'fraction';
  /** Digits after the point. */
  readonly places: number;
  readonly isPercent: boolean;
  /** What stands behind it: the unit. */
  readonly rest: string;
}

/** Longer than any answer. */
export const LONGEST_ANSWER = 80;

const GLYPHS: Readonly<Record<string, readonly [number, number]>> = {
  '½': [1, 2],
  '⅓': [1, 3],
  '⅔': [2, 3],
  '¼': [1, 4],
  '¾': [3, 4],
  '⅕': [1, 5],
  '⅖': [2, 5],
  '⅗': [3, 5],
  '⅘': [4, 5],
  '⅙': [1, 6],
  '⅚': [5, 6],
  '⅐': [1, 7],
  '⅛': [1, 8],
  '⅜': [3, 8],
  '⅝': [5, 8],
  '⅞': [7, 8],
  '⅑': [1, 9],
  '⅒': [1, 10],
};

const WORDS = [
  phrase('zero'),
  phrase('one'),
  phrase('two'),
  phrase('three'),
  phrase('four'),
  phrase('five'),
  phrase('six'),
  phrase('seven'),
  phrase('eight'),
  phrase('nine'),
  phrase('ten'),
  phrase('eleven'),
  phrase('twelve'),
] as const;

const PARTS: Readonly<Record<string, readonly [number, number]>> = {
  half: [1, 2],
  third: [1, 3],
  quarter: [1, 4],
};

/** Parts in words, as lists: those of other languages are said in theirs. */
const SAID_PARTS = [
  [phrase('half, a half, one half'), 1, 2],
  [phrase('third, a third, one third'), 1, 3],
  [phrase('two thirds'), 2, 3],
  [phrase('quarter, a quarter, one quarter'), 1, 4],
  [phrase('three quarters'), 3, 4],
] as const;

/** Signs that people write for the same thing: one blank, a plain minus, a plain stroke. */
const tidied = (typed: string): string =>
  typed
    .replace(/[\s\u00a0\u202f\u2009]+/g, ' ')
    .replace(/[\u2212\u2013]/g, '-')
    .replace(/\u2044/g, '/')
    .trim();

/** 'About', '=' and the like, which say nothing of the number. */
const LEAD =
  /^(?:(?:about|around|roughly|approximately|approx\.?|circa|ca\.?|etwa|ungefähr|rund|zirka|das sind|das ist|es sind|antwort|it is|it's|is|answer|[a-z] ?(?==)|[=≈~:])\s*)+/i;

const SIGN = '(-|\\+)?';
const DIGITS = '(\\d{1,3}(?:,\\d{3})+|\\d{1,3}(?: \\d{3})+(?!\\d|\\s*/)|\\d{1,12})';
const GLYPH = `[${Object.keys(GLYPHS).join('')}]`;
const MIXED = new RegExp(
  `^${SIGN}(?:${DIGITS}(?: ?- ?| and | und | & | )?)?(?:(\\d{1,9}) ?/ ?(\\d{1,9})|(${GLYPH}))`,
);
const WHOLE_AND_PART = new RegExp(`^${SIGN}${DIGITS}(?: ?- ?| and | und | & | )(\\d{1,9}) ?/ ?(\\d{1,9})`);
const PART = new RegExp(`^${SIGN}(\\d{1,9}) ?/ ?(\\d{1,9})`);
const DECIMAL = new RegExp(`^${SIGN}(?:${DIGITS})?[.,](\\d{1,9})`);
const WHOLE = new RegExp(`^${SIGN}${DIGITS}\\.?(?!\\d)`);
const OUT_OF = /^(\d{1,9}) (?:in|out of|of|von|aus) (?:every )?(\d{1,9})(?!\d)/;

const plain = (digits: string): number => Number(digits.replace(/[ ,]/g, ''));

/** A denominator of nought has no value: null. */
const over = (n: number, d: number): Exact | null => (d === 0 ? null : ratio(n, d));

type Found = { value: Exact | null; form: ReadNumber['form']; places: number; length: number };

const signed = (sign: string | undefined, value: Exact | null): Exact | null =>
  value && sign === '-' ? value.neg() : value;

function inDigits(text: string): Found | null {
  const glyph = MIXED.exec(text);
  if (glyph?.[5]) {
    const [n, d] = GLYPHS[glyph[5]]!;
    const value = ratio(n, d).add(glyph[2] === undefined ? 0 : plain(glyph[2]));
    return { value: signed(glyph[1], value), form: 'fraction', places: 0, length: glyph[0].length };
  }
  const both = WHOLE_AND_PART.exec(text);
  if (both) {
    const part = over(Number(both[3]), Number(both[4]));
    const value = part?.add(plain(both[2]!)) ?? null;
    return { value: signed(both[1], value), form: 'fraction', places: 0, length: both[0].length };
  }
  const part = PART.exec(text);
  if (part) {
    const value = signed(part[1], over(Number(part[2]), Number(part[3])));
    return { value, form: 'fraction', places: 0, length: part[0].length };
  }
  const outOf = OUT_OF.exec(text);
  if (outOf) {
    const value = over(Number(outOf[1]), Number(outOf[2]));
    return { value, form: 'fraction', places: 0, length: outOf[0].length };
  }
  const thousands = /^[-+]?\d{1,3}(?:,\d{3})+(?!\d|[.,]\d)/.exec(text);
  const decimal = thousands ? null : DECIMAL.exec(text);
  if (decimal) {
    const places = decimal[3]!.length;
    const value = exact(decimal[2] === undefined ? 0 : plain(decimal[2])).add(
      ratio(Number(decimal[3]), 10 ** places),
    );
    return { value: signed(decimal[1], value), form: 'decimal', places, length: decimal[0].length };
  }
  const whole = WHOLE.exec(text);
  if (!whole) return null;
  return {
    value: signed(whole[1], ratio(plain(whole[2]!), 1)),
    form: 'whole',
    places: 0,
    length: whole[0].length,
  };
}

function inWords(text: string): Found | null {
  const word = /^\p{L}+/u.exec(text)?.[0].toLowerCase() ?? '';
  const at = WORDS.findIndex((each) => each === word || spoken(each) === word);
  const half = /^(?:(a|one|three|two) )?(half|third|quarter)s?\b(?: (?:of )?an?\b)?/i.exec(text);
  if (half) {
    const [n, d] = PARTS[half[2]!.toLowerCase()]!;
    const times = { a: 1, one: 1, two: 2, three: 3 }[half[1]?.toLowerCase() ?? 'a'] ?? 1;
    return { value: ratio(n * times, d), form: 'fraction', places: 0, length: half[0].length };
  }
  return (
    partSaid(text) ?? (at < 0 ? null : { value: ratio(at, 1), form: 'whole', places: 0, length: word.length })
  );
}

/** 'Zwei Drittel', where that is spoken. */
function partSaid(text: string): Found | null {
  for (const [said, n, d] of SAID_PARTS) {
    const words = spoken(said)
      .split(', ')
      .sort((a, b) => b.length - a.length)
      .find((each) => text.toLowerCase().startsWith(each) && !/^\p{L}/u.test(text.slice(each.length)));
    if (words !== undefined) return { value: ratio(n, d), form: 'fraction', places: 0, length: words.length };
  }
  return null;
}

/** What was typed with the signs of the language spoken now, as it is written in English: `1.234,5` is `1,234.5`. */
export const inEnglishSigns = (typed: string): string =>
  decimalSign() === '.' ? typed : typed.replace(/[.,](?=\d)/g, (sign) => (sign === ',' ? '.' : ','));

/**
 * The number at the beginning of what was typed: whole, decimal (with a point, or a comma that parts no
 * thousands), fraction, mixed number, '1 in 4', or a small one in words. Null where there is none, or none
 * with a value (3/0). What is stored in a lesson is written in English signs, what is typed in those of the language.
 */
export function readNumber(typed: string, by: 'as typed' | 'as stored' = 'as typed'): ReadNumber | null {
  if (typed.length > LONGEST_ANSWER) return null;
  const signs = by === 'as stored' ? typed : inEnglishSigns(typed);
  const text = tidied(signs).replace(LEAD, '');
  const found = inDigits(text) ?? inWords(text);
  if (!found?.value) return null;
  const behind = text.slice(found.length).trim();
  const percent = /^(?:%|per ?cent\b\.?|prozent\b)/i.exec(behind);
  return {
    value: percent ? found.value.div(100) : found.value,
    form: found.form,
    places: found.places,
    isPercent: percent !== null,
    rest: behind.slice(percent?.[0].length ?? 0).trim(),
  };
}
