import type { DayNumber } from '../../src/planning/types.js';
import { HERE } from '../../src/words/here.js';
import { phrase, say, spoken } from '../../src/words/index.js';
import { dayInWords, shortDay } from '../pictures/days.js';
import { shownNumber } from '../sheet/shown.js';
import type { Beginning, SeasonRow, Span } from './season-model.js';

export const named = ({ crop, variety }: SeasonRow): string =>
  variety ? `${spoken(crop)}, ${variety}` : spoken(crop);

/** What is done at the beginning, as words by themselves. */
export const spokenBeginning = (what: Beginning): string =>
  what === 'plant' ? say`plant${HERE}` : spoken(what);

const DONE: Readonly<Record<SeasonRow['what'], string>> = {
  'start indoors': phrase('started indoors'),
  'sow under cover': phrase('sown under cover'),
  sow: phrase('sown'),
  plant: phrase('planted'),
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
  if (begin !== null)
    said.push(`${done ? spoken(DONE[what]) : spokenBeginning(what)} ${shortDay(begin, asOf)}`);
  if (setOut !== null) said.push(say`set out ${shortDay(setOut, asOf)}`);
  const together = samePlace(harvest, putUp);
  if (harvest) {
    const days = spanInWords(harvest, asOf);
    said.push(together ? say`harvest and put up ${days}` : say`harvest ${days}`);
  }
  if (putUp && !together) said.push(say`put up ${spanInWords(putUp, asOf)}${HERE}`);
  return said.length > 0 ? said : [say`no days known yet`];
}

/** What comes next for a planting on the as-of date, in a few words. */
export function nextInWords(row: SeasonRow, asOf: DayNumber): string {
  const { begin, setOut, harvest, what, done } = row;
  if (harvest && harvest.from <= asOf)
    return harvest.to >= asOf ? say`harvest until ${shortDay(harvest.to, asOf)}` : say`harvest over`;
  if (begin !== null && !done && begin >= asOf) return `${spokenBeginning(what)} ${shortDay(begin, asOf)}`;
  if (begin !== null && !done && (setOut === null || setOut > asOf))
    return say`${spokenBeginning(what)}: was due ${shortDay(begin, asOf)}`;
  if (setOut !== null && setOut >= asOf) return say`set out ${shortDay(setOut, asOf)}`;
  if (harvest) return say`harvest from ${shortDay(harvest.from, asOf)}`;
  return reachable(row) ? say`growing` : say`no days known yet`;
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
  [0, phrase('in no year')],
  [5, phrase('one year in twenty')],
  [10, phrase('one year in ten')],
  [20, phrase('one year in five')],
  [25, phrase('one year in four')],
  [30, phrase('three years in ten')],
  [40, phrase('two years in five')],
  [50, phrase('one year in two')],
  [60, phrase('three years in five')],
  [70, phrase('seven years in ten')],
  [75, phrase('three years in four')],
  [80, phrase('four years in five')],
  [90, phrase('nine years in ten')],
  [95, phrase('nineteen years in twenty')],
  [100, phrase('every year')],
]);

/** A chance of some percent as years: 50 is `one year in two`. */
export const chanceInWords = (percent: number): string =>
  spoken(IN_YEARS.get(percent) ?? '') || say`${shownNumber(percent, 0)} years in 100`;

/** `Last spring frost May 24: frost comes later one year in two.` The chance is left out where it is null. */
export function frostInWords(kind: 'last' | 'first', monthDay: string, percent: number | null): string {
  const name = kind === 'last' ? say`Last spring frost` : say`First fall frost`;
  if (percent === null) return `${name} ${monthDay}.`;
  const chance = chanceInWords(percent);
  return kind === 'last'
    ? say`${name} ${monthDay}: frost comes later ${chance}.`
    : say`${name} ${monthDay}: frost comes earlier ${chance}.`;
}

/** The label of the as-of line: `today, Feb 15` unless the book names its day. */
export const asOfInWords = (asOf: DayNumber, named: boolean): string =>
  named ? dayInWords(asOf) : say`today, ${dayInWords(asOf)}`;
