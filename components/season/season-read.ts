import type { CellValue } from '../../src/book/index.js';
import type { LiveBook } from '../../src/live/live-book.js';
import { readCrops } from '../../src/live/read-rows.js';
import { cropKey } from '../../src/planning/garden/words.js';
import type { Planting } from './season-model.js';

const text = (value: CellValue): string => (typeof value === 'string' ? value.trim() : '');
const ISO_DAY = /^\d{4}-\d{2}-\d{2}$/;
const iso = (value: CellValue): string | null =>
  typeof value === 'string' && ISO_DAY.test(value) ? value : null;

/** The book's sheet of plantings; null where it has none. */
export const bedsSheet = (live: LiveBook): string | null =>
  live.sheets().find(({ kind }) => kind === 'beds')?.id ?? null;

/**
 * The plantings of a book's Beds sheet, with its planning columns. A crop of which a food is still to be put up
 * is put up as it is harvested.
 */
export function readPlantings(live: LiveBook): Planting[] {
  const sheet = bedsSheet(live);
  if (sheet === null) return [];
  const keeping = cropsToPutUp(live);
  return live.rowIds(sheet).map((row) => {
    const read = (column: string): CellValue => live.value(sheet, row, column);
    const crop = text(read('crop'));
    const [harvestFrom, harvestTo] = [iso(read('harvest_from')), iso(read('harvest_to'))];
    const kept = keeping.has(cropKey(crop) ?? '');
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
      how: text(read('how')).toLowerCase() || null,
      cell: { sheet, row },
    };
  });
}

/** Crops of foods that are not eaten fresh and of which the plan wants more on the shelf. */
function cropsToPutUp(live: LiveBook): ReadonlySet<string> {
  const sheet = live.sheetOfKind('foods');
  const crops = new Set<string>();
  if (sheet === undefined) return crops;
  for (const row of live.rowIds(sheet)) {
    const wanted = live.value(sheet, row, 'to_put_up');
    if (typeof wanted !== 'number' || wanted <= 0) continue;
    if (text(live.value(sheet, row, 'way')).toLowerCase() === 'fresh') continue;
    if (!['', 'ground'].includes(text(live.value(sheet, row, 'comes_from')).toLowerCase())) continue;
    for (const { crop } of readCrops(text(live.value(sheet, row, 'crops'))).crops) {
      const key = cropKey(crop);
      if (key !== null) crops.add(key);
    }
  }
  return crops;
}
