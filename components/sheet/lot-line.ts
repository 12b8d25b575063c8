import { readNumber } from '../../src/book/index.js';
import { ok, type Result, refuse } from '../../src/problem.js';

/** What one line of fast entry says. */
export interface LotLine {
  readonly food: string;
  /** Null where the line gives none. */
  readonly count: number | null;
}

const COUNT_LAST = /^(.*\p{L}.*?)[\s,:]+(\d[\d.,/ ]*|\.\d+)$/u;
const COUNT_FIRST = /^(\d+(?: \d+\/\d+)?|\d+\/\d+|\d*\.\d+)\s+(\p{L}.*)$/u;

/**
 * Reads a line such as `tomatoes 24`, `24 tomatoes`, `beef stew, 7 1/2` or only `tomatoes`: the food as written,
 * and how many containers.
 */
export function readLotLine(line: string): Result<LotLine> {
  const text = line.trim().replace(/\s+/g, ' ');
  if (text === '') return refuse('no-food', 'Nothing is written.', 'Write a food and how many: tomatoes 24');
  const last = COUNT_LAST.exec(text);
  const first = last ? null : COUNT_FIRST.exec(text);
  const [food, digits] = last ? [last[1]!, last[2]!] : first ? [first[2]!, first[1]!] : [text, null];
  const name = food.replace(/[,:]$/, '').trim();
  if (!/\p{L}/u.test(name)) {
    return refuse(
      'no-food',
      `“${text.slice(0, 40)}” names no food.`,
      'Write the food first, then how many: tomatoes 24',
    );
  }
  if (digits === null) return ok({ food: name, count: null });
  const count = readNumber(digits.trim());
  if (count === undefined) {
    return refuse(
      'no-count',
      `“${digits.trim().slice(0, 20)}” is not a number.`,
      'Write how many in digits, as in 12, 2.5 or 1 1/2.',
    );
  }
  return ok({ food: name, count });
}
