import { civilToDay, daysInMonth, dayToCivil } from '../../planning/dates.js';
import { longDay } from '../../planning/day-words.js';
import type { DayNumber, MonthDay } from '../../planning/types.js';
import { inEnglish, phrase, say } from '../../words/index.js';
import { amountOf } from '../answer-text.js';
import type { BookNumbers } from '../book-numbers.js';
import { dayOfYear, monthName, weekdayNames, weekdayOf } from '../day-text.js';
import { exact } from '../exact.js';
import type { Random } from '../random.js';
import { type Answer, form, type Level, type Topic } from '../types.js';
import { cropMany, DAYS, named } from '../words.js';

interface Civil {
  readonly year: number;
  readonly month: number;
  readonly day: number;
}

/** The next day by the calendar alone: months and their lengths, no day numbers. */
function nextDay({ year, month, day }: Civil): Civil {
  if (day < daysInMonth(year, month)) return { year, month, day: day + 1 };
  return month < 12 ? { year, month: month + 1, day: 1 } : { year: year + 1, month: 1, day: 1 };
}

function dayBefore({ year, month, day }: Civil): Civil {
  if (day > 1) return { year, month, day: day - 1 };
  const [y, m] = month > 1 ? [year, month - 1] : [year - 1, 12];
  return { year: y, month: m, day: daysInMonth(y, m) };
}

/** Days counted one by one on the calendar. */
function countedDays(from: DayNumber, to: DayNumber): number {
  let at: Civil = dayToCivil(from);
  const end = dayToCivil(to);
  let days = 0;
  while (at.year !== end.year || at.month !== end.month || at.day !== end.day) {
    at = nextDay(at);
    days++;
  }
  return days;
}

function stepped(from: DayNumber, days: number): Answer {
  let at: Civil = dayToCivil(from);
  for (let n = 0; n < Math.abs(days); n++) at = days > 0 ? nextDay(at) : dayBefore(at);
  return { kind: 'date', day: civilToDay(at.year, at.month, at.day) };
}

const onYear = ({ month, day }: MonthDay, year: number): DayNumber =>
  civilToDay(year, month, Math.min(day, daysInMonth(year, month)));

interface Happening {
  /** In English, by which it is compared and put in order: a seed draws the same in every language. */
  readonly what: string;
  readonly how: 'eaten' | 'came in' | 'put up';
  readonly day: DayNumber;
  readonly food: string;
}

/** What happened on its day, as a sentence. */
function told({ how, day, food }: Happening): string {
  const on = longDay(day);
  if (how === 'eaten') return say`On ${on}, ${named(food)} were eaten.`;
  return how === 'put up'
    ? say`On ${on}, ${named(food)} were put up.`
    : say`On ${on}, ${cropMany(food)} came in.`;
}

/** The same, where it has happened before. */
function toldAgain({ how, day, food }: Happening): string {
  const on = longDay(day);
  if (how === 'eaten') return say`On ${on}, ${named(food)} were eaten again.`;
  return how === 'put up'
    ? say`On ${on}, ${named(food)} were put up again.`
    : say`On ${on}, ${cropMany(food)} came in again.`;
}

/** The same with its day of the week. */
function toldOfWeek({ how, day, food }: Happening): string {
  const [first, on] = [weekdayOf(day), longDay(day)];
  if (how === 'eaten') return say`On ${first}, ${on}, ${named(food)} were eaten.`;
  return how === 'put up'
    ? say`On ${first}, ${on}, ${named(food)} were put up.`
    : say`On ${first}, ${on}, ${cropMany(food)} came in.`;
}

/** Days that the book tells of, earliest first. */
function happenings(numbers: BookNumbers): Happening[] {
  const { draws, harvests, stock } = numbers;
  return [
    ...draws.flatMap(({ food, draws: all }) =>
      all.map(({ day }): Happening => ({ what: `${food} were eaten`, how: 'eaten', day, food })),
    ),
    ...harvests.map(
      ({ crop, day }): Happening => ({
        what: `${inEnglish(() => cropMany(crop))} came in`,
        how: 'came in',
        day,
        food: crop,
      }),
    ),
    ...stock.flatMap(({ food, lots }) =>
      lots.flatMap(({ putUpOn }): Happening[] =>
        putUpOn === null ? [] : [{ what: `${food} were put up`, how: 'put up', day: putUpOn, food }],
      ),
    ),
  ].sort((a, b) => a.day - b.day || (a.what < b.what ? -1 : 1));
}

