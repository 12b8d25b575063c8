import Fraction from 'fraction.js';
import { localNumber, phrase } from '../words/index.js';

/** A fraction of whole numbers of any size: worksheets reckon without rounding until they are asked to round. */
export type Exact = Fraction;

/** How an answer is to be rounded; `exact`: not at all. */
export const ROUNDINGS = ['exact', 'whole', 'up', 'down', 'tenth', 'hundredth'] as const;
export type Rounding = (typeof ROUNDINGS)[number];

/** A book's numbers are decimals that people typed, or quotients; a ten-thousandth is finer than any of them. */
const FINEST = 10_000;

/** The number as a fraction: `0.625` is 5/8. Quotients of the planners are taken to the nearest ten-thousandth. */
export const exact = (n: number | Exact, over = 1): Exact =>
  (typeof n === 'number' ? new Fraction(Math.round(n * FINEST), FINEST) : n).div(over);

/** `n` over `d`. `d` is not 0. */
export const ratio = (n: number, d: number): Exact => new Fraction(n, d);

export const sum = (all: readonly Exact[]): Exact => all.reduce((a, b) => a.add(b), new Fraction(0));

export const isWhole = (n: Exact): boolean => n.d === 1n;

/** Rounds as asked; a half goes up. */
export function rounded(n: Exact, how: Rounding): Exact {
  switch (how) {
    case 'exact':
      return n;
    case 'whole':
      return n.add(1, 2).floor();
    case 'up':
      return n.ceil();
    case 'down':
      return n.floor();
    case 'tenth':
      return n.mul(10).add(1, 2).floor().div(10);
    case 'hundredth':
      return n.mul(100).add(1, 2).floor().div(100);
  }
}

/** What a question says of rounding, as a sentence; '' where the answer comes out even or stays a fraction. */
export const ROUNDING_WORDS: Readonly<Record<Rounding, string>> = {
  exact: '',
  whole: phrase('Round to the nearest whole number.'),
  up: phrase('Round up to a whole number.'),
  down: phrase('Round down to a whole number.'),
  tenth: phrase('Round to the nearest tenth.'),
  hundredth: phrase('Round to the nearest hundredth.'),
};

/** True where the decimal ends after at most `places` digits. */
export const ends = (n: Exact, places: number): boolean => isWhole(n.mul(10 ** places));

const GLYPHS: Readonly<Record<string, string>> = {
  '1/2': '½',
  '1/3': '⅓',
  '2/3': '⅔',
  '1/4': '¼',
  '3/4': '¾',
  '1/8': '⅛',
  '3/8': '⅜',
  '5/8': '⅝',
  '7/8': '⅞',
};

/** A fraction or mixed number as people write it: `17⅔`, `¾`, `1 36/53`. */
export function mixed(n: Exact): string {
  if (isWhole(n)) return String(n.n * n.s);
  const whole = n.n / n.d;
  const part = `${n.n % n.d}/${n.d}`;
  const glyph = GLYPHS[part];
  const sign = n.s < 0n ? '−' : '';
  if (glyph) return `${sign}${whole === 0n ? '' : whole}${glyph}`;
  return `${sign}${whole === 0n ? '' : `${whole} `}${part}`;
}

/**
 * The number in digits where its decimal ends soon, else as a mixed number. Thousands are set apart, by the signs of
 * the language spoken now.
 */
export function written(n: Exact): string {
  if (!ends(n, 3)) return mixed(n);
  const [whole = '0', part] = n.toString().split('.');
  const apart = whole.replace(/\B(?=(\d{3})+$)/g, ',');
  return localNumber(part === undefined ? apart : `${apart}.${part}`);
}
