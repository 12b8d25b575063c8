import { measureName } from '../../planning/measure.js';
import { ok, refuse } from '../../problem.js';
import { inMeasure, roundSig } from '../../units/index.js';
import { say } from '../../words/index.js';
import { declareFunction } from '../declare.js';
import { told, toldOf, toldValue } from '../tell.js';
import { CONTAINER } from './arguments.js';

export const SERVINGS_IN = declareFunction({
  name: 'SERVINGS_IN',
  group: 'Measures',
  summary: 'How many servings so many containers give.',
  arguments: [
    CONTAINER,
    { name: 'count', kind: 'number', least: 0, most: 1e9, help: 'how many of them', unit: '{container}' },
    {
      name: 'serving_cups',
      kind: 'number',
      least: 0,
      most: 1000,
      help: 'cups in one serving, as in 0.5',
      unit: 'cups',
    },
  ],
  gives: 'servings',
  unit: 'servings',
  details: [
    'A jar is reckoned full to its named size; what stands in it, liquid included, is what is served.',
  ],
  example: { formula: '=SERVINGS_IN("quart jar", 40, 1)', gives: '160' },
  source: 'NIST Handbook 44, Appendix C, for measures',
  steps: ([container, count, servingCups], { answer }) => {
    const each = inMeasure(1, container, 'cup');
    if (!each.ok) return [];
    const cups = count * each.value;
    return [
      `${toldOf(count, measureName(container))} × ${toldOf(each.value, 'cups')} = ${toldOf(cups, 'cups')}`,
      say`${toldOf(cups, 'cups')} ÷ ${told(servingCups)} cups a serving = ${toldValue(answer.value, 'servings')}`,
    ];
  },
  run: ([container, count, servingCups]) => {
    if (servingCups === 0) {
      return refuse(
        'bad-amount',
        say`A serving of 0 cups is none.`,
        say`Give the cups in one serving, as in 0.5.`,
      );
    }
    const cups = inMeasure(count, container, 'cup');
    return cups.ok ? ok(roundSig(cups.value / servingCups, 12)) : cups;
  },
});
