import { BASES } from '../planning/types.js';
import { phrase } from '../words/index.js';
import type { ColumnType } from './kinds/index.js';
import type { Raw } from './types.js';

/** One setting of the household, declared once: the form, the reader, the help and the docs take it from here. */
export interface SettingDeclaration {
  readonly id: string;
  readonly title: string;
  readonly type: ColumnType;
  readonly unit?: string;
  readonly help: string;
  readonly options?: readonly string[];
  /** What counts while nothing is written. */
  readonly usual?: Raw;
  readonly min?: number;
  readonly max?: number;
}

const frostChance =
  'The chance that the stated frost date stands for: at 50 %, frost comes later one year in two.';

const DECLARED: readonly SettingDeclaration[] = [
  {
    id: 'as_of',
    title: 'Figures for the day',
    type: 'date',
    help: 'The day that all figures are for. Blank: today.',
  },
  {
    id: 'basis',
    title: 'Season to count on',
    type: 'choice',
    options: BASES,
    usual: 'usual',
    help: 'Which end of a range a plan counts on. Lean always gives less food.',
  },
  {
    id: 'cushion',
    title: 'Cushion',
    type: 'number',
    unit: '%',
    usual: 10,
    min: 0,
    max: 400,
    help: 'Put up this much more than the usual use asks for.',
  },
  {
    id: 'measures',
    title: 'Measures',
    type: 'choice',
    options: ['US customary', 'metric'],
    usual: 'US customary',
    help: 'Quarts and pounds, or litres and kilograms.',
  },
  {
    id: 'last_frost',
    title: 'Last spring frost',
    type: 'month-day',
    help: 'A month and a day, as in 05-24.',
  },
  {
    id: 'last_frost_chance',
    title: 'Chance of a later frost',
    type: 'number',
    unit: '%',
    usual: 50,
    min: 0,
    max: 100,
    help: frostChance,
  },
  {
    id: 'first_frost',
    title: 'First fall frost',
    type: 'month-day',
    help: 'A month and a day, as in 09-18.',
  },
  {
    id: 'first_frost_chance',
    title: 'Chance of an earlier frost',
    type: 'number',
    unit: '%',
    usual: 50,
    min: 0,
    max: 100,
    help: frostChance,
  },
  {
    id: 'altitude_ft',
    title: 'Altitude',
    type: 'number',
    unit: 'ft',
    min: -1500,
    max: 20000,
    help: 'Feet above the sea: canner pressure depends on it.',
  },
  {
    id: 'shelf_room',
    title: 'Shelf room',
    type: 'number',
    unit: 'jars',
    min: 0,
    help: 'How many quart jars the shelves hold.',
  },
  {
    id: 'freezer_room',
    title: 'Freezer room',
    type: 'number',
    unit: 'cu ft',
    min: 0,
    help: 'Cubic feet of freezer.',
  },
  {
    id: 'ground_row_feet',
    title: 'Ground',
    type: 'number',
    unit: 'row ft',
    min: 0,
    help: 'Row feet that can be planted.',
  },
];

// Marked, so that they are said in the measures that the household reads.
export const SETTINGS: readonly SettingDeclaration[] = DECLARED.map((setting) => ({
  ...setting,
  title: phrase(setting.title),
  help: phrase(setting.help),
}));

export const settingOf = (id: string): SettingDeclaration | undefined =>
  SETTINGS.find((setting) => setting.id === id);
