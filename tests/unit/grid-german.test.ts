import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { byWordsShown } from '../../components/grid/handsontable/filter-values.js';
import { bandInWords } from '../../components/grid/handsontable/groups.js';
import { namedDay } from '../../components/grid/handsontable/named-day.js';
import { askWhatIsShown, readConditions } from '../../components/grid/handsontable/read-conditions.js';
import { plainText, saidValue } from '../../components/grid/handsontable/show.js';
import { sortSettings } from '../../components/grid/handsontable/views.js';
import { roomForTitle } from '../../components/grid/handsontable/widths.js';
import { wordsNow } from '../../components/grid/handsontable/words.js';
import { typedText } from '../../components/look/typed-text.js';
import { readEntry } from '../../src/book/entry.js';
import { civilToDay } from '../../src/planning/dates.js';
import { speak } from '../../src/words/index.js';

/** Points that part thousands elsewhere stand in some of them: read with the wrong sign they are other numbers. */
const NUMBERS = [
  1.5, 1.125, 1000, 1234.5, 12_345.678, -0.25, -1.125, 0, 0.001, 1e21, 1.5e-7, 123_456_789.125,
];

describe.each(['en', 'de', 'de-AT', 'de-CH'])('what a cell is edited with, where %s is spoken', (tag) => {
  beforeAll(() => speak(tag));
  afterAll(() => speak('en'));

  it.each(NUMBERS)('is read as the number that stood there: %d', (number) => {
    for (const type of ['number', 'any'] as const) expect(readEntry(typedText(number), type)).toBe(number);
  });

  it('leaves formulas and text as they were written', () => {
    expect(typedText('=ROUND(1.125,1)')).toBe('=ROUND(1.125,1)');
    expect(typedText('lot 1.5')).toBe('lot 1.5');
    expect(typedText(null)).toBe('');
  });
});

it('a cell is edited in English as it always was', () => {
  expect(NUMBERS.map(typedText)).toEqual(NUMBERS.map(String));
});

describe('the grid in German', () => {
  beforeAll(() => speak('de'));
  afterAll(() => speak('en'));

  it('opens a cell with the decimal comma', () => {
    expect([1.5, 1234.5, 12].map(typedText)).toEqual(['1,5', '1234,5', '12']);
  });

  it('knows the names of days in German, and in English too', () => {
    const today = civilToDay(2026, 2, 15);
    expect(['gestern', 'Heute', ' morgen ', 'today', '15.2.'].map((text) => namedDay(text, today))).toEqual([
      '2026-02-14',
      '2026-02-15',
      '2026-02-16',
      '2026-02-15',
      '15.2.',
    ]);
  });

  it('reads the numbers of a filter with a comma, once', () => {
    const conditions = [{ args: ['1,125'] }, { args: ['0,5', '2'] }, { args: [['1,5']] }, { args: ['Glas'] }];
    readConditions(conditions);
    readConditions(conditions);
    expect(conditions.map(({ args }) => args)).toEqual([[1.125], [0.5, 2], [['1,5']], ['Glas']]);
  });

  it('copies and lists what the cells show, but what people wrote as they wrote it', () => {
    const ways = { role: 'kept', declaration: { choices: 'ways' } } as never;
    const place = { role: 'kept', declaration: { choices: 'places' } } as never;
    expect(plainText('canned', ways)).toBe('eingekocht');
    expect(plainText('canned', place)).toBe('canned');
    expect(plainText('no use', { role: 'planning', declaration: undefined })).toBe('kein Verbrauch');
    expect([plainText(1.125, place), plainText(null, place)]).toEqual(['1,125', '']);
  });

  it('sorts by the words shown, blanks last', () => {
    const ways = { role: 'kept', declaration: { choices: 'ways' } };
    const binding = { column: (id: string) => (id === 'way' ? ways : undefined), columnOf: () => 'way' };
    const { compareFunctionFactory: factory } = sortSettings(binding as never);
    const sorted = (order: string) =>
      ['dried', null, 'frozen', 'canned'].sort(factory(order, { data: ways }));
    // eingefroren, eingekocht, getrocknet.
    expect(sorted('asc')).toEqual(['frozen', 'canned', 'dried', null]);
    expect(sorted('desc')).toEqual(['dried', 'canned', 'frozen', null]);
  });

  it('lists the values of a filter by the words shown; numbers, days and words of people stay', () => {
    const item = (value: string, visualValue = value) => ({ value, visualValue });
    const [blank, dried, frozen] = [
      item('', '(leer)'),
      item('dried', 'getrocknet'),
      item('frozen', 'eingefroren'),
    ];
    expect(byWordsShown([blank, dried, frozen])).toEqual([blank, frozen, dried]);
    expect(byWordsShown([item('1.5', '1,5'), item('10', '10')])).toBeUndefined();
    expect(byWordsShown([item('2026-05-04', '4. Mai')])).toBeUndefined();
    expect(byWordsShown([item('Scheune'), item('Keller')])).toBeUndefined();
  });

  it('asks the words shown in conditions on text, once; the list of values asks what is kept', () => {
    const ways = { role: 'kept', declaration: { choices: 'ways' } } as never;
    const condition = (name: string, part: string) => ({
      name,
      args: [part],
      func: ({ value }: { readonly value: unknown }) => String(value).includes(part),
    });
    const conditions = [condition('contains', 'kocht'), condition('by_value', 'canned')];
    for (let n = 0; n < 2; n++) askWhatIsShown(conditions, (value) => saidValue(value, ways));
    const [contains, listed] = conditions;
    expect(['canned', 'frozen'].map((value) => contains!.func({ value }))).toEqual([true, false]);
    expect(listed!.func({ value: 'canned' })).toBe(true);
  });

  it('gives a column room for a title on two lines, in German only', async () => {
    const titles = ['Eigener Verbrauch je Woche', 'Haltbarmachung', 'Ort'];
    const rooms = titles.map(roomForTitle);
    // Each line of letters some seven pixels wide fits, and none takes the whole screen.
    expect(rooms[0]).toBeGreaterThan('Eigener Verbrauch'.length * 7);
    expect(rooms[1]).toBeGreaterThan('Haltbarmachung'.length * 7);
    expect(rooms[2]).toBeLessThan(60);
    expect(roomForTitle('Donaudampfschifffahrtsgesellschaft')).toBeLessThan(200);
    await speak('en');
    expect(titles.map(roomForTitle)).toEqual([0, 0, 0]);
    await speak('de');
  });

  it('says the filter and its groups in German', () => {
    expect(wordsNow()).toMatchObject({
      'Filters:conditions.greaterThan': 'Mehr als',
      'Filters:buttons.ok': 'Diese zeigen',
      'Filters:values.blankCells': 'leer',
    });
    const group = { label: 'Keller', rows: ['a'], count: 1 };
    expect(bandInWords({ key: 'keller', group, folded: true } as never)).toBe(
      'Eingeklappte Gruppe Keller, 1 Zeile.',
    );
  });
});
