import { say, spoken } from '../../words/index.js';
import type { WorkingInput } from '../types.js';

const MOST = 6;

/** The name of an input without what explains it: 'Last spring frost, a 50 % date: …' is the last spring frost. */
export const short = (name: string): string => name.split(/, (?!all )|: | \(/)[0]!.trim();

function change({ name, origin }: WorkingInput): string {
  const english = short(name);
  const what = spoken(english);
  switch (origin) {
    case 'entered':
      return english === 'As-of date' ? say`another as-of date` : say`another entry for “${what}”`;
    case 'own':
      return say`another figure of your own for “${what}”`;
    case 'learned':
      return say`what you write down from now on: “${what}” is learned from it`;
    case 'computed':
      // A published figure that was worked out from what is printed.
      if (english === 'Published') return say`a figure of your own, which goes before the published one`;
      return say`whatever changes “${what}”`;
    case 'published':
    case 'from memory':
      return say`a figure of your own for “${what}”, which goes before the published one`;
    default:
      return say`a figure of your own for “${what}”`;
  }
}

/**
 * What would change a figure, in words: what somebody would write, and where the rest comes from. Never empty:
 * where nothing goes in yet, it is what would fill the blank, or what the rule speaks of.
 */
export function changesOf(inputs: readonly WorkingInput[], missing: string | undefined): readonly string[] {
  const found = [...new Set(inputs.map(change))].slice(0, MOST);
  if (found.length > 0) return found;
  return [missing ?? say`the entries that the rule above speaks of`];
}
