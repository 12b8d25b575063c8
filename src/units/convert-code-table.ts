/**
 * Unit codes of CONVERT as OpenFormula lists them (OpenDocument 1.3, part 4, 'Unit names'), with the size of
 * each in the base unit of its group. Codes in one string mean the same; later ones are often deprecated, yet
 * evaluators must know them. Where the standard gives a rounded size it lets a more exact one stand instead.
 */
export interface CodeRow {
  /** Codes with the same meaning, separated by blanks. */
  readonly codes: string;
  readonly size: number;
  /** Power to which a decimal prefix is raised: 2 in km2; absent where no prefix may be used. */
  readonly prefix?: 1 | 2 | 3;
  /** True where the binary prefixes may be used. */
  readonly binary?: boolean;
  /** For temperatures: value at which the scale stands at 0 °C. */
  readonly zero?: number;
}

const row = (codes: string, size: number, prefix?: 1 | 2 | 3): CodeRow =>
  prefix === undefined ? { codes, size } : { codes, size, prefix };

const INCH = 0.0254;
const FOOT = 0.3048;
const YARD = 0.9144;
const MILE = 1609.344;
const NAUTICAL_MILE = 1852;
/** 299,792,458 m/s for 365.25 days. */
const LIGHT_YEAR = 9460730472580800;
/** 149,597,870.691 km ÷ tan 1″, as the standard defines it. */
const PARSEC = 149597870691 / 4.848136811133344e-6;
const PICA_POINT = INCH / 72;
const PICA = INCH / 6;
const ANGSTROM = 1e-10;
const POUND = 453.59237;
/** Pound force in newtons: 0.45359237 kg × 9.80665 m/s². */
const POUND_FORCE = 4.4482216152605;
const HORSEPOWER = 550 * FOOT * POUND_FORCE;
const HOUR = 3600;
/** US liquid gallon in litres. */
const GALLON = 3.785411784;
const UK_GALLON = 4.54609;
/** Litres in a cubic metre. */
const CUBIC_METRE = 1000;

const square = (codes: string, side: number, prefix?: 2) => row(codes, side * side, prefix);
const cube = (codes: string, side: number, prefix?: 3) => row(codes, side ** 3 * CUBIC_METRE, prefix);

