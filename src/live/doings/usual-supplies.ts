import { supplyItem } from '../../planning/garden/index.js';
import { containerWithId } from '../../units/index.js';
import type { BookReading } from '../book-reading.js';

/** Cells of new rows of Supplies. */
export interface SupplyCells {
  readonly [column: string]: string;
  readonly item: string;
  readonly unit: string;
}

/** Where no food and no batch says what it is kept in. */
const USUAL_CONTAINERS: readonly string[] = ['quart jar', 'pint jar', 'quart freezer bag'];

/** What recipes take, with what it is usually bought by. */
const INGREDIENTS: readonly (readonly [item: string, unit: string])[] = [
  ['vinegar', 'quarts'],
  ['sugar', 'pounds'],
  ['salt', 'pounds'],
  ['pectin', 'boxes'],
  ['bottled lemon juice', 'cups'],
];

/**
 * Rows of Supplies that a household usually keeps: lids and rings (by mouth where the batches say which), the jars
 * and bags that its foods and batches are counted in, and what recipes take. Those that are there are left out.
 */
export function usualSupplies(live: BookReading): SupplyCells[] {
  const batches = [...(live.garden?.batches.reckoned.values() ?? [])].map(({ row }) => row);
  const mouths = [...new Set(batches.flatMap(({ mouth }) => (mouth === null ? [] : [mouth])))].sort();
  const there = live.typedRows('supplies').map(({ item }) => supplyItem(item));
  const words = new Set(live.typedRows('supplies').map(({ item }) => item.trim().toLowerCase()));
  const has = (is: 'lids' | 'rings'): boolean => there.some((item) => item.is === is);
  const kinds = mouths.length === 0 ? [''] : mouths.map((mouth) => `${mouth} `);
  const of = (is: 'lids' | 'rings') => (has(is) ? [] : kinds.map((kind) => `${kind}${is}`));

  const used = new Set(
    [
      ...live.foodLines.map(({ input }) => input.row?.countedIn ?? null),
      ...batches.map(({ container }) => container),
    ].filter((id) => id !== null),
  );
  const containers = [...(used.size > 0 ? used : USUAL_CONTAINERS)].filter((id) => {
    const family = containerWithId(id)?.family;
    const taken = there.some((item) => item.is === 'container' && item.container === id);
    return !taken && (family === 'jar' || family === 'bag');
  });
  return [
    ...[...of('lids'), ...of('rings'), ...containers].map((item) => ({ item, unit: 'each' })),
    ...INGREDIENTS.filter(([item]) => !words.has(item)).map(([item, unit]) => ({ item, unit })),
  ];
}
