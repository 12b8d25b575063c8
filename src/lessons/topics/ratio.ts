import { phrase, say } from '../../words/index.js';
import { amountOf, asking, lastStep, partsAllowed } from '../answer-text.js';
import type { DishNumbers } from '../book-numbers.js';
import { ends, exact, ratio, written } from '../exact.js';
import type { Random } from '../random.js';
import { type AnswerUnit, form, type Topic } from '../types.js';
import { amount, amountOfFood, named, numberIn, roughly, SHARES, TIMES, unitForFood } from '../words.js';

type Line = DishNumbers['lines'][number];

function aLine(dishes: readonly DishNumbers[], random: Random): { dish: DishNumbers; line: Line } | null {
  const dish = random.pick(dishes);
  const line = random.pick(dish?.lines ?? []);
  return dish && line ? { dish, line } : null;
}

const takes = ({ dish, serves }: DishNumbers, line: Line): string =>
  say`${dish} for ${serves} shares takes ${amountOfFood(exact(line.amount), line.unit, line.food)}.`;

const unitIn = (line: Line): AnswerUnit => unitForFood(line.unit, line.food);

interface Scaling {
  readonly serves: number;
  readonly amount: number;
  readonly shares: number;
  readonly unit: AnswerUnit;
}

/** Added up a share at a time, in ten-thousandths of a share's part. */
const byShares = ({ serves, amount: n, shares, unit }: Scaling) => {
  let total = exact(0);
  const one = exact(n).div(serves);
  for (let share = 0; share < shares; share++) total = total.add(one);
  return amountOf(total, unit);
};

const wholeTimes = form<Scaling>({
  id: 'whole-times',
  levels: [1],
  make({ dishes }, _level, random) {
    const found = aLine(
      dishes.filter(({ serves }) => serves <= 60),
      random,
    );
    if (!found) return null;
    const { dish, line } = found;
    const times = random.whole(2, 6);
    const shares = dish.serves * times;
    const answer = amountOf(exact(line.amount).mul(times), unitIn(line));
    return {
      text: say`${takes(dish, line)} How much is that for ${shares} shares?`,
      answer,
      steps: [
        say`${shares} ÷ ${dish.serves} = ${times}: it is cooked ${times} times.`,
        say`Every amount is multiplied by the same number.`,
        lastStep(`${numberIn(exact(line.amount), line.unit)} × ${times}`, answer),
      ],
      given: { serves: dish.serves, amount: line.amount, shares, unit: unitIn(line) },
    };
  },
  key: byShares,
});

const anyTimes = form<Scaling>({
  id: 'any-times',
  levels: [2],
  make({ dishes }, _level, random) {
    const found = aLine(
      dishes.filter(({ serves }) => serves <= 100),
      random,
    );
    if (!found) return null;
    const { dish, line } = found;
    const shares = random.whole(2, dish.serves * 3);
    if (shares % dish.serves === 0) return null;
    const factor = ratio(shares, dish.serves);
    const value = exact(line.amount).mul(factor);
    if (value.d > 32n || value.lt(ratio(1, 4))) return null;
    const answer = amountOf(value, unitIn(line));
    return {
      text: [
        say`${takes(dish, line)} How much is that for ${shares} shares?`,
        ends(value, 2) ? '' : partsAllowed(),
      ]
        .filter(Boolean)
        .join(' '),
      answer,
      steps: [
        say`For 1 share: ${amount(exact(line.amount), unitIn(line))} ÷ ${dish.serves}.`,
        say`For ${shares} shares: ${shares} times as much.`,
        lastStep(`${numberIn(exact(line.amount), line.unit)} ÷ ${dish.serves} × ${shares}`, answer),
      ],
      given: { serves: dish.serves, amount: line.amount, shares, unit: unitIn(line) },
    };
  },
  key: byShares,
});

const simplest = form<{ a: number; b: number }>({
  id: 'simplest',
  levels: [2],
  make({ dishes }, _level, random) {
    const dish = random.pick(dishes.filter(({ lines }) => lines.length > 1));
    const [a, b] = random.shuffled(dish?.lines ?? []);
    if (!dish || !a || !b || a.measure !== b.measure || a.food === b.food) return null;
    const value = exact(a.amount).div(exact(b.amount));
    const parts = [Number(value.n), Number(value.d)] as const;
    if (parts[0] > 40 || parts[1] > 40) return null;
    const answer = { kind: 'ratio', parts } as const;
    return {
      text: say`${dish.dish} takes ${amountOfFood(exact(a.amount), a.unit, a.food)} and ${amountOfFood(exact(b.amount), b.unit, b.food)}. What is the ratio of ${named(a.food)} to ${named(b.food)}, in simplest form?`,
      answer,
      steps: [
        say`${named(a.food)} to ${named(b.food)}: ${written(exact(a.amount))} : ${written(exact(b.amount))}.`,
        say`Divide both by the greatest number that goes into both (make them whole first).`,
        say`The ratio is ${parts.join(' : ')}.`,
      ],
      given: { a: a.amount, b: b.amount },
    };
  },
  // Euclid by subtraction, on quarters.
  key({ a, b }) {
    const [x, y] = [Math.round(a * 4), Math.round(b * 4)];
    let [m, n] = [x, y];
    while (m !== n) {
      if (m > n) m -= n;
      else n -= m;
    }
    return { kind: 'ratio', parts: [x / m, y / m] };
  },
});

