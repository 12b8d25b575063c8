import { foodKey } from '../../src/live/food-key.js';
import type { LiveBook } from '../../src/live/live-book.js';

/** How the household writes its foods, by the form in which they are compared: as in Foods, else as on the Shelf. */
export function foodNames(live: LiveBook): (food: string) => string {
  const names = new Map<string, string>();
  for (const kind of ['foods', 'shelf', 'dishes'] as const) {
    const sheet = live.sheetOfKind(kind);
    if (!sheet) continue;
    for (const row of live.rowIds(sheet)) {
      const name = live.value(sheet, row, 'food');
      if (typeof name !== 'string' || name === '') continue;
      const key = foodKey(name);
      if (!names.has(key)) names.set(key, name);
    }
  }
  return (food) => names.get(food) ?? food;
}
