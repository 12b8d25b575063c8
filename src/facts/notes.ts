import { HERE } from '../words/here.js';
import { say, spoken } from '../words/index.js';

/**
 * What a published figure remarks on itself, in the language spoken. Its measures stay those in which it is printed,
 * whatever the household measures in.
 */
export const noteInWords = (note: string): string =>
  // Meat is cured with salt; sweet potatoes by lying in the warm.
  note === 'cured' ? say`cured${HERE}` : spoken(note);
