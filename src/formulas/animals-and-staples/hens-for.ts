import { sourceText } from '../../facts/index.js';
import { hensFor } from '../../planning/animals.js';
import { BASIS } from '../arguments.js';
import { declareExplained } from '../declare.js';
import { explained } from '../explained.js';

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
    },
    BASIS,
  ],
  gives: 'whole hens, rounded up',
  details: [
    'Good counts on hens in their first year, lean on hens in their fourth, usual midway. Eggs are averaged over the year: in winter there are fewer.',
    'The published figure is the most of a backyard hen, not an average; commercial flocks lay more.',
  ],
  example: { formula: '=HENS_FOR(24)', gives: '7' },
  source: sourceText('uf-hens'),
  explain: ([eggs, basis], context) => explained(hensFor(eggs), basis ?? context.basis),
});
