import { longDay } from '../../planning/day-words.js';
import { phrase, say } from '../../words/index.js';
import { amountOf, asking, lastStep } from '../answer-text.js';
import type { BedNumbers } from '../book-numbers.js';
import { exact, isWhole, type Rounding, ratio, sum, written } from '../exact.js';
import { form, type Topic } from '../types.js';
import {
  amount,
  amountOfFood,
  counted,
  inARow,
  manyOf,
  named,
  PLANTS,
  rateOf,
  roughly,
  unitForFood,
  unitOf,
  WEEKS,
} from '../words.js';

const POUNDS = unitOf('pound');

/** Whole numbers from 2 to 12 that divide `n`. */
export const divisors = (n: number): number[] =>
  Array.from({ length: 11 }, (_, at) => at + 2).filter((d) => n % d === 0 && n / d > 1);

const sharedRows = form<{ plants: number; children: number }>({
  id: 'shared-rows',
  levels: [1],
  make({ beds }, _level, random) {
    const bed = random.pick(beds.filter(({ plants }) => plants <= 600 && divisors(plants).length > 0));
    if (!bed) return null;
    const children = random.pick(divisors(bed.plants))!;
    const answer = amountOf(exact(bed.plants / children), PLANTS);
    return {
      text: say`The plan has ${bed.plants} ${named(bed.crop)} plants. Let’s say ${children} children plant the same number each. How many plants are there for each child?`,
      answer,
      steps: [
        say`${bed.plants} plants go to ${children} children.`,
        say`The same number for each: divide.`,
        lastStep(`${bed.plants} ÷ ${children}`, answer),
      ],
      given: { plants: bed.plants, children },
    };
  },
  // Dealt out one round after another.
  key({ plants, children }) {
    let each = 0;
    for (let left = plants; left >= children; left -= children) each++;
    return amountOf(exact(each), PLANTS);
  },
});

const weeksLeft = form<{ left: number; aWeek: number; rounding: Rounding }>({
  id: 'weeks-left',
  levels: [1, 2],
  make({ stock }, level, random) {
    const line = random.pick(stock.filter(({ left }) => left >= 4 && left <= 1000 && Number.isInteger(left)));
    if (!line) return null;
    const aWeek =
      level === 1
        ? random.pick(divisors(line.left))
        : random.whole(2, Math.min(12, Math.floor(line.left / 2)));
    if (aWeek === undefined) return null;
    const value = ratio(line.left, aWeek);
    const rounding = isWhole(value) ? 'exact' : 'tenth';
    const answer = amountOf(value, WEEKS, rounding);
    const unit = unitForFood(line.unit, line.food);
    return {
      text: asking(
        say`${amountOfFood(exact(line.left), line.unit, line.food)} are left. Let’s say the table eats ${amount(exact(aWeek), unit)} a week. For how many weeks do they last?`,
        rounding,
      ),
      answer,
      steps: [
        say`Each week takes ${amount(exact(aWeek), unit)}.`,
        say`How many times does ${aWeek} go into ${line.left}? Divide.`,
        lastStep(`${line.left} ÷ ${aWeek}`, answer),
      ],
      given: { left: line.left, aWeek, rounding },
    };
  },
  // Eaten week by week; the last week is a part of one.
  key({ left, aWeek, rounding }) {
    let weeks = 0;
    let rest = left;
    for (; rest >= aWeek; rest -= aWeek) weeks++;
    return amountOf(exact(weeks).add(ratio(rest, aWeek)), WEEKS, rounding);
  },
});

const perWeek = form<{ amounts: readonly number[]; weeks: number; measure: string; food: string }>({
  id: 'per-week',
  levels: [2],
  make({ draws }, _level, random) {
    const line = random.pick(draws.filter((each) => each.draws.length >= 3));
    if (!line) return null;
    const from = random.whole(0, Math.min(line.draws.length - 3, 40));
    const some = line.draws.slice(from, from + random.whole(3, 8));
    const first = some[0]!.day;
    const weeks = Math.ceil((some.at(-1)!.day - first + 1) / 7);
    if (weeks < 2) return null;
    const total = sum(some.map(({ amount: n }) => exact(n)));
    const unit = rateOf(unitForFood(line.unit, line.food), 'week');
    const answer = amountOf(total.div(weeks), unit, 'tenth');
    return {
      text: asking(
        say`In the ${weeks} weeks from ${longDay(first)}, these amounts of ${named(line.food)} were eaten, in ${manyOf(unitForFood(line.unit, line.food))}: ${inARow(some.map(({ amount: n }) => written(exact(n))))}. How much is that a week?`,
        'tenth',
      ),
      answer,
      steps: [
        say`Add them up: ${some.map(({ amount: n }) => written(exact(n))).join(' + ')} = ${written(total)}.`,
        say`Share the sum among ${weeks} weeks: divide.`,
        lastStep(`${written(total)} ÷ ${weeks}`, answer),
      ],
      given: { amounts: some.map(({ amount: n }) => n), weeks, measure: line.measure, food: line.food },
    };
  },
  key({ amounts, weeks, measure, food }) {
    const quarters = amounts.reduce((all, n) => all + Math.round(n * 4), 0);
    const unit = measure === 'piece' || measure === 'each' ? counted(food, food) : unitOf(measure);
    return amountOf(ratio(quarters, 4 * weeks), rateOf(unit, 'week'), 'tenth');
  },
});

