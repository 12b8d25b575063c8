import { foodKey } from '../live/food-key.js';
import { dayToCivil } from '../planning/dates.js';
import { longDay } from '../planning/day-words.js';
import { parseDay, parseMonthDay } from '../planning/parse-date.js';
import { unitText } from './answer-text.js';
import { checkNumber } from './check-number.js';
import { type Checked, type CheckOptions, RIGHT, WRONG } from './checked.js';
import { LONGEST_ANSWER, readNumber } from './read-number.js';
import type { Answer } from './types.js';

const unreadable = (message: string): Checked => ({ kind: 'unreadable', message });

const YES = new Set(['yes', 'y', 'true', 'yeah', 'yep']);
const NO = new Set(['no', 'n', 'false', 'nope']);

function checkDate(typed: string, day: number): Checked {
  const text = typed.replace(
    /^(?:(?:mon|tues?|wed(?:nes)?|thu(?:rs)?|fri|sat(?:ur)?|sun)(?:day)?)\.?,?\s+/i,
    '',
  );
  const whole = parseDay(text);
  if (whole.ok) return whole.value === day ? RIGHT : WRONG;
  const part = parseMonthDay(text);
  if (part.ok) {
    const at = dayToCivil(day);
    return part.value.month === at.month && part.value.day === at.day
      ? { kind: 'right', message: `Right: ${longDay(day)}.` }
      : WRONG;
  }
  return unreadable(`That is not read as a date. ${whole.problem.mend}`);
}

function checkChoice(typed: string, { word, choices }: Extract<Answer, { kind: 'choice' }>): Checked {
  const key = (text: string): string => foodKey(text) || text.replace(/\s+/g, '');
  const bare = key(typed.replace(/^the\s+/i, ''));
  const isNamed = (choice: string): boolean =>
    typed.trim() === choice ||
    (key(choice) === bare && choices.filter((each) => key(each) === key(choice)).length === 1);
  if (isNamed(word)) return RIGHT;
  return choices.some(isNamed) ? WRONG : unreadable(`Choose one of these: ${choices.join(', ')}.`);
}

function checkRatio(typed: string, [a, b]: readonly [number, number]): Checked {
  const parts = /^(\d{1,6}(?:\.\d{1,4})?)\s*(?::|\/|to)\s*(\d{1,6}(?:\.\d{1,4})?)$/i.exec(typed.trim());
  if (!parts) return unreadable('Write the ratio as two numbers, as in 3 : 2.');
  const [x, y] = [Number(parts[1]), Number(parts[2])];
  if (x === a && y === b) return RIGHT;
  if (y > 0 && x > 0 && Math.abs(x * b - y * a) < 1e-9)
    return { kind: 'not as asked', message: 'The ratio is right. Now make it as simple as it can be.' };
  if (x === b && y === a) return { kind: 'wrong', message: 'Those are the numbers, but which comes first?' };
  return WRONG;
}

/**
 * Compares what was typed with the answer, kindly: as a fraction, a mixed number or a decimal; with or without
 * the unit, or in another unit of its kind; percents as such or as decimals; dates as ISO or with the month in
 * words. Nothing typed is ever run.
 */
export function checkAnswer(answer: Answer, typed: string, options: CheckOptions = {}): Checked {
  const text = typed.trim();
  if (text === '') return { kind: 'blank', message: '' };
  if (text.length > LONGEST_ANSWER) return unreadable('That is too long for an answer.');
  switch (answer.kind) {
    case 'date':
      return checkDate(text, answer.day);
    case 'yes-no': {
      const word = text.toLowerCase().replace(/[.!]+$/, '');
      if (!YES.has(word) && !NO.has(word)) return unreadable('Answer yes or no.');
      return YES.has(word) === answer.yes ? RIGHT : WRONG;
    }
    case 'choice':
      return checkChoice(text, answer);
    case 'ratio':
      return checkRatio(text, answer.parts);
    default: {
      if (/[$€£¢]/.test(text)) return unreadable('No money is asked for here: write the number alone.');
      const number = readNumber(text);
      if (!number)
        return unreadable(
          /\/\s*0+(?!\d)/.test(text)
            ? 'Nothing can be divided by nought.'
            : `That is not read as a number. Write it as in 12, 12.5 or 12 1/2${unitText(answer) ? `, in ${unitText(answer)}` : ''}.`,
        );
      return checkNumber(answer, number, options);
    }
  }
}
