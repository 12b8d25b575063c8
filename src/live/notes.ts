import type { CellValue } from '../book/index.js';
import { likeliest } from '../likeliest.js';
import type { Problem } from '../problem.js';
import { say, spoken } from '../words/index.js';
import { foodKey } from './food-key.js';

/**
 * A food that Foods does not list: it is counted all the same, so this only asks. `listed` holds the names by
 * the form in which foods are compared.
 */
export function unlistedFood(name: string, listed: ReadonlyMap<string, string>): Problem | undefined {
  const key = foodKey(name);
  if (key === '' || listed.has(key)) return undefined;
  const near = likeliest(key, listed, 1);
  return {
    code: 'food-not-listed',
    message:
      near === undefined
        ? say`“${name.slice(0, 60)}” is not a row of Foods.`
        : `${say`“${name.slice(0, 60)}” is not a row of Foods`}${say`: did you mean `}${near}?`,
    mend: say`Choose one from the list, or add a row to Foods so that it is planned for too.`,
  };
}

/** A Foods row for a line that an earlier row plans. */
export const secondRow: Problem = {
  code: 'food-twice',
  get message() {
    return say`This food, kept this way, has a row already: the first one counts.`;
  },
  get mend() {
    return say`Remove one of the two rows, or choose another way kept.`;
  },
};

/** A lot in words, from its cells. */
export function lotLabel(value: (column: string) => CellValue, id: string): string {
  const parts = ['food', 'way', 'container', 'put_up_on', 'place'].map((column) => {
    const part = value(column);
    return typeof part === 'string' && (column === 'way' || column === 'container') ? spoken(part) : part;
  });
  const words = parts.filter((part) => part !== null && typeof part !== 'object').map(String);
  return words.length > 0 ? words.join(', ') : id;
}
