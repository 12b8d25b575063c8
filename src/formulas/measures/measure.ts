import { findCrop, foodGroup, nearCrops } from '../../facts/index.js';
import { defaultGuide } from '../../planning/guide.js';
import { measureName } from '../../planning/measure.js';
import { inMeasure } from '../../units/index.js';
import { declareFunction } from '../declare.js';
import { quantityOf } from '../quantity.js';
import { quantityInWords } from '../quantity-words.js';
import { told, toldOf, toldValue } from '../tell.js';
import { MEASURE_NAMES } from './arguments.js';

export const MEASURE = declareFunction({
  name: 'MEASURE',
  group: 'Measures',
  summary: 'Turns an amount from one container or unit into another.',
  arguments: [
    { name: 'amount', kind: 'number', help: 'how many of the first', unit: '{from}' },
    {
      name: 'from',
      kind: 'measure',
      help: 'a container or unit, as in "pint jar" or "pound"',
      values: MEASURE_NAMES,
    },
    { name: 'to', kind: 'measure', help: 'the container or unit wanted', values: MEASURE_NAMES },
    {
      name: 'food',
      kind: 'food',
      optional: true,
      otherwise: 'volume and weight stay apart',
      help: 'the food, where volume is to become weight or the other way round',
    },
  ],
  gives: 'the container or unit asked for',
  unit: '{to}',
  details: [
    'Exact within volume, weight, length, area and count. Between volume and weight it takes the published weight of the food, where there is one.',
    'A dry quart is larger than a liquid one, and a bushel of produce is not so many quarts of it: see JARS_PER_BUSHEL.',
  ],
  example: { formula: '=MEASURE(160, "cup", "quart")', gives: '40' },
  source: 'NIST Handbook 44, Appendix C; weights of foods as named in Facts',
  steps: ([amount, from, to], { answer }) => {
    const [given, wanted] = [quantityInWords(quantityOf(from)), quantityInWords(quantityOf(to))];
    const each = amount === 0 || typeof answer.value !== 'number' ? null : answer.value / amount;
    return [
      ...(each === null
        ? []
        : [
            each >= 1 || each === 0
              ? `1 ${measureName(from, 1)} = ${toldOf(each, wanted)}`
              : `1 ${measureName(to, 1)} = ${toldOf(1 / each, given)}`,
          ]),
      each === null || each >= 1 || each === 0
        ? `${toldOf(amount, given)} × ${told(each ?? 0)} = ${toldValue(answer.value, wanted)}`
        : `${toldOf(amount, given)} ÷ ${told(1 / each)} = ${toldValue(answer.value, wanted)}`,
    ];
  },
  run: ([amount, from, to, food]) => {
    const plain = inMeasure(amount, from, to);
    if (plain.ok || food === undefined) return plain;
    const weighed = inMeasure(amount, from, to, defaultGuide.bridges(food));
    if (weighed.ok || foodGroup(food).ok) return weighed;
    const crop = findCrop(food);
    return !crop.ok && nearCrops(food).length > 0 ? crop : weighed;
  },
});
