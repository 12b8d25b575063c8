import { jarsPerBushel } from '../../planning/putting-up.js';
import { say } from '../../words/index.js';
import { BASIS } from '../arguments.js';
import { declareExplained } from '../declare.js';
import { explained } from '../explained.js';
import { lookedUp } from '../tell-figure.js';
import { CANNED_CROP, CANNING_CAUTION, CANNING_SOURCE, JAR, PACK } from './arguments.js';

export const JARS_PER_BUSHEL = declareExplained({
  name: 'JARS_PER_BUSHEL',
  group: 'Putting up',
  summary: 'How many jars a bushel of a crop fills.',
  arguments: [CANNED_CROP, JAR, PACK, BASIS],
  gives: 'jars a bushel',
  unit: '{jar|quart jar} a bushel',
  details: [
    'Lean and good are the ends of the range printed for a bushel; usual is the pounds of a bushel divided by the pounds per jar.',
    'A crop printed only by the lug or crate, and jars other than quarts, are worked out from the bushel weight and POUNDS_PER_JAR.',
  ],
  example: { formula: '=JARS_PER_BUSHEL("tomato", "quart",, "lean")', gives: '15' },
  source: CANNING_SOURCE,
  caution: CANNING_CAUTION,
  steps: ([crop], { answer }) => lookedUp(say`a bushel of ${crop}`, answer),
  explain: ([crop, jar, pack, basis], context) =>
    explained(jarsPerBushel(crop, jar, pack), basis ?? context.basis),
});
