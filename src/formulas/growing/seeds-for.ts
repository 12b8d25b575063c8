import { sourceText } from '../../facts/index.js';
import { seedsFor } from '../../planning/growing.js';
import { CROP } from '../arguments.js';
import { declareExplained } from '../declare.js';
import { explained } from '../explained.js';
import { PLANTS } from './arguments.js';

export const SEEDS_FOR = declareExplained({
  name: 'SEEDS_FOR',
  group: 'Growing',
  summary: 'How many seeds to sow for so many plants.',
  arguments: [CROP, PLANTS],
  gives: 'whole seeds, rounded up',
  details: [
    'Plants divided by the germination, once. It counts on the least germination that may be sold in the United States; the packet often says more.',
    'Nothing is added for thinning, birds or old seed.',
  ],
  example: { formula: '=SEEDS_FOR("broccoli", 59)', gives: '79' },
  source: sourceText('cfr'),
  explain: ([crop, plants]) => explained(seedsFor(crop, plants), 'usual'),
});
