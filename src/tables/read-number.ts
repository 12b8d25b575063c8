import { isCode, readNumber } from '../book/entry.js';

/** Marks for the direction of writing and signs without width: seen by nobody, and in the way of reading. */
const UNSEEN = /[\u200b-\u200f\u202a-\u202e\u2060\u2066-\u2069\ufeff]/g;

export const withoutUnseen = (text: string): string => text.replace(UNSEEN, '').trim();

const POINT = /^[-+−]?(?:\d{1,3}(?:,\d{3})+|\d+)?(?:\.\d+)?(?:[eE][-+]?\d{1,3})?\s?%?$/;
const COMMA = /^[-+−]?(?:\d{1,3}(?:[.\u00a0\u202f ’']\d{3})+|\d+)?(?:,\d+)?(?:[eE][-+]?\d{1,3})?\s?%?$/;
const FRACTION = /^-?(?:\d+[ +-])?\d+\s*\/\s*\d+$/;

/** Which ways of writing numbers a text fits. */
export function numberForms(text: string): { readonly point: boolean; readonly comma: boolean } {
  const digits = /\d/.test(text);
  const isFraction = FRACTION.test(text);
  return {
    point: digits && (isFraction || POINT.test(text)) && finite(text, false),
    comma: digits && (isFraction || COMMA.test(text)) && finite(text, true),
  };
}

const finite = (text: string, decimalComma: boolean): boolean => numberFrom(text, decimalComma) !== undefined;

/** A number as written in a file; undefined where the text is none. */
export function numberFrom(text: string, decimalComma: boolean): number | undefined {
  const trimmed = withoutUnseen(text).replace('−', '-');
  if (FRACTION.test(trimmed)) return readNumber(trimmed);
  if (!(decimalComma ? COMMA : POINT).test(trimmed)) return undefined;
  if (!decimalComma) return readNumber(trimmed);
  return readNumber(trimmed.replace(/[.\u00a0\u202f ’'](?=\d{3})/g, '').replace(',', '.'));
}

/** Text in digits that is more likely no amount: a code, or the number of a telephone as in `+4930123456`. */
export const isNoAmount = (text: string): boolean =>
  isCode(text) || /^\+\d{7,}$|^\d{16,}$/.test(text) || (FRACTION.test(text) && !isKitchenFraction(text));

/** A fraction and nothing before it: `1/2`, and `5/4` as well, which may be a day. */
export const isBareFraction = (text: string): boolean => /^\d+\s*\/\s*\d+$/.test(text);

const PARTS: ReadonlySet<number> = new Set([2, 3, 4, 5, 6, 8, 10, 12, 16, 32]);

/** A part of one, of a size in which people measure. */
function isKitchenFraction(text: string): boolean {
  const [, part, of] = /(\d+)\s*\/\s*(\d+)$/.exec(text) ?? [];
  return Number(part) < Number(of) && PARTS.has(Number(of));
}

/** Ways of writing a value that the book does not show again. */
export const ANEW = ['fraction', 'percentage', 'leading zero', 'rounded', 'short year'] as const;
export type Anew = (typeof ANEW)[number];

/** Which of them a number is written in; undefined where it shows as it is written, or as good as. */
export function shownAnew(text: string): Anew | undefined {
  const plain = withoutUnseen(text);
  if (FRACTION.test(plain)) return 'fraction';
  if (plain.endsWith('%')) return 'percentage';
  if (/^[-+]?0\d/.test(plain)) return 'leading zero';
  return plain.replace(/[eE].*$/, '').replace(/^\D*0*\D?0*|\D/g, '').length > 17 ? 'rounded' : undefined;
}
