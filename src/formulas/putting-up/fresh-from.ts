import { driedCrops, sourceText } from '../../facts/index.js';
import { freshFrom } from '../../planning/putting-up.js';
import { phrase, say } from '../../words/index.js';
import { CROP } from '../arguments.js';
import { declareExplained } from '../declare.js';
import { explained } from '../explained.js';
import { toldOf } from '../tell.js';
import { scaled } from '../tell-figure.js';

export const FRESH_FROM = declareExplained({
  name: 'FRESH_FROM',
  group: 'Putting up',
  summary: 'How many pounds of a fresh crop so many dried pounds are.',
  arguments: [
    { ...CROP, values: driedCrops() },
    {
      name: 'dried_pounds',
      kind: 'number',
      least: 0,
      most: 1e9,
      help: 'pounds of it, dried',
      unit: 'pounds',
    },
  ],
  gives: 'pounds fresh, as bought',
  unit: 'pounds',
  details: ['The other way round of DRIED_FROM, at the usual yield. These yields are from memory.'],
  example: { formula: '=FRESH_FROM("onion", 1.5)', gives: '12' },
  source: `from memory: ${sourceText('uga-drying')}`,
  steps: ([crop, dried], { answer }) =>
    scaled(
      say`${toldOf(dried, 'pounds')} of dried ${crop}`,
      dried,
      phrase('pounds fresh a pound dried'),
      'multiply',
      'pounds',
      answer,
    ),
  explain: ([crop, dried]) => explained(freshFrom(crop, dried), 'usual'),
});
