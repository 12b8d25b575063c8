import type { DayNumber } from '../../src/planning/types.js';
import { dayInWords, shortDay } from '../pictures/days.js';
import { shownNumber } from '../sheet/shown.js';
import type { SeasonRow, Span } from './season-model.js';

export const named = ({ crop, variety }: SeasonRow): string => (variety ? `${crop}, ${variety}` : crop);

const DONE: Readonly<Record<SeasonRow['what'], string>> = {
  'start indoors': 'started indoors',
  'sow under cover': 'sown under cover',
  sow: 'sown',
  plant: 'planted',
};

/** `Aug 12–Sep 25`, or a single day. */
export const spanInWords = ({ from, to }: Span, asOf: DayNumber): string =>
  from === to ? shortDay(from, asOf) : `${shortDay(from, asOf)}–${shortDay(to, asOf)}`;

const samePlace = (a: Span | null, b: Span | null): boolean =>
  a !== null && b !== null && a.from === b.from && a.to === b.to;

/** All days of a row: `start indoors Apr 5`, `set out May 31`, `harvest and put up Aug 12–Sep 25`. */
export function daysInWords(row: SeasonRow, asOf: DayNumber): readonly string[] {
  const { begin, setOut, harvest, putUp, what, done } = row;
  const said: string[] = [];
  if (begin !== null) said.push(`${done ? DONE[what] : what} ${shortDay(begin, asOf)}`);
  if (setOut !== null) said.push(`set out ${shortDay(setOut, asOf)}`);
  const together = samePlace(harvest, putUp);
  if (harvest) said.push(`${together ? 'harvest and put up' : 'harvest'} ${spanInWords(harvest, asOf)}`);
  if (putUp && !together) said.push(`put up ${spanInWords(putUp, asOf)}`);
  return said.length > 0 ? said : ['no days known yet'];
}

/** What comes next for a planting on the as-of date, in a few words. */
export function nextInWords(row: SeasonRow, asOf: DayNumber): string {
  const { begin, setOut, harvest, what, done } = row;
  if (harvest && harvest.from <= asOf)
    return harvest.to >= asOf ? `harvest until ${shortDay(harvest.to, asOf)}` : 'harvest over';
  if (begin !== null && !done && begin >= asOf) return `${what} ${shortDay(begin, asOf)}`;
  if (begin !== null && !done && (setOut === null || setOut > asOf))
    return `${what}: was due ${shortDay(begin, asOf)}`;
  if (setOut !== null && setOut >= asOf) return `set out ${shortDay(setOut, asOf)}`;
  if (harvest) return `harvest from ${shortDay(harvest.from, asOf)}`;
  return reachable(row) ? 'growing' : 'no days known yet';
}

const reachable = ({ begin, setOut }: SeasonRow): boolean => begin !== null || setOut !== null;

/** True where what comes next should have been done. */
export const isLate = ({ begin, done, setOut, harvest }: SeasonRow, asOf: DayNumber): boolean =>
  begin !== null &&
  !done &&
  begin < asOf &&
  (setOut === null || setOut > asOf) &&
  (harvest === null || harvest.from > asOf);

/** A row in a sentence, to be read out. */
export const seasonSentence = (row: SeasonRow, asOf: DayNumber): string =>
  `${named(row)}: ${nextInWords(row, asOf)}. ${daysInWords(row, asOf).join(', ')}.`;

const IN_YEARS = new Map([
  [0, 'in no year'],
  [5, 'one year in twenty'],
  [10, 'one year in ten'],
  [20, 'one year in five'],
  [25, 'one year in four'],
  [30, 'three years in ten'],
  [40, 'two years in five'],
  [50, 'one year in two'],
  [60, 'three years in five'],
  [70, 'seven years in ten'],
  [75, 'three years in four'],
  [80, 'four years in five'],
  [90, 'nine years in ten'],
  [95, 'nineteen years in twenty'],
  [100, 'every year'],
]);

/** A chance of some percent as years: 50 is `one year in two`. */
export const chanceInWords = (percent: number): string =>
  IN_YEARS.get(percent) ?? `${shownNumber(percent, 0)} years in 100`;

/** `Last spring frost May 24: frost comes later one year in two.` The chance is left out where it is null. */
export function frostInWords(kind: 'last' | 'first', monthDay: string, percent: number | null): string {
  const name = kind === 'last' ? 'Last spring frost' : 'First fall frost';
  const chance =
    percent === null
      ? ''
      : `: frost comes ${kind === 'last' ? 'later' : 'earlier'} ${chanceInWords(percent)}`;
  return `${name} ${monthDay}${chance}.`;
}

/** The label of the as-of line: `today, Feb 15` unless the book names its day. */
export const asOfInWords = (asOf: DayNumber, named: boolean): string =>
  named ? dayInWords(asOf) : `today, ${dayInWords(asOf)}`;
