import { bushelsFor, jarsPerBushel } from '../../planning/putting-up.js';
import { at } from '../../planning/ranged.js';
import { say } from '../../words/index.js';
import { BASIS } from '../arguments.js';
import { declareExplained } from '../declare.js';
import { explained } from '../explained.js';
import { toldOf, toldValue } from '../tell.js';
import { CANNED_CROP, CANNING_CAUTION, CANNING_SOURCE, JAR, PACK } from './arguments.js';

export const BUSHELS_FOR = declareExplained({
  name: 'BUSHELS_FOR',
  group: 'Putting up',
  summary: 'How many bushels of a crop fill so many jars.',
  arguments: [
    CANNED_CROP,
    {
      name: 'jars',
      kind: 'number',
      least: 0,
      most: 1e9,
      help: 'how many jars to fill',
      unit: '{jar|quart jar}',
    },
    JAR,
    PACK,
    BASIS,
  ],
  gives: 'bushels, not rounded',
  unit: 'bushels',
  details: ['The jars divided by JARS_PER_BUSHEL. Put ROUNDUP around it to buy whole bushels.'],
  example: { formula: '=BUSHELS_FOR("tomato", 60, "quart",, "lean")', gives: '4' },
  source: CANNING_SOURCE,
  caution: CANNING_CAUTION,
  steps: ([crop, jars, jar, pack, basis], { answer, context }) => {
    const per = jarsPerBushel(crop, jar, pack);
    if (!per.ok) return [];
    const each = at(per.value, basis ?? context.basis);
    const words = per.value.unit.replace(/ a bushel$/, '');
    return [
      say`a bushel of ${crop} fills ${toldOf(each, words)}`,
      `${toldOf(jars, words)} ÷ ${toldOf(each, per.value.unit)} = ${toldValue(answer.value, 'bushels')}`,
    ];
  },
  explain: ([crop, jars, jar, pack, basis], context) =>
    explained(bushelsFor(crop, jars, jar, pack), basis ?? context.basis),
});
