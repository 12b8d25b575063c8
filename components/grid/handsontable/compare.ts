import type { Shown } from './line.js';

const ISO_DAY = /^\d{4}-\d{2}-\d{2}$/;

/** Numbers, then dates, then text, then yes and no. */
function kindOf(value: Exclude<Shown, null>): number {
  if (typeof value === 'number') return 0;
  if (typeof value === 'string') return ISO_DAY.test(value) ? 1 : 2;
  return 3;
}

const texts = new Intl.Collator(undefined, { numeric: true, sensitivity: 'base' });

/** Which of two shown values comes first. Blanks come last, whichever way the column is sorted. */
export function compareShown(a: Shown, b: Shown, ascending: boolean): number {
  const [blankA, blankB] = [a === null || a === '', b === null || b === ''];
  if (blankA || blankB) return Number(blankA) - Number(blankB);
  const [x, y] = [a as Exclude<Shown, null>, b as Exclude<Shown, null>];
  const kind = kindOf(x) - kindOf(y);
  const order =
    kind !== 0
      ? kind
      : typeof x === 'number' && typeof y === 'number'
        ? x - y
        : texts.compare(String(x), String(y));
  return ascending ? order : -order;
}
