import { caution, driedCrops, sourceText } from '../../facts/index.js';
import { driedFrom } from '../../planning/putting-up.js';
import { HERE } from '../../words/here.js';
import { phrase, say } from '../../words/index.js';
import { BASIS, CROP, POUNDS } from '../arguments.js';
import { declareExplained } from '../declare.js';
import { explained } from '../explained.js';
import { toldOf } from '../tell.js';
import { scaled } from '../tell-figure.js';

export const DRIED_FROM = declareExplained({
  name: 'DRIED_FROM',
  group: 'Putting up',
  summary: 'How many pounds are left of a crop when it is dried.',
  arguments: [{ ...CROP, values: driedCrops() }, POUNDS, BASIS],
  gives: 'pounds dried',
  unit: 'pounds',
  details: ['These yields are from memory: weigh a batch before and after, and use your own.'],
  example: { formula: '=DRIED_FROM("onion", 12)', gives: '1.5' },
  source: `from memory: ${sourceText('uga-drying')}`,
  caution: caution('dry-goods-moisture').text,
  steps: ([crop, pounds], { answer }) =>
    scaled(
      say`${toldOf(pounds, 'pounds')} of ${crop}${HERE}`,
      pounds,
      phrase('pounds dried a pound fresh'),
      'multiply',
      'pounds',
      answer,
    ),
  explain: ([crop, pounds, basis], context) => explained(driedFrom(crop, pounds), basis ?? context.basis),
});
