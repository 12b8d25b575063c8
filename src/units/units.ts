import { over, type Ratio, times } from './ratio.js';

/**
 * What a unit measures. Liquid and plain volume convert freely; dry measure (peck, bushel) is volume too,
 * but fresh produce in a bushel says nothing of jars, so it is never turned into liquid measure.
 */
export type Dimension = 'volume' | 'dry measure' | 'weight' | 'length' | 'area' | 'count';

/** A unit of measure. */
export interface Unit {
  /** Short and plain, as in 'quart' or 'dry quart'. Stable: books keep it. */
  readonly id: string;
  readonly dimension: Dimension;
  /** Size in the base unit of its dimension: mL (volume and dry measure), g, m, m², or 1. */
  readonly factor: number;
  /** The same size as an exact fraction. */
  readonly exact: Ratio;
  readonly plural: string;
  /** Abbreviations and synonyms, besides the id and the plural. */
  readonly names: readonly string[];
  /** How the size is defined, and where. */
  readonly source: string;
}

/** The base unit of each dimension, by id: a unit's `factor` counts these. */
export const BASE_UNITS: Readonly<Record<Dimension, string>> = {
  volume: 'millilitre',
  'dry measure': 'millilitre',
  weight: 'gram',
  length: 'metre',
  area: 'square metre',
  count: 'each',
};

const HB44 = 'NIST Handbook 44, Appendix C';
const SI = 'SI (BIPM brochure)';

const ONE: Ratio = [1, 1];
const part = (of: Ratio, parts: number): Ratio => over(of, [parts, 1]);
const many = (of: Ratio, count: number): Ratio => times(of, [count, 1]);

// The definitions on which all others rest: 1 in = 2.54 cm, 1 gal = 231 in³, 1 bu = 2150.42 in³,
// 1 lb = 453.59237 g, all exact.
const INCH: Ratio = [127, 5000];
const FOOT = many(INCH, 12);
const YARD = many(FOOT, 3);
const CUBIC_INCH: Ratio = times(times(INCH, INCH), times(INCH, [1000000, 1]));
const GALLON = many(CUBIC_INCH, 231);
const FLUID_OUNCE = part(GALLON, 128);
const BUSHEL = times(CUBIC_INCH, [107521, 50]);
const POUND: Ratio = [45359237, 100000];
const SQUARE_FOOT = times(FOOT, FOOT);

function unit(
  id: string,
  plural: string,
  dimension: Dimension,
  exact: Ratio,
  names: readonly string[],
  source: string,
): Unit {
  return { id, dimension, factor: exact[0] / exact[1], exact, plural, names, source };
}

