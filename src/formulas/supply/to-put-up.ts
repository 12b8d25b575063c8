import { toPutUp } from '../../planning/supply.js';
import { declareFunction } from '../declare.js';
import { USE_PER_WEEK } from './arguments.js';

export const TO_PUT_UP = declareFunction({
  name: 'TO_PUT_UP',
  group: 'Supply',
  summary: 'How many containers to put up so that the food lasts so many weeks.',
  arguments: [
    USE_PER_WEEK,
    {
      name: 'weeks_to_cover',
      kind: 'number',
      least: 0,
      help: 'weeks of eating from the shelf until the next harvest',
    },
    { name: 'left_over', kind: 'number', least: 0, help: 'containers left when the harvest begins' },
    {
      name: 'cushion',
      kind: 'number',
      least: 0,
      most: 10,
      optional: true,
      otherwise: '0.1, a tenth more',
      help: 'what to put up on top, as a share: 0.1 or 10%',
    },
  ],
  gives: 'whole containers, rounded up',
  details: [
    'Use × weeks × (1 + cushion), less what is left over; never below 0. Multiply use by the people first.',
  ],
  example: { formula: '=TO_PUT_UP(1, 40, 4)', gives: '40' },
  source: 'arithmetic; the tenth more is common practice, no source',
  run: ([usePerWeek, weeks, leftOver, cushion]) => toPutUp(usePerWeek, weeks, leftOver, cushion),
});
