import { describe, expect, it } from 'vitest';
import { CONTAINERS, findContainer, findMeasure, findUnit, UNITS } from '../../src/units/index.js';

const unit = (name: string) => {
  const found = findUnit(name);
  return found.ok ? found.value.id : found.problem.message;
};
const container = (name: string) => {
  const found = findContainer(name);
  return found.ok ? found.value.id : found.problem.message;
};

describe('findUnit', () => {
  it.each([
    ['Quarts', 'quart'],
    ['qt.', 'quart'],
    ['  PINTS ', 'pint'],
    ['fl. oz.', 'fluid ounce'],
    ['fluid-ounces', 'fluid ounce'],
    ['oz', 'ounce'],
    ['lbs', 'pound'],
    ['tbsp', 'tablespoon'],
    ['Tsp.', 'teaspoon'],
    ['liters', 'litre'],
    ['mL', 'millilitre'],
    ['kilos', 'kilogram'],
    ['bu', 'bushel'],
    ['dry quarts', 'dry quart'],
    ['feet', 'foot'],
    ['row feet', 'foot'],
    ['inches', 'inch'],
    ['sq. ft.', 'square foot'],
    ['m²', 'square metre'],
    ['ft³', 'cubic foot'],
    ['metric tons', 'tonne'],
    ['doz', 'dozen'],
  ])('reads %j as %s', (name, id) => expect(unit(name)).toBe(id));

  it('finds every unit by its id, its plural and each of its names', () => {
    for (const one of UNITS) {
      for (const name of [one.id, one.plural, ...one.names, one.id.toUpperCase()])
        expect(unit(name)).toBe(one.id);
    }
  });

  it('offers the nearest names', () => {
    expect(unit('bushles')).toBe('no unit called "bushles": did you mean bushel?');
    expect(unit('galon')).toContain('did you mean gallon');
  });

  it('does not guess between tablespoon and teaspoon', () => {
    expect(unit('T')).toContain('tablespoon or teaspoon');
    expect(unit('t')).toContain('tablespoon or teaspoon');
  });

  it('says so plainly when nothing is near, or nothing is written', () => {
    expect(unit('xyzzy')).toBe('no unit called "xyzzy".');
    expect(unit(' ')).toBe('the unit is blank.');
    const found = findUnit('xyzzy');
    expect(found.ok ? '' : found.problem.mend).toContain('quart');
  });

  it('is not misled by names of object properties', () => {
    expect(unit('constructor')).toContain('no unit');
    expect(unit('__proto__')).toContain('no unit');
  });
});

describe('findContainer', () => {
  it.each([
    ['quart', 'quart jar'],
    ['qt', 'quart jar'],
    ['quarts', 'quart jar'],
    ['Quart Jars', 'quart jar'],
    ['quart-jar', 'quart jar'],
    ['pt jars', 'pint jar'],
    ['wide-mouth pint jars', 'pint jar'],
    ['quart mason jar', 'quart jar'],
    ['half pint', 'half-pint jar'],
    ['½ pint', 'half-pint jar'],
    ['1/2 pt jar', 'half-pint jar'],
    ['8 oz jar', 'half-pint jar'],
    ['1½ pint jars', '1½-pint jar'],
    ['1 1/2 pint', '1½-pint jar'],
    ['1.5-pint jar', '1½-pint jar'],
    ['pint and a half', '1½-pint jar'],
    ['half gallons', 'half-gallon jar'],
    ['4 oz', '4 oz jar'],
    ['#10 can', 'no. 10 can'],
    ['No 10 cans', 'no. 10 can'],
    ['gallon freezer bags', 'gallon freezer bag'],
    ['quart bag', 'quart freezer bag'],
    ['5 gal bucket', '5-gallon bucket'],
    ['pail', 'bucket'],
    ['bins', 'bin'],
    ['boxes', 'bin'],
    ['pieces', 'piece'],
    ['heads', 'piece'],
    ['lb', 'pound'],
    ['dozen eggs', 'dozen'],
  ])('reads %j as %s', (name, id) => expect(container(name)).toBe(id));

  it('finds every container by its id, its plural and each of its names', () => {
    for (const box of CONTAINERS) {
      for (const name of [box.id, box.plural, ...box.names]) expect(container(name), name).toBe(box.id);
    }
  });

  it('offers the nearest containers', () => {
    expect(container('quatr')).toBe('no container called "quatr": did you mean quart jar?');
    expect(container('freezer bag')).toContain('pint freezer bag, quart freezer bag or gallon freezer bag');
  });

  it('does not offer a jar of another size for one that it lacks', () => {
    expect(container('12 oz jar')).toBe('no container called "12 oz jar".');
  });

  it('tells a measure from a container', () => {
    expect(container('cup')).toBe('a cup is a measure, not a container.');
    expect(container('bushel')).toBe('a bushel is a measure, not a container.');
  });
});

describe('findMeasure', () => {
  it('takes units and containers alike', () => {
    for (const [name, id] of [
      ['quart', 'quart'],
      ['quart jars', 'quart jar'],
      ['#10 cans', 'no. 10 can'],
      ['cups', 'cup'],
    ] as const) {
      const found = findMeasure(name);
      const got = !found.ok
        ? found
        : found.value.kind === 'unit'
          ? found.value.unit.id
          : found.value.container.id;
      expect(got).toBe(id);
    }
  });

  it('refuses what is neither, with near names of both', () => {
    const found = findMeasure('quatr');
    expect(found.ok ? '' : found.problem.message).toBe(
      'no measure called "quatr": did you mean quart jar or quart?',
    );
  });
});
