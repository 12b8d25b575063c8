import { bushelPounds } from '../../facts/index.js';
import { ranged } from '../../planning/ranged.js';
import { ok } from '../../problem.js';
import { say } from '../../words/index.js';
import { CROP } from '../arguments.js';
import { declareExplained } from '../declare.js';
import { explained } from '../explained.js';
import { lookedUp } from '../tell-figure.js';

export const BUSHEL_POUNDS = declareExplained({
  name: 'BUSHEL_POUNDS',
  group: 'Putting up',
  summary: 'What a bushel of a crop weighs.',
  arguments: [CROP],
  gives: 'pounds a bushel',
  unit: 'pounds a bushel',
  details: [
    'The canning guide leads where it has the crop. Laws and markets differ: an apple bushel is 40 to 50 pounds by where it is sold.',
    'Lugs, crates and bags are not bushels.',
  ],
  example: { formula: '=BUSHEL_POUNDS("tomato")', gives: '53' },
  source:
    'USDA Agriculture Information Bulletin 539, state weights and measures, named crop by crop in Facts',
  steps: ([crop], { answer }) => lookedUp(say`a bushel of ${crop}`, answer),
  explain: ([crop]) => {
    const pounds = bushelPounds(crop);
    return explained(pounds.ok ? ok(ranged(pounds.value, 'low', 'pounds a bushel')) : pounds, 'usual');
  },
});
