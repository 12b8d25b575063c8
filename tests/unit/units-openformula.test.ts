import Qty from 'js-quantities';
import { describe, expect, it } from 'vitest';
import { convertCodes, convertOpenFormula } from '../../src/units/index.js';

const value = (n: number, from: string, to: string): number => {
  const result = convertOpenFormula(n, from, to);
  if (!result.ok) throw new Error(`${from} to ${to}: ${result.problem.message}`);
  return result.value;
};
const refusal = (n: number, from: string, to: string) => {
  const result = convertOpenFormula(n, from, to);
  if (result.ok) throw new Error(`not refused: ${result.value}`);
  return result.problem;
};

describe('CONVERT as OpenFormula defines it', () => {
  it('knows every unit code of the standard', () => {
    // OpenDocument 1.3, part 4, CONVERT, table of unit names, with the deprecated codes.
    const standard: Record<string, string> = {
      area: 'uk_acre us_acre ang2 ang^2 ar ft2 ft^2 ha in2 in^2 ly2 ly^2 m2 m^2 Morgen mi2 mi^2 Nmi2 Nmi^2 Pica2 Pica^2 picapt2 picapt^2 pica2 pica^2 yd2 yd^2',
      length: 'ang ell ft in ly m mi Nmi parsec pc Pica picapt pica survey_mi yd',
      energy: 'BTU btu c cal e eV ev flb HPh hh J Wh wh',
      force: 'dyn dy N lbf pond',
      information: 'bit byte',
      'magnetic flux density': 'ga T',
      mass: 'g grain cwt shweight uk_cwt lcwt hweight lbm stone ton ozm sg u uk_ton LTON brton',
      power: 'HP h PS W w',
      pressure: 'atm at mmHg Pa p P psi Torr',
      speed: 'admkn kn m/h m/hr m/s m/sec mph',
      temperature: 'C cel F fah K kel Rank Reau',
      time: 'day d hr mn min sec s yr',
      volume:
        'ang3 ang^3 barrel bushel cup ft3 ft^3 gal GRT regton in3 in^3 l L lt ly3 ly^3 m3 m^3 mi3 mi^3 MTON Nmi3 Nmi^3 oz Pica3 Pica^3 picapt3 picapt^3 pica3 pica^3 pt us_pt qt tbs tsp tspm uk_gal uk_pt uk_qt yd3 yd^3',
    };
    const ours = Object.fromEntries(
      Object.entries(convertCodes()).map(([group, codes]) => [group, [...codes].sort()]),
    );
    const theirs = Object.fromEntries(
      Object.entries(standard).map(([group, codes]) => [group, codes.split(' ').sort()]),
    );
    expect(ours).toEqual(theirs);
  });

  it.each([
    // Definitions printed in the standard's own table.
    [1, 'uk_acre', 'm2', 4046.8564224],
    [15499969, 'us_acre', 'm2', 4046 * 15499969 + 13525426],
    [1, 'ha', 'm2', 10000],
    [1, 'ar', 'm2', 100],
    [1, 'Morgen', 'm2', 2500],
    [1, 'ft', 'm', 0.3048],
    [1, 'ft', 'in', 12],
    [1, 'ell', 'in', 45],
    [1, 'mi', 'ft', 5280],
    [1, 'Nmi', 'm', 1852],
    [3937, 'survey_mi', 'm', 6336000],
    [1, 'yd', 'ft', 3],
    [72, 'Pica', 'in', 1],
    [6, 'pica', 'in', 1],
    [1, 'lbm', 'g', 453.59237],
    [1, 'lbm', 'ozm', 16],
    [1, 'stone', 'lbm', 14],
    [1, 'ton', 'lbm', 2000],
    [1, 'uk_ton', 'lbm', 2240],
    [1, 'cwt', 'lbm', 100],
    [1, 'lcwt', 'lbm', 112],
    [7000, 'grain', 'lbm', 1],
    [1, 'gal', 'l', 3.785411784],
    [1, 'qt', 'l', 0.946352946],
    [1, 'uk_gal', 'l', 4.54609],
    [1, 'uk_qt', 'l', 1.1365225],
    [1, 'barrel', 'gal', 42],
    [1, 'oz', 'tbs', 2],
    [1, 'oz', 'tsp', 6],
    [1, 'qt', 'us_pt', 2],
    [1, 'tspm', 'ml', 5],
    [1, 'GRT', 'ft3', 100],
    [1, 'MTON', 'ft3', 40],
    [1, 'c', 'J', 4.184],
    [1, 'cal', 'J', 4.1868],
    [760, 'Torr', 'Pa', 101325],
    [1, 'PS', 'W', 735.49875],
    [1, 'pond', 'N', 0.00980665],
    [1, 'yr', 'day', 365.25],
    [1, 'day', 'mn', 1440],
    [3600, 'kn', 'm/s', 1852],
    [1, 'admkn', 'm/h', 6080 * 0.3048],
    [1, 'byte', 'bit', 8],
    [1, 'ly', 'm', 299792458 * 3600 * 24 * 365.25],
    // NIST Handbook 44, Appendix C.
    [1, 'bushel', 'in3', 2150.42],
    // Fixed points of the scales.
    [212, 'F', 'C', 100],
    [32, 'F', 'C', 0],
    [-40, 'C', 'F', -40],
    [100, 'C', 'K', 373.15],
    [80, 'Reau', 'C', 100],
    [491.67, 'Rank', 'C', 0],
    [1, 'kK', 'K', 1000],
    [273150, 'mK', 'C', 0],
  ])('%d %s in %s is %d', (n, from, to, expected) => {
    expect(value(n, from, to)).toBeCloseTo(expected, 12);
  });

  it.each([
    ['psi', 'Pa', 'psi', 'Pa', 1e-6],
    ['BTU', 'J', 'BTU', 'J', 1e-6],
    ['HP', 'W', 'hp', 'W', 1e-6],
    ['lbf', 'N', 'lbf', 'N', 1e-6],
    ['dyn', 'N', 'dyn', 'N', 1e-9],
    ['e', 'J', 'erg', 'J', 1e-9],
    ['eV', 'J', 'eV', 'J', 1e-9],
    ['mph', 'm/s', 'mph', 'm/s', 1e-9],
    ['sg', 'g', 'slug', 'g', 1e-7],
    ['u', 'g', 'AMU', 'g', 1e-7],
    ['parsec', 'm', 'parsec', 'm', 1e-6],
    ['mmHg', 'Pa', 'mmHg', 'Pa', 1e-6],
    ['ga', 'T', 'gauss', 'T', 1e-9],
    ['in3', 'l', 'in3', 'l', 1e-9],
    ['yd2', 'm2', 'yd2', 'm2', 1e-9],
    ['bushel', 'l', 'bushel', 'l', 1e-7],
  ])('%s agrees with js-quantities', (from, to, theirs, base, within) => {
    expect(Math.abs(value(1, from, to) / Qty(1, theirs).to(base).scalar - 1)).toBeLessThan(within);
  });

  it('multiplies by decimal prefixes where the standard allows them', () => {
    expect(value(1, 'km', 'm')).toBe(1000);
    expect(value(1, 'km2', 'm2')).toBe(1e6);
    expect(value(1, 'km^2', 'ha')).toBe(100);
    expect(value(1, 'dm3', 'l')).toBe(1);
    expect(value(1, 'hl', 'dal')).toBe(10);
    expect(value(1, 'em', 'm')).toBe(10);
    expect(value(1, 'kWh', 'MJ')).toBe(3.6);
    expect(value(1, 'km/h', 'm/h')).toBe(1000);
    expect(value(1, 'hPa', 'Pa')).toBe(100);
    expect(value(1, 'ug', 'ng')).toBe(1000);
  });

  it('takes binary prefixes for bits and bytes only', () => {
    expect(value(1, 'Kibyte', 'bit')).toBe(8192);
    expect(value(1, 'Mibyte', 'Kibyte')).toBe(1024);
    expect(value(1, 'kbyte', 'byte')).toBe(1000);
    expect(refusal(1, 'Kim', 'm').code).toBe('convert-unknown-code');
  });

  it('takes no prefix where the standard gives none', () => {
    for (const code of ['kft', 'kmi', 'mgal', 'kF', 'kton', 'kday', 'kha']) {
      expect(refusal(1, code, 'm').code, code).toBe('convert-unknown-code');
    }
  });

  it('lets a bare code win over a prefixed one', () => {
    expect(value(1, 'min', 'sec')).toBe(60);
    expect(value(1, 'cal', 'J')).toBe(4.1868);
    expect(value(1, 'pc', 'ly')).toBeCloseTo(3.2616, 4);
    expect(value(1, 'Pa', 'p')).toBe(1);
  });

  it('heeds capitals, and says which there are', () => {
    expect(value(1, 'Mg', 'mg')).toBe(1e9);
    expect(refusal(1, 'TSP', 'l').message).toBe('CONVERT has no unit "TSP": did you mean tsp?');
    expect(refusal(1, 'torr', 'Pa').message).toContain('Torr');
  });

  it('offers its own code for a unit named in full, and points to MEASURE', () => {
    const problem = refusal(1, 'quarts', 'cup');
    expect(problem.message).toContain('did you mean qt?');
    expect(problem.mend).toContain('MEASURE');
    expect(refusal(1, '', 'cup').code).toBe('convert-unknown-code');
    expect(refusal(1, 'toString', 'cup').code).toBe('convert-unknown-code');
  });

  it('refuses two groups, with a word about food between weight and volume', () => {
    expect(refusal(1, 'lbm', 'cup').code).toBe('convert-groups-differ');
    expect(refusal(1, 'lbm', 'cup').mend).toContain('MEASURE');
    expect(refusal(1, 'ft', 'sec').message).toBe('"ft" is a unit of length and "sec" of time.');
  });

  it('refuses numbers that are none, and answers too great', () => {
    expect(refusal(Number.NaN, 'ft', 'm').code).toBe('not-a-number');
    expect(refusal(1e300, 'ly', 'ym').code).toBe('not-a-number');
  });
});
