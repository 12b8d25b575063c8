import { readNumber } from '../book/entry.js';

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

/** Text in digits whose digits would be lost as a number: `00417`, a long number of a card. */
export const isCode = (text: string): boolean =>
  /^[-+]?0\d/.test(text) || /\d{16,}/.test(text.replace(/[.,\s]/g, ''));
