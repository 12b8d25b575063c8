import { poundsPerJar } from '../../planning/putting-up.js';
import { say } from '../../words/index.js';
import { BASIS } from '../arguments.js';
import { declareExplained } from '../declare.js';
import { explained } from '../explained.js';
import { lookedUp } from '../tell-figure.js';
import { CANNED_CROP, CANNING_CAUTION, CANNING_SOURCE, JAR, PACK } from './arguments.js';

export const POUNDS_PER_JAR = declareExplained({
  name: 'POUNDS_PER_JAR',
  group: 'Putting up',
  summary: 'How many pounds of a crop, as bought or harvested, go into one jar.',
  arguments: [CANNED_CROP, JAR, PACK, BASIS],
  gives: 'pounds a jar',
  unit: 'pounds a {jar|quart jar}',
  details: [
    'Quarts: the printed average. Crushed tomatoes go by their printed load, which the average contradicts.',
    'Pints: the printed load of nine, else half of the figure for a quart. Other jars by their size.',
    'Lean counts on more pounds a jar. Weights are untrimmed: peas and limas in pods, corn in husks.',
  ],
  example: { formula: '=POUNDS_PER_JAR("tomato", "quart")', gives: '3' },
  source: CANNING_SOURCE,
  caution: CANNING_CAUTION,
  steps: ([crop], { answer }) => lookedUp(say`a jar of ${crop}`, answer),
  explain: ([crop, jar, pack, basis], context) =>
    explained(poundsPerJar(crop, jar, pack), basis ?? context.basis),
});
