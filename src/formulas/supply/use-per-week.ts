import { usePerWeek } from '../../planning/use.js';
import { declareFunction } from '../declare.js';
import { AS_OF } from './arguments.js';
import { AMOUNTS, DATES, drawsFrom, usedSteps, WEEKS } from './draws.js';

export const USE_PER_WEEK = declareFunction({
  name: 'USE_PER_WEEK',
  group: 'Supply',
  summary: 'How much is used a week, learned from what was taken.',
  arguments: [DATES, AMOUNTS, AS_OF, WEEKS],
  gives: 'containers a week, in the container that the amounts are in',
  unit: 'X a week',
  details: [
    'The sum of the amounts before the as-of date, divided by the weeks. A negative amount takes back from those before it.',
    'Under four weeks nothing is learned yet. USE_RANGE gives how sure it is.',
  ],
  example: {
    formula: '=USE_PER_WEEK({"2026-01-04";"2026-01-18";"2026-02-01"}, {2;1;3}, "2026-03-01", 8)',
    gives: '0.75',
  },
  source: 'arithmetic',
  steps: ([dates, amounts, asOf, weeks], { answer, context, x }) =>
    usedSteps(dates, amounts, asOf ?? context.asOf, weeks, answer, x),
  run: ([dates, amounts, asOf, weeks], context) => {
    const draws = drawsFrom(dates, amounts);
    if (!draws.ok) return draws;
    return usePerWeek(draws.value.dates, draws.value.amounts, asOf ?? context.asOf, weeks ?? null);
  },
});
