import { foodKey } from '../live/food-key.js';
import { dayToCivil } from '../planning/dates.js';
import { longDay } from '../planning/day-words.js';
import { phrase, say, spoken } from '../words/index.js';
import { unitText } from './answer-text.js';
import { checkNumber } from './check-number.js';
import { type Checked, type CheckOptions, RIGHT, WRONG } from './checked.js';
import { readDate } from './read-date.js';
import { inEnglishSigns, LONGEST_ANSWER, readNumber } from './read-number.js';
import type { Answer } from './types.js';

const unreadable = (message: string): Checked => ({ kind: 'unreadable', message });

/** English, and words of the language spoken; without capitals. */
const YES = phrase('yes, y, true, yeah, yep');
const NO = phrase('no, n, false, nope');
const isOneOf = (word: string, words: string): boolean =>
  [words, spoken(words)].some((list) => list.split(', ').includes(word));

function checkDate(typed: string, day: number): Checked {
  const { whole, part } = readDate(typed);
  if (whole.ok) return whole.value === day ? RIGHT : WRONG;
  if (part.ok) {
    const at = dayToCivil(day);
    return part.value.month === at.month && part.value.day === at.day
      ? { kind: 'right', message: say`Right: ${longDay(day)}.` }
      : WRONG;
  }
  return unreadable(say`That is not read as a date. ${whole.problem.mend}`);
}

function checkChoice(typed: string, { word, choices }: Extract<Answer, { kind: 'choice' }>): Checked {
  const key = (text: string): string => foodKey(text) || text.replace(/\s+/g, '');
  const bare = key(typed.replace(/^the\s+/i, ''));
  const isNamed = (choice: string): boolean =>
    typed.trim() === choice ||
    (key(choice) === bare && choices.filter((each) => key(each) === key(choice)).length === 1);
  if (isNamed(word)) return RIGHT;
  return choices.some(isNamed) ? WRONG : unreadable(say`Choose one of these: ${choices.join(', ')}.`);
}

function checkRatio(typed: string, [a, b]: readonly [number, number]): Checked {
  const parts = /^(\d{1,6}(?:\.\d{1,4})?)\s*(?::|\/|to|zu)\s*(\d{1,6}(?:\.\d{1,4})?)$/i.exec(
    inEnglishSigns(typed).trim(),
  );
  if (!parts) return unreadable(say`Write the ratio as two numbers, as in 3 : 2.`);
  const [x, y] = [Number(parts[1]), Number(parts[2])];
  if (x === a && y === b) return RIGHT;
  if (y > 0 && x > 0 && Math.abs(x * b - y * a) < 1e-9)
    return { kind: 'not as asked', message: say`The ratio is right. Now make it as simple as it can be.` };
  if (x === b && y === a)
    return { kind: 'wrong', message: say`Those are the numbers, but which comes first?` };
  return WRONG;
}

const noNumber = (unit: string): string =>
  unit === ''
    ? say`That is not read as a number. Write it as in 12, 12.5 or 12 1/2.`
    : say`That is not read as a number. Write it as in 12, 12.5 or 12 1/2, in ${unit}.`;

/**
 * Compares what was typed with the answer, kindly: as a fraction, a mixed number or a decimal; with or without
 * the unit, or in another unit of its kind; percents as such or as decimals; dates as ISO or with the month in
 * words. Nothing typed is ever run.
 */
export function checkAnswer(answer: Answer, typed: string, options: CheckOptions = {}): Checked {
  const text = typed.trim();
  if (text === '') return { kind: 'blank', message: '' };
  if (text.length > LONGEST_ANSWER) return unreadable(say`That is too long for an answer.`);
  switch (answer.kind) {
    case 'date':
      return checkDate(text, answer.day);
    case 'yes-no': {
      const word = text.toLowerCase().replace(/[.!]+$/, '');
      const isYes = isOneOf(word, YES);
      if (!isYes && !isOneOf(word, NO)) return unreadable(say`Answer yes or no.`);
      return isYes === answer.yes ? RIGHT : WRONG;
    }
    case 'choice':
      return checkChoice(text, answer);
    case 'ratio':
      return checkRatio(text, answer.parts);
    default: {
      if (/[$€£¢]/.test(text)) return unreadable(say`No money is asked for here: write the number alone.`);
      const number = readNumber(text);
      if (!number)
        return unreadable(
          /\/\s*0+(?!\d)/.test(text) ? say`Nothing can be divided by nought.` : noNumber(unitText(answer)),
        );
      return checkNumber(answer, number, options);
    }
  }
}
