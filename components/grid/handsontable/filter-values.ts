import type { Hot } from './registry.js';

/** Lines of the filter's list of values in sight; with more the whole menu would outgrow many a window. */
const LINES = 8;

/** The library's own parts of the filter's list, as far as they are used. */
interface ValueFilter {
  getMultipleSelectElement(): { getItemsBox(): Hot | undefined };
}

/** Makes the open filter's list of values tall enough to look through; the library shows hardly four lines. */
export function showMoreValues(hot: Hot): void {
  const filter = hot.getPlugin('filters').components.get('filter_by_value') as unknown as
    | ValueFilter
    | undefined;
  const list = filter?.getMultipleSelectElement().getItemsBox();
  if (!list) return;
  const line = list.getCell(0, 0)?.parentElement?.offsetHeight || 29;
  list.updateSettings({ height: Math.ceil(LINES * line) });
}
