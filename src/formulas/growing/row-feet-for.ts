import { growing } from '../../facts/index.js';
import { rowFeetFor } from '../../planning/growing.js';
import { CROP } from '../arguments.js';
import { declareExplained } from '../declare.js';
import { explained } from '../explained.js';
import { toldOf, toldValue } from '../tell.js';
import { GROWING_SOURCE, PLANTS } from './arguments.js';

export const ROW_FEET_FOR = declareExplained({
  name: 'ROW_FEET_FOR',
  group: 'Growing',
  summary: 'How many feet of row so many plants take.',
  arguments: [CROP, PLANTS],
  gives: 'feet of row',
  unit: 'feet',
  details: ['Plants times the usual spacing in the row.'],
  example: { formula: '=ROW_FEET_FOR("cabbage", 30)', gives: '30' },
  source: GROWING_SOURCE,
  steps: ([crop, plants], { answer }) => {
    const found = growing(crop);
    const inches = found.ok ? found.value.spacing?.usual : undefined;
    return inches === undefined
      ? []
      : [
          `${toldOf(plants, 'plants')} × ${toldOf(inches, 'inches a plant')} = ${toldOf(plants * inches, 'inches')}`,
          `${toldOf(plants * inches, 'inches')} ÷ 12 = ${toldValue(answer.value, 'feet of row')}`,
        ];
  },
  explain: ([crop, plants]) => explained(rowFeetFor(crop, plants), 'usual'),
});
