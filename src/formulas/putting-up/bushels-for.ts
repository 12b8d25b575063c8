import { bushelsFor } from '../../planning/putting-up.js';
import { BASIS } from '../arguments.js';
import { declareExplained } from '../declare.js';
import { explained } from '../explained.js';
import { CANNED_CROP, CANNING_CAUTION, CANNING_SOURCE, JAR, PACK } from './arguments.js';

export const BUSHELS_FOR = declareExplained({
  name: 'BUSHELS_FOR',
  group: 'Putting up',
  summary: 'How many bushels of a crop fill so many jars.',
  arguments: [
    CANNED_CROP,
    { name: 'jars', kind: 'number', least: 0, most: 1e9, help: 'how many jars to fill' },
    JAR,
    PACK,
    BASIS,
  ],
  gives: 'bushels, not rounded',
  details: ['The jars divided by JARS_PER_BUSHEL. Put ROUNDUP around it to buy whole bushels.'],
  example: { formula: '=BUSHELS_FOR("tomato", 60, "quart",, "lean")', gives: '4' },
  source: CANNING_SOURCE,
  caution: CANNING_CAUTION,
  explain: ([crop, jars, jar, pack, basis], context) =>
    explained(bushelsFor(crop, jars, jar, pack), basis ?? context.basis),
});