/** How the days are counted, month by month, as a child would. */
function countingSteps(from: DayNumber, to: DayNumber): string[] {
  const [a, b] = [dayToCivil(from), dayToCivil(to)];
  if (a.year === b.year && a.month === b.month)
    return [say`Both are in ${monthName(a.month)}: ${b.day} − ${a.day}.`];
  let parts = say`${daysInMonth(a.year, a.month) - a.day} left in ${monthName(a.month)}`;
  for (
    let [y, m] = a.month < 12 ? [a.year, a.month + 1] : [a.year + 1, 1];
    y < b.year || (y === b.year && m < b.month);
    [y, m] = m < 12 ? [y, m + 1] : [y + 1, 1]
  )
    parts = say`${parts}, ${daysInMonth(y, m)} in ${monthName(m)}`;
  return [say`Count month by month: ${parts}, ${b.day} in ${monthName(b.month)}.`];
}

/** Least and most days between the two dates of a level. */
const APART: Readonly<Record<Level, readonly [number, number]>> = { 1: [2, 27], 2: [20, 75], 3: [60, 300] };

const between = form<{ from: DayNumber; to: DayNumber }>({
  id: 'days-between',
  levels: [1, 2, 3],
  make(numbers, level, random) {
    const [least, most] = APART[level];
    const all = happenings(numbers);
    const from = random.pick(all);
    const to = random.pick(
      all.filter(({ day }) => from && day - from.day >= least && day - from.day <= most),
    );
    if (!from || !to) return null;
    const answer = amountOf(exact(to.day - from.day), DAYS);
    return {
      text: say`${told(from)} ${to.what === from.what ? toldAgain(to) : told(to)} How many days later was that?`,
      answer,
      steps: [...countingSteps(from.day, to.day), say`That makes ${to.day - from.day} days.`],
      given: { from: from.day, to: to.day },
    };
  },
  key: ({ from, to }) => amountOf(exact(countedDays(from, to)), DAYS),
});

const weeksAfter = form<{ from: DayNumber; days: number }>({
  id: 'weeks-after',
  levels: [1, 2],
  make(numbers, level, random) {
    const from = random.pick(happenings(numbers));
    if (!from) return null;
    const weeks = level === 1 ? random.whole(1, 4) : random.whole(5, 12);
    const to = from.day + weeks * 7;
    const sameMonth = dayToCivil(to).month === dayToCivil(from.day).month;
    if (level === 1 && !sameMonth && random.whole(0, 1) === 0) return null;
    return {
      text:
        weeks === 1
          ? say`${told(from)} What is the date one week later?`
          : say`${told(from)} What is the date ${weeks} weeks later?`,
      answer: { kind: 'date', day: to },
      steps: [
        say`A week is 7 days: ${weeks} × 7 = ${weeks * 7} days.`,
        ...countingSteps(from.day, to),
        say`The date is ${longDay(to)}.`,
      ],
      given: { from: from.day, days: weeks * 7 },
    };
  },
  key: ({ from, days }) => stepped(from, days),
});

/** The coming last spring frost. */
const comingFrost = ({ lastFrost, asOf }: BookNumbers): DayNumber | null => {
  if (!lastFrost) return null;
  const { year } = dayToCivil(asOf);
  const this_ = onYear(lastFrost, year);
  return this_ >= asOf ? this_ : onYear(lastFrost, year + 1);
};

const beforeFrost = form<{ from: DayNumber; days: number }>({
  id: 'before-the-frost-date',
  levels: [2],
  make(numbers, _level, random) {
    const frost = comingFrost(numbers);
    const crop = random.pick(numbers.beds)?.crop;
    if (frost === null || crop === undefined) return null;
    const weeks = random.whole(2, 10);
    const day = frost - weeks * 7;
    return {
      text: say`The last spring frost is looked for around ${longDay(frost)}. Let’s say ${cropMany(crop)} are started ${weeks} weeks before it. On what date?`,
      answer: { kind: 'date', day },
      steps: [
        say`${weeks} × 7 = ${weeks * 7} days back from ${longDay(frost)}.`,
        ...countingSteps(day, frost),
        say`The date is ${longDay(day)}.`,
      ],
      given: { from: frost, days: -weeks * 7 },
    };
  },
  key: ({ from, days }) => stepped(from, days),
});