const picked = ({ pounds, plantsPicked }: BedNumbers): boolean =>
  pounds !== null && plantsPicked !== null && plantsPicked > 1 && pounds / plantsPicked >= 0.05;

const perPlant = form<{ pounds: number; plants: number; ounces: boolean }>({
  id: 'per-plant',
  levels: [2, 3],
  make({ beds }, level, random) {
    const bed = random.pick(beds.filter(picked));
    if (!bed) return null;
    const [pounds, plants] = [bed.pounds!, bed.plantsPicked!];
    const ounces = level === 3;
    const unit = rateOf(unitOf(ounces ? 'ounce' : 'pound'), 'plant');
    const rounding = ounces ? 'tenth' : 'hundredth';
    const all = exact(pounds).mul(ounces ? 16 : 1);
    const answer = amountOf(all.div(plants), unit, rounding);
    return {
      text: asking(
        ounces
          ? say`${plants} ${named(bed.crop)} plants gave ${amount(exact(pounds), POUNDS)}. How many ounces is that a plant?`
          : say`${plants} ${named(bed.crop)} plants gave ${amount(exact(pounds), POUNDS)}. How many pounds is that a plant?`,
        rounding,
      ),
      answer,
      steps: [
        ...(ounces
          ? [say`A pound is 16 ounces: ${written(exact(pounds))} × 16 = ${written(all)} ounces.`]
          : []),
        say`Share it among ${plants} plants: divide.`,
        lastStep(`${written(all)} ÷ ${plants}`, answer),
      ],
      given: { pounds, plants, ounces },
    };
  },
  // In hundredths of an ounce or a pound, and by long division with whole numbers.
  key({ pounds, plants, ounces }) {
    const quarters = Math.round(pounds * 10_000) * (ounces ? 16 : 1);
    const whole = Math.floor(quarters / plants);
    return amountOf(
      ratio(whole, 10_000).add(ratio(quarters - whole * plants, plants * 10_000)),
      rateOf(unitOf(ounces ? 'ounce' : 'pound'), 'plant'),
      ounces ? 'tenth' : 'hundredth',
    );
  },
});

const better = form<{ a: [string, number, number]; b: [string, number, number] }>({
  id: 'better-yield',
  levels: [3],
  make({ beds }, _level, random) {
    const [a, b] = random.shuffled(beds.filter(picked));
    if (!a || !b) return null;
    const [left, right] = [exact(a.pounds!, a.plantsPicked!), exact(b.pounds!, b.plantsPicked!)];
    if (left.equals(right)) return null;
    const crops = [named(a.crop), named(b.crop)] as const;
    const answer = { kind: 'choice', word: crops[left.gt(right) ? 0 : 1], choices: crops } as const;
    const gave = (bed: BedNumbers) => amount(exact(bed.pounds!), POUNDS);
    const step = (bed: BedNumbers, value: typeof left) =>
      say`${named(bed.crop)}: ${written(exact(bed.pounds!))} ÷ ${bed.plantsPicked} ${roughly(value)} pounds a plant.`;
    return {
      text: say`${a.plantsPicked} ${crops[0]} plants gave ${gave(a)}, and ${b.plantsPicked} ${crops[1]} plants gave ${gave(b)}. Which crop gave more pounds a plant?`,
      answer,
      steps: [step(a, left), step(b, right), say`The greater rate is that of the ${answer.word}.`],
      given: {
        a: [crops[0], a.pounds!, a.plantsPicked!],
        b: [crops[1], b.pounds!, b.plantsPicked!],
      },
    };
  },
  // Cross products instead of quotients.
  key({ a, b }) {
    const word = a[1] * b[2] > b[1] * a[2] ? a[0] : b[0];
    return { kind: 'choice', word, choices: [a[0], b[0]] };
  },
});

export const RATES_TOPIC: Topic = {
  id: 'rates',
  title: phrase('Rates'),
  goals: [
    phrase('Find how much there is for one: one plant, one week, one child.'),
    phrase('Compare two rates.'),
    phrase('Say a rate with both of its units.'),
  ],
  levels: {
    1: phrase('Whole numbers that come out even.'),
    2: phrase('Rates with a tenth or a hundredth, from lists of the book.'),
    3: phrase('Rates in another unit, and which of two is greater.'),
  },
  standards: ['6.RP.A.2', '6.RP.A.3b', '7.RP.A.1'],
  needs: phrase(
    'Write plants on Beds, lots on Shelf, draws for dishes on Draws, and pounds with their plants on Harvest.',
  ),
  forms: [sharedRows, weeksLeft, perWeek, perPlant, better],
};
