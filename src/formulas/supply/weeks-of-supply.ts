import { weeksOfSupply } from '../../planning/supply.js';
import { declareFunction } from '../declare.js';
import { toldOf, toldValue } from '../tell.js';
import { ON_HAND, USE_PER_WEEK } from './arguments.js';

export const WEEKS_OF_SUPPLY = declareFunction({
  name: 'WEEKS_OF_SUPPLY',
  group: 'Supply',
  summary: 'How many weeks of eating from the shelf what is on hand lasts.',
  arguments: [ON_HAND, USE_PER_WEEK],
  gives: "weeks, or 'no use' where nothing is used",
  unit: 'weeks',
  details: [
    'On hand divided by use per week. Weeks in which the food is eaten fresh do not count: RUNS_OUT_ON takes them into account.',
  ],
  example: { formula: '=WEEKS_OF_SUPPLY(24, 0.8)', gives: '30' },
  source: 'arithmetic',
  steps: ([onHand, usePerWeek], { answer, x }) => [
    `${toldOf(onHand, x)} ÷ ${toldOf(usePerWeek, `${x || 'containers'} a week`)} = ${toldValue(answer.value, 'weeks')}`,
  ],
  run: ([onHand, usePerWeek]) => weeksOfSupply(onHand, usePerWeek),
});
