import type { CellValue } from '../../src/book/index.js';
import type { LiveBook } from '../../src/live/live-book.js';
import { usualStart } from '../../src/planning/garden/planting-dates.js';
import { cropKey } from '../../src/planning/garden/words.js';
import type { Planting } from './season-model.js';

const text = (value: CellValue): string => (typeof value === 'string' ? value.trim() : '');
const ISO_DAY = /^\d{4}-\d{2}-\d{2}$/;
const iso = (value: CellValue): string | null =>
  typeof value === 'string' && ISO_DAY.test(value) ? value : null;

/**
 * The plantings of a book's Beds sheet, with its planning columns. A crop of which a food is still to be put up
 * is put up as it is harvested.
 */
export function readPlantings(live: LiveBook): Planting[] {
  const sheet = live.sheetOfKind('beds');
  if (sheet === undefined) return [];
  const keeping = cropsToPutUp(live);
  return live.rowIds(sheet).map((row) => {
    const read = (column: string): CellValue => live.value(sheet, row, column);
    const crop = text(read('crop'));
    const key = cropKey(crop);
    const [harvestFrom, harvestTo] = [iso(read('harvest_from')), iso(read('harvest_to'))];
    const kept = key !== null && keeping.has(key);
    return {
      crop,
      variety: text(read('variety')),
      startOn: iso(read('start_on')),
      setOutOn: iso(read('set_out_on')),
      sownOn: iso(read('sown_on')),
      harvestFrom,
      harvestTo,
      putUpFrom: kept ? harvestFrom : null,
      putUpTo: kept ? harvestTo : null,
      how: text(read('how_started')).toLowerCase() || (key === null ? null : usualStart(key)),
      cell: { sheet, row },
    };
  });
}

/** Crops, by their keys, of foods from the ground of which the plan wants more on the shelf. */
function cropsToPutUp(live: LiveBook): ReadonlySet<string> {
  const crops = new Set<string>();
  for (const { input, plan } of live.foodLines) {
    const wanted = plan.food?.figures.to_put_up;
    if (!input.row || input.way === 'fresh' || typeof wanted !== 'number' || wanted <= 0) continue;
    if ((input.row.comesFrom ?? 'ground') !== 'ground') continue;
    for (const { crop } of input.row.crops) {
      const key = cropKey(crop);
      if (key !== null) crops.add(key);
    }
  }
  return crops;
}
