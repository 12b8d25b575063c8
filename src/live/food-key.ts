import { germanSingular } from '../facts/german-names.js';
import { wordsOf } from '../facts/names.js';

/**
 * The form in which foods are compared: without case, accents or plural, so that a lot of “Tomatoes” and a
 * draw of “tomato” are the same food, as are “Tomaten” and “Tomate”. Only ever compared, never shown.
 */
export function foodKey(name: string): string {
  const words = germanSingular(wordsOf(name));
  if (/(?:[xs]|ch|sh|o)es$/.test(words)) return words.replace(/es$/, '');
  if (/[^aeiou]ies$/.test(words)) return words.replace(/ies$/, 'y');
  return /[^s]s$/.test(words) ? words.slice(0, -1) : words;
}

/** A food and the way it is kept, as one key. */
export const lineKey = (food: string, way: string): string => `${food}|${way}`;
