import { meatFrom } from '../../planning/animals.js';
import { phrase, say } from '../../words/index.js';
import { BASIS } from '../arguments.js';
import { declareExplained } from '../declare.js';
import { explained } from '../explained.js';
import { toldOf } from '../tell.js';
import { scaled } from '../tell-figure.js';

export const MEAT_FROM = declareExplained({
  name: 'MEAT_FROM',
  group: 'Animals and staples',
  summary: 'How much meat an animal of a live weight gives to take home.',
  arguments: [
    {
      name: 'animal',
      kind: 'text',
      help: 'as in "steer", "hog", "lamb" or "chicken"',
      values: [phrase('steer'), phrase('hog'), phrase('lamb'), phrase('chicken'), phrase('game hen')],
    },
    { name: 'live_weight', kind: 'number', least: 0, most: 1e6, help: 'pounds, alive', unit: 'pounds' },
    BASIS,
  ],
  gives: 'pounds of meat to take home',
  unit: 'pounds',
  details: [
    'Live, hanging and take-home weights are three things. Steers and hogs: meat cut and wrapped, between what the sources print. Lambs: the carcass times cuts with bone. Birds: the dressed bird.',
  ],
  example: { formula: '=MEAT_FROM("chicken", 5)', gives: '3.5' },
  source: 'state extensions, named source by source in Facts',
  steps: ([animal, weight], { answer }) =>
    scaled(
      say`${toldOf(weight, 'pounds')} of ${animal}, alive`,
      weight,
      phrase('pounds of meat a pound alive'),
      'multiply',
      'pounds',
      answer,
    ),
  explain: ([animal, weight, basis], context) => explained(meatFrom(animal, weight), basis ?? context.basis),
});
