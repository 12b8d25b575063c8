import { afterEach, describe, expect, it } from 'vitest';
import { readNumber, readTypedNumber } from '../../src/book/entry.js';
import { blankBook, openBook } from '../../src/core.js';
import { counted, dateFormat, localNumber, say, speak, speakWith, spoken } from '../../src/words/index.js';

afterEach(() => speak('en'));

describe('in English', () => {
  it('says what stands in the source, to the letter', () => {
    const shown = '17⅔';
    expect(say`${shown} of ${1234.5} “${'Left'}”, ${null}`).toBe(
      `${shown} of ${1234.5} “${'Left'}”, ${null}`,
    );
    expect(counted(1, '1', 'week')).toBe('1 week');
    expect(counted(2.5, '2.5', 'week')).toBe('2.5 weeks');
    expect(localNumber('1,234.5')).toBe('1,234.5');
  });

  it('is spoken where a language is not known, or is none', async () => {
    for (const tag of ['fr', 'x', '', 'de_DE', '💡']) expect(await speak(tag)).toBe('en-US');
  });
});

describe('in another language', () => {
  const words = new Map<string, string | Record<string, string>>([
    ['{0} of {1}', '{1}: davon {0}'],
    ['{0} weeks', { one: '{0} Woche', other: '{0} Wochen' }],
    ['Left', 'Übrig'],
    ['in “{0}”', 'in „{0}“'],
    ['{0} rows', { one: 'eine Zeile', other: '{0} Zeilen' }],
  ]);

  it('puts numbers, words of ours and plural forms in their places', () => {
    speakWith('de', words);
    expect(say`${'Left'} of ${12.5}`).toBe('12,5: davon Übrig');
    expect(counted(1, '1', 'week')).toBe('1 Woche');
    expect(counted(0, '0', 'week')).toBe('0 Wochen');
    expect(say`${1} rows`).toBe('eine Zeile');
    expect(say`${'1.234'} rows`).toBe('1.234 Zeilen');
  });

  it('leaves alone what somebody wrote, and what it has no words for', () => {
    speakWith('de', words);
    expect(say`in “${'Left'}”`).toBe('in „Left“');
    expect(spoken('Right')).toBe('Right');
    expect(say`no ${'Right'}`).toBe('no Right');
  });

  it('follows the language asked for last', async () => {
    const [first, last] = [speak('de'), speak('en')];
    await Promise.all([first, last]);
    expect(spoken('Left')).toBe('Left');
    expect(await speak('de-AT')).toBe('de-AT');
    expect(spoken('Left')).toBe('Übrig');
    expect(dateFormat({ dateStyle: 'medium' }).format(new Date('2026-05-04'))).toBe('04.05.2026');
  });
});

describe('a book', () => {
  const at = (live: ReturnType<typeof openBook>) => live.columns('shelf').find(({ id }) => id === 'left')!;

  it('shows its own labels in the language, and stores the same', async () => {
    const live = openBook(blankBook());
    const stored = JSON.stringify(live.toJSON());
    const english = at(live).title;
    await speak('de');
    expect([english, at(live).title]).toEqual(['Left', 'Übrig']);
    expect(live.sheets().find(({ kind }) => kind === 'shelf')!.title).toBe('Vorrat');
    expect(JSON.stringify(live.toJSON())).toBe(stored);
    live.close();
  });

  it('reads formulas that name columns in either language', async () => {
    await speak('de');
    const live = openBook(blankBook());
    const { column } = live.addColumn('shelf', 'Doppelt');
    live.insertRows('shelf', [
      {
        food: 'kale',
        way: 'canned',
        container: 'quart jar',
        count: 3,
        put_up_on: '2026-01-05',
        [column]: '=Übrig*2',
      },
      {
        food: 'kale',
        way: 'canned',
        container: 'quart jar',
        count: 4,
        put_up_on: '2026-01-05',
        [column]: '=Left*2',
      },
    ]);
    expect(live.rowIds('shelf').map((row) => live.value('shelf', row, column))).toEqual([6, 8]);
    expect(live.rowIds('shelf').map((row) => live.typed('shelf', row, column))).toEqual([
      '=Übrig*2',
      '=Übrig*2',
    ]);
    live.close();
  });
});

describe('numbers as they are typed', () => {
  it('stay as they are in English', () => {
    expect(['1,500', '1.5', '1,5', '3 1/2'].map(readTypedNumber)).toEqual([1500, 1.5, undefined, 3.5]);
  });

  it('have the decimal sign of the language', async () => {
    await speak('de');
    expect(['1,5', '1.500', '1.500,25', '1,500', '3 1/2', '12,5 %'].map(readTypedNumber)).toEqual([
      1.5, 1500, 1500.25, 1.5, 3.5, 0.125,
    ]);
    expect(readTypedNumber('1.5')).toBe(1.5);
    expect(readTypedNumber('1.50.5')).toBeUndefined();
    expect(readNumber('1.500')).toBe(1.5);
  });
});
