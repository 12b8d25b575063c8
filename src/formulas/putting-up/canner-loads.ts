import { usualLoad } from '../../facts/index.js';
import { cannerLoads } from '../../planning/putting-up.js';
import { say } from '../../words/index.js';
import { declareExplained } from '../declare.js';
import { explained } from '../explained.js';
import { quantityOf } from '../quantity.js';
import { quantityInWords } from '../quantity-words.js';
import { toldOf, toldValue } from '../tell.js';
import { CANNING_CAUTION, JARS } from './arguments.js';

export const CANNER_LOADS = declareExplained({
  name: 'CANNER_LOADS',
  group: 'Putting up',
  summary: 'How many canner loads so many jars make.',
  arguments: [
    { name: 'jars', kind: 'number', least: 0, most: 1e9, help: 'how many jars', unit: '{jar}' },
    { name: 'jar', kind: 'container', help: 'a jar, as in "quart" or "pint"', values: JARS },
    {
      name: 'loads_of',
      kind: 'number',
      least: 1,
      most: 1000,
      optional: true,
      otherwise: '7 quarts or 9 pints',
      help: 'how many of them your canner holds',
    },
  ],
  gives: 'whole loads, rounded up',
  unit: 'loads',
  details: ['Seven quarts hold more than nine pints: fourteen pints of food go into a load of quarts.'],
  example: { formula: '=CANNER_LOADS(40, "quart")', gives: '6' },
  source: 'USDA Agriculture Information Bulletin 539, Complete Guide to Home Canning, for the usual load',
  caution: CANNING_CAUTION,
  steps: ([jars, jar, loadsOf], { answer }) => {
    const load = usualLoad();
    const of = loadsOf ?? (jar === 'pint jar' ? load.pints : load.quarts);
    const words = quantityInWords(quantityOf(jar));
    return [
      say`${toldOf(jars, words)} ÷ ${toldOf(of, words)} a load = ${toldOf(jars / of, 'loads')}`,
      say`rounded up = ${toldValue(answer.value, 'loads')}`,
    ];
  },
  explain: ([jars, jar, loadsOf]) => explained(cannerLoads(jars, jar, loadsOf), 'usual'),
});
