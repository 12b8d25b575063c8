import { monthsKept } from '../../planning/supply.js';
import { say } from '../../words/index.js';
import { declareFunction } from '../declare.js';
import { isoOf, toldValue } from '../tell.js';
import { AS_OF } from './arguments.js';

export const MONTHS_KEPT = declareFunction({
  name: 'MONTHS_KEPT',
  group: 'Supply',
  summary: 'How many whole months ago something was put up.',
  arguments: [{ name: 'put_up_on', kind: 'date', help: 'the day it was put up' }, AS_OF],
  gives: 'whole months',
  unit: 'months',
  details: ['Calendar months: from 31 August to 28 February is six.'],
  example: { formula: '=MONTHS_KEPT("2025-08-20", "2026-02-01")', gives: '5' },
  source: 'arithmetic',
  steps: ([putUpOn, asOf], { answer, context }) => [
    say`${isoOf(putUpOn)} to ${isoOf(asOf ?? context.asOf)}, whole months = ${toldValue(answer.value, 'months')}`,
  ],
  run: ([putUpOn, asOf], context) => monthsKept(putUpOn, asOf ?? context.asOf),
});
