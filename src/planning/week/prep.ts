import type { PrepStep } from './types.js';

const NUMBERS = ['no', 'one', 'two', 'three', 'four', 'five', 'six', 'seven'];
const COUNT = `(\\d{1,3}|an?|${NUMBERS.join('|')})`;
const DAYS = new RegExp(`\\b${COUNT}[\\s-]+(day|night|week)s?\\b`, 'i');
const DAY_BEFORE = /\b(?:overnight|(?:the )?(?:day|night|evening) before)\b/i;

/** Days before the meal that a step says; 0 where it says none, or hours. */
export function leadDaysOf(step: string): number {
  const said = DAYS.exec(step);
  if (said) {
    const word = said[1]!.toLowerCase();
    const named = NUMBERS.indexOf(word);
    const count = word === 'a' || word === 'an' ? 1 : named >= 0 ? named : Number(word);
    return count * (said[2]!.toLowerCase() === 'week' ? 7 : 1);
  }
  return DAY_BEFORE.test(step) ? 1 : 0;
}

/**
 * Steps of a prep text, split at `;` and at line ends: 'thaw 1 day; soak overnight' is two. Days, nights
 * and weeks are read as the lead; 'overnight' and 'the day before' are one day.
 */
export function readPrep(text: string): PrepStep[] {
  return text
    .split(/[;\n]/)
    .map((step) => step.trim())
    .filter((step) => step !== '')
    .map((step) => ({ text: step, leadDays: leadDaysOf(step) }));
}
