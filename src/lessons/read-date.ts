import { parseDay, parseMonthDay } from '../planning/parse-date.js';
import type { DayNumber, MonthDay } from '../planning/types.js';
import type { Result } from '../problem.js';
import { messages } from '../words/index.js';
import { monthName, shortMonthName, weekdayNames } from './day-text.js';

/** What a date that was typed says: a whole day, or a day of any year. */
export interface ReadDate {
  readonly whole: Result<DayNumber>;
  readonly part: Result<MonthDay>;
}

const ENGLISH_MONTHS = ['Jan', 'Feb', 'Mar', 'Apr', 'May', 'Jun', 'Jul', 'Aug', 'Sep', 'Oct', 'Nov', 'Dec'];
const WEEKDAY = /^(?:(?:mon|tues?|wed(?:nes)?|thu(?:rs)?|fri|sat(?:ur)?|sun)(?:day)?)\.?,?\s+/i;

/** Letters alone: without capitals, accents and full stops. */
const plain = (text: string): string =>
  text
    .normalize('NFD')
    .replace(/\p{M}|\./gu, '')
    .toLowerCase();

/** Names of months of the language spoken go over into English ones, and its days of the week go. */
function inEnglishNames(typed: string): string {
  const days = new Set(weekdayNames().flatMap((day) => [plain(day), plain(day).slice(0, 2)]));
  const [first = '', ...others] = typed.split(/\s+/);
  const text = others.length > 0 && days.has(plain(first.replace(/,$/, ''))) ? others.join(' ') : typed;
  return text.replace(/\p{L}{3,}\.?/gu, (word) => {
    const at = ENGLISH_MONTHS.findIndex((_, month) =>
      [monthName(month + 1), shortMonthName(month + 1)].some((name) => plain(name) === plain(word)),
    );
    return ENGLISH_MONTHS[at] ?? word;
  });
}

/** The date that was typed, with or without its day of the week: ISO, or with the month in words. */
export function readDate(typed: string): ReadDate {
  if (messages() === null) {
    const text = typed.replace(WEEKDAY, '');
    return { whole: parseDay(text), part: parseMonthDay(text) };
  }
  // ‘8. Mai 2026’, ‘8.5.2026’: other languages than English write the day first.
  const text = inEnglishNames(typed.replace(WEEKDAY, ''));
  const worded = text.replace(/^(\d{1,2})\.\s*(?=\p{L})/u, '$1 ');
  const short = /^(\d{1,2})\.\s*(\d{1,2})\.?$/.exec(text);
  return {
    whole: parseDay(worded.replace(/^(\d{1,2})\.\s+(?=\d)/, '$1.'), 'day first'),
    part: parseMonthDay(short ? `${short[2]!.padStart(2, '0')}-${short[1]!.padStart(2, '0')}` : worded),
  };
}
