import { setOutOn } from '../../planning/growing-dates.js';
import { say } from '../../words/index.js';
import { CROP } from '../arguments.js';
import { declareExplained } from '../declare.js';
import { explainedDay } from '../explained.js';
import { isoOf } from '../tell.js';
import { countedOut } from '../tell-figure.js';
import { FROST_IS_A_CHANCE, GROWING_SOURCE, LAST_FROST } from './arguments.js';

export const SET_OUT_ON = declareExplained({
  name: 'SET_OUT_ON',
  group: 'Growing',
  summary: 'The first day on which a crop may be set or sown outdoors.',
  arguments: [CROP, LAST_FROST],
  gives: 'date',
  unit: 'date',
  details: [
    'The last frost, and the earliest of the published weeks before or after it. Facts shows until when.',
    FROST_IS_A_CHANCE,
  ],
  example: { formula: '=SET_OUT_ON("pumpkin", "2026-05-24")', gives: '2026-05-31' },
  source: GROWING_SOURCE,
  steps: ([crop, lastFrost], { answer }) =>
    countedOut(say`the last frost, ${isoOf(lastFrost)}, for ${crop}`, lastFrost, answer),
  explain: ([crop, lastFrost]) => explainedDay(setOutOn(crop, lastFrost)),
});
