import { plantsFor } from '../../planning/growing.js';
import { BASIS, CROP } from '../arguments.js';
import { declareExplained } from '../declare.js';
import { explained } from '../explained.js';
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
    },
    UNIT,
    BASIS,
  ],
  gives: 'whole plants, rounded up',
  details: ['The amount divided by the yield of a plant (YIELD_PER_PLANT), rounded up once at the end.'],
  example: { formula: '=PLANTS_FOR("tomato", 100)', gives: '13' },
  source: GROWING_SOURCE,
  explain: ([crop, amount, unit, basis], context) =>
    explained(plantsFor(crop, amount, unit), basis ?? context.basis),
});