/** The groups; codes of one group convert into each other. */
export const CODE_GROUPS: Readonly<Record<string, readonly CodeRow[]>> = {
  // m²
  area: [
    row('uk_acre', 4046.8564224),
    row('us_acre', 4046 + 13525426 / 15499969),
    square('ang2 ang^2', ANGSTROM, 2),
    row('ar', 100, 1),
    square('ft2 ft^2', FOOT),
    row('ha', 10000),
    square('in2 in^2', INCH),
    square('ly2 ly^2', LIGHT_YEAR),
    square('m2 m^2', 1, 2),
    row('Morgen', 2500),
    square('mi2 mi^2', MILE),
    square('Nmi2 Nmi^2', NAUTICAL_MILE),
    square('Pica2 Pica^2 picapt2 picapt^2', PICA_POINT),
    square('pica2 pica^2', PICA),
    square('yd2 yd^2', YARD),
  ],
  // m
  length: [
    row('ang', ANGSTROM, 1),
    row('ell', 45 * INCH),
    row('ft', FOOT),
    row('in', INCH),
    row('ly', LIGHT_YEAR, 1),
    row('m', 1, 1),
    row('mi', MILE),
    row('Nmi', NAUTICAL_MILE),
    row('parsec pc', PARSEC, 1),
    row('Pica picapt', PICA_POINT),
    row('pica', PICA),
    row('survey_mi', 6336000 / 3937),
    row('yd', YARD),
  ],
  // J
  energy: [
    row('BTU btu', 1055.05585262),
    row('c', 4.184, 1),
    row('cal', 4.1868, 1),
    row('e', 1e-7, 1),
    // Elementary charge, exact since the SI of 2019.
    row('eV ev', 1.602176634e-19, 1),
    row('flb', FOOT * POUND_FORCE),
    row('HPh hh', HORSEPOWER * HOUR),
    row('J', 1, 1),
    row('Wh wh', HOUR, 1),
  ],
  // N
  force: [row('dyn dy', 1e-5, 1), row('N', 1, 1), row('lbf', POUND_FORCE), row('pond', 9.80665e-3, 1)],
  // bit
  information: [
    { codes: 'bit', size: 1, prefix: 1, binary: true },
    { codes: 'byte', size: 8, prefix: 1, binary: true },
  ],
  // T
  'magnetic flux density': [row('ga', 1e-4, 1), row('T', 1, 1)],
  // g
  mass: [
    row('g', 1, 1),
    row('grain', POUND / 7000),
    row('cwt shweight', 100 * POUND),
    row('uk_cwt lcwt hweight', 112 * POUND),
    row('lbm', POUND),
    row('stone', 14 * POUND),
    row('ton', 2000 * POUND),
    row('ozm', POUND / 16),
    // The standard prints 32.174 pounds; this is one pound force a foot per second squared.
    row('sg', (1000 * POUND_FORCE) / FOOT),
    // CODATA 2022, from memory.
    row('u', 1.66053906892e-24, 1),
    row('uk_ton LTON brton', 2240 * POUND),
  ],
  // W
  power: [row('HP h', HORSEPOWER), row('PS', 75 * 9.80665), row('W w', 1, 1)],
  // Pa
  pressure: [
    row('atm at', 101325, 1),
    // Conventional: 13.5951 g/cm³ × 9.80665 m/s².
    row('mmHg', 133.322387415, 1),
    row('Pa', 1, 1),
    row('p P', 1),
    row('psi', POUND_FORCE / (INCH * INCH)),
    row('Torr', 101325 / 760),
  ],
  // m/s
  speed: [
    row('admkn', (6080 * FOOT) / HOUR),
    row('kn', NAUTICAL_MILE / HOUR),
    row('m/h m/hr', 1 / HOUR, 1),
    row('m/s m/sec', 1, 1),
    row('mph', MILE / HOUR),
  ],
  // degrees of 1 °C
  temperature: [
    { codes: 'C cel', size: 1, zero: 0 },
    { codes: 'F fah', size: 5 / 9, zero: 32 },
    { codes: 'K kel', size: 1, prefix: 1, zero: 273.15 },
    { codes: 'Rank', size: 5 / 9, zero: 491.67 },
    { codes: 'Reau', size: 5 / 4, zero: 0 },
  ],
  // s
  time: [
    row('day d', 24 * HOUR),
    row('hr', HOUR),
    row('mn min', 60),
    row('sec s', 1, 1),
    row('yr', 365.25 * 24 * HOUR),
  ],
  // L
  volume: [
    cube('ang3 ang^3', ANGSTROM, 3),
    row('barrel', 42 * GALLON),
    row('bushel', 35.23907016688),
    row('cup', GALLON / 16),
    cube('ft3 ft^3', FOOT),
    row('gal', GALLON),
    row('GRT regton', 100 * FOOT ** 3 * CUBIC_METRE),
    row('in3 in^3', GALLON / 231),
    row('l L lt', 1, 1),
    cube('ly3 ly^3', LIGHT_YEAR),
    cube('m3 m^3', 1, 3),
    cube('mi3 mi^3', MILE),
    row('MTON', 40 * FOOT ** 3 * CUBIC_METRE),
    cube('Nmi3 Nmi^3', NAUTICAL_MILE),
    row('oz', GALLON / 128),
    cube('Pica3 Pica^3 picapt3 picapt^3', PICA_POINT),
    cube('pica3 pica^3', PICA),
    row('pt us_pt', GALLON / 8),
    row('qt', GALLON / 4),
    row('tbs', GALLON / 256),
    row('tsp', GALLON / 768),
    row('tspm', 0.005),
    row('uk_gal', UK_GALLON),
    row('uk_pt', UK_GALLON / 8),
    row('uk_qt', UK_GALLON / 4),
    cube('yd3 yd^3', YARD),
  ],
};

/** Decimal prefixes; `e` for deka is the standard's own, beside `da`. */
export const DECIMAL_PREFIXES: Readonly<Record<string, number>> = {
  Y: 24,
  Z: 21,
  E: 18,
  P: 15,
  T: 12,
  G: 9,
  M: 6,
  k: 3,
  h: 2,
  da: 1,
  e: 1,
  d: -1,
  c: -2,
  m: -3,
  u: -6,
  n: -9,
  p: -12,
  f: -15,
  a: -18,
  z: -21,
  y: -24,
};

/** Binary prefixes (IEC 60027-2), as powers of two. */
export const BINARY_PREFIXES: Readonly<Record<string, number>> = {
  Ki: 10,
  Mi: 20,
  Gi: 30,
  Ti: 40,
  Pi: 50,
  Ei: 60,
  Zi: 70,
  Yi: 80,
};
