import type { Draw, FoodRow, Household, LineInput, Lot } from '../../src/planning/types.js';

/** Day number of an ISO day, by the platform's own clock arithmetic. */
export const day = (iso: string): number => Date.parse(`${iso}T00:00:00Z`) / 86_400_000;

export const lot = (id: string, count: number, more: Partial<Lot> = {}): Lot => ({
  id,
  food: 'tomato',
  way: 'canned',
  container: 'quart jar',
  count,
  putUpOn: null,
  place: '',
  ownBestBy: null,
  stillCounting: false,
  ...more,
});

export const draw = (id: string, amount: number | null, more: Partial<Draw> = {}): Draw => ({
  id,
  date: null,
  food: 'tomato',
  way: 'canned',
  amount,
  container: null,
  purpose: 'dish',
  lot: null,
  corrects: null,
  notUse: false,
  allotted: null,
  ...more,
});

export const row = (more: Partial<FoodRow> = {}): FoodRow => ({
  id: 'row',
  food: 'tomato',
  way: 'canned',
  countedIn: 'quart jar',
  comesFrom: 'ground',
  crops: [],
  ownUse: null,
  freshUse: null,
  freshFrom: null,
  freshTo: null,
  nextSupply: null,
  ownTarget: null,
  carry: 0,
  ownMonths: null,
  servingCups: null,
  ...more,
});

export const household = (asOf: string, more: Partial<Household> = {}): Household => ({
  asOf: day(asOf),
  shares: 6,
  basis: 'usual',
  cushion: 0.1,
  measures: 'US customary',
  lastFrost: null,
  firstFrost: null,
  altitudeFt: null,
  ledgerFrom: null,
  ...more,
});

export const line = (more: Partial<LineInput> = {}): LineInput => ({
  food: 'tomato',
  way: 'canned',
  row: null,
  lots: [],
  draws: [],
  ...more,
});
