import { phrase, say } from '../../words/index.js';
import { amountOf, asking, lastStep } from '../answer-text.js';
import type { BookNumbers } from '../book-numbers.js';
import { exact, isWhole, type Rounding, ratio, sum, written } from '../exact.js';
import type { Random } from '../random.js';
import { type AnswerUnit, form, type Level, type Topic } from '../types.js';
import { cropMany, inARow, manyOf, named, roughly, unitForFood, unitOf } from '../words.js';

interface Data {
  readonly values: readonly number[];
  readonly unit: AnswerUnit;
  /** 'Carrots were eaten on 7 days, in pounds:' */
  readonly intro: string;
}

/** How many numbers a level has. */
const COUNT: Readonly<Record<Level, readonly [number, number]>> = { 1: [3, 5], 2: [4, 8], 3: [5, 9] };

/** Numbers of the book that belong together, in their order. */
function someData(
  numbers: BookNumbers,
  level: Level,
  random: Random,
  counts?: (n: number) => boolean,
): Data | null {
  const [least, most] = COUNT[level];
  const sets: { values: number[]; unit: AnswerUnit; intro: (n: number) => string }[] = numbers.draws.map(
    ({ food, unit, draws }) => ({
      values: draws.map(({ amount }) => amount),
      unit: unitForFood(unit, food),
      intro: (n) =>
        say`On ${n} days these amounts of ${named(food)} were eaten, in ${manyOf(unitForFood(unit, food))}:`,
    }),
  );
  const byCrop = new Map<string, number[]>();
  for (const { crop, pounds } of numbers.harvests) byCrop.set(crop, [...(byCrop.get(crop) ?? []), pounds]);
  for (const [crop, values] of byCrop)
    sets.push({
      values,
      unit: unitOf('pound'),
      intro: (n) => say`On ${n} days ${cropMany(crop)} came in, in pounds:`,
    });
  sets.push({
    values: numbers.harvests.map(({ pounds }) => pounds),
    unit: unitOf('pound'),
    intro: (n) => say`${n} baskets from the garden were weighed, in pounds:`,
  });
  const fit = sets
    .map((set) => ({ ...set, values: level === 1 ? set.values.filter(Number.isInteger) : set.values }))
    .filter(({ values }) => values.length >= least && new Set(values).size > 1);
  const set = random.pick(fit);
  if (!set) return null;
  const count = random.whole(least, Math.min(most, set.values.length));
  if (counts && !counts(count)) return null;
  const from = random.whole(0, set.values.length - count);
  const values = set.values.slice(from, from + count);
  return new Set(values).size > 1 ? { values, unit: set.unit, intro: set.intro(count) } : null;
}

const list = (values: readonly number[]): string => inARow(values.map((n) => written(exact(n))));
const ascending = (values: readonly number[]): number[] => [...values].sort((a, b) => a - b);

interface Given {
  readonly values: readonly number[];
  readonly unit: AnswerUnit;
  readonly rounding: Rounding;
}

const range = form<Given>({
  id: 'range',
  levels: [1],
  make(numbers, level, random) {
    const data = someData(numbers, level, random);
    if (!data) return null;
    const sorted = ascending(data.values);
    const [low, high] = [exact(sorted[0]!), exact(sorted.at(-1)!)];
    const answer = amountOf(high.sub(low), data.unit);
    return {
      text: say`${data.intro} ${list(data.values)}. What is the range?`,
      answer,
      steps: [
        say`The greatest is ${written(high)}, the least ${written(low)}.`,
        say`The range is the difference of the two.`,
        lastStep(`${written(high)} − ${written(low)}`, answer),
      ],
      given: { values: data.values, unit: data.unit, rounding: 'exact' },
    };
  },
  // The greatest of all differences between two of them.
  key({ values, unit }) {
    let most = 0;
    for (const a of values) for (const b of values) most = Math.max(most, Math.round((a - b) * 10_000));
    return amountOf(ratio(most, 10_000), unit);
  },
});

