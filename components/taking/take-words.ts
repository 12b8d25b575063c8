import { linesNamed, type TakeLine } from '../../src/live/doings/take-from-shelf.js';
import { amountWords } from '../../src/planning/week/words.js';
import { type Problem, refuse } from '../../src/problem.js';
import { say } from '../../src/words/index.js';
import { leftWords } from './take-line.js';

/** A line as it may be written: of a food that is kept in one way only, so that it is taken as it stands. */
export function exampleOf(lines: readonly TakeLine[]): string {
  const line = lines.find(({ food }) => linesNamed(lines, food).length === 1) ?? lines[0];
  return `${line?.food ?? ''} 2`;
}

export function takenWords(words: string, now: TakeLine | undefined): string {
  if (!now) return say`Taken: ${words}. Nothing is left.`;
  const left = leftWords(now);
  return left === '' ? say`Taken: ${words}.` : say`Taken: ${words}. ${left}.`;
}

/** More was taken than there was: the draw stands as it was written, and what lacked is said. */
export const notFound = (words: string, missed: number, unit: string | null): Problem =>
  refuse(
    'more-than-left',
    say`Taken: ${words}. Not found on the shelf: ${unit === null ? String(missed) : amountWords(missed, unit)}.`,
    say`Take it back below if that was not meant, or count the shelf.`,
  ).problem;

/** What is written, without a number and what stands after it. */
export const nameIn = (text: string): string => text.replace(/\s*\d.*$/, '').trim();
