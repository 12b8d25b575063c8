import { HyperFormula } from 'hyperformula';
import { describe, expect, it } from 'vitest';
import { HyperFormulaEngine } from '../../src/engine/hyperformula-engine.js';
import {
  callFunction,
  completionsFor,
  functionNamed,
  functions,
  helpOf,
  standardFunctions,
} from '../../src/formulas/index.js';
import { context, GOOD_ARGUMENTS } from './formulas-support.js';

const VOCABULARY =
  `WEEKS_OF_SUPPLY RUNS_OUT_ON USE_PER_WEEK USE_RANGE PACE_TO_USE_UP LEFT_AT TO_PUT_UP BEST_BY
  MONTHS_KEPT MEASURE CONVERT CONTAINER_HOLDS SERVINGS_IN YIELD_PER_PLANT YIELD_PER_ROW_FOOT PLANTS_FOR
  ROW_FEET_FOR BED_AREA_FOR SEEDS_FOR START_ON SET_OUT_ON HARVEST_FROM LAST_SOWING LEARNED BUSHEL_POUNDS
  POUNDS_PER_JAR JARS_PER_BUSHEL BUSHELS_FOR CANNER_LOADS PINTS_FROZEN DRIED_FROM FRESH_FROM ALTITUDE_PRESSURE
  HEADSPACE HENS_FOR MEAT_FROM FLOUR_FROM DRY_TO_COOKED`.split(/\s+/);

describe('every formula function', () => {
  it('is there, once', () => {
    expect(functions.map((each) => each.name)).toEqual(expect.arrayContaining(VOCABULARY));
    expect(new Set(functions.map((each) => each.name)).size).toBe(functions.length);
    expect(functionNamed('weeks_of_supply')?.name).toBe('WEEKS_OF_SUPPLY');
    expect(functionNamed('NO_SUCH')).toBeUndefined();
  });

  const engine = new HyperFormulaEngine(context());
  engine.open([]);
  it.each(functions.map((each) => [each.name, each] as const))(
    '%s gives in a cell what its example says',
    (_name, { example }) => {
      expect(example.formula).toContain(_name);
      expect(String(engine.evaluate(example.formula))).toBe(example.gives);
    },
  );

  it.each(functions.map((each) => [each.name, each] as const))(
    '%s has help that is complete',
    (name, each) => {
      const help = helpOf(each);
      expect(help.signature.startsWith(`${name}(`)).toBe(true);
      for (const text of [help.summary, help.gives, help.source]) expect(text.trim()).not.toBe('');
      for (const arg of help.arguments) {
        expect(arg.help.trim()).not.toBe('');
        expect(arg.optional).toBe(arg.otherwise !== '');
      }
      // Optional arguments come last, or a person could not leave them out.
      if (name !== 'LEARNED') {
        const first = help.arguments.findIndex((arg) => arg.optional);
        if (first >= 0) expect(help.arguments.slice(first).every((arg) => arg.optional)).toBe(true);
      }
    },
  );

  // The engine shows a number as a date when the unit of the answer says so.
  it.each(functions.map((each) => [each.name, each] as const))(
    '%s says “date” where it gives one',
    (name, each) => {
      const answer = callFunction(each, GOOD_ARGUMENTS[name] ?? [], context());
      expect(answer.ok, JSON.stringify(answer)).toBe(true);
      if (answer.ok) expect(/\bdate\b/.test(each.gives)).toBe(typeof answer.value === 'object');
    },
  );

  it('keeps the caution with what touches canning and old food', () => {
    for (const name of [
      'POUNDS_PER_JAR',
      'JARS_PER_BUSHEL',
      'CANNER_LOADS',
      'ALTITUDE_PRESSURE',
      'HEADSPACE',
    ]) {
      expect(helpOf(functionNamed(name)!).caution).toContain('tested process');
    }
    expect(helpOf(functionNamed('ALTITUDE_PRESSURE')!).caution).toContain('pressure canner');
    expect(helpOf(functionNamed('BEST_BY')!).caution).toMatch(/not safe/);
  });

  it('marks what has no source', () => {
    expect(helpOf(functionNamed('LEARNED')!).source).toContain('common practice, no source');
    expect(helpOf(functionNamed('TO_PUT_UP')!).source).toContain('common practice, no source');
    expect(helpOf(functionNamed('DRIED_FROM')!).source).toContain('from memory');
  });
});

describe('completion', () => {
  it('offers only standard functions that the engine has', () => {
    const known = new Set(HyperFormula.getRegisteredFunctionNames('enGB'));
    for (const { name } of standardFunctions) expect(known, name).toContain(name);
  });

  it("puts the book's own functions first, and finds a word within a name", () => {
    expect(completionsFor('bush').map((each) => each.name)).toEqual([
      'BUSHEL_POUNDS',
      'BUSHELS_FOR',
      'JARS_PER_BUSHEL',
    ]);
    expect(completionsFor('co').map((each) => each.name)).toEqual(
      expect.arrayContaining(['CONVERT', 'CONTAINER_HOLDS', 'COUNT', 'COUNTIF']),
    );
    expect(completionsFor('co')[0]?.ours).toBe(true);
    expect(completionsFor('zzz')).toEqual([]);
  });
});
