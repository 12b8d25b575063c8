import { learned, SEASONS_PUBLISHED } from '../../planning/learned.js';
import { say } from '../../words/index.js';
import { declareFunction } from '../declare.js';
import { told, toldOf, toldValue } from '../tell.js';

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
      unit: 'X',
    },
    {
      name: 'own_values',
      kind: 'numbers',
      help: 'the cells with your own figures, one for each season',
      unit: 'X',
    },
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
  unit: 'X',
  details: [
    'Z × own mean + (1 − Z) × published, with Z = n ÷ (n + k): n seasons of your own, k as given. Without seasons it is the published figure.',
  ],
  example: { formula: '=LEARNED(8, {5, 6, 7})', gives: '6.8' },
  source: 'credibility weighting (Bühlmann, 1967); that k is 2 is our choice: common practice, no source',
  steps: ([published, own, seasons = SEASONS_PUBLISHED], { answer, x }) => {
    if (own.length === 0) return [say`no seasons of your own: as published = ${toldValue(answer.value, x)}`];
    const sum = own.reduce((total, each) => total + each, 0);
    const mean = sum / own.length;
    const z = own.length / (own.length + seasons);
    return [
      own.length === 1
        ? say`${told(sum)} ÷ 1 season of your own = ${toldOf(mean, x)}, your mean`
        : say`${told(sum)} ÷ ${told(own.length)} seasons of your own = ${toldOf(mean, x)}, your mean`,
      ...(published === undefined
        ? [say`nothing published: your own mean = ${toldValue(answer.value, x)}`]
        : [
            say`your part: ${own.length} ÷ (${own.length} + ${told(seasons)}) = ${told(z)}`,
            `${told(z)} × ${told(mean)} + ${told(1 - z)} × ${told(published)} = ${toldValue(answer.value, x)}`,
          ]),
    ];
  },
  run: ([published, own, seasons]) => learned(published ?? null, own, seasons),
});
