import { sourceText } from '../../facts/index.js';
import { eggsPerHen, hensFor } from '../../planning/animals.js';
import { at } from '../../planning/ranged.js';
import { say } from '../../words/index.js';
import { BASIS } from '../arguments.js';
import { declareExplained } from '../declare.js';
import { explained } from '../explained.js';
import { told, toldOf, toldValue } from '../tell.js';

const WEEKS_A_YEAR = 365.25 / 7;

export const HENS_FOR = declareExplained({
  name: 'HENS_FOR',
  group: 'Animals and staples',
  summary: 'How many laying hens give so many eggs a week, over the year.',
  arguments: [
    {
      name: 'eggs_per_week',
      kind: 'number',
      least: 0,
      most: 1e6,
      help: 'eggs wanted a week, for the whole table',
      unit: 'eggs a week',
    },
    BASIS,
  ],
  gives: 'whole hens, rounded up',
  unit: 'hens',
  details: [
    'Good counts on hens in their first year, lean on hens in their fourth, usual midway. Eggs are averaged over the year: in winter there are fewer.',
    'The published figure is the most of a backyard hen, not an average; commercial flocks lay more.',
  ],
  example: { formula: '=HENS_FOR(24)', gives: '7' },
  source: sourceText('uf-hens'),
  steps: ([eggs, basis], { answer, context }) => {
    const laid = eggsPerHen();
    if (!laid.ok) return [];
    const each = at(laid.value, basis ?? context.basis);
    const year = eggs * WEEKS_A_YEAR;
    return [
      say`${toldOf(eggs, 'eggs a week')} × ${told(WEEKS_A_YEAR)} weeks a year = ${toldOf(year, 'eggs a year')}`,
      say`${toldOf(year, 'eggs a year')} ÷ ${told(each)} eggs a hen a year = ${toldOf(year / each, 'hens')}`,
      say`rounded up = ${toldValue(answer.value, 'hens')}`,
    ];
  },
  explain: ([eggs, basis], context) => explained(hensFor(eggs), basis ?? context.basis),
});
