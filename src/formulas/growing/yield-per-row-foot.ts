import { yieldPerRowFoot } from '../../planning/growing.js';
import { phrase, say } from '../../words/index.js';
import { BASIS, CROP } from '../arguments.js';
import { declareExplained } from '../declare.js';
import { explained } from '../explained.js';
import { lookedUp } from '../tell-figure.js';
import { GROWING_SOURCE, UNIT } from './arguments.js';

export const YIELD_PER_ROW_FOOT = declareExplained({
  name: 'YIELD_PER_ROW_FOOT',
  group: 'Growing',
  summary: 'How much a foot of row of a crop gives in a season.',
  arguments: [CROP, UNIT, BASIS],
  gives: 'pounds a foot of row, or the unit asked for',
  unit: `{unit|pound} a ${phrase('foot of row')}`,
  details: [
    'Published per 100 ft of row by most sources. Where a crop is published only by the plant, that divided by the spacing.',
  ],
  example: { formula: '=YIELD_PER_ROW_FOOT("carrot")', gives: '1' },
  source: GROWING_SOURCE,
  steps: ([crop], { answer }) => lookedUp(say`a foot of row of ${crop}`, answer),
  explain: ([crop, unit, basis], context) => explained(yieldPerRowFoot(crop, unit), basis ?? context.basis),
});