const readyOn = form<{ from: DayNumber; days: number }>({
  id: 'ready-on',
  levels: [3],
  make({ beds }, _level, random) {
    const bed = random.pick(beds.filter(({ sowOn }) => sowOn !== null));
    if (!bed || bed.sowOn === null) return null;
    const days = random.whole(45, 110);
    const to = bed.sowOn + days;
    return {
      text: say`The plan starts ${cropMany(bed.crop)} on ${longDay(bed.sowOn)}. Let’s say it takes ${days} days until the first picking. On what date is that?`,
      answer: { kind: 'date', day: to },
      steps: [say`Count ${days} days on.`, ...countingSteps(bed.sowOn, to), say`The date is ${longDay(to)}.`],
      given: { from: bed.sowOn, days },
    };
  },
  key: ({ from, days }) => stepped(from, days),
});

/** Day 0, 1 January 1970, was a Thursday. */
const weekdayAfter = form<{ weekday: string; days: number }>({
  id: 'weekday',
  levels: [2, 3],
  make(numbers, level, random) {
    const from = random.pick(happenings(numbers));
    if (!from) return null;
    const days = level === 2 ? random.whole(8, 30) : random.whole(31, 120);
    if (days % 7 === 0) return null;
    const first = weekdayOf(from.day);
    const word = weekdayOf(from.day + days);
    const over = days % 7;
    return {
      text: say`${toldOfWeek(from)} What day of the week was it ${days} days later?`,
      answer: { kind: 'choice', word, choices: weekdayNames() },
      steps: [
        say`Every 7 days the same day comes round: ${days} ÷ 7 leaves ${over} over.`,
        over === 1 ? say`So it is 1 day on from ${first}.` : say`So it is ${over} days on from ${first}.`,
        say`That is ${word}.`,
      ],
      given: { weekday: first, days },
    };
  },
  // Named one after another.
  key({ weekday: first, days }) {
    const names = weekdayNames();
    let at = names.indexOf(first);
    for (let n = 0; n < days; n++) at = at === 6 ? 0 : at + 1;
    return { kind: 'choice', word: names[at]!, choices: names };
  },
});

const frostFree = form<{ from: DayNumber; to: DayNumber }>({
  id: 'between-frosts',
  levels: [3],
  make(numbers, _level, random: Random) {
    const { lastFrost, firstFrost, asOf } = numbers;
    if (!lastFrost || !firstFrost) return null;
    const year = dayToCivil(asOf).year + random.whole(0, 4);
    const [from, to] = [onYear(lastFrost, year), onYear(firstFrost, year)];
    if (to <= from) return null;
    const answer = amountOf(exact(to - from), DAYS);
    return {
      text: say`In ${year} the last spring frost is looked for around ${dayOfYear(dayToCivil(from))}, the first fall frost around ${dayOfYear(dayToCivil(to))}. How many days lie from the one to the other?`,
      answer,
      steps: [...countingSteps(from, to), say`That makes ${to - from} days.`],
      given: { from, to },
    };
  },
  key: ({ from, to }) => amountOf(exact(countedDays(from, to)), DAYS),
});

export const DATES_TOPIC: Topic = {
  id: 'dates',
  title: phrase('Days and weeks'),
  goals: [
    phrase('Count the days between two dates.'),
    phrase('Find a date some weeks earlier or later.'),
    phrase('Use what is left over of weeks to find the day of the week.'),
  ],
  levels: {
    1: phrase('A few weeks, mostly within a month.'),
    2: phrase('Over the ends of months; back from the frost date.'),
    3: phrase('Long stretches, new years and leap years.'),
  },
  standards: ['4.MD.A.2', '4.OA.A.3'],
  needs: phrase('Write days: put up on the Shelf, draws, harvests; and the frost dates of the household.'),
  forms: [between, weeksAfter, beforeFrost, readyOn, weekdayAfter, frostFree],
};
