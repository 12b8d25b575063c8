import convertUnits from 'convert-units';
import jstat from 'jstat';
import { DateTime } from 'luxon';
import { describe, expect, it } from 'vitest';
import { blankBook } from '../../src/book/index.js';
import { answerText } from '../../src/lessons/answer-text.js';
import { readNumbers } from '../../src/lessons/book-numbers.js';
import {
  type LessonProblem,
  type Level,
  makeSheet,
  STANDARDS,
  standardPage,
  standardShown,
  TOPICS,
} from '../../src/lessons/index.js';
import { nameFor } from '../../src/lessons/words.js';
import { openBook } from '../../src/live/live-book.js';
import { toIsoDay } from '../../src/planning/dates.js';
import { demoBook, demoNumbers } from '../support/lesson-books.js';

/** What is used of it; its types are not published. */
const { jStat } = jstat as unknown as {
  readonly jStat: Readonly<Record<'mean' | 'median' | 'range' | 'meandev', (n: number[]) => number>>;
};

const school = demoNumbers('school-garden');

/** Problems of one form, over many seeds. */
function many(topic: string, form: string, seeds = 60): LessonProblem[] {
  return Array.from({ length: seeds }, (_, seed) =>
    ([1, 2, 3] as const).flatMap(
      (level: Level) =>
        makeSheet(school, { topics: [topic], level, seed: `${seed}`, count: 2, forms: [form] }).problems,
    ),
  ).flat();
}

/** As a child reads the question: the numbers and words that stand in it. */
const read = (problem: LessonProblem, pattern: RegExp): RegExpExecArray => {
  const found = pattern.exec(problem.text);
  if (!found) throw new Error(`not read: ${problem.text}`);
  return found;
};

const DAY = '([A-Z][a-z]+ \\d+, \\d{4})';
const date = (text: string): DateTime => DateTime.fromFormat(text, 'LLLL d, yyyy', { zone: 'utc' });

describe('keys against other libraries, worked from the words of the question', () => {
  it('days between two dates, as luxon counts them', () => {
    for (const problem of many('dates', 'days-between')) {
      const [, from, to] = read(problem, new RegExp(`On ${DAY}, .* On ${DAY}, `));
      const days = date(to!).diff(date(from!), 'days').days;
      expect(answerText(problem.key)).toBe(days === 1 ? '1 day' : `${days} days`);
    }
  });

  it('dates some weeks or days away, as luxon finds them', () => {
    for (const problem of many('dates', 'weeks-after')) {
      const [, from, weeks] = read(problem, new RegExp(`On ${DAY}, .*date (one week|\\d+ weeks) later`));
      const to = date(from!).plus({ weeks: weeks === 'one week' ? 1 : Number.parseInt(weeks!, 10) });
      expect(problem.key.kind === 'date' && toIsoDay(problem.key.day)).toBe(to.toISODate());
    }
    for (const problem of many('dates', 'before-the-frost-date')) {
      const [, frost, weeks] = read(problem, new RegExp(`around ${DAY}.* started (\\d+) weeks before`));
      expect(problem.key.kind === 'date' && toIsoDay(problem.key.day)).toBe(
        date(frost!)
          .minus({ weeks: Number(weeks) })
          .toISODate(),
      );
    }
    for (const problem of many('dates', 'ready-on')) {
      const [, from, days] = read(problem, new RegExp(`on ${DAY}.* takes (\\d+) days`));
      expect(problem.key.kind === 'date' && toIsoDay(problem.key.day)).toBe(
        date(from!)
          .plus({ days: Number(days) })
          .toISODate(),
      );
    }
  });

  it('days of the week, as luxon names them', () => {
    for (const problem of many('dates', 'weekday')) {
      const [, first, from] = read(problem, new RegExp(`On ([A-Z][a-z]+), ${DAY}`));
      expect(date(from!).weekdayLong).toBe(first);
      const later = Number(read(problem, /it (\d+) days later/)[1]);
      expect(answerText(problem.key)).toBe(date(from!).plus({ days: later }).weekdayLong);
    }
  });

  it('measures, as convert-units converts them', () => {
    const code = {
      cups: 'cup',
      pints: 'pnt',
      quarts: 'qt',
      gallons: 'gal',
      'fluid ounces': 'fl-oz',
      ounces: 'oz',
      pounds: 'lb',
    };
    const problems = ['to-smaller', 'to-larger', 'two-rungs'].flatMap((form) => many('units', form));
    expect(problems.length).toBeGreaterThan(100);
    for (const problem of problems) {
      const [, n, from] = read(problem, /([\d.½¼¾]+) (cup|pint|quart|gallon|pound)/);
      const to = read(problem, /How many ([a-z ]+) is that/)[1] as keyof typeof code;
      const amount = { '½': 0.5, '¼': 0.25, '¾': 0.75 }[n!] ?? Number(n);
      const value = convertUnits(amount)
        .from(code[`${from!}s` as keyof typeof code])
        .to(code[to]);
      expect(problem.key.kind === 'amount' && problem.key.value.valueOf()).toBeCloseTo(value, 4);
    }
  });
});

