import { learned } from '../../planning/learned.js';
import { declareFunction } from '../declare.js';

export const LEARNED = declareFunction({
  name: 'LEARNED',
  group: 'Growing',
  summary: 'A figure that moves from the published one to your own as your seasons add up.',
  arguments: [
    {
      name: 'published',
      kind: 'number',
      optional: true,
      otherwise: 'your own mean alone',
      help: 'the published figure',
    },
    { name: 'own_values', kind: 'numbers', help: 'the cells with your own figures, one for each season' },
    {
      name: 'seasons_published_counts_for',
      kind: 'number',
      least: 0,
      most: 1000,
      optional: true,
      otherwise: '2',
      help: 'how many seasons of your own the published figure weighs as much as',
    },
  ],
  gives: 'the unit of the figures given',
  details: [
    'Z × own mean + (1 − Z) × published, with Z = n ÷ (n + k): n seasons of your own, k as given. Without seasons it is the published figure.',
  ],
  example: { formula: '=LEARNED(8, {5, 6, 7})', gives: '6.8' },
  source: 'credibility weighting (Bühlmann, 1967); that k is 2 is our choice: common practice, no source',
  run: ([published, own, seasons]) => learned(published ?? null, own, seasons),
});
