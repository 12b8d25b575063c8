import { lastSowing } from '../../planning/growing-dates.js';
import { say } from '../../words/index.js';
import { CROP } from '../arguments.js';
import { declareExplained } from '../declare.js';
import { explainedDay } from '../explained.js';
import { isoOf } from '../tell.js';
import { countedOut } from '../tell-figure.js';
import { FROST_IS_A_CHANCE, GROWING_SOURCE } from './arguments.js';

export const LAST_SOWING = declareExplained({
  name: 'LAST_SOWING',
  group: 'Growing',
  summary: 'The last day on which sowing still gives a harvest before the fall frost.',
  arguments: [
    CROP,
    { name: 'first_frost', kind: 'date', help: 'the day of the first fall frost that you plan by' },
  ],
  gives: 'date',
  unit: 'date',
  details: [
    'Counted back from the first frost: the usual days to maturity, 14 days for slower growth in fall, and 14 more for a crop that frost kills. Crops set out as plants count their weeks indoors too.',
    FROST_IS_A_CHANCE,
  ],
  example: { formula: '=LAST_SOWING("snap bean", "2026-09-18")', gives: '2026-06-27' },
  source: `Virginia Cooperative Extension, rule for fall planting; ${GROWING_SOURCE}`,
  steps: ([crop, firstFrost], { answer }) =>
    countedOut(say`the first frost, ${isoOf(firstFrost)}, for ${crop}`, firstFrost, answer),
  explain: ([crop, firstFrost]) => explainedDay(lastSowing(crop, firstFrost)),
});
