import { harvestFrom } from '../../planning/growing-dates.js';
import { say } from '../../words/index.js';
import { CROP } from '../arguments.js';
import { declareExplained } from '../declare.js';
import { explainedDay } from '../explained.js';
import { isoOf } from '../tell.js';
import { countedOut } from '../tell-figure.js';
import { GROWING_SOURCE } from './arguments.js';

export const HARVEST_FROM = declareExplained({
  name: 'HARVEST_FROM',
  group: 'Growing',
  summary: 'The day from which a crop is ready.',
  arguments: [
    CROP,
    {
      name: 'date',
      kind: 'date',
      help: 'the day it was sown, or set out for crops whose days are counted from setting out, such as tomatoes',
    },
  ],
  gives: 'date',
  unit: 'date',
  details: [
    'That day and the usual days to maturity: the middle of the published range. Varieties differ by weeks; the packet says more.',
    'Tomatoes, peppers, cabbages and others set out as plants count from setting out.',
  ],
  example: { formula: '=HARVEST_FROM("tomato", "2026-06-01")', gives: '2026-08-20' },
  source: GROWING_SOURCE,
  steps: ([crop, date], { answer }) => countedOut(say`${isoOf(date)}, for ${crop}`, date, answer),
  explain: ([crop, date]) => explainedDay(harvestFrom(crop, date)),
});
