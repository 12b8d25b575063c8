import { bushelPounds, findCrop } from '../facts/index.js';
import type { BookReading } from '../live/book-reading.js';
import { foodKey } from '../live/food-key.js';
import { fromIsoDay } from '../planning/dates.js';
import { cropKey, readFigureName } from '../planning/garden/index.js';
import { rowFeetFor } from '../planning/growing.js';
import type { DayNumber } from '../planning/types.js';
import { inMeasure } from '../units/index.js';
import type { BedNumbers, BushelNumbers, HarvestNumbers, SeasonNumbers } from './book-numbers.js';
import { nameIn } from './kitchen-numbers.js';
import { nameFor } from './words.js';

const MOST = 20_000;

/** Crops are named for one plant: 'green bean', also where Beds has 'Green beans'. */
function cropIn(book: BookReading, row: string): string {
  const name = nameIn(book, 'beds', row, 'crop');
  const one = foodKey(name);
  return name.endsWith('s') && findCrop(one).ok ? one : name;
}

/** Inches between plants as published; a tenth of an inch is finer than anybody plants. */
function publishedSpacing(crop: string): number | null {
  const feet = rowFeetFor(crop, 12);
  return feet.ok && Number.isInteger(feet.value.usual * 2) ? feet.value.usual : null;
}

export function readBeds(book: BookReading): BedNumbers[] {
  const sheet = book.sheetOfKind('beds');
  if (sheet === undefined) return [];
  const came = poundsByPlanting(book);
  const day = (row: string, column: string): DayNumber | null => {
    const value = book.value(sheet, row, column);
    const read = typeof value === 'string' ? fromIsoDay(value) : null;
    return read?.ok ? read.value : null;
  };
  const beds = book.typedRows('beds').flatMap((bed): BedNumbers[] => {
    const crop = cropIn(book, bed.id);
    const { plants } = bed;
    if (crop === '' || plants === null || !Number.isInteger(plants) || plants < 2 || plants > MOST) return [];
    const harvest = came.get(bed.id);
    return [
      {
        crop,
        plants,
        spacing: bed.ownSpacing ?? publishedSpacing(crop),
        spacingFrom: bed.ownSpacing === null ? 'published' : 'own',
        isSown: typeof book.value(sheet, bed.id, 'seeds') === 'number',
        sowOn: day(bed.id, 'start_on'),
        harvestFrom: day(bed.id, 'harvest_from'),
        pounds: harvest?.pounds ?? null,
        plantsPicked: harvest?.plants ?? null,
      },
    ];
  });
  // One planting of a crop, or a question would not say which is meant.
  return beds.filter(({ crop }, at) => beds.findIndex((other) => other.crop === crop) === at);
}

/** Pounds of the newest season by planting: what came in after the last New Year that has a harvest. */
function poundsByPlanting(book: BookReading): Map<string, { pounds: number; plants: number | null }> {
  const by = new Map<string, { pounds: number; plants: number | null; year: number }>();
  for (const { planting, date, amount, unit, plants } of book.typedRows('harvest')) {
    if (planting === null || date === null || amount === null) continue;
    const pounds = inMeasure(amount, unit ?? 'pound', 'pound');
    if (!pounds.ok || pounds.value <= 0) continue;
    const year = yearOf(date);
    const was = by.get(planting);
    if (was && was.year > year) continue;
    const same = was && was.year === year ? was : { pounds: 0, plants: null, year };
    by.set(planting, { pounds: same.pounds + pounds.value, plants: same.plants ?? plants, year });
  }
  return by;
}

const yearOf = (day: DayNumber): number => new Date(day * 86_400_000).getUTCFullYear();

export function readHarvests(book: BookReading): HarvestNumbers[] {
  return book.typedRows('harvest').flatMap(({ id, planting, date, amount, unit }) => {
    const crop = planting === null ? nameIn(book, 'harvest', id, 'crop') : cropIn(book, planting);
    if (crop === '' || date === null || amount === null) return [];
    const pounds = inMeasure(amount, unit ?? 'pound', 'pound');
    return pounds.ok && pounds.value > 0 && pounds.value <= MOST && Number.isInteger(pounds.value * 4)
      ? [{ crop, day: date, pounds: pounds.value }]
      : [];
  });
}

/** Bushel weights of the crops named: the household's own first, then the published one. */
export function readBushels(book: BookReading, crops: readonly string[]): BushelNumbers[] {
  const own = new Map<string, number>();
  for (const { figure, ownValue } of book.typedRows('facts')) {
    const name = ownValue === null ? null : readFigureName(figure);
    if (name?.ok && name.value.what === 'bushel weight' && ownValue) own.set(name.value.of, ownValue);
  }
  return [...new Set(crops)].flatMap((crop): BushelNumbers[] => {
    const mine = own.get(cropKey(crop) ?? '');
    if (mine !== undefined) return [{ crop, pounds: mine, from: 'own' }];
    const published = bushelPounds(crop);
    return published.ok ? [{ crop, pounds: published.value.usual, from: 'published' }] : [];
  });
}

/** Crops with an earlier season on Facts and a later one on Facts or Harvest. */
export function readSeasons(book: BookReading, harvests: readonly HarvestNumbers[]): SeasonNumbers[] {
  const by = new Map<string, { name: string; years: Map<number, number> }>();
  const add = (name: string, year: number, pounds: number, onlyNew: boolean): void => {
    const key = cropKey(name) ?? name;
    const crop = by.get(key) ?? { name: nameFor(name), years: new Map<number, number>() };
    if (!onlyNew || !crop.years.has(year)) crop.years.set(year, (crop.years.get(year) ?? 0) + pounds);
    by.set(key, crop);
  };
  const total = new Map<string, number>();
  for (const { crop, day, pounds } of harvests)
    total.set(`${yearOf(day)}|${crop}`, (total.get(`${yearOf(day)}|${crop}`) ?? 0) + pounds);
  for (const [key, pounds] of total) add(key.slice(5), Number(key.slice(0, 4)), pounds, true);
  for (const { figure, season, pounds } of book.typedRows('facts')) {
    const name = readFigureName(figure);
    if (season === null || !pounds || !name.ok || name.value.what !== 'yield') continue;
    add(name.value.of, season, pounds, true);
  }
  return [...by.values()].flatMap(({ name, years }): SeasonNumbers[] => {
    const [before, after] = [...years]
      .sort((a, b) => b[0] - a[0])
      .slice(0, 2)
      .reverse();
    if (!before || !after) return [];
    return [
      {
        crop: name,
        before: { year: before[0], pounds: before[1] },
        after: { year: after[0], pounds: after[1] },
      },
    ];
  });
}