/** Numbers of a question in the order in which they are read, thousands together; fractions by their glyphs. */
function numbersOf(text: string): number[] {
  const glyphs: Record<string, number> = {
    '½': 1 / 2,
    '⅓': 1 / 3,
    '⅔': 2 / 3,
    '¼': 1 / 4,
    '¾': 3 / 4,
    '⅛': 1 / 8,
    '⅜': 3 / 8,
    '⅝': 5 / 8,
    '⅞': 7 / 8,
  };
  return [...text.matchAll(/(\d[\d,]*(?:\.\d+)?)?([½⅓⅔¼¾⅛⅜⅝⅞])|\d+(?:\.\d+)?/g)].map(([all, whole, glyph]) =>
    glyph ? Number(whole ?? 0) + glyphs[glyph]! : Number(all),
  );
}

/** Worked in plain numbers from the words alone, form by form. */
const BY_HAND: Readonly<Record<string, (n: number[]) => number>> = {
  'area/bed-area': ([w, l]) => w! * l!,
  'area/around-a-bed': ([w, l]) => 2 * (w! + l!),
  'area/missing-side': ([area, w]) => area! / w!,
  'area/row-inches': ([plants, inches]) => plants! * inches!,
  'area/row-feet': ([plants, inches]) => (plants! * inches!) / 12,
  'area/plants-in-a-bed': ([inches, w, l]) =>
    Math.floor((w! * 12) / inches!) * Math.floor((l! * 12) / inches!),
  'area/rows-needed': ([plants, inches, row]) => Math.ceil((plants! * inches!) / 12 / row!),
  'bushel/whole-bushels': ([pounds, count]) => pounds! * count!,
  'bushel/part-of-a-bushel': ([pounds, part]) => pounds! * part!,
  'bushel/how-many-bushels': ([came, pounds]) => came! / pounds!,
  'bushel/baskets': ([came, pounds, part]) => Math.ceil(came! / (pounds! * part!)),
  'bushel/share-out': ([people, all]) => all! / people!,
  'rates/shared-rows': ([plants, children]) => plants! / children!,
  'rates/weeks-left': ([left, aWeek]) => left! / aWeek!,
  'ratio/whole-times': ([serves, amount, shares]) => (amount! / serves!) * shares!,
  'ratio/any-times': ([serves, amount, shares]) => (amount! / serves!) * shares!,
  'ratio/how-often': ([a, b, left, right]) => Math.floor(Math.min(left! / a!, right! / b!)),
  'ratio/shares-from': ([serves, amount, left]) => Math.floor((serves! * left!) / amount!),
  'percent/came-up': ([whole, part]) => part! / whole!,
  'percent/the-rest': ([percent]) => 1 - percent! / 100,
  'percent/seeds-to-sow': ([plants, percent]) => Math.ceil((plants! * 100) / percent!),
  'percent/with-a-cushion': ([count, percent]) => (count! * (100 + percent!)) / 100,
  'percent/eaten': ([all, left]) => (all! - left!) / all!,
  'percent/more-than-before': ([, before, , after]) => Math.abs(after! - before!) / before!,
  'percent/the-whole': ([part, percent]) => (part! * 100) / percent!,
  'averages/next-for-a-mean': (n) =>
    n.at(-1)! * n.length - n.slice(1, -1).reduce((a, b) => a + b, 0) - n.at(-1)!,
  'chance/without-looking': (n) => n[0]! / n.reduce((a, b) => a + b, 0),
  'chance/seed-stays-away': ([percent]) => 1 - percent! / 100,
  'chance/one-of-the-seeds': ([percent, seeds]) => 1 - (1 - percent! / 100) ** seeds!,
  'linear/left-after': ([left, aWeek, weeks]) => left! - aWeek! * weeks!,
  'linear/until-gone': ([left, aWeek]) => left! / aWeek!,
  'linear/down-to': ([left, aWeek, keep]) => Math.floor((left! - keep!) / aWeek!),
  'linear/when-equal': ([more, less, fast, slow]) => (more! - less!) / (fast! - slow!),
  'linear/starting-stock': ([left, aWeek, weeks]) => left! + aWeek! * weeks!,
};

describe('keys worked by hand from the words of the question', () => {
  it.each(Object.entries(BY_HAND))('%s', (kind, work) => {
    const [topic, form] = kind.split('/') as [string, string];
    const problems = many(topic, form, 40);
    expect(problems.length).toBeGreaterThan(10);
    for (const { text, key } of problems) {
      if (key.kind !== 'amount' && key.kind !== 'percent' && key.kind !== 'chance') throw new Error(kind);
      const value = work(numbersOf(text.replace(/Round .*$|Give a fraction.*$/, '')));
      const isUp = key.kind === 'amount' && key.rounding === 'up';
      const isDown = key.kind === 'amount' && key.rounding === 'down';
      const round = (n: number): number => (isUp ? Math.ceil(n - 1e-9) : isDown ? Math.floor(n + 1e-9) : n);
      expect(round(key.value.valueOf()), text).toBeCloseTo(round(value), 6);
    }
  });

  it('averages, as jStat finds them', () => {
    const listed = ({ text }: LessonProblem): number[] => numbersOf(text.split(': ')[1]!.split('. ')[0]!);
    for (const [form, of] of [
      ['mean', (n: number[]) => jStat.mean(n)],
      ['median', (n: number[]) => jStat.median(n)],
      ['range', (n: number[]) => jStat.range(n)],
      ['mean-distance', (n: number[]) => jStat.meandev(n)],
    ] as const)
      for (const problem of many('averages', form))
        expect(problem.key.kind === 'amount' && problem.key.value.valueOf(), problem.text).toBeCloseTo(
          of(listed(problem)),
          6,
        );
  });
});

