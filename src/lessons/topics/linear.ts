import { longDay } from '../../planning/day-words.js';
import { leftAndShort, weeksOfSupply } from '../../planning/supply.js';
import { phrase, say } from '../../words/index.js';
import { amountOf, asking, lastStep } from '../answer-text.js';
import type { BookNumbers, StockNumbers } from '../book-numbers.js';
import { exact, isWhole, ratio } from '../exact.js';
import type { Random } from '../random.js';
import { type AnswerUnit, form, type Level, type Topic } from '../types.js';
import {
  amount,
  amountOfFood,
  manyOf,
  named,
  rateOf,
  sentence,
  unitForFood,
  unitOfFood,
  WEEKS,
} from '../words.js';

interface Falling {
  readonly line: StockNumbers;
  readonly unit: AnswerUnit;
  readonly left: number;
  /** Taken each week. */
  readonly aWeek: number;
}

/** A stock, and a small whole number taken from it each week. */
function falling({ stock }: BookNumbers, level: Level, random: Random): Falling | null {
  const line = random.pick(stock.filter(({ left }) => Number.isInteger(left) && left >= 6 && left <= 900));
  if (!line) return null;
  const most = Math.max(1, Math.min(level === 1 ? 5 : 15, Math.floor(line.left / 4)));
  return {
    line,
    unit: unitForFood(line.unit, line.food),
    left: line.left,
    aWeek: random.whole(Math.min(2, most), most),
  };
}

const says = ({ line, left, aWeek, unit }: Falling): string =>
  aWeek === 1
    ? say`${sentence(amountOfFood(exact(left), line.unit, line.food))} are left. Let’s say ${amount(exact(aWeek), unit)} is taken each week.`
    : say`${sentence(amountOfFood(exact(left), line.unit, line.food))} are left. Let’s say ${amount(exact(aWeek), unit)} are taken each week.`;

const leftAfter = form<{ left: number; aWeek: number; weeks: number; unit: AnswerUnit }>({
  id: 'left-after',
  levels: [1],
  make(numbers, level, random) {
    const found = falling(numbers, level, random);
    if (!found) return null;
    const { left, aWeek, unit } = found;
    const weeks = random.whole(2, Math.max(2, Math.min(12, Math.floor(left / aWeek))));
    if (left - aWeek * weeks < 0) return null;
    const answer = amountOf(exact(left - aWeek * weeks), unit);
    return {
      text: say`${says(found)} How many ${manyOf(unit)} are left after ${weeks} weeks?`,
      answer,
      steps: [
        say`In ${weeks} weeks ${aWeek} × ${weeks} = ${aWeek * weeks} are taken.`,
        say`That goes off what there is.`,
        lastStep(`${left} − ${aWeek * weeks}`, answer),
      ],
      given: { left, aWeek, weeks, unit },
    };
  },
  // As the planner of stock reckons, from the first day of 2026.
  key({ left, aWeek, weeks, unit }) {
    const from = 20_454;
    const at = leftAndShort(left, aWeek, from + weeks * 7, from);
    return amountOf(exact(at.ok ? at.value.left : -1), unit);
  },
});

const untilGone = form<{ left: number; aWeek: number }>({
  id: 'until-gone',
  levels: [2],
  make(numbers, level, random) {
    const found = falling(numbers, level, random);
    if (!found) return null;
    const { left, aWeek } = found;
    const value = ratio(left, aWeek);
    const rounding = isWhole(value) ? 'exact' : 'up';
    const answer = amountOf(value, WEEKS, rounding);
    return {
      text: asking(say`${says(found)} In how many weeks is nothing left?`, rounding),
      answer,
      steps: [
        say`left = ${left} − ${aWeek} × weeks`,
        say`Nothing is left when ${aWeek} × weeks is ${left}.`,
        lastStep(`${left} ÷ ${aWeek}`, answer),
      ],
      given: { left, aWeek },
    };
  },
  // As the planner of stock reckons.
  key({ left, aWeek }) {
    const weeks = weeksOfSupply(left, aWeek);
    const n = weeks.ok && typeof weeks.value === 'number' ? weeks.value : -1;
    return Number.isInteger(n) ? amountOf(exact(n), WEEKS) : amountOf(exact(n), WEEKS, 'up');
  },
});

