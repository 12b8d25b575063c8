import { weeksOutside } from '../../planning/season.js';
import { paceToUseUp } from '../../planning/supply.js';
import { say } from '../../words/index.js';
import { declareFunction } from '../declare.js';
import { isoOf, toldOf, toldValue } from '../tell.js';
import { AS_OF, FRESH_FROM, FRESH_TO, leavingOut, seasonFrom } from './arguments.js';

export const PACE_TO_USE_UP = declareFunction({
  name: 'PACE_TO_USE_UP',
  group: 'Supply',
  summary: 'How much more a week to eat, so that what is over is gone by a day.',
  arguments: [
    {
      name: 'over',
      kind: 'number',
      least: 0,
      help: 'what will be left over, in the container you count in',
      unit: 'X',
    },
    { name: 'until', kind: 'date', help: 'the day by which it should be gone, such as the next harvest' },
    AS_OF,
    FRESH_FROM,
    FRESH_TO,
  ],
  gives: 'containers a week, on top of usual use',
  unit: 'X a week',
  details: ['What is over, divided by the weeks outside the fresh season until that day.'],
  example: { formula: '=PACE_TO_USE_UP(24, "2026-08-30", "2026-02-01")', gives: '0.8' },
  source: 'arithmetic',
  steps: ([over, until, asOf, from, to], { answer, context, x }) => {
    const season = seasonFrom(from, to);
    const today = asOf ?? context.asOf;
    const weeks = weeksOutside(today, until, season.ok ? season.value : null);
    return [
      ...leavingOut(from, to),
      say`${isoOf(today)} to ${isoOf(until)} = ${toldOf(weeks, 'weeks')} of eating from the shelf`,
      over === 0
        ? say`nothing is over = ${toldValue(answer.value, `${x || 'containers'} a week`)}`
        : `${toldOf(over, x)} ÷ ${toldOf(weeks, 'weeks')} = ${toldValue(answer.value, `${x || 'containers'} a week`)}`,
    ];
  },
  run: ([over, until, asOf, from, to], context) => {
    const season = seasonFrom(from, to);
    if (!season.ok) return season;
    return paceToUseUp(over, until, asOf ?? context.asOf, season.value);
  },
});
