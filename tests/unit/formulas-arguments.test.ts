import { describe, expect, it } from 'vitest';
import { declareFunction } from '../../src/formulas/declare.js';
import { callFunction, functions, type GivenValue, problemText } from '../../src/formulas/index.js';
import { ok } from '../../src/problem.js';
import { call, context, GOOD_ARGUMENTS } from './formulas-support.js';

describe('names', () => {
  it.each([
    ['tomato', 'TOMATOES', ' Tomatoes ', 'tomato'],
    ['snap bean', 'green beans', 'Green Bean', 'string bean'],
    ['sweet corn', 'corn, sweet', 'Sweet corn', 'sweet corn'],
  ])('match without case, in the plural and by synonym: %s', (...names) => {
    const answers = names.map((name) => call('BUSHEL_POUNDS', name));
    expect(new Set(answers).size).toBe(1);
    expect(typeof answers[0]).toBe('number');
  });

  it('match for jars and units', () => {
    for (const jar of ['quart', 'qt', 'Quarts', 'quart jar', 'QUART JARS', '32 oz jar']) {
      expect(call('POUNDS_PER_JAR', 'tomato', jar), jar).toBe(3);
    }
    for (const unit of ['lb', 'lbs', 'pounds', 'Pound'])
      expect(call('PLANTS_FOR', 'tomato', 100, unit)).toBe(13);
    expect(call('PLANTS_FOR', 'tomato', 1600, 'oz')).toBe(13);
  });

  it('that are wrong give the nearest', () => {
    expect(call('PLANTS_FOR', 'tomatos', 3)).toMatch(
      /^PROBLEM: No crop called "tomatos": did you mean tomato\?/,
    );
    expect(call('POUNDS_PER_JAR', 'tomato', 'qart')).toMatch(/did you mean quart jar/);
    expect(call('POUNDS_PER_JAR', 'tomato', 'quart', 'crushd')).toMatch(/did you mean crushed/);
    expect(call('POUNDS_PER_JAR', 'tomato', 'quart', 'frozen')).toMatch(/whole or halved.*crushed.*juice/);
    expect(call('POUNDS_PER_JAR', 'tomato', 'gallon freezer bag')).toMatch(/not a canning jar/);
    expect(call('PLANTS_FOR', 'tomato', 3, 'poundz')).toMatch(/did you mean.*pound/);
    expect(call('YIELD_PER_PLANT', 'tomato', null, 'best')).toMatch(/"lean", "usual" or "good"/);
  });
});

describe('arguments left out', () => {
  it('may be empty in the middle', () => {
    expect(call('JARS_PER_BUSHEL', 'tomato', null, null, 'lean')).toBe(15);
    expect(call('JARS_PER_BUSHEL', 'tomato', '', undefined, 'lean')).toBe(15);
    expect(call('JARS_PER_BUSHEL', 'tomato')).toBeCloseTo(53 / 3, 9);
  });

  it('are asked for by name where they are needed', () => {
    expect(call('PLANTS_FOR', 'tomato')).toMatch(/“amount” is missing/);
    expect(call('PLANTS_FOR', null, 3)).toMatch(/“crop” is missing/);
    expect(call('WEEKS_OF_SUPPLY', 3)).toMatch(/“use_per_week” is missing/);
    expect(call('BUSHEL_POUNDS', 'tomato', 1)).toMatch(/at most 1/);
  });
});

describe('absurd input', () => {
  const absurd: readonly GivenValue[] = [
    0,
    -1,
    1e9,
    1e300,
    -1e300,
    0.1,
    Number.NaN,
    Number.POSITIVE_INFINITY,
    '',
    '12',
    'no such thing',
    '=1+1',
    true,
    { day: 1e9 },
    { day: -1e9 },
    '2200-12-31',
    '1900-01-01',
    '02-30',
    [],
    [[]],
    [[1, 2]],
    '\u0000',
    'x'.repeat(5000),
  ];

  it.each(functions.map((each) => [each.name, each] as const))(
    'in %s gives a message or a sound answer',
    (name, each) => {
      const good = GOOD_ARGUMENTS[name]!;
      for (const place of each.arguments.keys()) {
        for (const value of absurd) {
          const given = good.map((one, i) => (i === place ? value : one));
          const answer = callFunction(each, given, context());
          if (answer.ok) {
            if (typeof answer.value === 'number') expect(Number.isFinite(answer.value)).toBe(true);
            if (typeof answer.value === 'object') expect(Number.isInteger(answer.value.day)).toBe(true);
            continue;
          }
          const text = problemText(answer.problem);
          expect(answer.problem.code, text).not.toBe('function-failed');
          expect(text.length).toBeLessThan(600);
          expect(answer.problem.mend).not.toBe('');
          expect(text).not.toMatch(/\bundefined\b|\[object|Infinity/);
        }
      }
    },
  );

  it('refuses what cannot be so', () => {
    expect(call('PLANTS_FOR', 'tomato', -5)).toMatch(/0 or more, not -5/);
    expect(call('BUSHELS_FOR', 'tomato', 1e10)).toMatch(/1,000,000,000 or less/);
    expect(call('CANNER_LOADS', 40, 'quart', 0)).toMatch(/1 or more/);
    expect(call('ALTITUDE_PRESSURE', 'beets', -20, 'dial')).toMatch(/0 or more/);
    // Reversed: the amount where the crop belongs.
    expect(call('PLANTS_FOR', 100, 'tomato')).toMatch(/“crop” takes a name in quotation marks, not 100/);
    // Put up after the as-of date.
    expect(call('MONTHS_KEPT', '2027-01-01')).toMatch(/after/);
  });

  it('never throws, whatever a function does', () => {
    const broken = declareFunction({
      name: 'BROKEN',
      group: 'Supply',
      summary: 'Throws.',
      arguments: [],
      gives: 'nothing',
      unit: '',
      steps: () => [],
      example: { formula: '=BROKEN()', gives: '' },
      source: 'a test',
      run: () => {
        throw new Error('inside');
      },
    });
    const answer = callFunction(broken, [], context());
    expect(answer.ok).toBe(false);
    if (!answer.ok) expect(problemText(answer.problem)).not.toContain('inside');
    const infinite = { ...broken, run: () => ok(Number.POSITIVE_INFINITY) };
    expect(callFunction(infinite, [], context()).ok).toBe(false);
  });
});
