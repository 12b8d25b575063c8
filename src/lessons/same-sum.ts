import { answerText } from './answer-text.js';
import type { Made } from './types.js';

const MONTHS = 'January|February|March|April|May|June|July|August|September|October|November|December';
const NUMBERS = new RegExp(`\\d[\\d.,/]*|\\b(?:${MONTHS})\\b`, 'g');

/**
 * What two questions have in common whose foods or words alone differ: their form, the numbers and days in their
 * order, and the answer. Of a question in English.
 */
export const sumOf = (kind: string, { text, answer }: Pick<Made<unknown>, 'text' | 'answer'>): string =>
  [kind, ...(text.match(NUMBERS) ?? []), answerText(answer)].join('|');
