import { describe, expect, it } from 'vitest';
import { readLotLine } from '../../components/sheet/lot-line.js';

const read = (line: string, way?: string) => {
  const found = readLotLine(line, way);
  if (!found.ok) return found.problem.code;
  const { food, count, container } = found.value;
  return [food, count, container];
};

describe('a line of fast entry', () => {
  it.each([
    ['tomatoes 24', 'tomatoes', 24, null],
    ['24 tomatoes', 'tomatoes', 24, null],
    ['tomatoes', 'tomatoes', null, null],
    ['beef stew, 7 1/2', 'beef stew', 7.5, null],
    ['pears 8 pints', 'pears', 8, 'pint jar'],
    ['8 pints of pears', 'pears', 8, 'pint jar'],
    ['stock 7½ qt', 'stock', 7.5, 'quart jar'],
    ['potatoes: 1,200 lb', 'potatoes', 1200, 'pound'],
    ['tomatoes, pints 8', 'tomatoes', 8, 'pint jar'],
    ['tomatoes 4 no. 10 cans', 'tomatoes', 4, 'no. 10 can'],
    ['honey 2 5-gallon buckets', 'honey', 2, '5-gallon bucket'],
    ['pickles 5 half-pint jars', 'pickles', 5, 'half-pint jar'],
    ['peas 10 jars', 'peas', 10, null],
    ['plums 2 dozen', 'plums', 2, 'dozen'],
    ['plums 2 dozen pints', 'plums', 24, 'pint jar'],
    ['2 dozen plums', 'plums', 2, 'dozen'],
    ['salsa x 9', 'salsa', 9, null],
    ['salsa ×9', 'salsa', 9, null],
    ['9 x salsa', 'salsa', 9, null],
    ['7 bean soup 12', '7 bean soup', 12, null],
    ['Phoenix 9', 'Phoenix', 9, null],
  ])('%s', (line, food, count, container) => {
    expect(read(line)).toEqual([food, count, container]);
  });

  it('takes a pint of what is frozen for a bag, unless it says jar', () => {
    expect(read('peas 8 pints', 'frozen')).toEqual(['peas', 8, 'pint freezer bag']);
    expect(read('stock 8 pint jars', 'frozen')).toEqual(['stock', 8, 'pint jar']);
  });

  it.each([
    ['', 'no-food'],
    ['12', 'no-food'],
    ['8 pints', 'no-food'],
    ['dill pickles -3', 'below-0'],
    ['tomatoes 24 big ones', 'no-container'],
    ['pears 8 bushels', 'no-container'],
  ])('stops at “%s” and asks', (line, code) => {
    expect(read(line)).toBe(code);
  });
});
