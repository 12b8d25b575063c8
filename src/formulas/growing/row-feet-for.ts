import { rowFeetFor } from '../../planning/growing.js';
import { CROP } from '../arguments.js';
import { declareExplained } from '../declare.js';
import { explained } from '../explained.js';
import { GROWING_SOURCE, PLANTS } from './arguments.js';

export const ROW_FEET_FOR = declareExplained({
  name: 'ROW_FEET_FOR',
  group: 'Growing',
  summary: 'How many feet of row so many plants take.',
  arguments: [CROP, PLANTS],
  gives: 'feet of row',
  details: ['Plants times the usual spacing in the row.'],
  example: { formula: '=ROW_FEET_FOR("cabbage", 30)', gives: '30' },
  source: GROWING_SOURCE,
  explain: ([crop, plants]) => explained(rowFeetFor(crop, plants), 'usual'),
});
