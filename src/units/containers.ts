/** What one container holds, in a unit of `units.ts`, or null where only the household can say. */
export interface Holding {
  readonly amount: number;
  /** Unit id. */
  readonly unit: string;
}

export type ContainerFamily = 'jar' | 'can' | 'bag' | 'bucket' | 'piece' | 'weight';

/** Something that lots are counted in. */
export interface Container {
  /** As in 'quart jar'. Stable: books keep it. */
  readonly id: string;
  readonly family: ContainerFamily;
  readonly plural: string;
  /** Null: depends on the container at hand, so the household must say. */
  readonly holds: Holding | null;
  /** True where the size is a trade name rather than a measured volume (bags, buckets, cans). */
  readonly nominal: boolean;
  /** True for jars that are closed with a new lid each time. */
  readonly lids: boolean;
  /** Mouth, where it is made in one size only (from memory); null where it varies or is not known. */
  readonly lidSize: 'regular' | 'wide' | null;
  /** Abbreviations and synonyms, besides the id and the plural. */
  readonly names: readonly string[];
  /** Where the size comes from. */
  readonly source: string;
}

const NAMED = 'named for its volume (US customary, NIST Handbook 44, Appendix C)';
const NAMED_IN_LITRES =
  'named for its volume (the litre beside the SI: BIPM, SI Brochure, 9th edition, table 8)';
const LOOSE = 'nominal size in the trade; common practice, no source';

function jar(
  id: string,
  amount: number,
  unit: string,
  names: readonly string[],
  lidSize: Container['lidSize'] = null,
  source = NAMED,
): Container {
  return {
    id,
    family: 'jar',
    plural: `${id}s`,
    holds: { amount, unit },
    nominal: false,
    lids: true,
    lidSize,
    names,
    source,
  };
}

/** A jar sized in litres. Bare, its size means the volume: a litre is also a measure of much that is in no jar. */
const litreJar = (id: string, millilitres: number, names: readonly string[]): Container =>
  jar(id, millilitres, 'millilitre', names, null, NAMED_IN_LITRES);

function without(
  lidsOf: Omit<Container, 'plural' | 'lids' | 'lidSize'> & { readonly plural?: string },
): Container {
  return { plural: `${lidsOf.id}s`, ...lidsOf, lids: false, lidSize: null };
}

const bag = (size: string): Container =>
  without({
    id: `${size} freezer bag`,
    family: 'bag',
    holds: { amount: 1, unit: size },
    nominal: true,
    names: [`${size} bag`, `${size} size freezer bag`, `${size} zip bag`, `freezer bag ${size}`],
    source: LOOSE,
  });

const weight = (id: string, names: readonly string[]): Container =>
  without({
    id,
    family: 'weight',
    holds: { amount: 1, unit: id },
    nominal: false,
    names,
    source: 'a unit of weight',
  });

/** Every container that the book knows. A plain size ('quart', 'pt') means the jar. */
export const CONTAINERS: readonly Container[] = [
  jar(
    '4 oz jar',
    4,
    'fluid ounce',
    ['4 oz', '4 ounce jar', '4 fl oz jar', 'quarter pint', 'quarter-pint jar', '¼-pint jar'],
    'regular',
  ),
  jar('half-pint jar', 0.5, 'pint', [
    'half pint',
    'hp',
    '½ pt',
    '½ pt jar',
    '8 oz jar',
    '8 ounce jar',
    'jelly jar',
  ]),
  jar('pint jar', 1, 'pint', ['pint', 'pt', 'pt jar', '16 oz jar', '16 ounce jar']),
  jar(
    '1½-pint jar',
    1.5,
    'pint',
    [
      '1½ pint',
      '1½ pt',
      '1½ pt jar',
      'pint and a half',
      'pint-and-a-half jar',
      'one and a half pint',
      'one and a half pint jar',
      '24 oz jar',
      '24 ounce jar',
    ],
    'wide',
  ),
  jar('quart jar', 1, 'quart', ['quart', 'qt', 'qt jar', '32 oz jar', '32 ounce jar']),
  jar(
    'half-gallon jar',
    0.5,
    'gallon',
    ['half gallon', '½ gal', '½ gal jar', '64 oz jar', '64 ounce jar', '2 quart jar'],
    'wide',
  ),
  litreJar('250 ml jar', 250, [
    '250 millilitre jar',
    '250 milliliter jar',
    '¼ l jar',
    '0.25 l jar',
    '¼ litre jar',
  ]),
  litreJar('500 ml jar', 500, [
    '500 millilitre jar',
    '500 milliliter jar',
    '½ l jar',
    '0.5 l jar',
    'half-litre jar',
    'half-liter jar',
    '½ litre jar',
  ]),
  litreJar('1 litre jar', 1000, ['litre jar', 'liter jar', '1 liter jar', '1 l jar', 'l jar', '1000 ml jar']),
  without({
    id: 'no. 10 can',
    family: 'can',
    holds: { amount: 12, unit: 'cup' },
    nominal: true,
    names: ['no 10', '#10', 'number 10 can', 'number ten can', 'no 10 tin', '10 can'],
    source: 'about 12 cups: American Can Company can sizes; a state extension prints 12 to 13',
  }),
  bag('pint'),
  bag('quart'),
  bag('gallon'),
  without({
    id: '5-gallon bucket',
    family: 'bucket',
    holds: { amount: 5, unit: 'gallon' },
    nominal: true,
    names: ['5 gal bucket', 'five gallon bucket', '5 gallon pail', '5 gal pail'],
    source: LOOSE,
  }),
  without({
    id: 'bucket',
    family: 'bucket',
    holds: null,
    nominal: true,
    names: ['pail'],
    source: 'the household says',
  }),
  without({
    id: 'bin',
    family: 'bucket',
    holds: null,
    nominal: true,
    names: ['tote', 'box', 'boxes', 'crate'],
    source: 'the household says',
  }),
  without({
    id: 'piece',
    family: 'piece',
    holds: { amount: 1, unit: 'each' },
    nominal: false,
    names: ['pc', 'head', 'ear'],
    source: 'counting',
  }),
  without({
    id: 'each',
    family: 'piece',
    plural: 'each',
    holds: { amount: 1, unit: 'each' },
    nominal: false,
    names: ['ea', 'unit', 'item'],
    source: 'counting',
  }),
  without({
    id: 'dozen',
    family: 'piece',
    plural: 'dozen',
    holds: { amount: 1, unit: 'dozen' },
    nominal: false,
    names: ['doz', 'dz', 'dozen eggs'],
    source: 'counting',
  }),
  weight('pound', ['lb']),
  weight('ounce', ['oz']),
  weight('kilogram', ['kg', 'kilo']),
];
