import { usePerWeek, useRange } from '../../planning/use.js';
import { say } from '../../words/index.js';
import { declareFunction } from '../declare.js';
import { told, toldOf, toldValue } from '../tell.js';
import { AS_OF } from './arguments.js';
import { AMOUNTS, DATES, drawsFrom, WEEKS } from './draws.js';

export const USE_RANGE = declareFunction({
  name: 'USE_RANGE',
  group: 'Supply',
  summary: 'The use per week that the true one stays under with a given chance.',
  arguments: [
    DATES,
    AMOUNTS,
    {
      name: 'probability',
      kind: 'number',
      help: 'the chance, between 0 and 1: 0.1 gives the low end that Foods shows, 0.9 the high end',
    },
    AS_OF,
    WEEKS,
  ],
  gives: 'containers a week, in the container that the amounts are in',
  unit: 'X a week',
  details: [
    'Draws are counted in typical draws, Σa² ÷ Σa; their number a week is taken as a Poisson rate, and this is a quantile of what is then known of it (a Gamma distribution, Jeffreys prior).',
    'The answer is the same whichever unit the draws are written in.',
  ],
  example: {
    formula: '=ROUND(USE_RANGE({"2026-01-04";"2026-01-18";"2026-02-01"}, {1;1;1}, 0.9, "2026-03-01", 8), 2)',
    gives: '0.75',
  },
  source: 'Jeffreys posterior of a Poisson rate: textbook statistics',
  steps: ([dates, amounts, probability, asOf, weeks], { answer, context, x }) => {
    const found = drawsFrom(dates, amounts);
    const usual = found.ok
      ? usePerWeek(found.value.dates, found.value.amounts, asOf ?? context.asOf, weeks ?? null)
      : found;
    const words = x || 'containers';
    return [
      ...(usual.ok ? [say`usually ${toldOf(usual.value, `${words} a week`)} by what was taken`] : []),
      say`the true use stays under it ${told(probability * 100)} times in a hundred = ${toldValue(answer.value, `${words} a week`)}`,
    ];
  },
  run: ([dates, amounts, probability, asOf, weeks], context) => {
    const draws = drawsFrom(dates, amounts);
    if (!draws.ok) return draws;
    return useRange(draws.value.dates, draws.value.amounts, probability, asOf ?? context.asOf, weeks ?? null);
  },
});
