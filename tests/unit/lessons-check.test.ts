import { describe, expect, it } from 'vitest';
import { checkAnswer } from '../../src/lessons/check-answer.js';
import { exact, ratio } from '../../src/lessons/exact.js';
import type { Answer } from '../../src/lessons/types.js';
import { counted, rateOf, unitOf } from '../../src/lessons/words.js';
import { makeDay } from '../../src/planning/dates.js';

const dayOf = (year: number, month: number, day: number): number => {
  const read = makeDay(year, month, day);
  return read.ok ? read.value : Number.NaN;
};
const amount = (
  value: ReturnType<typeof exact>,
  more: Partial<Extract<Answer, { kind: 'amount' }>> = {},
): Answer => ({
  kind: 'amount',
  value,
  unit: unitOf('quart'),
  rounding: 'exact',
  ...more,
});
const kind = (answer: Answer, typed: string, writeUnits = false) =>
  checkAnswer(answer, typed, { writeUnits }).kind;

describe('an amount', () => {
  const quarts = amount(ratio(53, 3));

  it.each([
    '17 2/3',
    '17⅔',
    '17 ⅔ quarts',
    '17-2/3 qt',
    '17 and 2/3',
    '53/3',
    '53 / 3 quarts',
    '53⁄3',
    '17.67',
    '17.667 qts',
    '17,67',
    'about 17.67',
    '= 17 2/3',
    '≈17.67',
    'x = 53/3',
    '106/6',
    '17 2/3 quarts.',
  ])('17⅔ quarts is read from “%s”', (typed) => expect(kind(quarts, typed)).toBe('right'));

  it.each(['17.66', '17.665', '17.671'])('“%s” is close to it, but not as asked', (typed) =>
    expect(kind(quarts, typed)).toBe('not as asked'),
  );

  it.each(['18', '-17 2/3', '2/3', '17', '172/3', '17.7', '17 5/8'])('“%s” is wrong', (typed) =>
    expect(kind(quarts, typed)).toBe('wrong'),
  );

  it.each(['', '   '])('nothing typed is no answer', (typed) => expect(kind(quarts, typed)).toBe('blank'));

  it.each([
    'many',
    'quarts',
    '1/0',
    '3/0 quarts',
    '$17.67',
    'alert(1)',
    '(1+1)',
    '9'.repeat(81),
    '½½½'.repeat(40),
    '__proto__',
  ])('“%s” cannot be read', (typed) => expect(kind(quarts, typed)).toBe('unreadable'));

  it('is right in another unit, unless the unit is what the question is about', () => {
    const plain = amount(exact(4));
    expect(kind(plain, '8 pt')).toBe('right');
    expect(checkAnswer(plain, '8 pints').message).toContain('quarts');
    expect(kind(plain, '1 gallon')).toBe('right');
    expect(kind(amount(exact(4), { unitMatters: true }), '8 pints')).toBe('wrong unit');
    expect(checkAnswer(amount(exact(4), { unitMatters: true }), '8 pints').message).toMatch(
      /asks for quarts/,
    );
    expect(kind(plain, '4 pints')).toBe('wrong');
    expect(kind(plain, '4 pounds')).toBe('wrong unit');
    expect(kind(plain, '5 pounds')).toBe('wrong');
    expect(kind(plain, '4 %')).toBe('wrong unit');
  });

  it('wants the unit only where it is to be written', () => {
    expect(kind(amount(exact(4)), '4')).toBe('right');
    expect(kind(amount(exact(4)), '4', true)).toBe('unit missing');
    expect(kind(amount(exact(4)), '4 quarts', true)).toBe('right');
  });

  it('takes thousands apart or together, in digits or small words', () => {
    const many = amount(exact(1760), { unit: unitOf('ounce') });
    for (const typed of ['1760', '1,760', '1 760', '1,760 oz', '1,760.0', '110 lb'])
      expect(kind(many, typed)).toBe('right');
    expect(kind(many, '1.760')).not.toBe('right');
    expect(kind(amount(exact(3), { unit: counted('share') }), 'three shares')).toBe('right');
    expect(kind(amount(ratio(1, 2), { unit: unitOf('cup') }), 'half a cup')).toBe('right');
    expect(kind(amount(ratio(3, 4), { unit: unitOf('cup') }), 'three quarters')).toBe('right');
  });

  it('is rounded as asked', () => {
    const tenth = amount(ratio(29, 8), { rounding: 'tenth' });
    expect(kind(tenth, '3.6')).toBe('right');
    expect(kind(tenth, 'about 3.6 quarts')).toBe('right');
    expect(kind(tenth, '3.60')).toBe('right');
    for (const typed of ['3.625', '3 5/8', '3.63', '3.7']) expect(kind(tenth, typed)).toBe('not as asked');
    expect(checkAnswer(tenth, '3.625').message).toContain('nearest tenth');
    expect(kind(tenth, '4')).toBe('wrong');
    const up = amount(ratio(25, 7), { rounding: 'up', unit: counted('basket') });
    expect(kind(up, '4')).toBe('right');
    expect(kind(up, '3')).toBe('not as asked');
    expect(kind(up, '3.57')).toBe('not as asked');
    expect(kind(up, '5')).toBe('wrong');
    // A half goes up.
    expect(kind(amount(exact(2.5), { rounding: 'whole' }), '3')).toBe('right');
    expect(kind(amount(exact(0.25), { rounding: 'tenth' }), '0.3')).toBe('right');
  });

  it('is counted in things by any part of their name, one or several', () => {
    const bags = amount(exact(4), { unit: counted('quart freezer bag') });
    for (const typed of ['4 quart freezer bags', '4 freezer bags', '4 bags', '4 bag'])
      expect(kind(bags, typed)).toBe('right');
    expect(kind(bags, '4 jars')).toBe('wrong unit');
  });

  it('is a rate with both of its units', () => {
    const rate = amount(exact(3.5), { unit: rateOf(unitOf('pound'), 'week') });
    for (const typed of [
      '3.5',
      '3 1/2 pounds a week',
      '3.5 lb/week',
      '3.5 lb per week',
      '3.5 pounds',
      '56 ounces a week',
    ])
      expect(kind(rate, typed)).toBe('right');
    expect(kind(rate, '3.5 pounds a day')).toBe('wrong unit');
  });
});

