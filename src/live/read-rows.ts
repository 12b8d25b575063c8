import type { CellValue } from '../book/index.js';
import { readNumber } from '../book/index.js';
import {
  type Allotment,
  COMES_FROM,
  type CropShare,
  DRAW_PURPOSES,
  type Draw,
  type FoodRow,
  type Lot,
  WAYS_KEPT,
} from '../planning/types.js';
import type { Problem } from '../problem.js';
import { metricOf } from '../units/index.js';
import { phrase, say, spoken } from '../words/index.js';
import { CellReader, inCustomary } from './cell-reader.js';
import { foodKey } from './food-key.js';

/** A row as the planners read it, with what could not be read, by column. */
export interface ReadRow<T> {
  readonly typed: T;
  readonly problems: Readonly<Record<string, Problem>>;
}

type Cells = (column: string) => CellValue;
const key = (text: string): string | null => (text === '' ? null : foodKey(text) || null);

export function readLot(id: string, cells: Cells): ReadRow<Lot> {
  const r = new CellReader('shelf', cells);
  const food = key(r.text('food'));
  const typed: Lot = {
    id,
    food,
    way: r.choice('way', WAYS_KEPT),
    container: r.container('container'),
    count: r.number('count'),
    putUpOn: r.day('put_up_on'),
    place: r.text('place'),
    ownBestBy: r.day('own_best_by'),
    stillCounting: r.tick('still_counting'),
  };
  if (typed.count !== null || typed.container !== null) {
    if (food === null)
      r.note('food', missing('food', say`Write what is in it; until then the lot is not counted.`));
    else if (typed.way === null)
      r.note(
        'way',
        missing('way it is kept', say`Choose canned, frozen, dried…; until then the lot is not counted.`),
      );
    else if (typed.container === null)
      r.note(
        'container',
        missing('container', say`Choose quart jar, freezer bag, pound…; until then the lot is not counted.`),
      );
  }
  return { typed, problems: r.problems };
}

export function readDraw(id: string, cells: Cells, allotted: Allotment | null): ReadRow<Draw> {
  const r = new CellReader('draws', cells);
  const amount = r.number('amount');
  const lot = r.text('lot');
  const corrects = r.text('corrects');
  const typed: Draw = {
    id,
    date: r.day('date'),
    food: key(r.text('food')),
    way: r.choice('way', WAYS_KEPT),
    amount,
    container: r.measure('container'),
    purpose: r.choice('purpose', DRAW_PURPOSES) ?? 'dish',
    lot: lot === '' ? null : lot,
    corrects: corrects === '' ? null : corrects,
    notUse: r.tick('not_use'),
    allotted,
  };
  if (amount !== null && typed.food === null && typed.lot === null) {
    r.note('food', missing('food', say`Write what was taken; until then the draw is not counted.`));
  }
  if (amount !== null && amount < 0 && typed.corrects === null && typed.purpose !== 'count') {
    r.note('amount', {
      code: 'negative-draw',
      message: say`A draw below 0 puts food back.`,
      mend: say`Name the draw that it corrects, or write a lot on the Shelf for food that is new.`,
    });
  }
  // What is wrong in any of these could make the draw take something else than was meant.
  const unsure = BEARING.some((column) => r.problems[column]);
  return { typed: unsure ? { ...typed, amount: null } : typed, problems: r.problems };
}

const BEARING = ['date', 'food', 'way', 'amount', 'container'];

/** “tomato 3; onion 0.25”: crops with the pounds of each, where written. */
export function readCrops(text: string): { crops: CropShare[]; unread: string[] } {
  const crops: CropShare[] = [];
  const unread: string[] = [];
  for (const part of text.split(/[;\n]/)) {
    const words = part.trim();
    if (words === '') continue;
    const { crop, amount, unit } = cropAndAmount(words);
    const pounds = amount === '' ? null : readNumber(amount);
    if (!/\p{L}/u.test(crop) || pounds === undefined) unread.push(words);
    else crops.push({ crop, pounds: pounds === null ? null : inPounds(pounds, unit) });
  }
  return { crops, unread };
}

/** A weight in pounds: as the unit beside it says, else as the household measures. */
const inPounds = (weight: number, unit: string): number =>
  unit.startsWith('k')
    ? weight / metricOf('pounds')!.factor
    : unit === ''
      ? inCustomary(weight, 'pounds')
      : weight;

/** “tomato 3 1/2 lb”: the words, and the figures after them. Word by word, for a pattern takes minutes on long text. */
function cropAndAmount(text: string): { crop: string; amount: string; unit: string } {
  const words = text.split(/\s+/);
  const last = words.at(-1)!;
  const bare = last.replace(/(?:lbs?|pounds?|kg|kilos?|kilograms?)$/, '');
  const unit = last.slice(bare.length);
  const figures =
    bare === '' ? words.slice(0, -1) : /^[\d./]+$/.test(bare) ? [...words.slice(0, -1), bare] : words;
  let from = figures.length;
  while (from > 0 && /^[\d./]+$/.test(figures[from - 1]!)) from--;
  if (from === figures.length) return { crop: text, amount: '', unit: '' };
  return { crop: figures.slice(0, from).join(' '), amount: figures.slice(from).join(' '), unit };
}

export function readFood(id: string, cells: Cells): ReadRow<FoodRow> {
  const r = new CellReader('foods', cells);
  const { crops, unread } = readCrops(r.text('crops'));
  if (unread[0] !== undefined) {
    r.note('crops', {
      code: 'crops-unread',
      message: say`“${unread[0].slice(0, 40)}” is not a crop with its pounds.`,
      mend: say`Write the crop, then the pounds in one container, with ; between crops: tomato 3; onion 0.25`,
    });
  }
  const typed: FoodRow = {
    id,
    food: key(r.text('food')),
    way: r.choice('way', WAYS_KEPT),
    countedIn: r.container('counted_in'),
    comesFrom: r.choice('comes_from', COMES_FROM),
    crops,
    ownUse: r.number('own_use'),
    freshUse: r.number('fresh_use'),
    freshFrom: r.monthDay('fresh_from'),
    freshTo: r.monthDay('fresh_to'),
    nextSupply: r.day('next_supply'),
    ownTarget: r.number('own_target'),
    carry: r.number('carry') ?? 0,
    ownMonths: r.number('own_months'),
    servingCups: r.number('serving_cups'),
  };
  if (typed.food !== null && typed.way === null)
    r.note(
      'way',
      missing('way it is kept', say`Choose canned, frozen, dried…; until then the row is not planned.`),
    );
  if ((typed.freshFrom === null) !== (typed.freshTo === null)) {
    r.note(
      typed.freshFrom === null ? 'fresh_from' : 'fresh_to',
      missing('other end of the season', say`A fresh season has a first day and a last day.`),
    );
  }
  return { typed, problems: r.problems };
}

export interface Person {
  readonly id: string;
  readonly share: number | null;
}

export function readPerson(id: string, cells: Cells): ReadRow<Person> {
  const r = new CellReader('household', cells);
  const named = r.text('name') !== '';
  const share = r.number('share');
  return {
    typed: { id, share: share ?? (named && r.problems.share === undefined ? 1 : null) },
    problems: r.problems,
  };
}

const MISSING = {
  food: phrase('The food is missing.'),
  'way it is kept': phrase('The way it is kept is missing.'),
  container: phrase('The container is missing.'),
  'other end of the season': phrase('The other end of the season is missing.'),
};

const missing = (what: keyof typeof MISSING, mend: string): Problem => ({
  code: 'missing',
  message: spoken(MISSING[what]),
  mend,
});
