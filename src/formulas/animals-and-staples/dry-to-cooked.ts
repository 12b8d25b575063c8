import { densityOf } from '../../facts/index.js';
import { cookedPerDryCup } from '../../planning/garden/animals.js';
import { changed } from '../../planning/ranged.js';
import { say } from '../../words/index.js';
import { POUNDS } from '../arguments.js';
import { declareExplained } from '../declare.js';
import { explained } from '../explained.js';
import { told, toldOf, toldValue } from '../tell.js';

export const DRY_TO_COOKED = declareExplained({
  name: 'DRY_TO_COOKED',
  group: 'Animals and staples',
  summary: 'How many cups, cooked, so many pounds of a dry food give.',
  arguments: [
    { name: 'food', kind: 'text', help: 'a dry food, as in "cornmeal"', values: ['cornmeal'] },
    { ...POUNDS, help: 'pounds, dry' },
  ],
  gives: 'cups, cooked',
  unit: 'cups',
  details: [
    'Pounds become cups only where the weight of a cup is published; how much a cup swells in cooking is published for dry beans, barley and cornmeal.',
  ],
  example: { formula: '=DRY_TO_COOKED("cornmeal", 2)', gives: '24' },
  source: 'University of Missouri Extension, MP563: cups in a pound, and cups cooked from a cup dry',
  steps: ([food, pounds], { answer }) => {
    const [weight, swells] = [densityOf(food), cookedPerDryCup(food)];
    if (!weight.ok || !swells.ok) return [];
    const cups = pounds / weight.value.usual;
    return [
      say`${toldOf(pounds, 'pounds')} ÷ ${told(weight.value.usual)} pounds a cup = ${toldOf(cups, 'cups')}, dry`,
      say`${toldOf(cups, 'cups')} × ${told(swells.value.usual)} cups cooked from a cup dry = ${toldValue(answer.value, 'cups')}`,
    ];
  },
  explain: ([food, pounds]) => {
    const swells = cookedPerDryCup(food);
    if (!swells.ok) return swells;
    const weight = densityOf(food);
    if (!weight.ok) return weight;
    const cups = pounds / weight.value.usual;
    return explained(
      {
        ok: true,
        value: changed(
          swells.value,
          'cups, cooked',
          say`Pounds to cups by the published weight of a cup.`,
          (each) => each * cups,
        ),
      },
      'usual',
    );
  },
});