const median = form<Given>({
  id: 'median',
  levels: [1, 2],
  make(numbers, level, random) {
    const data = someData(numbers, level, random, (n) => level === 2 || n % 2 === 1);
    if (!data) return null;
    const sorted = ascending(data.values).map((n) => exact(n));
    const middle = sorted.length / 2;
    const isEven = Number.isInteger(middle);
    const value = isEven ? sorted[middle - 1]!.add(sorted[middle]!).div(2) : sorted[Math.floor(middle)]!;
    const answer = amountOf(value, data.unit);
    return {
      text: say`${data.intro} ${list(data.values)}. What is the median?`,
      answer,
      steps: [
        say`In order: ${inARow(sorted.map(written))}.`,
        isEven
          ? say`Two stand in the middle, ${written(sorted[middle - 1]!)} and ${written(sorted[middle]!)}: the median lies halfway.`
          : say`The median stands in the middle.`,
        lastStep('Median', answer),
      ],
      given: { values: data.values, unit: data.unit, rounding: 'exact' },
    };
  },
  // The least and the greatest are struck off in turn, until one or two are left.
  key({ values, unit }) {
    const left = [...values];
    const strike = (which: (...all: number[]) => number) => left.splice(left.indexOf(which(...left)), 1);
    while (left.length > 2) {
      strike(Math.min);
      strike(Math.max);
    }
    return amountOf(sum(left.map((n) => exact(n))).div(left.length), unit);
  },
});

const meanOf = (values: readonly number[]) => sum(values.map((n) => exact(n))).div(values.length);

const mean = form<Given>({
  id: 'mean',
  levels: [1, 2],
  make(numbers, level, random) {
    const data = someData(numbers, level, random);
    if (!data) return null;
    const value = meanOf(data.values);
    if (level === 1 && !isWhole(value.mul(2))) return null;
    const rounding = isWhole(value.mul(10)) ? 'exact' : 'tenth';
    const answer = amountOf(value, data.unit, rounding);
    const total = sum(data.values.map((n) => exact(n)));
    return {
      text: asking(say`${data.intro} ${list(data.values)}. What is the mean (the average)?`, rounding),
      answer,
      steps: [
        say`Add them up: ${written(total)}.`,
        say`There are ${data.values.length} of them: divide.`,
        lastStep(`${written(total)} ÷ ${data.values.length}`, answer),
      ],
      given: { values: data.values, unit: data.unit, rounding },
    };
  },
  // Guessed at the first number and mended by the mean distance from it.
  key({ values, unit, rounding }) {
    const guess = exact(values[0]!);
    const off = sum(values.map((n) => exact(n).sub(guess)));
    return amountOf(guess.add(off.div(values.length)), unit, rounding);
  },
});

const nextForMean = form<{ values: readonly number[]; mean: number; unit: AnswerUnit }>({
  id: 'next-for-a-mean',
  levels: [3],
  make(numbers, level, random) {
    const data = someData(numbers, level, random);
    if (!data) return null;
    const total = sum(data.values.map((n) => exact(n)));
    const count = data.values.length + 1;
    const goal = Number(meanOf(data.values).floor().n) + random.whole(1, 2);
    const value = exact(goal * count).sub(total);
    if (value.lte(0)) return null;
    const answer = amountOf(value, data.unit);
    return {
      text: say`${data.intro} ${list(data.values)}. Let’s say the mean is to be ${goal}, with one more number. What must that number be?`,
      answer,
      steps: [
        say`With it there are ${count} numbers, and they must add up to ${count} × ${goal} = ${count * goal}.`,
        say`So far they add up to ${written(total)}.`,
        lastStep(`${count * goal} − ${written(total)}`, answer),
      ],
      given: { values: data.values, mean: goal, unit: data.unit },
    };
  },
  // Above or below the goal, number by number: what the last one has to make good.
  key({ values, mean: goal, unit }) {
    let owed = exact(goal);
    for (const n of values) owed = owed.add(exact(goal).sub(exact(n)));
    return amountOf(owed, unit);
  },
});

