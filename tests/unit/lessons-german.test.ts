import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { amountOf } from '../../src/lessons/answer-text.js';
import { checkAnswer } from '../../src/lessons/check-answer.js';
import { exact, ratio } from '../../src/lessons/exact.js';
import { readQuestion } from '../../src/lessons/index.js';
import type { Answer } from '../../src/lessons/types.js';
import { counted, rateOf, SHARES, unitOf } from '../../src/lessons/words.js';
import { civilToDay } from '../../src/planning/dates.js';
import { speak } from '../../src/words/index.js';

beforeAll(async () => {
  await speak('de');
});
afterAll(async () => {
  await speak('en');
});

const kind = (answer: Answer, typed: string): string => checkAnswer(answer, typed).kind;

describe('answers typed in German', () => {
  it.each(['12,5', '12,50', '12 1/2', '12½', '12,5 Pfund', '12,5 US-Pfund Möhren', 'etwa 12,5', '12.5'])(
    'takes %s as twelve and a half pounds',
    (typed) => expect(kind(amountOf(exact(12.5), unitOf('pound')), typed)).toBe('right'),
  );

  it.each([
    ['1.234', 1234],
    ['1.234,5', 1234.5],
    ['1,234', 1.234],
    ['1 234', 1234],
    ['zwölf', 12],
    ['drei Anteile', 3],
  ])('reads %s by the signs and words of the language', (typed, n) => {
    expect(kind(amountOf(exact(n), SHARES), typed)).toBe('right');
    expect(kind(amountOf(exact(n + 1), SHARES), typed)).not.toBe('right');
  });

  it.each([
    ['zwei Drittel', 2, 3],
    ['ein Viertel', 1, 4],
    ['drei Viertel', 3, 4],
    ['eine halbe', 1, 2],
    ['die Hälfte', 1, 2],
    ['1 von 4', 1, 4],
    ['25 Prozent', 1, 4],
    ['12,5 %', 1, 8],
  ])('takes %s as a chance', (typed, n, d) => {
    expect(kind({ kind: 'chance', value: ratio(n, d) }, typed)).toBe('right');
  });

  it('takes units by their names, and those of their kind', () => {
    const rate = amountOf(exact(3.5), rateOf(unitOf('pound'), 'week'));
    for (const typed of ['3,5 Pfund je Woche', '3,5 US-Pfund/Woche', '3,5 pro Woche', '56 Unzen je Woche'])
      expect(kind(rate, typed), typed).toBe('right');
    expect(kind(rate, '3,5 Pfund je Tag')).toBe('wrong unit');
    const cups = amountOf(exact(4), unitOf('cup'));
    for (const typed of ['4 Tassen', '4 US-Tassen Bohnen', '2 Pints'])
      expect(kind(cups, typed), typed).toBe('right');
    const jars = amountOf(exact(4), counted('quart jar'));
    for (const typed of ['4 Gläser', '4 Quart-Gläser']) expect(kind(jars, typed), typed).toBe('right');
    expect(kind(jars, '4 Beutel')).toBe('wrong unit');
  });

  it.each([
    '8. Mai 2026',
    '8. Mai',
    'Freitag, 8. Mai 2026',
    '8.5.2026',
    '8. 5. 2026',
    '8.5.',
    '2026-05-08',
    '08.05.2026',
  ])('takes %s as that day', (typed) => {
    expect(kind({ kind: 'date', day: civilToDay(2026, 5, 8) }, typed)).toBe('right');
    expect(kind({ kind: 'date', day: civilToDay(2026, 8, 5) }, typed)).toBe('wrong');
  });

  it.each(['1. März 2026', '1. Mär 2026', '1. Okt. 2026', '1. Dezember 2026'])(
    'reads the month of %s',
    (typed) => {
      expect(kind({ kind: 'date', day: civilToDay(2020, 1, 1) }, typed)).toBe('wrong');
    },
  );

  it('takes yes and no, and ratios', () => {
    expect(kind({ kind: 'yes-no', yes: true }, 'Ja')).toBe('right');
    expect(kind({ kind: 'yes-no', yes: false }, 'nein.')).toBe('right');
    expect(kind({ kind: 'yes-no', yes: false }, 'vielleicht')).toBe('unreadable');
    expect(kind({ kind: 'ratio', parts: [3, 2] }, '3 zu 2')).toBe('right');
    expect(kind({ kind: 'ratio', parts: [3, 2] }, '1,5 : 1')).toBe('not as asked');
  });

  it('says in German what is not right', () => {
    expect(checkAnswer(amountOf(ratio(1, 3), unitOf('cup'), 'tenth'), '0,33').message).toBe(
      'Fast. Jetzt auf Zehntel runden.',
    );
  });
});

it('reads what a lesson stores by English signs, whatever is spoken', () => {
  const read = readQuestion({ text: 'Wie viel?', answer: '1,234.5', unit: 'pounds', hints: [] }, 'x');
  expect(read.ok && read.value.key.kind === 'amount' && read.value.key.value.valueOf()).toBe(1234.5);
});