describe('a sheet', () => {
  it('comes again by its seed, and another seed gives another', () => {
    const asked = { topics: ['units', 'rates', 'dates'], level: 2, count: 9 } as const;
    const texts = (seed: string) => makeSheet(school, { ...asked, seed }).problems.map(({ text }) => text);
    expect(texts('41')).toEqual(texts('41'));
    expect(texts('41')).not.toEqual(texts('42'));
    expect(new Set(texts('a word')).size).toBe(9);
  });

  it('lets its topics take turns', () => {
    const { problems } = makeSheet(school, { topics: ['units', 'rates'], level: 1, seed: '1', count: 6 });
    expect(problems.map(({ kind }) => kind.split('/')[0])).toEqual([
      'units',
      'rates',
      'units',
      'rates',
      'units',
      'rates',
    ]);
  });

  it('of an empty book says for each topic which rows to write, and invents nothing', () => {
    const empty = readNumbers(openBook(blankBook('Empty', 'empty')));
    for (const { id, title, needs } of TOPICS) {
      const { problems, notes } = makeSheet(empty, { topics: [id], level: 2, seed: '1', count: 6 });
      expect(problems).toEqual([]);
      expect(notes).toEqual([expect.objectContaining({ code: 'no-numbers', mend: needs })]);
      expect(notes[0]!.message).toContain(title);
    }
  });

  it('follows the book: other stock, other questions', () => {
    const live = demoBook('school-garden');
    const sheet = live.sheetOfKind('shelf')!;
    for (const row of live.rowIds(sheet)) live.set(sheet, row, 'food', 'Rutabagas');
    live.set(sheet, live.rowIds(sheet)[5]!, 'count', 77);
    const { problems } = makeSheet(readNumbers(live), { topics: ['linear'], level: 1, seed: '1', count: 5 });
    expect(problems.length).toBeGreaterThan(0);
    for (const { text } of problems) expect(text).toContain('utabagas');
  });

  it('never asks for more than its numbers give, and says so', () => {
    const { problems, notes } = makeSheet(school, { topics: ['chance'], level: 1, seed: '1', count: 40 });
    expect(problems.length).toBeLessThan(40);
    expect(notes.map(({ code }) => code)).toEqual(['few-numbers']);
    expect(makeSheet(school, { topics: ['cheese'], level: 1, seed: '1', count: 4 }).notes[0]?.code).toBe(
      'no-such-topic',
    );
  });

  it('marks what speaks of jars, so that the caution stands beside it', () => {
    const farm = demoNumbers('tamarack-bench');
    const { problems } = makeSheet(farm, { topics: ['units', 'linear'], level: 1, seed: '3', count: 20 });
    const jars = problems.filter(({ text }) => /\bjars?\b/.test(text));
    expect(jars.length).toBeGreaterThan(2);
    expect(jars.every(({ canning }) => canning)).toBe(true);
  });
});

describe('topics', () => {
  it('name standards by code, grade first, and every standard listed is exercised', () => {
    const used = new Set(TOPICS.flatMap(({ standards }) => standards));
    expect([...used].sort()).toEqual(Object.keys(STANDARDS).sort());
    for (const code of used) expect(code).toMatch(/^[3-8]\.(?:MD|NF|OA|EE|NS|RP|SP|F)\.[A-C]\.\d[a-d]?$/);
  });

  // The addresses stand beside the codes in copies of the standards: corestandards.org/Math/Content/4/OA/A/3 and the like.
  it.each([
    ['4.OA.A.3', '4/OA/A/3/'],
    ['7.SP.C.6', '7/SP/C/6/'],
    ['6.RP.A.3c', '6/RP/A/3/c/'],
  ] as const)('%s has its own published page', (code, page) => {
    expect(standardPage(code)).toBe(`https://www.thecorestandards.org/Math/Content/${page}`);
    expect(standardShown(code)).toBe(code);
  });

  it('say what a child can do, and what each level changes', () => {
    for (const { goals, levels, needs } of TOPICS) {
      expect(goals.length).toBeGreaterThanOrEqual(2);
      expect(new Set(Object.values(levels)).size).toBe(3);
      expect(needs).toMatch(/^Write /);
    }
  });
});

it('names of foods keep to a line, and only names proper keep their capital', () => {
  expect(nameFor('Tomatoes')).toBe('tomatoes');
  expect(nameFor('Brussels sprouts')).toBe('Brussels sprouts');
  expect(nameFor('x'.repeat(90)).length).toBeLessThanOrEqual(32);
});
