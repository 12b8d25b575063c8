import { weeksOutside } from '../../planning/season.js';
import { leftAt } from '../../planning/supply.js';
import { say } from '../../words/index.js';
import { declareFunction } from '../declare.js';
import { isoOf, toldOf, toldValue } from '../tell.js';
import { AS_OF, FRESH_FROM, FRESH_TO, leavingOut, ON_HAND, seasonFrom, USE_PER_WEEK } from './arguments.js';

export const LEFT_AT = declareFunction({
  name: 'LEFT_AT',
  group: 'Supply',
  summary: 'How much is left on a day, at the usual use until then.',
  arguments: [
    ON_HAND,
    USE_PER_WEEK,
    { name: 'date', kind: 'date', help: 'the day you ask about, such as the next harvest' },
    AS_OF,
    FRESH_FROM,
    FRESH_TO,
  ],
  gives: 'the container you count in; never below 0',
  unit: 'X',
  details: ['A day before the as-of date answers as the as-of date does: all of it is left.'],
  example: { formula: '=LEFT_AT(30, 1, "2026-08-02", "2026-02-01")', gives: '4' },
  source: 'arithmetic',
  steps: ([onHand, usePerWeek, date, asOf, from, to], { answer, context, x }) => {
    const season = seasonFrom(from, to);
    const today = asOf ?? context.asOf;
    const weeks = weeksOutside(today, date, season.ok ? season.value : null);
    const rest = onHand - usePerWeek * weeks;
    return [
      ...leavingOut(from, to),
      say`${isoOf(today)} to ${isoOf(date)} = ${toldOf(weeks, 'weeks')} of eating from the shelf`,
      `${toldOf(onHand, x)} − ${toldOf(usePerWeek, `${x || 'containers'} a week`)} × ${toldOf(weeks, 'weeks')} = ${toldOf(rest, x)}`,
      ...(rest < 0 ? [say`never below 0 = ${toldValue(answer.value, x)}`] : []),
    ];
  },
  run: ([onHand, usePerWeek, date, asOf, from, to], context) => {
    const season = seasonFrom(from, to);
    if (!season.ok) return season;
    return leftAt(onHand, usePerWeek, date, asOf ?? context.asOf, season.value);
  },
});
