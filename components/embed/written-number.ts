/**
 * Numbers as people write them into a table of their own, in the language of the page. What could be one number or
 * another is none: a figure is never guessed.
 */
export interface WrittenNumber {
  readonly value: number;
  /** The word or two behind it, as `jars`; '' where none is. */
  readonly unit: string;
}

interface Signs {
  readonly decimal: string;
  readonly group: string;
}

const SPACES = ' \u00a0\u202f';
/** Longer whole numbers hold other digits than those written. */
const MOST_DIGITS = 15;

const FORM: Intl.NumberFormatOptions = { maximumFractionDigits: 3, numberingSystem: 'latn' };

function formatIn(tag: string): Intl.NumberFormat {
  try {
    return new Intl.NumberFormat(tag, FORM);
  } catch {
    // An attribute of a page may hold anything.
    return new Intl.NumberFormat('en', FORM);
  }
}

/** A number as the page would write it, to three places. */
export const numberIn = (value: number, tag: string): string =>
  formatIn(tag).format(value).replace(/^-0$/, '0').replace('-', '−');

/** The same with all its places, as a field begins with it. */
export const typedIn = (value: number, tag: string): string =>
  String(value).includes('e') ? String(value) : String(value).replace('.', signsOf(tag).decimal);

function signsOf(tag: string): Signs {
  const parts = formatIn(tag).formatToParts(1234567.5);
  const sign = (type: string) => parts.find((part) => part.type === type)?.value ?? '';
  return { decimal: sign('decimal'), group: sign('group') };
}

/** A fraction alone or behind a whole number: `½`, `1½`, `3 1/2`. */
function fraction(text: string): number | undefined {
  const m = /^([-+]?)(?:(\d{1,6})[ -])?(\d{1,6})\/(\d{1,6})$/.exec(text);
  if (!m || Number(m[4]) === 0) return undefined;
  const value = Number(m[2] ?? 0) + Number(m[3]) / Number(m[4]);
  return m[1] === '-' ? -value : value;
}

/** `½` as `1/2`, with a space before it where a whole number stands there. */
const spelledOut = (text: string): string =>
  text
    .replace(/(\d?)([¼-¾⅐-⅞])/g, (_all, before: string, sign: string) => {
      return `${before}${before && ' '}${sign.normalize('NFKC').replace('\u2044', '/')}`;
    })
    .replaceAll('−', '-');

function plain(text: string, { decimal, group }: Signs): number | undefined {
  const m = /^([-+]?)(.*?)(?:([.,])(\d+))?$/.exec(text);
  if (!m || !/\d/.test(text)) return undefined;
  const [, sign = '', whole = '', point, after] = m;
  const digits = wholeDigits(whole, group);
  if (digits === undefined || digits.length > MOST_DIGITS) return undefined;
  if (point !== undefined && point !== decimal) {
    // A point is the decimal sign everywhere, unless it may part thousands.
    const mayPart = after?.length === 3 && /^[1-9]\d{0,2}$/.test(whole);
    if (point !== '.' || mayPart || !/^\d*$/.test(whole)) return undefined;
  }
  const value = Number(`${sign}${digits || '0'}${after === undefined ? '' : `.${after}`}`);
  return Number.isFinite(value) ? value + 0 : undefined;
}

/** The digits of a whole number, parted by thousands or not; undefined where it is none, or a code such as `007`. */
function wholeDigits(whole: string, group: string): string | undefined {
  if (/^\d*$/.test(whole)) return /^0\d/.test(whole) ? undefined : whole;
  const sign = /\D/.exec(whole)?.[0] ?? '';
  const isGroup = sign === group || SPACES.includes(sign) || (/['’]/.test(sign) && /['’]/.test(group));
  const [first = '', ...rest] = whole.split(sign);
  const isParted = /^[1-9]\d{0,2}$/.test(first) && rest.every((three) => /^\d{3}$/.test(three));
  return isGroup && isParted ? first + rest.join('') : undefined;
}

function read(text: string, signs: Signs): number | undefined {
  // Thousands alone end in what looks like a decimal part.
  const parted = wholeDigits(text.replace(/^[-+]/, ''), signs.group);
  if (parted && parted.length <= MOST_DIGITS) return Number(parted) * (text.startsWith('-') ? -1 : 1) + 0;
  return fraction(text) ?? plain(text, signs);
}

/**
 * What a cell says, where it is a number, or begins with one that a word or two follow.
 *
 * @param tag language in which it is written, as a BCP 47 tag; English where it is none.
 */
export function writtenNumber(text: string, tag: string): WrittenNumber | undefined {
  const signs = signsOf(tag);
  const whole = spelledOut(text.trim());
  const percent = /^(.*\d)\s*%$/.exec(whole);
  const value = read(percent?.[1] ?? whole, signs);
  if (value !== undefined) return { value: percent ? value / 100 : value, unit: '' };
  const m = /^(.*\d)\s*(\p{L}+\.?(?:\s\p{L}+\.?)?)$/u.exec(whole);
  const [, number = '', unit = ''] = m ?? [];
  const begun = m ? read(number, signs) : undefined;
  return begun === undefined || isMonth(unit, tag) ? undefined : { value: begun, unit };
}

/** `2 September` is a day, and `14th August`. */
function isMonth(word: string, tag: string): boolean {
  const all = letters(word).split(' ');
  return monthsOf(tag).some((month) => all.some((each) => each.length >= 3 && month.startsWith(each)));
}

const months = new Map<string, readonly string[]>();

function monthsOf(tag: string): readonly string[] {
  let found = months.get(tag);
  if (!found) {
    let format: Intl.DateTimeFormat;
    try {
      format = new Intl.DateTimeFormat(tag, { month: 'long', day: 'numeric', timeZone: 'UTC' });
    } catch {
      format = new Intl.DateTimeFormat('en', { month: 'long', day: 'numeric', timeZone: 'UTC' });
    }
    found = Array.from({ length: 12 }, (_none, i) => {
      const parts = format.formatToParts(Date.UTC(2024, i, 1));
      return letters(parts.find(({ type }) => type === 'month')?.value ?? '');
    });
    months.set(tag, found);
  }
  return found;
}

/** Small letters without their marks, so that `Gläser` begins as `Glas` does. */
const letters = (text: string): string =>
  text
    .normalize('NFD')
    .replace(/\p{M}|\./gu, '')
    .replace(/\s+/g, ' ')
    .toLowerCase();

/** Whether two units are one, of one thing or of several: `jar` and `jars`, `berry` and `berries`. */
export function isSameUnit(one: string, other: string): boolean {
  const [short = '', long = ''] = [letters(one), letters(other)].sort((a, b) => a.length - b.length);
  if (short === long) return true;
  if (short.length < 2 || long.length - short.length > 3) return false;
  return long.startsWith(short.length < 5 ? short : short.slice(0, -1));
}