/** Every unit of measure that the book knows. US customary unless it says otherwise. */
export const UNITS: readonly Unit[] = [
  unit('teaspoon', 'teaspoons', 'volume', part(FLUID_OUNCE, 6), ['tsp', 'teasp'], `⅙ fluid ounce: ${HB44}`),
  unit(
    'tablespoon',
    'tablespoons',
    'volume',
    part(FLUID_OUNCE, 2),
    ['tbsp', 'tbs', 'tbl', 'tablesp'],
    `½ fluid ounce: ${HB44}`,
  ),
  unit(
    'fluid ounce',
    'fluid ounces',
    'volume',
    FLUID_OUNCE,
    ['fl oz', 'floz', 'fluid oz', 'liquid ounce'],
    `1/128 gallon: ${HB44}`,
  ),
  unit(
    'cup',
    'cups',
    'volume',
    part(GALLON, 16),
    ['c', 'US cup', 'measuring cup'],
    `8 fluid ounces: ${HB44}`,
  ),
  unit('pint', 'pints', 'volume', part(GALLON, 8), ['pt', 'liquid pint', 'US pint'], `28.875 in³: ${HB44}`),
  unit(
    'quart',
    'quarts',
    'volume',
    part(GALLON, 4),
    ['qt', 'liquid quart', 'US quart'],
    `57.75 in³: ${HB44}`,
  ),
  unit(
    'gallon',
    'gallons',
    'volume',
    GALLON,
    ['gal', 'liquid gallon', 'US gallon'],
    `231 in³ exactly: ${HB44}`,
  ),
  unit(
    'millilitre',
    'millilitres',
    'volume',
    ONE,
    ['ml', 'milliliter', 'cc', 'cubic centimetre', 'cubic centimeter', 'cm3'],
    SI,
  ),
  unit('litre', 'litres', 'volume', [1000, 1], ['l', 'liter', 'ltr'], SI),
  unit(
    'cubic inch',
    'cubic inches',
    'volume',
    CUBIC_INCH,
    ['cu in', 'in3', 'cubic in'],
    `1 in = 2.54 cm: ${HB44}`,
  ),
  unit(
    'cubic foot',
    'cubic feet',
    'volume',
    many(CUBIC_INCH, 1728),
    ['cu ft', 'ft3', 'cubic ft'],
    `1,728 in³: ${HB44}`,
  ),

  unit('dry pint', 'dry pints', 'dry measure', part(BUSHEL, 64), ['dry pt'], `1/64 bushel: ${HB44}`),
  unit(
    'dry quart',
    'dry quarts',
    'dry measure',
    part(BUSHEL, 32),
    ['dry qt'],
    `1/32 bushel, 67.200625 in³: ${HB44}`,
  ),
  unit('peck', 'pecks', 'dry measure', part(BUSHEL, 4), ['pk'], `¼ bushel, 537.605 in³: ${HB44}`),
  unit(
    'bushel',
    'bushels',
    'dry measure',
    BUSHEL,
    ['bu', 'bsh', 'struck bushel', 'US bushel'],
    `2,150.42 in³ exactly, struck: ${HB44}`,
  ),

  unit(
    'ounce',
    'ounces',
    'weight',
    part(POUND, 16),
    ['oz', 'avoirdupois ounce', 'ounce weight', 'oz wt'],
    `1/16 pound: ${HB44}`,
  ),
  unit('pound', 'pounds', 'weight', POUND, ['lb', 'pd', 'avoirdupois pound'], `453.59237 g exactly: ${HB44}`),
  unit('gram', 'grams', 'weight', ONE, ['g', 'gm', 'gramme'], SI),
  unit('kilogram', 'kilograms', 'weight', [1000, 1], ['kg', 'kilo', 'kilogramme'], SI),
  unit(
    'ton',
    'tons',
    'weight',
    many(POUND, 2000),
    ['short ton', 'US ton', 'net ton'],
    `2,000 pounds: ${HB44}`,
  ),
  unit('tonne', 'tonnes', 'weight', [1000000, 1], ['metric ton'], SI),

  unit('inch', 'inches', 'length', INCH, ['in'], `2.54 cm exactly: ${HB44}`),
  unit(
    'foot',
    'feet',
    'length',
    FOOT,
    ['ft', 'row foot', 'row feet', 'foot of row', 'feet of row'],
    `12 inches: ${HB44}`,
  ),
  unit('yard', 'yards', 'length', YARD, ['yd'], `3 feet: ${HB44}`),
  unit('centimetre', 'centimetres', 'length', [1, 100], ['cm', 'centimeter'], SI),
  unit('metre', 'metres', 'length', ONE, ['m', 'meter'], SI),

  unit(
    'square foot',
    'square feet',
    'area',
    SQUARE_FOOT,
    ['sq ft', 'ft2', 'square ft'],
    `144 square inches: ${HB44}`,
  ),
  unit(
    'square yard',
    'square yards',
    'area',
    many(SQUARE_FOOT, 9),
    ['sq yd', 'yd2', 'square yd'],
    `9 square feet: ${HB44}`,
  ),
  unit(
    'acre',
    'acres',
    'area',
    many(SQUARE_FOOT, 43560),
    ['ac'],
    `43,560 square feet of the international foot: ${HB44}`,
  ),
  unit('square metre', 'square metres', 'area', ONE, ['sq m', 'm2', 'square meter', 'square m'], SI),

  unit('each', 'each', 'count', ONE, ['ea', 'piece', 'pc', 'unit', 'item', 'single', 'count'], 'counting'),
  unit('dozen', 'dozen', 'count', [12, 1], ['doz', 'dz'], '12: counting'),
];

/**
 * Ids of units of bare space, which measure liquid and dry goods alike: a bushel is so many litres, and a
 * quart is so many litres, though a bushel of beans is not so many quarts of beans.
 */
export const SPACE_UNITS: ReadonlySet<string> = new Set(['millilitre', 'litre', 'cubic inch', 'cubic foot']);
