import { spokenTag } from '../../../src/words/index.js';
import type { Hot } from './registry.js';

/** Lines of the filter's list of values in sight; with more the whole menu would outgrow many a window. */
const LINES = 8;

/** The library's own parts of the filter's list, as far as they are used. */
interface ValueFilter {
  getMultipleSelectElement(): {
    getItemsBox(): Hot | undefined;
    getItems(): Item[];
    setItems(items: readonly Item[]): void;
  };
}

/** A line of the list: what is kept, and what it shows. */
interface Item {
  readonly value: unknown;
  readonly visualValue: unknown;
}

const ISO_DAY = /^\d{4}-\d{2}-\d{2}$/;

/** The lines in the order of the words that they show, where all of them are words; undefined where they stand well. */
export function byWordsShown<T extends Item>(items: readonly T[]): T[] | undefined {
  const words = items.filter(({ value }) => value !== '');
  const areWords = words.every(
    ({ value }) => typeof value === 'string' && !ISO_DAY.test(value) && Number.isNaN(Number(value)),
  );
  if (!areWords || words.every(({ value, visualValue }) => value === visualValue)) return undefined;
  const { compare } = new Intl.Collator(spokenTag(), { numeric: true, sensitivity: 'base' });
  return [
    ...items.filter(({ value }) => value === ''),
    ...words.sort((a, b) => compare(String(a.visualValue), String(b.visualValue))),
  ];
}

/**
 * Makes the open filter's list of values tall enough to look through, as the library shows hardly four lines, and puts
 * it in order by what it shows.
 */
export function showMoreValues(hot: Hot): void {
  const filter = hot.getPlugin('filters').components.get('filter_by_value') as unknown as
    | ValueFilter
    | undefined;
  const select = filter?.getMultipleSelectElement();
  const list = select?.getItemsBox();
  if (!select || !list) return;
  const sorted = byWordsShown(select.getItems());
  if (sorted) select.setItems(sorted);
  const line = list.getCell(0, 0)?.parentElement?.offsetHeight || 29;
  list.updateSettings({ height: Math.ceil(LINES * line) });
}
