import type { Raw } from '../../src/book/index.js';
import { decimalSign } from '../../src/words/index.js';

/**
 * What was entered, as a field begins with it and as it is copied: a number with the decimal sign of the language
 * spoken now and without signs between thousands, so that `readTypedNumber` reads the same number back. A number
 * written as a power of ten keeps its point, which is read in every language.
 */
export function typedText(typed: Raw | null): string {
  if (typed === null) return '';
  const text = String(typed);
  return typeof typed === 'number' && !text.includes('e') ? text.replace('.', decimalSign()) : text;
}
