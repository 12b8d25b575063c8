import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { checkAnswer } from '../../src/lessons/check-answer.js';
import { mixed, ratio, written } from '../../src/lessons/exact.js';
import type { Answer } from '../../src/lessons/types.js';
import { unitOf } from '../../src/lessons/words.js';

const runs = Number(process.env.CROFTSHEET_RUNS ?? 200);

const KINDS = new Set([
  'right',
  'unit missing',
  'wrong unit',
  'not as asked',
  'unreadable',
  'wrong',
  'blank',
]);
const ANSWERS: readonly Answer[] = [
  { kind: 'amount', value: ratio(53, 3), unit: unitOf('quart'), rounding: 'exact' },
  { kind: 'amount', value: ratio(29, 8), unit: null, rounding: 'tenth' },
  { kind: 'percent', value: ratio(1, 8), rounding: 'exact' },
  { kind: 'chance', value: ratio(10, 23) },
  { kind: 'date', day: 20_499 },
  { kind: 'yes-no', yes: true },
  { kind: 'choice', word: 'beans', choices: ['beans', 'carrots'] },
  { kind: 'ratio', parts: [3, 2] },
];

/** Pieces that answers are made of, in any order. */
const pieces = fc
  .array(
    fc.constantFrom(
      ...'0123456789'.split(''),
      '/',
      '½',
      ' ',
      '.',
      ',',
      '-',
      '%',
      ':',
      'quarts',
      'lb',
      ' a ',
      'e9',
      '$',
      '×',
      'about',
    ),
    {
      maxLength: 14,
    },
  )
  .map((all) => all.join(''));

describe('what people type', () => {
  it('whatever it is, is answered in words, and never thrown at them', () => {
    fc.assert(
      fc.property(
        fc.oneof(fc.string(), fc.string({ unit: 'grapheme' }), pieces),
        fc.constantFrom(...ANSWERS),
        (typed, answer) => {
          const { kind, message } = checkAnswer(answer, typed);
          expect(KINDS.has(kind)).toBe(true);
          if (kind !== 'blank') expect(message).toMatch(/[.!?]$/);
        },
      ),
      { numRuns: runs * 10 },
    );
  });

  it('a number is right in every way of writing it, and only that number', () => {
    const number = fc.tuple(fc.integer({ min: 1, max: 9999 }), fc.integer({ min: 1, max: 64 }));
    fc.assert(
      fc.property(number, number, ([n, d], [m, e]) => {
        const value = ratio(n, d);
        const answer: Answer = { kind: 'amount', value, unit: unitOf('pound'), rounding: 'exact' };
        const is = (typed: string) => checkAnswer(answer, typed).kind;
        for (const text of [mixed(value), written(value), `${n}/${d}`, `${n * 3} / ${d * 3}`])
          for (const unit of ['', ' lb', ' pounds'])
            expect([text, is(`${text}${unit}`)]).toEqual([text, 'right']);
        const other = ratio(m, e);
        if (!other.equals(value)) expect(is(mixed(other))).not.toBe('right');
      }),
      { numRuns: runs },
    );
  });
});
