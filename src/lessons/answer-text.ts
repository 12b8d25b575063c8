import { longDay } from '../planning/day-words.js';
import { phrase, say, spoken } from '../words/index.js';
import { type Exact, mixed, ROUNDING_WORDS, type Rounding, rounded, written } from './exact.js';
import type { Answer, AnswerUnit } from './types.js';
import { named, numberIn, roughly, wordFor } from './words.js';

/** The amount that is right once it is rounded as asked. */
export const amountOf = (
  value: Exact,
  unit: AnswerUnit | null,
  rounding: Rounding = 'exact',
  unitMatters = false,
): Answer => ({ kind: 'amount', value, unit, rounding, ...(unitMatters && { unitMatters }) });

/** A part of 1 as a percent: '12.5 %'. */
export const percentText = (part: Exact): string => `${written(part.mul(100))} %`;

/** '37.5 %', or 'about 43.5 %'. */
const aboutPercent = (part: Exact): string => {
  const percent = part.mul(100);
  const tenths = percent.round(1);
  return tenths.equals(percent) ? `${written(percent)} %` : say`about ${written(tenths)} %`;
};

/** The number of an answer, rounded as asked, without its unit. */
export function numberText(answer: Answer): string {
  switch (answer.kind) {
    case 'amount':
      return numberIn(rounded(answer.value, answer.rounding), answer.unit);
    case 'percent':
      return written(rounded(answer.value.mul(100), answer.rounding));
    case 'chance':
      return `${mixed(answer.value)} (${aboutPercent(answer.value)})`;
    case 'date':
      return longDay(answer.day);
    case 'yes-no':
      return answer.yes ? say`yes` : say`no`;
    case 'choice':
      return answer.word;
    case 'ratio':
      return answer.parts.join(' : ');
  }
}

/** An answer as the key states it: '12.5 pounds', '17⅔ quarts', '75 %'. */
export function answerText(answer: Answer): string {
  const text = numberText(answer);
  if (answer.kind === 'percent') return `${text} %`;
  if (answer.kind !== 'amount' || !answer.unit) return text;
  return `${text} ${wordFor(rounded(answer.value, answer.rounding), answer.unit)}`;
}

/** What stands beside the blank: 'pounds a week', '%', 'date'. */
export function unitText(answer: Answer): string {
  if (answer.kind === 'percent') return '%';
  if (answer.kind !== 'amount' || !answer.unit) return '';
  const { many, per } = answer.unit;
  return per === undefined ? named(many) : say`${named(many)} a ${named(per)}`;
}

/** Two answers that say the same. */
export function sameAnswer(a: Answer, b: Answer): boolean {
  if (a.kind !== b.kind) return false;
  if (a.kind === 'amount' && b.kind === 'amount')
    return (
      a.rounding === b.rounding &&
      a.unit?.many === b.unit?.many &&
      rounded(a.value, a.rounding).equals(rounded(b.value, b.rounding))
    );
  if (a.kind === 'percent' && b.kind === 'percent')
    return (
      a.rounding === b.rounding &&
      rounded(a.value.mul(100), a.rounding).equals(rounded(b.value.mul(100), b.rounding))
    );
  return answerText(a) === answerText(b);
}

/** A question with what it says of rounding. */
export const asking = (question: string, rounding: Rounding): string =>
  [question, spoken(ROUNDING_WORDS[rounding])].filter(Boolean).join(' ');

/** Said where an answer may be a part that no short decimal gives. */
export const partsAllowed = (): string =>
  say`Give a fraction, a mixed number, or a decimal to the nearest hundredth.`;

const ROUNDED: Readonly<Record<Rounding, string>> = {
  exact: '',
  whole: phrase('rounded'),
  up: phrase('rounded up'),
  down: phrase('rounded down'),
  tenth: phrase('rounded'),
  hundredth: phrase('rounded'),
};

/** The usual last step: '7 ÷ 14 = 0.5 bags a week', '58 ÷ 16 ≈ 3.63, rounded: 3.6 pounds a week'. */
export function lastStep(expression: string, answer: Answer): string {
  if (answer.kind === 'chance' && expression === mixed(answer.value))
    return say`That is ${numberText(answer)}.`;
  if (answer.kind !== 'amount' && answer.kind !== 'percent') return `${expression} = ${answerText(answer)}`;
  const value = answer.kind === 'percent' ? answer.value.mul(100) : answer.value;
  if (rounded(value, answer.rounding).equals(value)) return `${expression} = ${answerText(answer)}`;
  return `${expression} ${roughly(value)}, ${spoken(ROUNDED[answer.rounding])}: ${answerText(answer)}`;
}