const downTo = form<{ left: number; aWeek: number; keep: number }>({
  id: 'down-to',
  levels: [2, 3],
  make(numbers, level, random) {
    const found = falling(numbers, level, random);
    if (!found) return null;
    const { left, aWeek, unit, line } = found;
    const keep = random.whole(1, Math.floor(left / 3));
    const value = ratio(left - keep, aWeek);
    if (value.lt(1)) return null;
    const answer = amountOf(value, WEEKS, 'down');
    return {
      text: asking(
        say`${says(found)} For how many whole weeks can that go on, if ${amountOfFood(exact(keep), line.unit, line.food)} must stay?`,
        'down',
      ),
      answer,
      steps: [
        say`${left} − ${aWeek} × weeks must not be less than ${keep}.`,
        say`So ${aWeek} × weeks is at most ${left} − ${keep} = ${amount(exact(left - keep), unit)}.`,
        lastStep(`${left - keep} ÷ ${aWeek}`, answer),
      ],
      given: { left, aWeek, keep },
    };
  },
  // Week by week, as long as enough stays.
  key({ left, aWeek, keep }) {
    let weeks = 0;
    for (let at = left; at - aWeek >= keep; at -= aWeek) weeks++;
    return amountOf(exact(weeks), WEEKS, 'down');
  },
});

const fromTwoReadings = form<{ first: number; second: number; weeks: number; unit: AnswerUnit }>({
  id: 'from-two-readings',
  levels: [2],
  make({ stock, asOf }, _level, random) {
    const line = random.pick(
      stock.filter(
        ({ putUp, left, lots }) => putUp > left && left > 0 && lots.every((lot) => lot.putUpOn !== null),
      ),
    );
    if (!line) return null;
    const start = Math.max(...line.lots.map(({ putUpOn }) => putUpOn!));
    const weeks = Math.floor((asOf - start) / 7);
    if (weeks < 2 || weeks > 60) return null;
    const unit = unitForFood(line.unit, line.food);
    const taken = exact(line.putUp).sub(exact(line.left));
    const value = taken.div(weeks);
    const answer = amountOf(value, rateOf(unit, 'week'), 'tenth');
    return {
      text: asking(
        say`When the last of them was put up, on ${longDay(start)}, there were ${amountOfFood(exact(line.putUp), line.unit, line.food)}. ${weeks} weeks later there are ${amount(exact(line.left), unit)}. How many went each week, on average?`,
        'tenth',
      ),
      answer,
      steps: [
        say`${line.putUp} − ${line.left} = ${amount(taken, unit)} went.`,
        say`They went in ${weeks} weeks: divide.`,
        lastStep(say`${amount(taken, unit)} ÷ ${weeks} weeks`, answer),
      ],
      given: { first: line.putUp, second: line.left, weeks, unit },
    };
  },
  // The slope of the line through the two readings, downwards.
  key({ first, second, weeks, unit }) {
    const slope = exact(second).sub(exact(first)).div(weeks);
    return amountOf(slope.neg(), rateOf(unit, 'week'), 'tenth');
  },
});

const whichRule = form<{ left: number; aWeek: number; rules: readonly string[] }>({
  id: 'which-rule',
  levels: [2, 3],
  make(numbers, level, random) {
    const found = falling(numbers, level, random);
    if (!found || found.left === found.aWeek) return null;
    const { left, aWeek } = found;
    const word = `${left} − ${aWeek} × w`;
    const rules = random.shuffled([
      word,
      `${left} + ${aWeek} × w`,
      `${aWeek} − ${left} × w`,
      `${left} × w − ${aWeek}`,
    ]);
    return {
      text: say`${says(found)} Which rule gives what is left after w weeks?`,
      answer: { kind: 'choice', word, choices: rules },
      steps: [
        say`At the start, with w = 0, there are ${left}.`,
        say`Each week there are ${aWeek} fewer.`,
        say`So what is left is ${word}.`,
      ],
      given: { left, aWeek, rules },
    };
  },
  // Each rule is tried: it must give the start at 0, and so many less after one week.
  key({ left, aWeek, rules }) {
    const value = (rule: string, w: number): number => {
      const [a = '', sign = '', b = '', second = '', c = ''] = rule.split(' ');
      const num = (word: string): number => (word === 'w' ? w : Number(word));
      if (sign === '×') return num(a) * num(b) - num(c);
      const product = num(b) * (second === '×' ? num(c) : 1);
      return sign === '−' ? num(a) - product : num(a) + product;
    };
    const word = rules.find((rule) => value(rule, 0) === left && value(rule, 1) === left - aWeek) ?? '';
    return { kind: 'choice', word, choices: rules };
  },
});