const howOften = form<{ stock: readonly number[]; takes: readonly number[] }>({
  id: 'how-often',
  levels: [3],
  make({ dishes, stock }, _level, random) {
    const dish = random.pick(dishes);
    const both = random
      .shuffled(dish?.lines ?? [])
      .flatMap((line) => {
        const held = stock.find(
          ({ food, measure, left }) => food === line.food && measure === line.measure && left >= line.amount,
        );
        return held ? [{ line, left: held.left }] : [];
      })
      .slice(0, 2);
    const [a, b] = both;
    if (!dish || !a || !b) return null;
    const times = both.map(({ line, left }) => exact(left).div(exact(line.amount)));
    const least = times[0]!.lt(times[1]!) ? times[0]! : times[1]!;
    const answer = amountOf(least, TIMES, 'down');
    const of = ({ line }: (typeof both)[number], n: number) => amountOfFood(exact(n), line.unit, line.food);
    return {
      text: asking(
        say`${dish.dish} takes ${of(a, a.line.amount)} and ${of(b, b.line.amount)}. On the shelf stand ${of(a, a.left)} and ${of(b, b.left)}. How many times can it be cooked in full before one of the two runs short?`,
        'down',
      ),
      answer,
      steps: [
        `${named(a.line.food)}: ${written(exact(a.left))} ÷ ${written(exact(a.line.amount))} ${roughly(times[0]!)}`,
        `${named(b.line.food)}: ${written(exact(b.left))} ÷ ${written(exact(b.line.amount))} ${roughly(times[1]!)}`,
        say`What runs short first decides.`,
        say`The smaller one, rounded down: ${amount(least.floor(), TIMES)}.`,
      ],
      given: { stock: both.map(({ left }) => left), takes: both.map(({ line }) => line.amount) },
    };
  },
  // Cooked until one runs short.
  key({ stock, takes: each }) {
    let times = 0;
    for (const left = [...stock]; left.every((n, at) => n >= each[at]!); times++)
      left.forEach((n, at) => {
        left[at] = n - each[at]!;
      });
    return amountOf(exact(times), TIMES, 'down');
  },
});

const sharesFrom = form<{ left: number; takes: number; serves: number }>({
  id: 'shares-from',
  levels: [3],
  make({ dishes, stock }, _level, random) {
    const found = aLine(dishes, random);
    const held = stock.find(
      ({ food, measure, left }) => food === found?.line.food && measure === found.line.measure && left > 0,
    );
    if (!found || !held) return null;
    const { dish, line } = found;
    const left = random.whole(1, Math.floor(held.left));
    const value = exact(left).mul(dish.serves).div(exact(line.amount));
    if (value.lt(1) || value.gt(2000)) return null;
    const answer = amountOf(value, SHARES, 'down');
    const up = amountOfFood(exact(left), line.unit, line.food);
    return {
      text: asking(
        left === 1
          ? say`${takes(dish, line)} Let’s say ${up} is brought up. For how many whole shares is that enough?`
          : say`${takes(dish, line)} Let’s say ${up} are brought up. For how many whole shares is that enough?`,
        'down',
      ),
      answer,
      steps: [
        say`${amount(exact(1), unitIn(line))} serves ${dish.serves} ÷ ${written(exact(line.amount))} shares.`,
        say`Multiply by ${left}.`,
        lastStep(`${dish.serves} ÷ ${written(exact(line.amount))} × ${left}`, answer),
      ],
      given: { left, takes: line.amount, serves: dish.serves },
    };
  },
  // Served share by share, in whole numbers: each share takes `takes` out of `left × serves`.
  key({ left, takes: n, serves }) {
    const each = Math.round(n * 4);
    let rest = left * serves * 4;
    let shares = 0;
    for (; rest >= each; rest -= each) shares++;
    return amountOf(exact(shares), SHARES, 'down');
  },
});

export const RATIO_TOPIC: Topic = {
  id: 'ratio',
  title: phrase('Ratio: cooking for more or fewer'),
  goals: [
    phrase('Make a dish larger or smaller, every amount alike.'),
    phrase('Say the ratio of two foods in simplest form.'),
    phrase('Find which food runs short first.'),
  ],
  levels: {
    1: phrase('A whole number of times as much.'),
    2: phrase('Any number of shares; ratios in simplest form.'),
    3: phrase('Working back from the shelf, with rounding down.'),
  },
  standards: ['6.RP.A.1', '6.RP.A.3', '7.RP.A.2', '7.RP.A.3'],
  needs: phrase('Write a dish on Dishes: how many shares it serves, and two lines or more with amounts.'),
  forms: [wholeTimes, anyTimes, simplest, howOften, sharesFrom],
};
