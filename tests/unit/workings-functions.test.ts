import { describe, expect, it } from 'vitest';
import { HyperFormulaEngine } from '../../src/engine/hyperformula-engine.js';
import { unitsOfCall } from '../../src/formulas/function-units.js';
import {
  EXAMPLE_CONTEXT,
  functions,
  referenceOf,
  stepsOfCall,
  workingOfExample,
} from '../../src/formulas/index.js';
import { likeness } from '../../src/formulas/quantity.js';
import { quantityInWords, readQuantity } from '../../src/formulas/quantity-words.js';
import { toldValue } from '../../src/formulas/tell.js';
import { toIsoDay } from '../../src/planning/dates.js';
import { wrongIn } from '../support/read-steps.js';
import { GOOD_ARGUMENTS } from './formulas-support.js';

const all = functions.map((each) => [each.name, each] as const);

describe('the working of an example', () => {
  const engine = new HyperFormulaEngine(EXAMPLE_CONTEXT);
  engine.open([]);

  it.each(all)('%s ends in what the function gives in a cell', (name, each) => {
    const working = workingOfExample(each)!;
    const { value } = working.answer;
    // Without what may be written around the call.
    const inside = each.example.formula.replace(/^=ROUND\((.*), \d\)$/, '=$1');
    const cell = engine.evaluate(inside);
    if (typeof value === 'number') expect(cell, name).toBeCloseTo(value, 9);
    else expect(cell, name).toBe(typeof value === 'object' ? toIsoDay(value.day) : value);
    expect(working.steps.length, name).toBeGreaterThan(0);
    const last = working.steps.at(-1)!;
    expect(last.slice(last.lastIndexOf('=') + 1), last).toContain(toldValue(value));
  });

  it.each(all)(
    '%s has arithmetic that is right, and stands in the reference with its source',
    (_name, each) => {
      const { steps, from, example } = referenceOf(each);
      expect(steps.map(wrongIn).filter((wrong) => wrong !== null)).toEqual([]);
      expect(from).not.toBe('');
      expect(example.gives).not.toBe('');
    },
  );

  it.each(all)('%s tells the steps of every argument that it takes', (name, each) => {
    for (const basis of ['lean', 'usual', 'good'] as const) {
      const found = stepsOfCall(
        each,
        GOOD_ARGUMENTS[name] ?? [],
        { ...EXAMPLE_CONTEXT, basis },
        'quart jars',
      );
      expect(found.ok && found.value.steps.length, name).toBeGreaterThan(0);
      if (!found.ok) continue;
      const last = found.value.steps.at(-1)!;
      expect(last.slice(last.lastIndexOf('=') + 1), last).toContain(toldValue(found.value.answer.value));
      expect(found.value.steps.map(wrongIn).filter((wrong) => wrong !== null)).toEqual([]);
    }
  });
});

describe('the units of a function', () => {
  const unitOf = (name: string) => {
    const each = functions.find((one) => one.name === name)!;
    const given = (GOOD_ARGUMENTS[name] ?? []).map((value) => ({
      quantity: undefined,
      text: typeof value === 'string' ? value : undefined,
    }));
    return { each, unit: unitsOfCall(each, given).answer, given: GOOD_ARGUMENTS[name] ?? [] };
  };

  it.each(all)('%s: what it declares is what its answer says of itself', (name) => {
    const { each, unit, given } = unitOf(name);
    const answer = stepsOfCall(each, given, EXAMPLE_CONTEXT);
    const said = answer.ok && each.explain ? readQuantity(answer.value.answer.unit) : undefined;
    if (said && unit)
      expect(likeness(said, unit), `${quantityInWords(said)} ${quantityInWords(unit)}`).toBe('alike');
    else expect(each.unit).not.toBe('');
  });

  it('follow what is asked for, and what is given', () => {
    const words = (name: string) => {
      const { unit } = unitOf(name);
      return unit && quantityInWords(unit);
    };
    expect(words('MEASURE')).toBe('quarts');
    expect(words('YIELD_PER_PLANT')).toBe('pounds a plant');
    expect(words('POUNDS_PER_JAR')).toBe('pounds a quart jar');
    expect(words('JARS_PER_BUSHEL')).toBe('quart jars a bushel');
    expect(words('CONVERT')).toBe('quarts');
    // Nobody said in what it is counted.
    expect(words('LEFT_AT')).toBeUndefined();
    const leftAt = functions.find(({ name }) => name === 'LEFT_AT')!;
    const jars = readQuantity('quart jars')!;
    const { answer, wrong } = unitsOfCall(leftAt, [
      { quantity: jars, text: undefined },
      { quantity: readQuantity('pints a week'), text: undefined },
    ]);
    expect(quantityInWords(answer!)).toBe('quart jars');
    expect(wrong).toMatchObject([{ likeness: 'convertible' }]);
  });
});