interface Meeting {
  readonly a: readonly [number, number];
  readonly b: readonly [number, number];
}

const whenEqual = form<Meeting>({
  id: 'when-equal',
  levels: [3],
  make({ stock }, _level, random) {
    const whole = stock.filter(({ left }) => Number.isInteger(left) && left >= 2 && left <= 900);
    const [a, b] = random.shuffled(whole);
    if (!a || !b || a.measure !== b.measure || a.food === b.food || a.left === b.left) return null;
    const [more, less] = a.left > b.left ? [a, b] : [b, a];
    const apart = more.left - less.left;
    // Built from the answer: a whole number of weeks.
    const weeks = random.pick(Array.from({ length: 29 }, (_, at) => at + 2).filter((n) => apart % n === 0));
    if (weeks === undefined) return null;
    const slow = random.whole(1, 4);
    const fast = slow + apart / weeks;
    if (less.left - slow * weeks < 0 || fast > 30) return null;
    const answer = amountOf(exact(weeks), WEEKS);
    const of = (line: StockNumbers, n: number) => amountOfFood(exact(n), line.unit, line.food);
    return {
      text: say`${sentence(of(more, more.left))} and ${of(less, less.left)} are left. Let’s say each week takes ${fast} of the ${named(more.food)} and ${slow} of the ${named(less.food)}. After how many weeks is the same amount left of both?`,
      answer,
      steps: [
        `${more.left} − ${fast} × w = ${less.left} − ${slow} × w`,
        say`They are ${apart} apart, and come nearer by ${fast} − ${slow} = ${fast - slow} a week.`,
        lastStep(`${apart} ÷ ${fast - slow}`, answer),
      ],
      given: { a: [more.left, fast], b: [less.left, slow] },
    };
  },
  // Both are followed week by week until they meet.
  key({ a, b }) {
    let weeks = 0;
    for (let [x, y] = [a[0], b[0]]; x > y; x -= a[1], y -= b[1]) weeks++;
    return amountOf(exact(weeks), WEEKS);
  },
});

const startingStock = form<{ left: number; aWeek: number; weeks: number; unit: AnswerUnit }>({
  id: 'starting-stock',
  levels: [3],
  make(numbers, level, random) {
    const found = falling(numbers, level, random);
    if (!found) return null;
    const { left, aWeek, unit, line } = found;
    const weeks = random.whole(3, 20);
    const answer = amountOf(exact(left + aWeek * weeks), unit);
    const of = sentence(amountOfFood(exact(left), line.unit, line.food));
    return {
      text:
        aWeek === 1
          ? say`${of} are left. Let’s say ${amount(exact(aWeek), unit)} was taken each week for ${weeks} weeks. How many ${unitOfFood(line.unit, line.food)} were there at the start?`
          : say`${of} are left. Let’s say ${amount(exact(aWeek), unit)} were taken each week for ${weeks} weeks. How many ${unitOfFood(line.unit, line.food)} were there at the start?`,
      answer,
      steps: [
        say`left = start − ${aWeek} × ${weeks}`,
        say`So the start is what is left and what was taken: ${left} + ${aWeek * weeks}.`,
        lastStep(`${left} + ${aWeek} × ${weeks}`, answer),
      ],
      given: { left, aWeek, weeks, unit },
    };
  },
  key({ left, aWeek, weeks, unit }) {
    let start = left;
    for (let week = 0; week < weeks; week++) start += aWeek;
    return amountOf(exact(start), unit);
  },
});

export const LINEAR_TOPIC: Topic = {
  id: 'linear',
  title: phrase('Straight lines: stock over the weeks'),
  goals: [
    phrase('Say how a stock falls, as a rule with weeks in it.'),
    phrase('Find what is left, and when nothing is.'),
    phrase('Find the rate from two readings, and when two stocks meet.'),
  ],
  levels: {
    1: phrase('What is left after some weeks.'),
    2: phrase('When nothing is left; the rule; the rate from two readings.'),
    3: phrase('What must stay; two stocks that meet; back to the start.'),
  },
  standards: ['6.EE.C.9', '8.F.B.4'],
  needs: phrase('Write lots on Shelf with six or more left, and draws from them.'),
  forms: [leftAfter, untilGone, downTo, fromTwoReadings, whichRule, whenEqual, startingStock],
};
