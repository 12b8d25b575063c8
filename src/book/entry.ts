import { toIsoDay } from '../planning/dates.js';
import { type DateOrder, formatMonthDay, parseDay, parseMonthDay } from '../planning/parse-date.js';
import { decimalSign, groupSign } from '../words/index.js';
import type { Typed } from './commands.js';
import type { ColumnType } from './kinds/index.js';
import type { Raw } from './types.js';

const NUMBER = /^[-+]?(?:\d{1,3}(?:,\d{3})+|\d*)(?:\.\d+)?(?:e[-+]?\d{1,3})?$/i;
const YES = /^(true|yes|y|ja|j|x|✓|✔)$/i;
const NO = /^(false|no|nein|n)$/i;

/**
 * The same in English signs, where another language is spoken: there `1.500,25` and `1,5`. A point that cannot part
 * thousands is the decimal sign that it is everywhere else, so `1.5` stays 1.5 and only `1.500` is another number.
 */
function englishSigns(text: string): string {
  const [decimal, group] = [decimalSign(), groupSign()];
  if (decimal === '.' && group === ',') return text;
  if (decimal !== ',' || !/^[-+]?[\d.\s\u00a0\u202f]*(?:,\d*)?$/.test(text)) return text;
  const [whole = '', part] = text.split(',');
  if (part === undefined && !/^[-+]?\d{1,3}(?:[.\s\u00a0\u202f]\d{3})+$/.test(whole)) return text;
  const grouped = /^[-+]?\d{1,3}(?:[.\s\u00a0\u202f]\d{3})+$/.test(whole) || /^[-+]?\d*$/.test(whole);
  return grouped ? `${whole.replace(/[^\d+-]/g, '')}${part === undefined ? '' : `.${part}`}` : text;
}

/**
 * A number as people write one: `1,200`, `.5`, `3 1/2`, `1/4`, `12 %`. Undefined when it is none.
 */
export function readNumber(text: string): number | undefined {
  const trimmed = text.trim();
  const mixed = /^(-?)(?:(\d+)[ +-])?(\d+)\s*\/\s*(\d+)$/.exec(trimmed);
  if (mixed && Number(mixed[4]) > 0) {
    const value = (mixed[1] ? -1 : 1) * (Number(mixed[2] ?? 0) + Number(mixed[3]) / Number(mixed[4]));
    return Number.isFinite(value) ? value + 0 : undefined;
  }
  const percent = /^(.*\d)\s*%$/.exec(trimmed);
  const plain = percent ? percent[1]! : trimmed;
  if (!/\d/.test(plain) || !NUMBER.test(plain)) return undefined;
  // Adding 0 makes 0 of -0, which a file could not hold.
  const value = Number(plain.replaceAll(',', '')) + 0;
  return Number.isFinite(value) ? (percent ? value / 100 : value) : undefined;
}

/** The same as somebody types it in the language spoken now: in German `1.200,5`. What is stored never goes through this. */
export const readTypedNumber = (text: string): number | undefined => {
  const percent = /^(.*\d)\s*%$/.exec(text.trim());
  return readNumber(percent ? `${englishSigns(percent[1]!.trim())} %` : englishSigns(text.trim()));
};

/** Whether a whole number has more digits than a number holds, so that others would stand in their place. */
export function losesDigits(text: string): boolean {
  const plain = text.replace(/[,\s]/g, '').replace(/^[-+−]?0*/, '');
  if (!/^\d{16,}(?:\.\d+)?$/.test(plain)) return false;
  const value = Number(plain);
  return String(value) !== plain && BigInt(value).toString() !== plain;
}

/** Digits that are a code and no amount, or may be: `007`, a long number of a card or parcel, the lot `12e4`. */
export const isCode = (text: string): boolean =>
  /^[-+]?0\d/.test(text) || /^\d+e\d+$/i.test(text) || losesDigits(text);

const readDate = (text: string, order: DateOrder | null): string | undefined => {
  const meant = parseDay(text, order);
  // 15.2.2026 can only be one day, whichever number is usually the month.
  const day = meant.ok ? meant : parseDay(text);
  return day.ok ? toIsoDay(day.value) : undefined;
};

/** In a column of any type: only what cannot be mistaken becomes a number, a date or a tick. */
function readAny(text: string): Raw {
  const trimmed = text.trim();
  if (/^[-+]?\d/.test(trimmed) || trimmed.startsWith('.')) {
    if (/^\d{4}-\d{1,2}-\d{1,2}$/.test(trimmed)) return readDate(trimmed, null) ?? text;
    if (!trimmed.includes('/') && !isCode(trimmed)) return readTypedNumber(trimmed) ?? text;
  }
  if (/^true$/i.test(trimmed)) return true;
  if (/^false$/i.test(trimmed)) return false;
  return text;
}

/**
 * What a person typed, as it is stored in a column of this type. Undefined blanks the cell. What cannot be
 * read as the column's type is kept just as typed: the cell then says what is wrong, and nothing is lost.
 * `order` says how dates such as 5/4/2026 are meant. Text after a leading apostrophe is text, whatever it looks like.
 */
export function readEntry(typed: Typed, type: ColumnType, order: DateOrder | null = null): Raw | undefined {
  if (typed === null || typed === '') return undefined;
  if (typeof typed === 'number' && !Number.isFinite(typed)) return undefined;
  if (typeof typed === 'number') return typed + 0;
  if (typeof typed !== 'string') return typed;
  if (typed.startsWith("'") && type === 'any') return typed;
  const text = typed.trim();
  if (text === '') return undefined;
  switch (type) {
    case 'number':
      return losesDigits(text) ? typed : (readTypedNumber(text) ?? typed);
    case 'date':
      return readDate(text, order) ?? typed;
    case 'month-day': {
      const at = parseMonthDay(text);
      return at.ok ? formatMonthDay(at.value) : typed;
    }
    case 'tick':
      return YES.test(text) ? true : NO.test(text) ? false : typed;
    case 'choice':
      return text;
    case 'text':
      return typed;
    case 'any':
      return readAny(typed);
  }
}
