import { plantsFor, yieldPerPlant } from '../../planning/growing.js';
import { at } from '../../planning/ranged.js';
import { say } from '../../words/index.js';
import { BASIS, CROP } from '../arguments.js';
import { declareExplained } from '../declare.js';
import { explained } from '../explained.js';
import { quantityOf } from '../quantity.js';
import { quantityInWords } from '../quantity-words.js';
import { toldOf, toldValue } from '../tell.js';
import { GROWING_SOURCE, UNIT } from './arguments.js';

export const PLANTS_FOR = declareExplained({
  name: 'PLANTS_FOR',
  group: 'Growing',
  summary: 'How many plants to grow for an amount of a crop.',
  arguments: [
    CROP,
    {
      name: 'amount',
      kind: 'number',
      least: 0,
      most: 1e9,
      help: 'how much you want; multiply by the people at the table first',
      unit: '{unit|pound}',
    },
    UNIT,
    BASIS,
  ],
  gives: 'whole plants, rounded up',
  unit: 'plants',
  details: ['The amount divided by the yield of a plant (YIELD_PER_PLANT), rounded up once at the end.'],
  example: { formula: '=PLANTS_FOR("tomato", 100)', gives: '13' },
  source: GROWING_SOURCE,
  steps: ([crop, amount, unit, basis], { answer, context }) => {
    const per = yieldPerPlant(crop, unit);
    if (!per.ok) return [];
    const each = at(per.value, basis ?? context.basis);
    return [
      say`one plant of ${crop} gives ${toldOf(each, per.value.unit)}`,
      `${toldOf(amount, quantityInWords(quantityOf(unit ?? 'pound')))} ÷ ${toldOf(each, per.value.unit)} = ${toldOf(amount / each, 'plants')}`,
      say`rounded up = ${toldValue(answer.value, 'plants')}`,
    ];
  },
  explain: ([crop, amount, unit, basis], context) =>
    explained(plantsFor(crop, amount, unit), basis ?? context.basis),
});
