import { frozenCrops } from '../../facts/index.js';
import { pintsFrozen } from '../../planning/putting-up.js';
import { HERE } from '../../words/here.js';
import { phrase, say } from '../../words/index.js';
import { BASIS, CROP, POUNDS } from '../arguments.js';
import { declareExplained } from '../declare.js';
import { explained } from '../explained.js';
import { toldOf } from '../tell.js';
import { scaled } from '../tell-figure.js';

export const PINTS_FROZEN = declareExplained({
  name: 'PINTS_FROZEN',
  group: 'Putting up',
  summary: 'How many pints of a crop come from so many pounds, frozen.',
  arguments: [{ ...CROP, values: frozenCrops() }, POUNDS, BASIS],
  gives: 'pints',
  unit: 'pints',
  details: [
    'Pounds divided by the pounds to a frozen pint. Lean counts on more pounds a pint.',
    'Weights are as bought: peas and limas in pods, corn in husks. Some figures are from memory, and say so in Facts.',
  ],
  example: { formula: '=PINTS_FROZEN("summer squash", 40, "lean")', gives: '32' },
  source: 'state extensions and USDA Home and Garden Bulletin 10, named crop by crop in Facts',
  steps: ([crop, pounds], { answer }) =>
    scaled(
      say`${toldOf(pounds, 'pounds')} of ${crop}${HERE}`,
      pounds,
      phrase('pounds a pint'),
      'divide',
      'pints',
      answer,
    ),
  explain: ([crop, pounds, basis], context) => explained(pintsFrozen(crop, pounds), basis ?? context.basis),
});
