import type { BookReading } from '../live/book-reading.js';
import type { ReadKind } from '../live/typed-rows.js';
import type { BatchNumbers, DishNumbers, DrawNumbers, StockNumbers } from './book-numbers.js';
import { measureUnit, nameFor } from './words.js';

/** Above this, numbers are no school numbers any more. */
const MOST = 5000;
const isAmount = (n: unknown): n is number => typeof n === 'number' && n > 0 && n <= MOST;

/** A number that children meet: whole, or in halves and quarters. */
const isPlain = (n: number): boolean => Number.isInteger(Math.round(n * 1e6) / 1e6 / 0.25);

/** Text of a cell, as it stands in a sentence. */
export function nameIn(book: BookReading, kind: ReadKind, row: string, column: string): string {
  const sheet = book.sheetOfKind(kind);
  const value = sheet === undefined ? null : book.value(sheet, row, column);
  return typeof value === 'string' ? nameFor(value) : '';
}

/** Each food in each of its containers, with what was put up and what is left of it. */
export function readStock(book: BookReading): StockNumbers[] {
  const sheet = book.sheetOfKind('shelf');
  const lines = new Map<string, { -readonly [K in keyof StockNumbers]: StockNumbers[K] }>();
  for (const lot of book.typedRows('shelf')) {
    const food = nameIn(book, 'shelf', lot.id, 'food');
    const unit = lot.container === null ? null : measureUnit(lot.container);
    const left = sheet === undefined ? null : book.value(sheet, lot.id, 'left');
    if (food === '' || !unit || lot.container === null || !isAmount(lot.count)) continue;
    const key = `${food}|${lot.way}|${lot.container}`;
    const line = lines.get(key) ?? { food, unit, measure: lot.container, putUp: 0, left: 0, lots: [] };
    line.putUp += lot.count;
    line.left += typeof left === 'number' ? left : 0;
    line.lots = [...line.lots, { count: lot.count, putUpOn: lot.putUpOn }];
    lines.set(key, line);
  }
  // Two ways of keeping one food in one container would read as one and the same food.
  const alike = new Map<string, number>();
  for (const { food, measure } of lines.values())
    alike.set(`${food}|${measure}`, (alike.get(`${food}|${measure}`) ?? 0) + 1);
  return [...lines.values()].filter(
    ({ food, measure, putUp, left }) =>
      alike.get(`${food}|${measure}`) === 1 && putUp <= MOST && isPlain(putUp) && isPlain(left),
  );
}

/** What was eaten of each food, day by day: draws for dishes, in the measure most of them are written in. */
export function readDraws(book: BookReading): DrawNumbers[] {
  const foods = new Map<string, { food: string; measure: string; day: number; amount: number }[]>();
  for (const draw of book.typedRows('draws')) {
    const food = nameIn(book, 'draws', draw.id, 'food');
    if (food === '' || draw.date === null || draw.container === null || draw.purpose !== 'dish') continue;
    if (!isAmount(draw.amount) || !isPlain(draw.amount) || draw.corrects !== null) continue;
    const key = `${food}|${draw.way}|${draw.container}`;
    const list = foods.get(key) ?? [];
    list.push({ food, measure: draw.container, day: draw.date, amount: draw.amount });
    foods.set(key, list);
  }
  const best = new Map<string, DrawNumbers>();
  for (const list of foods.values()) {
    const { food, measure } = list[0]!;
    const unit = measureUnit(measure);
    if (!unit || list.length <= (best.get(food)?.draws.length ?? 0)) continue;
    const draws = list.map(({ day, amount }) => ({ day, amount })).sort((a, b) => a.day - b.day);
    best.set(food, { food, unit, measure, draws });
  }
  return [...best.values()];
}

/** Dishes that say how many shares they serve, with their lines of food. */
export function readDishes(book: BookReading): DishNumbers[] {
  const dishes = new Map<
    string,
    { dish: string; serves: number | null; lines: DishNumbers['lines'][number][] }
  >();
  for (const line of book.typedRows('dishes')) {
    if (line.dish === null) continue;
    const dish = dishes.get(line.dish) ?? {
      // A dish keeps its capital: it is a name.
      dish: nameFor(line.dishName).replace(/^./, (first) => first.toUpperCase()),
      serves: null,
      lines: [],
    };
    dish.serves ??= line.serves;
    const unit = line.measure === null ? null : measureUnit(line.measure);
    const food = nameFor(line.foodName);
    if (unit && line.measure !== null && food !== '' && isAmount(line.amount) && isPlain(line.amount)) {
      dish.lines.push({ food, amount: line.amount, unit, measure: line.measure });
    }
    dishes.set(line.dish, dish);
  }
  return [...dishes.values()].flatMap(({ dish, serves, lines }) =>
    isAmount(serves) && Number.isInteger(serves) && serves > 1 && lines.length > 0
      ? [{ dish, serves, lines: once(lines) }]
      : [],
  );
}

const once = (lines: DishNumbers['lines']): DishNumbers['lines'] =>
  lines.filter((line, at) => lines.findIndex(({ food }) => food === line.food) === at);

/** Batches that were put up, with what failed to seal. */
export const readBatches = (book: BookReading): BatchNumbers[] =>
  book.typedRows('batches').flatMap(({ foodName, container, way, filled, failed }) => {
    const unit = container === null ? null : measureUnit(container);
    const food = nameFor(foodName);
    return unit && food !== '' && isAmount(filled) && Number.isInteger(filled)
      ? [{ food, unit, filled, failed: Math.min(filled, failed ?? 0), canned: way === 'canned' }]
      : [];
  });
