import { say } from '../../words/index.js';
import type { BookNumbers, StockNumbers } from '../book-numbers.js';
import { shortDayOfYear, shortMonth } from '../day-text.js';
import type { AnswerUnit, Chart } from '../types.js';
import {
  cropMany,
  manyOf,
  named,
  PLANTS,
  SHARES,
  sentence,
  unitForFood,
  unitOf,
  unitOfFood,
} from '../words.js';

/** Numbers of the book that belong in one chart: bars in the order in which they stand. */
export interface ChartSet {
  readonly title: string;
  readonly unit: AnswerUnit;
  readonly bars: Chart['bars'];
}

/** Days of eating that a chart by months goes back. */
const EATEN_DAYS = 200;

/** Sums by what bars stand for, in the order in which that comes first. */
function sums<T>(
  of: readonly T[],
  about: (each: T) => string,
  size: (each: T) => number,
  label: (about: string) => string = (text) => text,
): Chart['bars'] {
  const bars = new Map<string, number>();
  for (const each of of) bars.set(about(each), (bars.get(about(each)) ?? 0) + size(each));
  return [...bars].map(([key, value]) => ({ label: label(key), value }));
}

/** One bar for each name. */
const barsOf = (bars: ReadonlyMap<string, number>): Chart['bars'] =>
  [...bars].map(([name, value]) => ({ label: named(name), value }));

const once = <T>(of: readonly T[], key: (each: T) => string): string[] => [...new Set(of.map(key))];

function harvestSets({ harvests, seasons }: BookNumbers): ChartSet[] {
  const byDay = [...harvests].sort((a, b) => a.day - b.day);
  const pounds = unitOf('pound');
  return [
    {
      title: say`Pounds that came in, by crop`,
      unit: pounds,
      bars: sums(
        harvests,
        (h) => h.crop,
        (h) => h.pounds,
        named,
      ),
    },
    {
      title: say`Pounds that came in, by month`,
      unit: pounds,
      bars: sums(
        byDay,
        (h) => shortMonth(h.day),
        (h) => h.pounds,
      ),
    },
    ...once(byDay, ({ crop }) => crop).map((crop) => ({
      title: say`Pounds of ${cropMany(crop)} that came in, by day`,
      unit: pounds,
      bars: sums(
        byDay.filter((h) => h.crop === crop),
        (h) => shortDayOfYear(h.day),
        (h) => h.pounds,
      ),
    })),
    ...seasons.map(({ crop, before, after }) => ({
      title: say`Pounds of ${cropMany(crop)}, by season`,
      unit: pounds,
      bars: [before, after].map(({ year, pounds: value }) => ({ label: String(year), value })),
    })),
  ];
}

function bedSets({ beds, bushels }: BookNumbers): ChartSet[] {
  const spaced = beds.filter(({ spacing }) => spacing !== null);
  return [
    {
      title: say`Plants in the plan, by crop`,
      unit: PLANTS,
      bars: barsOf(new Map(beds.map((b) => [b.crop, b.plants]))),
    },
    {
      title: say`Inches between plants, by crop`,
      unit: unitOf('inch'),
      bars: barsOf(new Map(spaced.map(({ crop, spacing }) => [crop, spacing ?? 0]))),
    },
    {
      title: say`Pounds in a bushel, by crop`,
      unit: unitOf('pound'),
      bars: barsOf(new Map(bushels.map(({ crop, pounds }) => [crop, pounds]))),
    },
  ];
}

const inCapital = (unit: AnswerUnit, food: string): string => sentence(unitOfFood(unit, food));

function stockSets({ stock }: BookNumbers): ChartSet[] {
  const byMeasure = (size: (line: StockNumbers) => number, title: (of: string) => string): ChartSet[] =>
    once(stock, ({ measure }) => measure).map((measure) => {
      const of = stock.filter((line) => line.measure === measure);
      const unit = of[0]!.unit;
      return { title: title(sentence(manyOf(unit))), unit, bars: sums(of, (l) => l.food, size, named) };
    });
  return [
    ...byMeasure(
      ({ putUp }) => putUp,
      (of) => say`${of} put up, by food`,
    ),
    ...byMeasure(
      ({ left }) => left,
      (of) => say`${of} left, by food`,
    ),
    ...stock.map(({ food, unit, lots }) => {
      const dated = lots.flatMap(({ count, putUpOn }) => (putUpOn === null ? [] : [{ count, day: putUpOn }]));
      return {
        title: say`${inCapital(unit, food)} put up, by day`,
        unit: unitForFood(unit, food),
        bars: sums(
          [...dated].sort((a, b) => a.day - b.day),
          ({ day }) => shortDayOfYear(day),
          ({ count }) => count,
        ),
      };
    }),
    ...stock.map(({ food, unit, putUp, left }) => ({
      title: say`${inCapital(unit, food)} put up and left`,
      unit: unitForFood(unit, food),
      bars: [
        { label: say`put up`, value: putUp },
        { label: say`left`, value: left },
      ],
    })),
  ];
}

function kitchenSets({ draws, dishes }: BookNumbers): ChartSet[] {
  return [
    ...draws.map(({ food, unit, draws: all }) => ({
      title: say`${inCapital(unit, food)} eaten, by month`,
      unit: unitForFood(unit, food),
      bars: sums(
        all.filter(({ day }) => day > all.at(-1)!.day - EATEN_DAYS),
        ({ day }) => shortMonth(day),
        ({ amount }) => amount,
      ),
    })),
    {
      title: say`Shares that a dish serves`,
      unit: SHARES,
      bars: [...new Map(dishes.map(({ dish, serves }) => [dish, serves]))].map(([label, value]) => ({
        label,
        value,
      })),
    },
  ];
}

/** Every chart that a book's numbers could give. */
export const chartSets = (numbers: BookNumbers): readonly ChartSet[] => [
  ...harvestSets(numbers),
  ...bedSets(numbers),
  ...stockSets(numbers),
  ...kitchenSets(numbers),
];
