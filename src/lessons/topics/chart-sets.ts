import { dayToCivil } from '../../planning/dates.js';
import { MONTHS } from '../../planning/day-words.js';
import type { DayNumber } from '../../planning/types.js';
import type { BookNumbers, StockNumbers } from '../book-numbers.js';
import type { AnswerUnit } from '../types.js';
import { counted, cropMany, sentence, unitForFood, unitOf, unitOfFood } from '../words.js';

/** Numbers of the book that belong in one chart: bars in the order in which they stand. */
export interface ChartSet {
  readonly title: string;
  readonly unit: AnswerUnit;
  readonly bars: ReadonlyMap<string, number>;
}

/** Days of eating that a chart by months goes back. */
const EATEN_DAYS = 200;

const monthOf = (day: DayNumber): string => {
  const { month, year } = dayToCivil(day);
  return `${MONTHS[month - 1]!.slice(0, 3)} ${year}`;
};

const dateOf = (day: DayNumber): string => {
  const { month, day: of } = dayToCivil(day);
  return `${MONTHS[month - 1]!.slice(0, 3)} ${of}`;
};

/** Sums by label, in the order in which labels come first. */
function sums<T>(
  of: readonly T[],
  label: (each: T) => string,
  size: (each: T) => number,
): Map<string, number> {
  const bars = new Map<string, number>();
  for (const each of of) bars.set(label(each), (bars.get(label(each)) ?? 0) + size(each));
  return bars;
}

const once = <T>(of: readonly T[], key: (each: T) => string): string[] => [...new Set(of.map(key))];

function harvestSets({ harvests, seasons }: BookNumbers): ChartSet[] {
  const byDay = [...harvests].sort((a, b) => a.day - b.day);
  const pounds = unitOf('pound');
  return [
    {
      title: 'Pounds that came in, by crop',
      unit: pounds,
      bars: sums(
        harvests,
        (h) => h.crop,
        (h) => h.pounds,
      ),
    },
    {
      title: 'Pounds that came in, by month',
      unit: pounds,
      bars: sums(
        byDay,
        (h) => monthOf(h.day),
        (h) => h.pounds,
      ),
    },
    ...once(byDay, ({ crop }) => crop).map((crop) => ({
      title: `Pounds of ${cropMany(crop)} that came in, by day`,
      unit: pounds,
      bars: sums(
        byDay.filter((h) => h.crop === crop),
        (h) => dateOf(h.day),
        (h) => h.pounds,
      ),
    })),
    ...seasons.map(({ crop, before, after }) => ({
      title: `Pounds of ${cropMany(crop)}, by season`,
      unit: pounds,
      bars: new Map([before, after].map((each) => [String(each.year), each.pounds])),
    })),
  ];
}

function bedSets({ beds, bushels }: BookNumbers): ChartSet[] {
  const spaced = beds.filter(({ spacing }) => spacing !== null);
  return [
    {
      title: 'Plants in the plan, by crop',
      unit: counted('plant'),
      bars: new Map(beds.map((b) => [b.crop, b.plants])),
    },
    {
      title: 'Inches between plants, by crop',
      unit: unitOf('inch'),
      bars: new Map(spaced.map(({ crop, spacing }) => [crop, spacing ?? 0])),
    },
    {
      title: 'Pounds in a bushel, by crop',
      unit: unitOf('pound'),
      bars: new Map(bushels.map(({ crop, pounds }) => [crop, pounds])),
    },
  ];
}

const titled = (unit: AnswerUnit, food: string, rest: string): string =>
  `${sentence(unitOfFood(unit, food))} ${rest}`;

function stockSets({ stock }: BookNumbers): ChartSet[] {
  const byMeasure = (size: (line: StockNumbers) => number, words: string): ChartSet[] =>
    once(stock, ({ measure }) => measure).map((measure) => {
      const of = stock.filter((line) => line.measure === measure);
      const unit = of[0]!.unit;
      return { title: `${sentence(unit.many)} ${words}, by food`, unit, bars: sums(of, (l) => l.food, size) };
    });
  return [
    ...byMeasure(({ putUp }) => putUp, 'put up'),
    ...byMeasure(({ left }) => left, 'left'),
    ...stock.map(({ food, unit, lots }) => {
      const dated = lots.flatMap(({ count, putUpOn }) => (putUpOn === null ? [] : [{ count, day: putUpOn }]));
      return {
        title: titled(unit, food, 'put up, by day'),
        unit: unitForFood(unit, food),
        bars: sums(
          [...dated].sort((a, b) => a.day - b.day),
          ({ day }) => dateOf(day),
          ({ count }) => count,
        ),
      };
    }),
    ...stock.map(({ food, unit, putUp, left }) => ({
      title: titled(unit, food, 'put up and left'),
      unit: unitForFood(unit, food),
      bars: new Map([
        ['put up', putUp],
        ['left', left],
      ]),
    })),
  ];
}

function kitchenSets({ draws, dishes }: BookNumbers): ChartSet[] {
  return [
    ...draws.map(({ food, unit, draws: all }) => ({
      title: titled(unit, food, 'eaten, by month'),
      unit: unitForFood(unit, food),
      bars: sums(
        all.filter(({ day }) => day > all.at(-1)!.day - EATEN_DAYS),
        ({ day }) => monthOf(day),
        ({ amount }) => amount,
      ),
    })),
    {
      title: 'Shares that a dish serves',
      unit: counted('share'),
      bars: new Map(dishes.map(({ dish, serves }) => [dish, serves])),
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