const deviation = form<Given>({
  id: 'mean-distance',
  levels: [3],
  make(numbers, level, random) {
    const data = someData(numbers, level, random);
    if (!data) return null;
    const middle = meanOf(data.values);
    // A mean that does not come out even would make the distances a muddle of decimals.
    if (!isWhole(middle.mul(10))) return null;
    const apart = data.values.map((n) => exact(n).sub(middle).abs());
    const answer = amountOf(sum(apart).div(apart.length), data.unit, 'tenth');
    return {
      text: asking(
        say`${data.intro} ${list(data.values)}. Their mean is ${written(middle)}. How far from the mean are they on average (the mean absolute deviation)?`,
        'tenth',
      ),
      answer,
      steps: [
        say`How far each is from ${written(middle)}: ${inARow(apart.map(written))}.`,
        say`Added up: ${written(sum(apart))}.`,
        lastStep(`${written(sum(apart))} ÷ ${apart.length}`, answer),
      ],
      given: { values: data.values, unit: data.unit, rounding: 'tenth' },
    };
  },
  // What lies above the mean equals what lies below it: twice the upper part does.
  key({ values, unit }) {
    const middle = meanOf(values);
    const above = sum(values.map((n) => exact(n).sub(middle)).filter((n) => n.gt(0)));
    return amountOf(above.mul(2).div(values.length), unit, 'tenth');
  },
});

const meanOrMedian = form<{ values: readonly number[] }>({
  id: 'mean-or-median',
  levels: [3],
  make(numbers, level, random) {
    const data = someData(numbers, level, random, (n) => n % 2 === 1);
    if (!data) return null;
    const middle = exact(ascending(data.values)[Math.floor(data.values.length / 2)]!);
    const average = meanOf(data.values);
    if (average.equals(middle)) return null;
    const choices = [say`mean`, say`median`] as const;
    const isMean = average.gt(middle);
    return {
      text: say`${data.intro} ${list(data.values)}. Which is greater, the mean or the median?`,
      answer: { kind: 'choice', word: choices[isMean ? 0 : 1], choices },
      steps: [
        say`The median is ${written(middle)}.`,
        say`The mean is ${written(sum(data.values.map((n) => exact(n))))} ÷ ${data.values.length} ${roughly(average)}.`,
        isMean
          ? say`The mean is greater: numbers far above pull the mean up.`
          : say`The median is greater: numbers far below pull the mean down.`,
      ],
      given: { values: data.values },
    };
  },
  // The mean is greater where the numbers, counted from the median, add up to more than nothing.
  key({ values }) {
    const middle = values.find(
      (n) =>
        values.filter((each) => each < n).length <= values.length / 2 &&
        values.filter((each) => each <= n).length > values.length / 2,
    )!;
    const off = sum(values.map((n) => exact(n).sub(exact(middle))));
    return { kind: 'choice', word: off.gt(0) ? say`mean` : say`median`, choices: [say`mean`, say`median`] };
  },
});

export const AVERAGES_TOPIC: Topic = {
  id: 'averages',
  title: phrase('Averages and ranges'),
  goals: [
    phrase('Find the mean, the median and the range of numbers from the book.'),
    phrase('Say what each of them tells, and what it hides.'),
    phrase('Find a number that makes a mean.'),
  ],
  levels: {
    1: phrase('Three to five whole numbers.'),
    2: phrase('Up to eight numbers, with halves; two in the middle.'),
    3: phrase('One number missing; how far from the mean.'),
  },
  standards: ['6.SP.A.3', '6.SP.B.5'],
  needs: phrase('Write at least three draws of a food on Draws, or three weighings on Harvest.'),
  forms: [range, median, mean, nextForMean, deviation, meanOrMedian],
};
