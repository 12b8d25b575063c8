import { describe, expect, it } from 'vitest';
import { readColumn } from '../../components/embed/read-column.js';
import { isSameUnit, numberIn, writtenNumber } from '../../components/embed/written-number.js';

const value = (text: string, tag: string) => writtenNumber(text, tag)?.value;

describe('a number as a page writes it', () => {
  it('is read by the signs of its language', () => {
    expect(
      ['1,900', '19.5', '-3', '−3', '.5', '1,250.5', '12 %', '1 250'].map((t) => value(t, 'en')),
    ).toEqual([1900, 19.5, -3, -3, 0.5, 1250.5, 0.12, 1250]);
    expect(['1.900', '19,5', '1.250,5', '4.75', '0.125'].map((t) => value(t, 'de'))).toEqual([
      1900, 19.5, 1250.5, 4.75, 0.125,
    ]);
    expect(['19,5', '1 250', '1\u202f250,5', '4.75'].map((t) => value(t, 'fr'))).toEqual([
      19.5, 1250, 1250.5, 4.75,
    ]);
    expect(value('1’250.5', 'de-CH')).toBe(1250.5);
    expect(value('7,5', 'constructor_')).toBeUndefined();
  });

  it('agrees with what the language itself writes', () => {
    for (const tag of ['en', 'de', 'fr', 'es', 'it', 'nl', 'sv', 'pl', 'pt-BR', 'en-GB', 'de-AT', 'de-CH'])
      for (const n of [0, 7, 28.5, 1900, 12345.25, -1234567, 0.125])
        expect(value(new Intl.NumberFormat(tag).format(n), tag), `${tag} ${n}`).toBe(n);
  });

  it('is written back the same way', () => {
    expect(numberIn(1250.5, 'fr')).toBe(new Intl.NumberFormat('fr').format(1250.5));
    expect([numberIn(-3, 'en'), numberIn(-0, 'de'), numberIn(0.5, 'de'), numberIn(1.5, '_')]).toEqual([
      '−3',
      '0',
      '0,5',
      '1.5',
    ]);
  });

  it('may be a fraction', () => {
    expect(['½', '1½', '3 1/2', '1/4', '2 ¾ quarts'].map((t) => value(t, 'en'))).toEqual([
      0.5, 1.5, 3.5, 0.25, 2.75,
    ]);
  });

  it('is none where it could be two, or is a code, a day or a range', () => {
    expect(value('1.900', 'fr')).toBeUndefined();
    expect(value('19,5', 'en')).toBeUndefined();
    for (const text of [
      '007',
      '2 September',
      '14th August',
      '3-4',
      'about 5',
      '2026-05-04',
      '1,90,0',
      '',
      '-',
      '5+',
    ])
      expect(value(text, 'en'), text).toBeUndefined();
    expect(value('2. Sept.', 'de')).toBeUndefined();
    expect(value('1er octobre', 'fr')).toBeUndefined();
    expect(value('12345678901234567', 'en')).toBeUndefined();
  });

  it('may have its unit behind it', () => {
    expect(writtenNumber('28 jars', 'en')).toEqual({ value: 28, unit: 'jars' });
    expect(writtenNumber('28,5 kg', 'de')).toEqual({ value: 28.5, unit: 'kg' });
    expect(writtenNumber('10 quart jars', 'en')?.unit).toBe('quart jars');
    const same = [
      ['jar', 'jars'],
      ['Glas', 'Gläser'],
      ['berries', 'berry'],
      ['lb.', 'lbs'],
    ] as const;
    for (const [a, b] of same) expect(isSameUnit(a, b), a).toBe(true);
    for (const [a, b] of [
      ['can', 'case'],
      ['g', 'gal'],
      ['jars', 'bags'],
    ] as const)
      expect(isSameUnit(a, b), a).toBe(false);
  });
});

describe('a column as a page writes it', () => {
  it('is numbers where all of it is, with one unit or none', () => {
    expect(readColumn(['28 jars', '1 jar', '12'], 'en')).toEqual({ type: 'number', cells: [28, 1, 12] });
  });

  it('is words where the units differ, and where nothing is a number', () => {
    expect(readColumn(['28 jars', '3 bags'], 'en').type).toBe('text');
    expect(readColumn(['2 September', '14 August'], 'en').type).toBe('text');
  });

  it('keeps as words what it cannot read beside numbers', () => {
    expect(readColumn(['19,5', '1.900', 'some'], 'fr').cells).toEqual([19.5, "'1.900", 'some']);
  });
});
