import { readTypedNumber } from '../../src/book/index.js';
import { ok, type Result, refuse } from '../../src/problem.js';
import { phrase, say, spoken } from '../../src/words/index.js';
import { containerWords } from './container-words.js';

/** What one line of fast entry says. */
export interface LotLine {
  readonly food: string;
  /** Null where the line gives none. */
  readonly count: number | null;
  /** Id of the container that the line itself names; null where it names none. */
  readonly container: string | null;
}

const EXAMPLE = phrase(
  'Write the food first, then how many, and in what where it differs: tomatoes 24 pints',
);
const NUMBER = /(?:\d+ \d+\/\d+|\d+\/\d+|\d[\d,]*(?:\.\d+)?|\.\d+)/.source;
/** A number with a sign, after a space or a comma, with or without a cross before or after it. */
const COUNT = new RegExp(
  `(?<=^|[\\s,:])(?:[x×]\\s*)?([-−–]\\s?)?(${NUMBER})(?!\\d)(?:\\s*[x×](?![\\p{L}]))?`,
  'gu',
);

const trimmed = (text: string): string => text.replace(/^[\s,:]+|[\s,:]+$/g, '');
const short = (text: string): string => text.slice(0, 40);

/**
 * Reads a line such as `tomatoes 24`, `24 tomatoes`, `pears 8 pints`, `2 dozen plums`, `salsa x 9` or only
 * `tomatoes`: the food as written, how many, and the container that the line names. A pint of what is frozen
 * is a bag. Refused where a number is below 0 or where what stands after it is no container.
 */
export function readLotLine(line: string, way = ''): Result<LotLine> {
  const text = line.trim().replace(/\s+/g, ' ').replace(/½/g, ' 1/2').replace(/\s+/g, ' ');
  if (text === '') return refuse('no-food', say`Nothing is written.`, spoken(EXAMPLE));
  let strange = '';
  // A number at the very beginning may belong to the name, as in 7 bean soup 12: the others go before it.
  const [first, ...others] = text.matchAll(COUNT);
  const all = first && first.index === 0 ? [...others, first] : [...(first ? [first] : []), ...others];
  for (const found of all) {
    const before = trimmed(text.slice(0, found.index));
    const after = trimmed(text.slice(found.index + found[0].length));
    const read = /\p{L}/u.test(before) ? countLast(before, after, way) : countFirst(after, way);
    if (read === null) {
      strange ||= after;
      continue;
    }
    if (!/\p{L}/u.test(read.food))
      return refuse('no-food', say`“${short(text)}” names no food.`, spoken(EXAMPLE));
    const number = readTypedNumber(found[2]!);
    if (number === undefined)
      return refuse(
        'no-count',
        say`“${short(found[2]!)}” is not a number.`,
        say`Write how many in digits, as in 12, 2.5 or 1 1/2.`,
      );
    if (found[1])
      return refuse(
        'below-0',
        say`“${short(text)}”: how many cannot be below 0.`,
        say`Write how many stand there. What was taken out is a draw.`,
      );
    return ok({ food: read.food, count: number * read.times, container: read.container });
  }
  if (strange !== '')
    return refuse(
      'no-container',
      say`“${short(strange)}” is not a container that lots are counted in.`,
      say`Write one, as in pears 8 pints, 40 pounds or 2 buckets, or only how many.`,
    );
  return /\p{L}/u.test(text)
    ? ok({ food: text, count: null, container: null })
    : refuse('no-food', say`“${short(text)}” names no food.`, spoken(EXAMPLE));
}

interface Read {
  readonly food: string;
  readonly container: string | null;
  readonly times: number;
}

/** `pears 8 pints`, `pears, pints 8`; null where what stands after the number is no container. */
function countLast(before: string, after: string, way: string): Read | null {
  if (after !== '') {
    const words = containerWords(after, way);
    return words?.rest === '' ? { food: before, container: words.container, times: words.times } : null;
  }
  const words = before.split(' ');
  for (let from = Math.max(1, words.length - 3); from < words.length; from++) {
    const named = containerWords(words.slice(from).join(' '), way);
    if (named?.rest === '' && named.container !== 'piece' && named.container !== 'each')
      return {
        food: trimmed(words.slice(0, from).join(' ')),
        container: named.container,
        times: named.times,
      };
  }
  return { food: before, container: null, times: 1 };
}

/** `8 pints of pears`, `8 pears`. */
function countFirst(after: string, way: string): Read {
  const words = containerWords(after, way);
  if (words) return { food: trimmed(words.rest), container: words.container, times: words.times };
  return { food: after, container: null, times: 1 };
}
