import { caution } from '../../facts/index.js';
import { bestBy, qualityMonths } from '../../planning/best-by.js';
import { defaultGuide } from '../../planning/guide.js';
import { WAYS_KEPT } from '../../planning/types.js';
import { ok } from '../../problem.js';
import { say } from '../../words/index.js';
import { declareFunction } from '../declare.js';
import { isoOf, toldOf, toldValue } from '../tell.js';

export const BEST_BY = declareFunction({
  name: 'BEST_BY',
  group: 'Supply',
  summary: 'The day until which food put up in a way is of best quality.',
  arguments: [
    { name: 'put_up_on', kind: 'date', help: 'the day it was put up' },
    {
      name: 'way_kept',
      kind: 'way kept',
      help: 'how it is kept, as in "canned" or "frozen"',
      values: WAYS_KEPT,
    },
    {
      name: 'food',
      kind: 'food',
      optional: true,
      otherwise: 'only for ways that are alike for all food, such as canned',
      help: 'what it is, as in "peaches" or "ground beef"',
    },
  ],
  gives: 'date',
  unit: 'date',
  details: [
    "That day and the published months of best quality, at the household's season basis: lean takes the shorter end.",
    'A date of quality, not of safety: it never says that old food is safe. Where no months are published, give your own with EDATE.',
  ],
  example: { formula: '=BEST_BY("2025-08-20", "canned", "peaches")', gives: '2026-08-20' },
  source: 'National Center for Home Food Preservation and others, named in Facts',
  caution: caution('old-food').text,
  steps: ([putUpOn, way, food], { answer, context }) => {
    const kept = WAYS_KEPT.find((each) => each === way) ?? 'canned';
    const months = qualityMonths(kept, food ?? '', null, context.basis, defaultGuide);
    return months.ok
      ? [
          say`${isoOf(putUpOn)} + ${toldOf(months.value.months, 'months')} of best quality = ${toldValue(answer.value)}`,
        ]
      : [];
  },
  run: ([putUpOn, way, food], context) => {
    const kept = WAYS_KEPT.find((each) => each === way) ?? 'canned';
    const day = bestBy(putUpOn, kept, food ?? '', context.basis, defaultGuide);
    return day.ok ? ok({ day: day.value }) : day;
  },
});
