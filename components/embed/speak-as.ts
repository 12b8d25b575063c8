import { isSpoken, speak } from '../../src/words/index.js';

/**
 * Brings all words of a language before anything is worked out in it; where they cannot be loaded, the language
 * before stays.
 *
 * @param tag BCP 47, as the page writes it.
 */
export async function speakAs(tag: string): Promise<void> {
  if (!isSpoken(tag)) await speak(tag).catch(console.error);
}
