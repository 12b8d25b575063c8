import { describe, expect, it } from 'vitest';
import { found, foundInWords, LISTED } from '../../components/functions/found.js';
import { HyperFormulaEngine } from '../../src/engine/hyperformula-engine.js';
import {
  EXAMPLE_CONTEXT,
  exampleTexts,
  functionNamed,
  functions,
  referenceOf,
  standardFunctions,
  tryFunction,
} from '../../src/formulas/index.js';
import { PROBLEM_CODES } from '../../src/problem-codes.js';

const all = functions.map((each) => [each.name, each] as const);
const engine = new HyperFormulaEngine(EXAMPLE_CONTEXT);
engine.open([]);

const isListed = (code: string): boolean =>
  Object.keys(PROBLEM_CODES).some((key) =>
    key.endsWith('…') ? code.startsWith(key.slice(0, -1)) : key === code,
  );

/** What the reference says of a function tried with these fields. */
const tried = (name: string, ...texts: readonly string[]): string => {
  const { answer } = tryFunction(functionNamed(name)!, texts, EXAMPLE_CONTEXT);
  return answer.ok ? answer.value.text : `${answer.problem.code}: ${answer.problem.message}`;
};

describe('a function in its reference', () => {
  it.each(all)('%s begins with its example, whose formula gives the same in a cell', (_name, each) => {
    const { formula, answer } = tryFunction(each, exampleTexts(each), EXAMPLE_CONTEXT);
    // Without what may be written around the call.
    const inside = each.example.formula.replace(/^=ROUND\((.*), \d\)$/, '=$1');
    expect(engine.evaluate(formula)).toEqual(engine.evaluate(inside));
    expect(answer.ok).toBe(true);
    if (answer.ok) expect(answer.value.steps.length).toBeGreaterThan(0);
  });

  it.each(all)('%s says of each argument what it takes, and of slips what a cell would say', (name, each) => {
    const { arguments: args, errors } = referenceOf(each);
    for (const { takes, help } of args) expect(`${takes} ${help}`.trim().length).toBeGreaterThan(8);
    expect(errors.length).toBeGreaterThan(0);
    for (const { code, message, mend } of errors) {
      expect(isListed(code), `${name}: ${code}`).toBe(true);
      expect(message.trim() && mend.trim()).not.toBe('');
    }
    expect(errors.map(({ code }) => code)).not.toContain('function-failed');
    expect(new Set(errors.map(({ message }) => message)).size).toBe(errors.length);
  });

  it('follows what is typed', () => {
    expect(tried('WEEKS_OF_SUPPLY', '30', '2')).toBe('15 weeks');
    expect(tried('WEEKS_OF_SUPPLY', ' 30 ', '1')).toBe('30 weeks');
    expect(tried('CONTAINER_HOLDS', 'gallon freezer bag', 'pint')).toBe('8 pints');
    expect(tried('MONTHS_KEPT', '2025-02-01', '2026-02-01')).toBe('12 months');
    // The day of the book where it is left out.
    expect(tried('MONTHS_KEPT', '2025-02-01', '')).toBe('12 months');
    expect(tried('LEARNED', '8', '5, 6; 7')).toBe('6.8');
  });

  it('refuses as a cell does', () => {
    expect(tried('WEEKS_OF_SUPPLY', '30', '')).toBe('missing-argument: “use_per_week” is missing or blank.');
    expect(tried('WEEKS_OF_SUPPLY', 'many', '1')).toBe('bad-argument: “on_hand” takes a number, not “many”.');
    expect(tried('BUSHEL_POUNDS', 'tomatoe')).toMatch(/^unknown-crop: .*did you mean tomato/);
  });

  it('writes the formula so that it can be put into a cell', () => {
    const formula = (name: string, ...texts: string[]) =>
      tryFunction(functionNamed(name)!, texts, EXAMPLE_CONTEXT).formula;
    expect(formula('JARS_PER_BUSHEL', 'tomato', '', '', 'lean')).toBe('=JARS_PER_BUSHEL("tomato",,, "lean")');
    expect(formula('WEEKS_OF_SUPPLY', '24', '')).toBe('=WEEKS_OF_SUPPLY(24)');
    expect(formula('BUSHEL_POUNDS', 'my "own" crop')).toBe('=BUSHEL_POUNDS("my ""own"" crop")');
    expect(formula('LEARNED', '8', '5; 6')).toBe('=LEARNED(8, {5;6})');
  });
});

describe('the search among functions', () => {
  const names = (search: string) => found(search).flatMap(({ functions: of }) => of.map(({ name }) => name));

  it('has every function once', () => {
    const listed = LISTED.flatMap(({ functions: of }) => of.map(({ name }) => name));
    expect(listed.sort()).toEqual([...functions, ...standardFunctions].map(({ name }) => name).sort());
  });

  it('finds by name, by words of the help, and by what an argument takes', () => {
    expect(names('jars per bushel')[0]).toBe('JARS_PER_BUSHEL');
    expect(names('jars per bushel')).toContain('BUSHELS_FOR');
    expect(names('eggs')).toEqual(['HENS_FOR']);
    expect(names('first frost')).toContain('LAST_SOWING');
    expect(names('JARS_PER')).toContain('JARS_PER_BUSHEL');
    expect(names('zeppelin')).toEqual([]);
    expect(foundInWords(found('zeppelin'))).toContain('No function');
    expect(foundInWords(found('eggs'))).toBe('1 function');
  });
});
