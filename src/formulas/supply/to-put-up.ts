import { toPutUp } from '../../planning/supply.js';
import { say } from '../../words/index.js';
import { declareFunction } from '../declare.js';
import { told, toldOf, toldValue } from '../tell.js';
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
      unit: 'weeks',
    },
    {
      name: 'left_over',
      kind: 'number',
      least: 0,
      help: 'containers left when the harvest begins',
      unit: 'X',
    },
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
  unit: 'X',
  details: [
    'Use × weeks × (1 + cushion), less what is left over; never below 0. Multiply use by the people first.',
  ],
  example: { formula: '=TO_PUT_UP(1, 40, 4)', gives: '40' },
  source: 'arithmetic; the tenth more is common practice, no source',
  steps: ([usePerWeek, weeks, leftOver, cushion = 0.1], { answer, x }) => {
    const eaten = usePerWeek * weeks;
    const wanted = eaten * (1 + cushion);
    return [
      `${toldOf(usePerWeek, `${x || 'containers'} a week`)} × ${toldOf(weeks, 'weeks')} = ${toldOf(eaten, x)}`,
      say`${toldOf(eaten, x)} × ${told(1 + cushion)}, with the cushion = ${toldOf(wanted, x)}`,
      say`${toldOf(wanted, x)} − ${toldOf(leftOver, x)} left over = ${toldOf(wanted - leftOver, x)}`,
      say`rounded up, never below 0 = ${toldValue(answer.value, x)}`,
    ];
  },
  run: ([usePerWeek, weeks, leftOver, cushion]) => toPutUp(usePerWeek, weeks, leftOver, cushion),
});
