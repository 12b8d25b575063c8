import { growing } from '../../facts/index.js';
import { bedAreaFor } from '../../planning/growing.js';
import { say } from '../../words/index.js';
import { CROP } from '../arguments.js';
import { declareExplained } from '../declare.js';
import { explained } from '../explained.js';
import { told, toldOf, toldValue } from '../tell.js';
import { GROWING_SOURCE, PLANTS } from './arguments.js';

export const BED_AREA_FOR = declareExplained({
  name: 'BED_AREA_FOR',
  group: 'Growing',
  summary: 'How much bed so many plants take when they stand close, without paths between rows.',
  arguments: [CROP, PLANTS],
  gives: 'square feet',
  unit: 'square feet',
  details: [
    'Plants times the square of the published close spacing. Where none is published: the spacing in the row times that between rows.',
  ],
  example: { formula: '=BED_AREA_FOR("lima bean", 144)', gives: '25' },
  source: GROWING_SOURCE,
  steps: ([crop, plants], { answer }) => {
    const found = growing(crop);
    if (!found.ok) return [];
    const { intensiveSpacing: close, spacing, rowSpacing } = found.value;
    const [one, other] = close ? [close.usual, close.usual] : [spacing?.usual ?? 0, rowSpacing?.usual ?? 0];
    return [
      say`${told(one)} inches × ${told(other)} inches ÷ 144 = ${toldOf((one * other) / 144, 'square feet a plant')}`,
      `${toldOf(plants, 'plants')} × ${toldOf((one * other) / 144, 'square feet a plant')} = ${toldValue(answer.value, 'square feet')}`,
    ];
  },
  explain: ([crop, plants]) => explained(bedAreaFor(crop, plants), 'usual'),
});
