import { describe, expect, it } from 'vitest';
import { compareShown } from '../../components/grid/handsontable/compare.js';
import { series } from '../../components/grid/handsontable/series.js';
import { readTsv, writeTsv } from '../../components/grid/handsontable/tsv.js';

const next = (values: Parameters<typeof series>[0], count: number) => {
  const step = series(values);
  return Array.from({ length: count }, (_, i) => step(values.length + i));
};

describe('a series', () => {
  it('goes on with evenly spaced numbers without noise of the arithmetic', () => {
    expect(next([0.1, 0.2], 3)).toEqual([0.3, 0.4, 0.5]);
    expect(next([10, 7], 2)).toEqual([4, 1]);
    expect(series([3, 5])(-1)).toBe(1);
  });

  it('repeats one number, uneven numbers, and text', () => {
    expect(next([5], 2)).toEqual([5, 5]);
    expect(next([1, 2, 4], 4)).toEqual([1, 2, 4, 1]);
    expect(next(['a', null], 3)).toEqual(['a', null, 'a']);
    expect(series(['a', 'b', 'c'])(-1)).toBe('c');
  });

  it('goes on with dates by day, by week and by month', () => {
    expect(next(['2024-02-28'], 2)).toEqual(['2024-02-29', '2024-03-01']);
    expect(next(['2025-12-25', '2026-01-01'], 1)).toEqual(['2026-01-08']);
    expect(next(['2025-11-15', '2025-12-15'], 2)).toEqual(['2026-01-15', '2026-02-15']);
  });

  it('leaves a month blank that has no such day', () => {
    expect(next(['2025-11-30', '2025-12-30'], 3)).toEqual(['2026-01-30', null, '2026-03-30']);
  });
});

describe('the order of shown values', () => {
  it('is numbers, dates, text, ticks, and blanks last both ways', () => {
    const values = ['b', null, '2025-01-02', 10, 9, true, 'A', '2024-12-31', ''];
    const sorted = (ascending: boolean) => [...values].sort((a, b) => compareShown(a, b, ascending));
    expect(sorted(true)).toEqual([9, 10, '2024-12-31', '2025-01-02', 'A', 'b', true, null, '']);
    expect(sorted(false)).toEqual([true, 'b', 'A', '2025-01-02', '2024-12-31', 10, 9, null, '']);
  });
});

describe('text of the clipboard', () => {
  it('has fields, quoted ones and line breaks in them', () => {
    expect(readTsv('a\tb\r\n"c\nd"\t"say ""yes"""')).toEqual([
      ['a', 'b'],
      ['c\nd', 'say "yes"'],
    ]);
  });

  it('takes a quote inside a field, or one that is not closed, as it stands', () => {
    expect(readTsv('6" pot\t"loose')).toEqual([['6" pot', '"loose']]);
    expect(readTsv('"a" b\tc')).toEqual([['"a" b', 'c']]);
  });

  it('has no row after the last line break, but keeps blank rows between', () => {
    expect(readTsv('a\n\nb\n')).toEqual([['a'], [''], ['b']]);
    expect(readTsv('\t')).toEqual([['', '']]);
  });

  it('is written so that it can be read', () => {
    expect(writeTsv([['a\tb', '"q"', 'plain "in"']])).toBe('"a\tb"\t"""q"""\tplain "in"');
  });
});