describe('a percent or a chance', () => {
  const half: Answer = { kind: 'percent', value: ratio(1, 8), rounding: 'exact' };

  it('is taken with the sign, without it, and as a part of one', () => {
    for (const typed of [
      '12.5 %',
      '12.5%',
      '12.5',
      '12 1/2 percent',
      '12,5 per cent',
      '0.125',
      '1/8',
      '.125',
    ])
      expect(kind(half, typed)).toBe('right');
    for (const typed of ['0.125 %', '125', '13 %']) expect(kind(half, typed)).toBe('wrong');
  });

  it('is rounded as asked', () => {
    const whole: Answer = { kind: 'percent', value: ratio(7, 12), rounding: 'whole' };
    for (const typed of ['58', '58 %', 'about 58%', '0.58']) expect(kind(whole, typed)).toBe('right');
    expect(kind(whole, '58.3 %')).toBe('not as asked');
    expect(kind(whole, '0.59')).toBe('wrong');
  });

  it('is a fraction, a decimal, a percent or so many in so many', () => {
    const chance: Answer = { kind: 'chance', value: ratio(10, 23) };
    for (const typed of ['10/23', '20/46', '10 in 23', '10 out of 23', '0.43', '0.435', '43 %', '43.5 %'])
      expect(kind(chance, typed)).toBe('right');
    expect(kind({ kind: 'chance', value: ratio(1, 4) }, '25')).toBe('unit missing');
    for (const typed of ['0.4', '13/23', '1', '44 %']) expect(kind(chance, typed)).toBe('wrong');
  });
});

describe('other answers', () => {
  it('a date is read year first or with the month in words', () => {
    const date: Answer = { kind: 'date', day: dayOf(2026, 4, 10) };
    for (const typed of [
      '2026-04-10',
      '10 April 2026',
      'April 10, 2026',
      'Apr 10',
      '10 April',
      'Friday, 10 April 2026',
      '04-10',
      '10th of April',
    ])
      expect(kind(date, typed)).toBe('right');
    expect(kind(date, '2026-04-11')).toBe('wrong');
    expect(kind(date, 'April 9')).toBe('wrong');
    expect(kind(date, '4/10/2026')).toBe('unreadable');
    expect(checkAnswer(date, '4/10/2026').message).toContain('2026-04-10');
    expect(kind(date, 'soon')).toBe('unreadable');
  });

  it('yes and no', () => {
    const yes: Answer = { kind: 'yes-no', yes: true };
    for (const typed of ['yes', 'Y', 'Yes.', 'true']) expect(kind(yes, typed)).toBe('right');
    expect(kind(yes, 'no')).toBe('wrong');
    expect(kind(yes, 'perhaps')).toBe('unreadable');
  });

  it('a choice in the singular or plural, and rules that differ in signs only', () => {
    const choice: Answer = { kind: 'choice', word: 'green beans', choices: ['green beans', 'tomatoes'] };
    for (const typed of ['green beans', 'Green bean', 'the green beans'])
      expect(kind(choice, typed)).toBe('right');
    expect(kind(choice, 'tomato')).toBe('wrong');
    expect(kind(choice, 'carrots')).toBe('unreadable');
    const rule: Answer = { kind: 'choice', word: '52 − 3 × w', choices: ['52 + 3 × w', '52 − 3 × w'] };
    expect(kind(rule, '52 − 3 × w')).toBe('right');
    expect(kind(rule, '52 + 3 × w')).toBe('wrong');
  });

  it('a ratio in simplest form', () => {
    const three: Answer = { kind: 'ratio', parts: [3, 2] };
    for (const typed of ['3:2', '3 : 2', '3 to 2', '3/2']) expect(kind(three, typed)).toBe('right');
    expect(kind(three, '6 : 4')).toBe('not as asked');
    expect(kind(three, '1.5 : 1')).toBe('not as asked');
    expect(kind(three, '2 : 3')).toBe('wrong');
    expect(kind(three, 'three')).toBe('unreadable');
  });
});
