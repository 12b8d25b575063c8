import { yieldPerPlant } from '../../planning/growing.js';
import { say } from '../../words/index.js';
import { BASIS, CROP } from '../arguments.js';
import { declareExplained } from '../declare.js';
import { explained } from '../explained.js';
import { lookedUp } from '../tell-figure.js';
import { GROWING_SOURCE, UNIT } from './arguments.js';

export const YIELD_PER_PLANT = declareExplained({
  name: 'YIELD_PER_PLANT',
  group: 'Growing',
  summary: 'How much one plant of a crop gives in a season.',
  arguments: [CROP, UNIT, BASIS],
  gives: 'pounds a plant, or the unit asked for',
  unit: '{unit|pound} a plant',
  details: [
    'Published per plant where it is; else the published yield per foot of row, times the spacing in the row.',
    'Where a crop is published both ways and they differ, the lean and good ends take in both.',
    'Sources differ up to fivefold: your own figure is better, and LEARNED blends the two.',
  ],
  example: { formula: '=YIELD_PER_PLANT("tomato")', gives: '8' },
  source: GROWING_SOURCE,
  steps: ([crop], { answer }) => lookedUp(say`one plant of ${crop}`, answer),
  explain: ([crop, unit, basis], context) => explained(yieldPerPlant(crop, unit), basis ?? context.basis),
});
