import { growing, sourceText } from '../../facts/index.js';
import { seedsFor } from '../../planning/growing.js';
import { say } from '../../words/index.js';
import { CROP } from '../arguments.js';
import { declareExplained } from '../declare.js';
import { explained } from '../explained.js';
import { told, toldOf, toldValue } from '../tell.js';
import { PLANTS } from './arguments.js';

export const SEEDS_FOR = declareExplained({
  name: 'SEEDS_FOR',
  group: 'Growing',
  summary: 'How many seeds to sow for so many plants.',
  arguments: [CROP, PLANTS],
  gives: 'whole seeds, rounded up',
  unit: 'seeds',
  details: [
    'Plants divided by the germination, once. It counts on the least germination that may be sold in the United States; the packet often says more.',
    'Nothing is added for thinning, birds or old seed.',
  ],
  example: { formula: '=SEEDS_FOR("broccoli", 59)', gives: '79' },
  source: sourceText('cfr'),
  steps: ([crop, plants], { answer }) => {
    const found = growing(crop);
    const percent = found.ok ? found.value.germination?.usual : undefined;
    return percent === undefined
      ? []
      : [
          say`${toldOf(plants, 'plants')} ÷ ${told(percent / 100)} plants a seed = ${toldOf((plants * 100) / percent, 'seeds')}`,
          say`rounded up = ${toldValue(answer.value, 'seeds')}`,
        ];
  },
  explain: ([crop, plants]) => explained(seedsFor(crop, plants), 'usual'),
});
