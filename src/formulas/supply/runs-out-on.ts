import { runsOutOn } from '../../planning/supply.js';
import { say } from '../../words/index.js';
import { declareFunction } from '../declare.js';
import { isoOf, toldOf, toldValue } from '../tell.js';
import { dayOrWords } from './answers.js';
import { AS_OF, FRESH_FROM, FRESH_TO, leavingOut, ON_HAND, seasonFrom, USE_PER_WEEK } from './arguments.js';

export const RUNS_OUT_ON = declareFunction({
  name: 'RUNS_OUT_ON',
  group: 'Supply',
  summary: 'The day on which what is on hand runs out, nothing being taken while it is eaten fresh.',
  arguments: [ON_HAND, USE_PER_WEEK, AS_OF, FRESH_FROM, FRESH_TO],
  gives: "date, or 'no use', 'more than ten years', 'not eaten from the shelf'",
  unit: 'date',
  details: [
    'Days of the fresh season, both its ends included, take nothing from the shelf.',
    'This is a date of quantity, not of quality or safety: see BEST_BY.',
  ],
  example: { formula: '=RUNS_OUT_ON(10, 1, "2026-02-01")', gives: '2026-04-12' },
  source: 'arithmetic',
  steps: ([onHand, usePerWeek, asOf, from, to], { answer, context, x }) => [
    usePerWeek > 0
      ? say`${toldOf(onHand, x)} ÷ ${toldOf(usePerWeek, `${x || 'containers'} a week`)} = ${toldOf(onHand / usePerWeek, 'weeks')} of eating from the shelf`
      : say`nothing is used`,
    ...leavingOut(from, to),
    say`from ${isoOf(asOf ?? context.asOf)} on that is = ${toldValue(answer.value)}`,
  ],
  run: ([onHand, usePerWeek, asOf, from, to], context) => {
    const season = seasonFrom(from, to);
    if (!season.ok) return season;
    return dayOrWords(runsOutOn(onHand, usePerWeek, asOf ?? context.asOf, season.value));
  },
});
