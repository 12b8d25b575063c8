import { bedAreaFor } from '../../planning/growing.js';
import { CROP } from '../arguments.js';
import { declareExplained } from '../declare.js';
import { explained } from '../explained.js';
import { GROWING_SOURCE, PLANTS } from './arguments.js';

export const BED_AREA_FOR = declareExplained({
  name: 'BED_AREA_FOR',
  group: 'Growing',
  summary: 'How much bed so many plants take when they stand close, without paths between rows.',
  arguments: [CROP, PLANTS],
  gives: 'square feet',
  details: [
    'Plants times the square of the published close spacing. Where none is published: the spacing in the row times that between rows.',
  ],
  example: { formula: '=BED_AREA_FOR("lima bean", 144)', gives: '25' },
  source: GROWING_SOURCE,
  explain: ([crop, plants]) => explained(bedAreaFor(crop, plants), 'usual'),
});
