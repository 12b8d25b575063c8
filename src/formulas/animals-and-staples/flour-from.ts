import { sourceText } from '../../facts/index.js';
import { flourFrom } from '../../planning/animals.js';
import { POUNDS } from '../arguments.js';
import { declareExplained } from '../declare.js';
import { explained } from '../explained.js';

export const FLOUR_FROM = declareExplained({
  name: 'FLOUR_FROM',
  group: 'Animals and staples',
  summary: 'How much flour so much grain gives.',
  arguments: [
    {
      name: 'grain',
      kind: 'text',
      help: '"wheat" for white flour, "whole wheat" for whole-wheat flour',
      values: ['wheat', 'whole wheat'],
    },
    { ...POUNDS, help: 'pounds of grain' },
  ],
  gives: 'pounds of flour',
  example: { formula: '=FLOUR_FROM("wheat", 60)', gives: '42' },
  source: sourceText('ks-wheat'),
  explain: ([grain, pounds]) => explained(flourFrom(grain, pounds), 'usual'),
});
