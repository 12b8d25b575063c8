import { holdsOf, measureName } from '../../planning/measure.js';
import { ok } from '../../problem.js';
import { containerHolds } from '../../units/index.js';
import { say } from '../../words/index.js';
import { declareFunction } from '../declare.js';
import { quantityOf } from '../quantity.js';
import { quantityInWords } from '../quantity-words.js';
import { toldValue } from '../tell.js';
import { CONTAINER } from './arguments.js';

export const CONTAINER_HOLDS = declareFunction({
  name: 'CONTAINER_HOLDS',
  group: 'Measures',
  summary: 'How much one container holds.',
  arguments: [
    CONTAINER,
    {
      name: 'unit',
      kind: 'unit',
      optional: true,
      otherwise: 'quarts, or pounds for what is reckoned by weight',
      help: 'the unit wanted, as in "cup"',
    },
  ],
  gives: 'the unit asked for, else quarts (pounds for what is reckoned by weight)',
  unit: '{unit|quart}',
  details: ['Bags, buckets and cans go by their trade size, which is nominal: common practice, no source.'],
  example: { formula: '=CONTAINER_HOLDS("pint jar", "cup")', gives: '2' },
  source: 'NIST Handbook 44, Appendix C, for measures; trade sizes where named so',
  steps: ([container, unit], { answer }) => {
    const held = holdsOf(container, 1, []);
    const words = unit ?? (held.ok ? held.value.unit : '');
    return [
      say`1 ${measureName(container, 1)} holds = ${toldValue(answer.value, quantityInWords(quantityOf(words)))}`,
    ];
  },
  run: ([container, unit]) => {
    const held = unit === undefined ? holdsOf(container, 1, []) : containerHolds(container, unit);
    return held.ok ? ok(held.value.amount) : held;
  },
});
