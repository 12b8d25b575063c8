import { paceToUseUp } from '../../planning/supply.js';
import { declareFunction } from '../declare.js';
import { AS_OF, FRESH_FROM, FRESH_TO, seasonFrom } from './arguments.js';

export const PACE_TO_USE_UP = declareFunction({
  name: 'PACE_TO_USE_UP',
  group: 'Supply',
  summary: 'How much more a week to eat, so that what is over is gone by a day.',
  arguments: [
    { name: 'over', kind: 'number', least: 0, help: 'what will be left over, in the container you count in' },
    { name: 'until', kind: 'date', help: 'the day by which it should be gone, such as the next harvest' },
    AS_OF,
    FRESH_FROM,
    FRESH_TO,
  ],
  gives: 'containers a week, on top of usual use',
  details: ['What is over, divided by the weeks outside the fresh season until that day.'],
  example: { formula: '=PACE_TO_USE_UP(24, "2026-08-30", "2026-02-01")', gives: '0.8' },
  source: 'arithmetic',
  run: ([over, until, asOf, from, to], context) => {
    const season = seasonFrom(from, to);
    if (!season.ok) return season;
    return paceToUseUp(over, until, asOf ?? context.asOf, season.value);
  },
});
