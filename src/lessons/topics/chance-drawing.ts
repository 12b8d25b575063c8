import { say } from '../../words/index.js';
import { lastStep } from '../answer-text.js';
import type { BookNumbers } from '../book-numbers.js';
import { ratio } from '../exact.js';
import type { Random } from '../random.js';
import { form } from '../types.js';
import { named, sentence, unitOfFood } from '../words.js';
import { chanceOf } from './chance-answer.js';

interface Drawing {
  readonly wanted: number;
  readonly others: readonly number[];
}

/** Foods in the same sort of container, so that one can be taken without looking. */
function drawing(numbers: BookNumbers, random: Random) {
  const whole = numbers.stock.filter(({ left }) => Number.isInteger(left) && left >= 2 && left <= 60);
  const first = random.pick(whole.filter(({ unit }) => unit.measure === undefined));
  const same = whole.filter(
    (line) => first && line !== first && kindOf(line.measure) === kindOf(first.measure),
  );
  const others = random.shuffled(same).slice(0, 2);
  return first && others.length > 0 ? { first, others } : null;
}

/** 'bag' of a quart freezer bag. */
const kindOf = (measure: string): string => measure.split(' ').at(-1)!;

export const withoutLooking = form<Drawing>({
  id: 'without-looking',
  levels: [1, 2],
  make(numbers, level, random) {
    const found = drawing(numbers, random);
    if (!found) return null;
    const { first } = found;
    const others = level === 1 ? found.others.slice(0, 1) : found.others;
    const all = [first, ...others].reduce((sum, { left }) => sum + left, 0);
    const answer = chanceOf(ratio(first.left, all));
    const said = [first, ...others].map(({ left, unit, food }) => `${left} ${unitOfFood(unit, food)}`);
    const there =
      said.length === 2
        ? say`There are ${said[0]} and ${said[1]}.`
        : say`There are ${said[0]} and ${said[1]} and ${said[2]}.`;
    return {
      text: say`${there} One is taken without looking, each as likely as the other. What is the chance that it is ${named(first.food)}?`,
      answer,
      steps: [
        say`In all there are ${[first, ...others].map(({ left }) => left).join(' + ')} = ${all}.`,
        say`${first.left} of them are ${named(first.food)}.`,
        lastStep(`${first.left}/${all}`, answer),
      ],
      given: { wanted: first.left, others: others.map(({ left }) => left) },
    };
  },
  // Each of them is taken once.
  key({ wanted, others }) {
    const all = [...Array(wanted).fill(true), ...others.flatMap((n) => Array(n).fill(false))] as boolean[];
    return chanceOf(ratio(all.filter(Boolean).length, all.length));
  },
});

export const likelier = form<{ a: readonly [string, number]; b: readonly [string, number] }>({
  id: 'which-is-likelier',
  levels: [1],
  make(numbers, _level, random) {
    const found = drawing(numbers, random);
    const other = found?.others[0];
    if (!found || !other || found.first.left === other.left || found.first.food === other.food) return null;
    const { first } = found;
    const foods = [named(first.food), named(other.food)] as const;
    const word = foods[first.left > other.left ? 0 : 1];
    return {
      text: say`${sentence(`${first.left} ${unitOfFood(first.unit, first.food)}`)} and ${other.left} ${unitOfFood(other.unit, other.food)} stand together. One is taken without looking. Which food is it more likely to be?`,
      answer: { kind: 'choice', word, choices: foods },
      steps: [
        say`Each one is as likely to be taken as any other.`,
        say`There are more of the ${word}, so that is more likely.`,
      ],
      given: { a: [foods[0], first.left], b: [foods[1], other.left] },
    };
  },
  // Set against each other one by one: what is left at the end was more.
  key({ a, b }) {
    let [x, y] = [a[1], b[1]];
    while (x > 0 && y > 0) {
      x--;
      y--;
    }
    return { kind: 'choice', word: x > 0 ? a[0] : b[0], choices: [a[0], b[0]] };
  },
});
